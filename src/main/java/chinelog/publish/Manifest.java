package chinelog.publish;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentSkipListMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The files of an edition with their SHA-256, as written.
 *
 * @param files hash in hexadecimal by path below the edition's folder, with '/'
 */
record Manifest(SortedMap<String, String> files) {

  private static final String SEPARATOR = "  ";

  /** Everything below a folder. */
  static Manifest of(Path folder) throws IOException {
    SortedMap<String, String> files = new ConcurrentSkipListMap<>();
    try {
      list(folder).parallelStream().forEach(f -> files.put(name(folder, f), sha256(f)));
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
    return new Manifest(files);
  }

  /** The manifest kept in a file; empty if there is none. */
  static Manifest read(Path file) throws IOException {
    SortedMap<String, String> files = new TreeMap<>();
    if (Files.isRegularFile(file)) {
      // Garbage becomes names that nothing has.
      for (String line :
          new String(Files.readAllBytes(file), StandardCharsets.UTF_8).lines().toList()) {
        int at = line.indexOf(SEPARATOR);
        if (at > 0) {
          files.put(line.substring(at + SEPARATOR.length()), line.substring(0, at));
        }
      }
    }
    return new Manifest(files);
  }

  void write(Path file) throws IOException {
    Files.write(file, lines());
  }

  List<String> lines() {
    List<String> lines = new ArrayList<>();
    files.forEach((name, hash) -> lines.add(hash + SEPARATOR + name));
    return lines;
  }

  Set<String> names() {
    return files.keySet();
  }

  /** Names of what stands in a folder and is not a file of this manifest. */
  Set<String> foreignIn(Path folder) throws IOException {
    Set<String> foreign = new TreeSet<>();
    if (Files.isDirectory(folder, LinkOption.NOFOLLOW_LINKS)) {
      for (Path file : list(folder)) {
        String name = name(folder, file);
        if (!files.containsKey(name) || Files.isSymbolicLink(file)) {
          foreign.add(name);
        }
      }
      for (Path empty : emptyFolders(folder)) {
        foreign.add(name(folder, empty));
      }
    } else if (Files.exists(folder, LinkOption.NOFOLLOW_LINKS)) {
      foreign.add("");
    }
    return foreign;
  }

  /** Names of files of this manifest that stand in a folder and are not as they were written. */
  Set<String> changedIn(Path folder) throws IOException {
    try {
      return files.entrySet().parallelStream()
          .filter(file -> isChanged(folder.resolve(file.getKey()), file.getValue()))
          .map(Map.Entry::getKey)
          .collect(Collectors.toCollection(TreeSet::new));
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
  }

  private static boolean isChanged(Path file, String hash) {
    return Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS) && !sha256(file).equals(hash);
  }

  private static List<Path> list(Path folder) throws IOException {
    try (Stream<Path> all = Files.walk(folder)) {
      return all.filter(p -> !Files.isDirectory(p, LinkOption.NOFOLLOW_LINKS)).sorted().toList();
    }
  }

  /** An edition has none. */
  private static List<Path> emptyFolders(Path folder) throws IOException {
    List<Path> empty = new ArrayList<>();
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path inside : all.filter(Files::isDirectory).sorted().toList()) {
        try (Stream<Path> children = Files.list(inside)) {
          if (!inside.equals(folder) && children.findAny().isEmpty()) {
            empty.add(inside);
          }
        }
      }
    }
    return empty;
  }

  private static String name(Path folder, Path file) {
    return folder.relativize(file).toString().replace('\\', '/');
  }

  /** Of a text in UTF-8, in hexadecimal. */
  static String sha256(String text) {
    return HexFormat.of().formatHex(sha256().digest(text.getBytes(StandardCharsets.UTF_8)));
  }

  /** What can be read. */
  interface Source {
    InputStream open() throws IOException;
  }

  /**
   * Of all that can be read, in hexadecimal.
   *
   * @throws UncheckedIOException if it cannot
   */
  static String sha256(Source source) {
    MessageDigest digest = sha256();
    try (InputStream in = new DigestInputStream(source.open(), digest)) {
      in.transferTo(OutputStream.nullOutputStream());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return HexFormat.of().formatHex(digest.digest());
  }

  private static String sha256(Path file) {
    return sha256(() -> Files.newInputStream(file));
  }

  private static MessageDigest sha256() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }
}
