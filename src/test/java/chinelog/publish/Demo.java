package chinelog.publish;

import chinelog.book.Press;
import chinelog.edition.Edition;
import chinelog.log.records.Readers;
import chinelog.markup.Theme;
import chinelog.site.FreshSite;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.time.ZoneOffset;
import java.util.Comparator;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** The demo as publishing makes it, every part of it made once, when a test first wants it. */
public final class Demo implements AutoCloseable {

  private static final Path LOG = Path.of("sample-log");
  private static final Set<String> MADE = Set.of("published", "records", "workshop");

  private final Path folder;
  private final Path log;
  private final Map<String, Edition> editions = new TreeMap<>();
  private final Map<Path, Path> printed = new ConcurrentHashMap<>();
  private Workshop.@Nullable Opened opened;

  public Demo() throws IOException {
    folder = Files.createTempDirectory("chinelog-demo");
    log = folder.resolve("log");
    copy(LOG, log, Set.of(".chinelog"));
  }

  synchronized Workshop.Opened opened() throws IOException {
    Workshop.Opened known = opened;
    if (known == null) {
      known = Workshop.open(log, DemoPrints.DAY, DemoPrints.DAY, ZoneOffset.UTC, Progress.SILENT);
      opened = known;
    }
    return known;
  }

  /** What these readers get, as of {@link DemoPrints#DAY}. */
  public synchronized Edition edition(String readers) throws IOException {
    if (!editions.containsKey(readers)) {
      for (Readers group : opened().log().readers()) {
        if (group.id().equals(readers)) {
          editions.put(readers, DemoPrints.edition(opened(), group));
        }
      }
    }
    return editions.get(readers);
  }

  /** The folder of these readers' site in a theme. */
  public synchronized Path site(String theme, String readers) throws IOException {
    Path site = place(theme, readers).resolve("site");
    if (Files.notExists(site)) {
      Files.createDirectories(site);
      FreshSite.write(edition(readers), Theme.load(theme, null), null, site);
    }
    return site;
  }

  /**
   * Copies its log, with what was worked out of its photographs, so that they need not be looked at
   * again.
   */
  public synchronized void copy(Path to) throws IOException {
    site("slipway", "workshop");
    copy(log, to, Set.of());
  }

  /** The same, with what was found when its photographs were searched for what is kept back. */
  public synchronized void copySearched(Path to) throws IOException {
    Lookalikes.inLog(opened(), DemoPrints.DAY, Progress.SILENT);
    copy(to);
  }

  /** Copies a log without what was made of it, and without some more of its folders. */
  public static void copy(Path log, Path to, Set<String> except) throws IOException {
    Files.walkFileTree(
        log,
        new SimpleFileVisitor<>() {
          @Override
          public FileVisitResult preVisitDirectory(Path inside, BasicFileAttributes attributes)
              throws IOException {
            String name = log.relativize(inside).toString();
            if (MADE.contains(name) || except.contains(name)) {
              return FileVisitResult.SKIP_SUBTREE;
            }
            Files.createDirectories(to.resolve(name));
            return FileVisitResult.CONTINUE;
          }

          @Override
          public FileVisitResult visitFile(Path file, BasicFileAttributes attributes)
              throws IOException {
            Files.copy(file, to.resolve(log.relativize(file).toString()));
            return FileVisitResult.CONTINUE;
          }
        });
  }

  private Path place(String theme, String readers) {
    return folder.resolve(theme).resolve(readers);
  }

  /** The build book of these readers in a theme, on a paper. */
  public Path book(String theme, Edition.Paper paper, String readers) throws IOException {
    Edition edition = edition(readers);
    return printed(
        place(theme, readers).resolve(paper + "-book.pdf"),
        pdf ->
            Press.printBuildBook(
                edition, Theme.load(theme, null), new Press.Options(paper, false), pdf));
  }

  /** Their handover booklet. */
  public Path booklet(String theme, Edition.Paper paper, String readers) throws IOException {
    Edition edition = edition(readers);
    return printed(
        place(theme, readers).resolve(paper + "-booklet.pdf"),
        pdf ->
            Press.printHandover(
                edition, Theme.load(theme, null), new Press.Options(paper, false), pdf));
  }

  private interface Printing {
    void into(Path pdf) throws IOException;
  }

  /** Others meanwhile get what they want, but for the same. */
  private Path printed(Path pdf, Printing printing) {
    return printed.computeIfAbsent(
        pdf,
        p -> {
          try {
            Files.createDirectories(p.getParent());
            printing.into(p);
            return p;
          } catch (IOException e) {
            throw new UncheckedIOException(e);
          }
        });
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
