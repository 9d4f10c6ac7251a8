package chinelog.desk.bench;

import chinelog.photo.FileStamp;
import chinelog.publish.Progress;
import chinelog.publish.Workshop;
import java.io.IOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.concurrent.atomic.AtomicLong;
import org.jspecify.annotations.Nullable;

/**
 * A log that is read once and again only after one of its files has changed, by whomever. No file
 * is opened to find that out.
 */
public final class LiveLog {

  private final Path folder;
  private final Clock clock;
  private volatile @Nullable Snapshot latest;
  private String stamps = "";
  private final AtomicLong version = new AtomicLong();

  public LiveLog(Path folder, Clock clock) {
    this.folder = folder;
    this.clock = clock;
  }

  /**
   * The log as its files are now.
   *
   * @throws IOException if the folder or a picture in it cannot be read
   */
  public synchronized Snapshot now() throws IOException {
    LocalDate today = LocalDate.ofInstant(clock.instant(), clock.getZone());
    String seen = today + "\n" + stamps();
    Snapshot known = latest;
    if (known != null && seen.equals(stamps)) {
      return known;
    }
    Snapshot fresh = read(new TreeMap<>(), today);
    latest = fresh;
    stamps = seen;
    return fresh;
  }

  /**
   * The log as it was read last, without a look at its files; read now if it never was. Enough for
   * what is asked many times over, such as the pictures of a page.
   */
  public Snapshot latest() throws IOException {
    Snapshot known = latest;
    return known == null ? now() : known;
  }

  /**
   * The log as it would be if some files held other texts; kept by nobody.
   *
   * @param unsaved these texts, by path below the folder, such as {@code entries/2026-03-14.md}
   */
  public Snapshot as(SortedMap<String, String> unsaved) throws IOException {
    return read(unsaved, LocalDate.ofInstant(clock.instant(), clock.getZone()));
  }

  private Snapshot read(SortedMap<String, String> unsaved, LocalDate today) throws IOException {
    return new Snapshot(
        version.incrementAndGet(),
        Workshop.open(folder, unsaved, today, today, clock.getZone(), Progress.SILENT),
        today);
  }

  /** What changes whenever a file of the log does. */
  public String stamps() throws IOException {
    StringBuilder all = new StringBuilder();
    List<String> made = Workshop.made(folder);
    Files.walkFileTree(
        folder,
        new SimpleFileVisitor<>() {
          @Override
          public FileVisitResult preVisitDirectory(Path inside, BasicFileAttributes attributes) {
            String name = folder.relativize(inside).toString();
            return name.startsWith(".") || made.contains(name.replace('\\', '/'))
                ? FileVisitResult.SKIP_SUBTREE
                : FileVisitResult.CONTINUE;
          }

          @Override
          public FileVisitResult visitFile(Path file, BasicFileAttributes attributes)
              throws IOException {
            all.append(file).append('\t').append(FileStamp.of(file).text()).append('\n');
            return FileVisitResult.CONTINUE;
          }

          @Override
          public FileVisitResult visitFileFailed(Path file, IOException e) {
            // Whatever is wrong with it, the reader of the log will say so.
            return FileVisitResult.CONTINUE;
          }
        });
    return all.toString();
  }
}
