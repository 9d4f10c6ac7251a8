package chinelog.keep;

import chinelog.digest.Sha256;
import chinelog.problem.Place;
import chinelog.problem.ProblemException;
import chinelog.problem.Problems;
import chinelog.problem.Sentence;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** Looks whether a bag is complete and valid (RFC 8493, section 3). */
final class BagCheck {

  private static final Pattern LINE = Pattern.compile("([0-9a-fA-F]{64})[ \\t]+(.+)");

  /** What file managers leave behind in every folder that they show. */
  private static final Set<String> STRAY = Set.of(".ds_store", "thumbs.db", "desktop.ini");

  private static final String ANOTHER =
      "Use another copy if you need it, and make a new one of the log.";

  private final Path bag;
  private final String named;
  private final Keep.Progress progress;
  private final Problems problems = new Problems();
  private long bytes;

  private BagCheck(Path bag, Path named, Keep.Progress progress) {
    this.bag = bag;
    this.named = named.toString();
    this.progress = progress;
  }

  /**
   * @param named as the bag is called in problems
   * @throws ProblemException if it is none
   */
  static Keep.Checked check(Path bag, Path named, Keep.Progress progress) throws IOException {
    if (Files.exists(bag.resolve(FolderBag.UNFINISHED))) {
      throw new ProblemException(
          Place.of(named.toString()),
          "This copy was interrupted, and is not whole.",
          "Run keep again with the same folder; it goes on where it stopped.");
    }
    return new BagCheck(bag, named, progress).run();
  }

  /** Of a bag whose making has not been declared finished. */
  static Keep.Checked checkUnfinished(Path bag, Keep.Progress progress) throws IOException {
    return new BagCheck(bag, bag, progress).run();
  }

  private Keep.Checked run() throws IOException {
    if (!isFile(TagFiles.DECLARATION) || !isFile(TagFiles.MANIFEST)) {
      throw new ProblemException(
          Place.of(named),
          Sentence.of(
              "This is no copy that keep has made: {0} is not in it.",
              isFile(TagFiles.DECLARATION) ? TagFiles.MANIFEST : TagFiles.DECLARATION),
          "Name the folder or zip that keep has made; or use another copy.");
    }
    compare(manifest(TagFiles.TAG_MANIFEST), (done, of) -> {});
    bytes = 0;
    SortedMap<String, String> payload = manifest(TagFiles.MANIFEST);
    compare(payload, progress);
    tellAdded(payload);
    SortedMap<String, String> files = new TreeMap<>();
    payload.forEach((name, hash) -> files.put(name.substring("data/".length()), hash));
    return new Keep.Checked(madeOn(), files, bytes, problems.list());
  }

  private boolean isFile(String name) {
    return Files.isRegularFile(bag.resolve(name), LinkOption.NOFOLLOW_LINKS);
  }

  private SortedMap<String, String> manifest(String file) throws IOException {
    SortedMap<String, String> hashes = new TreeMap<>();
    if (!isFile(file)) {
      problems.error(at(file), "This file is missing.", ANOTHER);
      return hashes;
    }
    boolean payload = file.equals(TagFiles.MANIFEST);
    List<String> lines = text(file).lines().toList();
    for (int i = 0; i < lines.size(); i++) {
      Matcher line = LINE.matcher(lines.get(i));
      String name = line.matches() ? TagFiles.decoded(line.group(2)) : "";
      boolean inside = !List.of(name.split("/", -1)).contains("..");
      if (name.isEmpty() || !inside || payload != name.startsWith("data/")) {
        problems.error(
            Place.of(named + "/" + file, i + 1, 1),
            "This line names no file of the copy.",
            ANOTHER);
      } else {
        hashes.put(name, line.group(1).toLowerCase(Locale.ROOT));
      }
    }
    return hashes;
  }

  /** Garbage in a changed file is told by its digest, so it need not be told here. */
  private String text(String file) throws IOException {
    return new String(Files.readAllBytes(bag.resolve(file)), StandardCharsets.UTF_8);
  }

  private void compare(SortedMap<String, String> hashes, Keep.Progress progress) {
    int done = 0;
    for (var file : hashes.entrySet()) {
      Path path = bag.resolve(file.getKey());
      if (!Files.isRegularFile(path, LinkOption.NOFOLLOW_LINKS)) {
        problems.error(at(file.getKey()), "This file is missing.", ANOTHER);
      } else {
        try (InputStream in = Files.newInputStream(path)) {
          bytes += Files.size(path);
          if (!Sha256.of(in).equals(file.getValue())) {
            problems.error(
                at(file.getKey()), "This file was changed since the copy was made.", ANOTHER);
          }
        } catch (IOException e) {
          problems.error(at(file.getKey()), "This file can no longer be read.", ANOTHER);
        }
      }
      progress.done(++done, hashes.size());
    }
  }

  private void tellAdded(SortedMap<String, String> payload) throws IOException {
    Path data = bag.resolve("data");
    if (!Files.isDirectory(data)) {
      return;
    }
    try (Stream<Path> all = Files.walk(data)) {
      for (Path file : all.filter(f -> !Files.isDirectory(f)).sorted().toList()) {
        String name = bag.relativize(file).toString().replace('\\', '/');
        String last = name.substring(name.lastIndexOf('/') + 1).toLowerCase(Locale.ROOT);
        if (payload.containsKey(name)) {
          continue;
        }
        if (STRAY.contains(last) || last.startsWith("._")) {
          problems.reminder(
              at(name), "A file manager put this here; it is not of the log.", "Delete it.");
        } else {
          problems.error(
              at(name),
              "This file was added since the copy was made.",
              "Move it away; a copy is never changed, a new one is made.");
        }
      }
    }
  }

  private String madeOn() throws IOException {
    return isFile(TagFiles.INFO)
        ? text(TagFiles.INFO)
            .lines()
            .filter(l -> l.startsWith(TagFiles.DATE))
            .map(l -> l.substring(TagFiles.DATE.length()).strip())
            .findFirst()
            .orElse("")
        : "";
  }

  private Place at(String name) {
    return Place.of(named + "/" + name);
  }
}
