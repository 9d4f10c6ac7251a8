package chinelog.publish;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.audit.Finding;
import chinelog.book.Press;
import chinelog.edition.Edition;
import chinelog.label.Clearance;
import chinelog.log.records.Readers;
import chinelog.log.records.Sheet;
import chinelog.markup.Theme;
import chinelog.photo.album.Photograph;
import chinelog.photo.derivatives.Darkroom;
import chinelog.photo.derivatives.View;
import chinelog.site.FreshSite;
import chinelog.withhold.Correspondence;
import chinelog.withhold.PictureSource;
import chinelog.withhold.Withholder;
import chinelog.withhold.question.Questions;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A darkroom that forgets to fill regions is found out by the pixels, wherever they end up. */
class UnfilledPicturesTest {

  @TempDir Path temp;

  /** Hands out the photographs as they are. */
  private record Forgetful(PictureSource real) implements PictureSource {

    @Override
    public Darkroom.Development develop(List<Darkroom.Order> orders) throws IOException {
      List<Darkroom.Order> whole =
          orders.stream().map(o -> new Darkroom.Order(o.photograph(), List.of())).toList();
      Darkroom.Development made = real.develop(whole);
      Map<Darkroom.Order, Darkroom.Prints> prints = new LinkedHashMap<>();
      for (int i = 0; i < orders.size(); i++) {
        prints.put(orders.get(i), made.prints().get(whole.get(i)));
      }
      return new Darkroom.Development(prints, made.problems());
    }

    @Override
    public boolean looksLikeDrawing(Darkroom.Prints prints) {
      return false;
    }

    @Override
    public double longEdgeMm(Sheet sheet, int page) throws IOException {
      return real.longEdgeMm(sheet, page);
    }

    @Override
    public Optional<View> look(Photograph photograph) throws IOException {
      return real.look(photograph);
    }

    @Override
    public int pages(Sheet sheet) throws IOException {
      return real.pages(sheet);
    }

    @Override
    public Darkroom.Prints print(Sheet sheet, int page) throws IOException {
      return real.print(sheet, page);
    }
  }

  @Test
  void anOpenRegionIsFoundInEverySizeAndInTheBook() throws IOException {
    Path log = new SmallLog(1, 11).write(temp.resolve("log"));
    assertThat(findings(log, false)).isEmpty();
    assertThat(findings(log, true).stream().map(Finding::file).collect(Collectors.toSet()))
        .contains("build-book.pdf")
        .anyMatch(f -> f.startsWith("site/pictures/"));
  }

  private List<Finding> findings(Path log, boolean forgetful) throws IOException {
    Workshop.Opened opened =
        Workshop.open(
            log, ByteTwinsTest.AS_OF, ByteTwinsTest.AS_OF, ZoneId.of("UTC"), Progress.SILENT);
    Readers everybody =
        opened.log().readers().stream()
            .filter(r -> r.id().equals("public"))
            .findFirst()
            .orElseThrow();
    PictureSource real =
        new LogPictures(opened.log(), new Clearance(new TreeSet<>()), Progress.SILENT);
    Withholder.Withheld withheld =
        Withholder.prepare(
                opened.log(),
                opened.facts(),
                opened.album(),
                forgetful ? new Forgetful(real) : real,
                everybody,
                ByteTwinsTest.AS_OF,
                java.util.Set.of(),
                Correspondence.NONE)
            .against(List.of());
    Path folder = Files.createTempDirectory(temp, "edition");
    Edition edition = withheld.edition();
    Theme theme = Theme.load(edition.contents().theme(), null);
    FreshSite.write(edition, theme, null, Files.createDirectory(folder.resolve("site")));
    Press.printBuildBook(
        edition, theme, Press.Options.of(edition, false), folder.resolve("build-book.pdf"));
    Set<String> mayStand =
        OpenWords.of(opened, everybody, withheld, Questions.Asked.NOTHING, ByteTwinsTest.AS_OF)
            .mayStand();
    return new EditionSearch(folder, Manifest.of(folder), opened, withheld, mayStand, "public")
        .afresh()
        .findings();
  }
}
