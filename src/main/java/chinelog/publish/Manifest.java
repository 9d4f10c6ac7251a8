package chinelog.publish;

import chinelog.digest.Sha256;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
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
    return of(folder, Map.of());
  }

  /**
   * Everything below a folder.
   *
   * @param known SHA-256 of files that need not be read, by name
   */
  static Manifest of(Path folder, Map<String, String> known) throws IOException {
    SortedMap<String, String> files = new ConcurrentSkipListMap<>();
    try {
      list(folder).parallelStream()
          .forEach(
              file -> {
                String name = name(folder, file);
                String sha256 = known.get(name);
                files.put(name, sha256 == null ? sha256(file) : sha256);
              });
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

  /** The files that readers open first. */
  List<String> topFiles() {
    return files.keySet().stream()
        .filter(n -> !n.contains("/") || n.equals("site/index.html"))
        .toList();
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

  private static String sha256(Path file) {
    try (InputStream in = Files.newInputStream(file)) {
      return Sha256.of(in);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
