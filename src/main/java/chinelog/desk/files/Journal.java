package chinelog.desk.files;

import chinelog.digest.Sha256;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.URLDecoder;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import java.util.zip.GZIPInputStream;
import java.util.zip.GZIPOutputStream;

/**
 * What was changed, in order, and what stood there before, so that it can be taken back.
 *
 * <p>A line is added before the change is made: {@code did}, {@code back} or {@code again}. Whoever
 * opens the journal after a kill compares the last line with the disk, and strikes it out if the
 * change was never made. Texts lie packed in files named after their digest. All of it may be
 * deleted: then nothing can be taken back any more, and nothing else is lost.
 */
final class Journal {

  private static final int MOST_STEPS = 1000;
  private static final long MOST_BYTES = 64L << 20;
  private static final String DID = "did";
  private static final String BACK = "back";
  private static final String AGAIN = "again";
  private static final String NEVER = "never";

  /**
   * A change that was made.
   *
   * @param before digest of the file before it; {@link FileVersion#NONE} if there was none
   * @param after digest of the file after it
   */
  record Step(String path, String before, String after, String why) {

    String line() {
      return String.join("\t", DID, encode(path), dash(before), dash(after), encode(why));
    }

    private static String dash(String digest) {
      return digest.isEmpty() ? "-" : digest;
    }

    private static String encode(String text) {
      return URLEncoder.encode(text, StandardCharsets.UTF_8);
    }
  }

  private final Path folder;
  private final Disk disk;
  private final List<Step> done = new ArrayList<>();

  /** Taken back, the last one first to be made again at the end. */
  private final List<Step> undone = new ArrayList<>();

  private String last = "";

  /** Whether the lines on the disk are not those meant, so that the next goes with all anew. */
  private boolean dirty;

  Journal(Path folder, Disk disk) throws IOException {
    this.folder = folder;
    this.disk = disk;
    if (Files.exists(lines())) {
      String text = Files.readString(lines(), StandardCharsets.ISO_8859_1);
      // A line that was torn off by a kill tells of nothing that was made.
      String whole = text.substring(0, text.lastIndexOf('\n') + 1);
      whole.lines().forEach(this::replay);
      dirty = whole.length() < text.length();
    }
    prune();
  }

  List<Step> done() {
    return done;
  }

  List<Step> undone() {
    return undone;
  }

  /** Whether the last line tells of a change that leaves this file so. */
  boolean endsWithChange() {
    return !last.isEmpty();
  }

  /** The step of the last line, and what it should have left on the disk. */
  Step lastStep() {
    List<Step> where = last.equals(BACK) ? undone : done;
    Step step = where.get(where.size() - 1);
    return last.equals(BACK) ? new Step(step.path, step.after, step.before, step.why) : step;
  }

  void did(Step step) throws IOException {
    add(step.line());
  }

  void back() throws IOException {
    add(BACK);
  }

  void again() throws IOException {
    add(AGAIN);
  }

  /** Strikes out the last line: what it tells of was not done. */
  void never() {
    String line =
        switch (last) {
          case BACK -> AGAIN;
          case AGAIN -> BACK;
          default -> NEVER;
        };
    try {
      add(line);
    } catch (IOException e) {
      // On a full disk it is struck out when there is room again, or when this is opened again.
      replay(line);
    }
    last = "";
  }

  /** Keeps a text; returns its digest. */
  String keep(byte[] bytes) throws IOException {
    String digest = Sha256.of(bytes);
    Path file = kept(digest);
    if (!Files.exists(file)) {
      Disk.makePrivate(folder);
      Files.createDirectories(folder.resolve("texts"));
      ByteArrayOutputStream packed = new ByteArrayOutputStream();
      try (GZIPOutputStream out = new GZIPOutputStream(packed)) {
        out.write(bytes);
      }
      Path next = folder.resolve("next");
      disk.write(next, packed.toByteArray());
      disk.swap(next, file);
    }
    return digest;
  }

  /**
   * A text that was kept.
   *
   * @throws IOException if it is no longer there, or no longer the same
   */
  byte[] kept(Step step, String digest) throws IOException {
    try (GZIPInputStream in =
        new GZIPInputStream(new ByteArrayInputStream(Files.readAllBytes(kept(digest))))) {
      byte[] bytes = in.readAllBytes();
      if (!Sha256.of(bytes).equals(digest)) {
        throw new IOException("the former text of " + step.path + " is damaged");
      }
      return bytes;
    }
  }

  private Path kept(String digest) {
    return folder.resolve("texts").resolve(digest + ".gz");
  }

  private Path lines() {
    return folder.resolve("steps");
  }

  private void add(String line) throws IOException {
    Disk.makePrivate(folder);
    if (dirty) {
      rewrite();
    }
    // Half a line may stand there if this fails.
    dirty = true;
    disk.append(lines(), (line + "\n").getBytes(StandardCharsets.ISO_8859_1));
    dirty = false;
    replay(line);
  }

  private void replay(String line) {
    String[] parts = line.split("\t", -1);
    last = parts[0];
    if (parts[0].equals(DID) && parts.length == 5) {
      undone.clear();
      done.add(new Step(decode(parts[1]), digest(parts[2]), digest(parts[3]), decode(parts[4])));
    } else if (parts[0].equals(BACK) && !done.isEmpty()) {
      undone.add(done.remove(done.size() - 1));
    } else if (parts[0].equals(AGAIN) && !undone.isEmpty()) {
      done.add(undone.remove(undone.size() - 1));
    } else if (parts[0].equals(NEVER) && !done.isEmpty()) {
      done.remove(done.size() - 1);
      last = "";
    } else {
      last = "";
    }
  }

  private static String digest(String written) {
    return written.equals("-") ? FileVersion.NONE : written;
  }

  private static String decode(String text) {
    return URLDecoder.decode(text, StandardCharsets.UTF_8);
  }

  /** Writes the lines anew, without those that cancel each other. */
  private void rewrite() throws IOException {
    List<String> lines = new ArrayList<>();
    done.forEach(s -> lines.add(s.line()));
    for (int i = undone.size() - 1; i >= 0; i--) {
      lines.add(undone.get(i).line());
    }
    undone.forEach(s -> lines.add(BACK));
    String text = lines.isEmpty() ? "" : String.join("\n", lines) + "\n";
    Path next = folder.resolve("next");
    disk.write(next, text.getBytes(StandardCharsets.ISO_8859_1));
    disk.swap(next, lines());
  }

  /** Forgets what was changed long ago. */
  private void prune() throws IOException {
    if (!Files.isDirectory(folder.resolve("texts"))) {
      return;
    }
    long bytes = 0;
    int keep = 0;
    Set<String> needed = new HashSet<>();
    undone.forEach(s -> needed.addAll(List.of(s.before, s.after)));
    while (keep < done.size() && keep < MOST_STEPS && bytes < MOST_BYTES) {
      Step step = done.get(done.size() - 1 - keep++);
      for (String digest : List.of(step.before, step.after)) {
        if (needed.add(digest) && Files.exists(kept(digest))) {
          bytes += Files.size(kept(digest));
        }
      }
    }
    if (keep < done.size()) {
      done.subList(0, done.size() - keep).clear();
      dirty = true;
    }
    try (Stream<Path> texts = Files.list(folder.resolve("texts"))) {
      for (Path text : texts.toList()) {
        String name = String.valueOf(text.getFileName());
        if (!needed.contains(name.replace(".gz", ""))) {
          Files.deleteIfExists(text);
        }
      }
    }
  }
}
