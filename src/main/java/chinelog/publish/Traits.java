package chinelog.publish;

import chinelog.digest.Sha256;
import chinelog.problem.Sentence;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.PosixFileAttributeView;
import java.nio.file.attribute.PosixFilePermissions;
import java.nio.file.attribute.UserDefinedFileAttributeView;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * What can be seen of a file or folder without opening it: time, permissions and attributes, such
 * as {@code 2026-05-20T00:00:00Z rw-r--r--}.
 *
 * @param time of its last change
 * @param mode who may do what with it; {@code -} where the file system does not say
 * @param attributes SHA-256 of the value of each extra attribute, by name
 */
record Traits(String time, String mode, SortedMap<String, String> attributes) {

  private static final String UNKNOWN = "-";
  private static final int SHA256_LETTERS = 64;

  static Traits of(Path file) throws IOException {
    BasicFileAttributes basic =
        Files.readAttributes(file, BasicFileAttributes.class, LinkOption.NOFOLLOW_LINKS);
    PosixFileAttributeView posix =
        Files.getFileAttributeView(file, PosixFileAttributeView.class, LinkOption.NOFOLLOW_LINKS);
    return new Traits(
        basic.lastModifiedTime().toString(),
        posix == null
            ? UNKNOWN
            : PosixFilePermissions.toString(posix.readAttributes().permissions()),
        attributes(file));
  }

  private static SortedMap<String, String> attributes(Path file) throws IOException {
    SortedMap<String, String> attributes = new TreeMap<>();
    UserDefinedFileAttributeView view =
        Files.getFileAttributeView(
            file, UserDefinedFileAttributeView.class, LinkOption.NOFOLLOW_LINKS);
    for (String name : names(view)) {
      ByteBuffer value = ByteBuffer.allocate(view.size(name));
      view.read(name, value);
      attributes.put(name, Sha256.of(Arrays.copyOf(value.array(), value.position())));
    }
    return attributes;
  }

  private static List<String> names(@Nullable UserDefinedFileAttributeView view) {
    try {
      return view == null ? List.of() : view.list();
    } catch (IOException e) {
      // A file system that keeps none says so in this way.
      return List.of();
    }
  }

  /** On one line. */
  String text() {
    StringBuilder text = new StringBuilder(time).append(' ').append(mode);
    attributes.forEach((name, sha) -> text.append(' ').append(sha).append(escaped(name)));
    return text.toString();
  }

  /** From such a line; garbage becomes traits that nothing has. */
  static Traits parse(String text) {
    String[] cells = text.split(" ");
    SortedMap<String, String> attributes = new TreeMap<>();
    for (int i = 2; i < cells.length; i++) {
      int name = Math.min(cells[i].length(), SHA256_LETTERS);
      attributes.put(plain(cells[i].substring(name)), cells[i].substring(0, name));
    }
    return new Traits(cells[0], cells.length > 1 ? cells[1] : UNKNOWN, attributes);
  }

  private static String escaped(String name) {
    return name.replace("%", "%25").replace(" ", "%20").replace("\n", "%0A");
  }

  private static String plain(String escaped) {
    return escaped.replace("%0A", "\n").replace("%20", " ").replace("%25", "%");
  }

  /** In words, how these traits of today differ from those as published. */
  List<Sentence> differencesFrom(Traits published) {
    List<Sentence> differences = new ArrayList<>();
    if (!time.equals(published.time)) {
      differences.add(
          Sentence.of("Its time is {0}, but was published as {1}.", time, published.time));
    }
    if (!mode.equals(published.mode) && !mode.equals(UNKNOWN) && !published.mode.equals(UNKNOWN)) {
      differences.add(
          Sentence.of("Its mode is {0}, but was published as {1}.", mode, published.mode));
    }
    attributes.forEach(
        (name, sha) -> {
          if (!sha.equals(published.attributes.get(name))) {
            differences.add(
                Sentence.of("It has the extra attribute \"{0}\", which was not published.", name));
          }
        });
    return differences;
  }
}
