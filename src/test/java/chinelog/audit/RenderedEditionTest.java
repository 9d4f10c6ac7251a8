package chinelog.audit;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.book.Press;
import chinelog.edition.Edition;
import chinelog.edition.Picture;
import chinelog.edition.Plate;
import chinelog.edition.SampleEdition;
import chinelog.markup.Theme;
import chinelog.site.FreshSite;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What the site and the press write must be on the audit's lists, or no maker could publish. */
class RenderedEditionTest {

  @TempDir Path folder;

  @ParameterizedTest
  @ValueSource(strings = {"slipway", "chartroom"})
  void whatIsRenderedIsNotRefusedForItsForm(String name) throws IOException {
    Edition edition = SampleEdition.forPublic(name);
    Theme theme = Theme.load(name, null);
    Path site = Files.createDirectory(folder.resolve("site"));
    FreshSite.write(edition, theme, null, site);
    Press.printBuildBook(
        edition, theme, Press.Options.of(edition, false), folder.resolve("build-book.pdf"));
    Press.printHandover(edition, theme, folder.resolve("handover.pdf"));
    Press.printHandoverSheets(
        edition, theme, Press.Options.of(edition, false), folder.resolve("handover-sheets.pdf"));
    if (name.equals("slipway")) {
      Press.printBuildBook(
          edition,
          theme,
          Press.Options.of(edition, true),
          folder.resolve("build-book-print-ready.pdf"));
      Press.printCover(
          edition,
          theme,
          folder.resolve("build-book-print-ready.pdf"),
          folder.resolve("build-book-cover.pdf"));
    }
    Set<String> files;
    try (Stream<Path> all = Files.walk(folder)) {
      files =
          all.filter(Files::isRegularFile)
              .map(p -> folder.relativize(p).toString().replace('\\', '/'))
              .collect(Collectors.toCollection(TreeSet::new));
    }
    AuditReport report =
        Audit.search(
            folder,
            files,
            SampleLog.in(folder.resolve("none")),
            "public",
            SampleLog.WORKSHOP,
            List.of(),
            Set.of(),
            pictures(edition),
            Before.nothing());
    assertThat(report.findings()).isEmpty();
  }

  private static List<AllowedPicture> pictures(Edition edition) throws IOException {
    List<AllowedPicture> pictures = new ArrayList<>();
    for (Plate plate : edition.contents().plates()) {
      for (Picture.Rendition rendition : plate.picture().renditions()) {
        try (InputStream in = rendition.jpeg().open()) {
          pictures.add(chinelog.audit.SampleEdition.told(in.readAllBytes()));
        }
      }
    }
    return pictures;
  }
}
