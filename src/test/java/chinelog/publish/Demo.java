package chinelog.publish;

import chinelog.book.Press;
import chinelog.edition.Edition;
import chinelog.log.records.Readers;
import chinelog.markup.Theme;
import chinelog.site.FreshSite;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.Comparator;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** The demo as publishing makes it, every part of it made once, when a test first wants it. */
public final class Demo implements AutoCloseable {

  private static final Path LOG = Path.of("sample-log");

  private final Path folder;
  private final Map<String, Edition> editions = new TreeMap<>();
  private Workshop.@Nullable Opened opened;

  public Demo() throws IOException {
    folder = Files.createTempDirectory("chinelog-demo");
  }

  /** What these readers get, as of {@link DemoPrints#DAY}. */
  public synchronized Edition edition(String readers) throws IOException {
    if (!editions.containsKey(readers)) {
      if (opened == null) {
        opened =
            Workshop.open(LOG, DemoPrints.DAY, DemoPrints.DAY, ZoneOffset.UTC, Progress.SILENT);
      }
      for (Readers group : opened.log().readers()) {
        if (group.id().equals(readers)) {
          editions.put(readers, DemoPrints.edition(opened, group));
        }
      }
    }
    return editions.get(readers);
  }

  /** The folder of these readers' site in a theme. */
  public synchronized Path site(String theme, String readers) throws IOException {
    Path site = folder.resolve(theme).resolve(readers).resolve("site");
    if (Files.notExists(site)) {
      Files.createDirectories(site);
      FreshSite.write(edition(readers), Theme.load(theme, null), null, site);
    }
    return site;
  }

  /** The build book of these readers in a theme, on a paper. */
  public synchronized Path book(String theme, Edition.Paper paper, String readers)
      throws IOException {
    Path pdf = folder.resolve(theme).resolve(readers).resolve(paper + "-book.pdf");
    if (Files.notExists(pdf)) {
      Files.createDirectories(pdf.getParent());
      Press.printBuildBook(
          edition(readers), Theme.load(theme, null), new Press.Options(paper, false), pdf);
    }
    return pdf;
  }

  /** Their handover booklet. */
  public synchronized Path booklet(String theme, Edition.Paper paper, String readers)
      throws IOException {
    Path pdf = folder.resolve(theme).resolve(readers).resolve(paper + "-booklet.pdf");
    if (Files.notExists(pdf)) {
      Files.createDirectories(pdf.getParent());
      Press.printHandover(
          edition(readers), Theme.load(theme, null), new Press.Options(paper, false), pdf);
    }
    return pdf;
  }

  @Override
  public void close() {
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path path : all.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(path);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
