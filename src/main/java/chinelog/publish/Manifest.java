package chinelog.publish;

import chinelog.digest.Sha256;
import chinelog.problem.Sentence;
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
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The files of an edition as written: lines such as {@code e3b0c442… site/index.html}, and further
 * ones such as {@code = 2026-05-20T00:00:00Z rw-r--r-- site/index.html}.
 *
 * @param files SHA-256 in hexadecimal by path below the edition's folder, with '/'
 * @param traits of files and folders by path, of the edition's own folder under {@code .}; none in
 *     lists that were written before traits were
 */
record Manifest(SortedMap<String, String> files, SortedMap<String, Traits> traits) {

  private static final String SEPARATOR = "  ";
  private static final String TRAITS = "= ";
  private static final String ITSELF = ".";

  /** Everything below a folder. */
  static Manifest of(Path folder) throws IOException {
    return of(folder, Map.of(), Manifest::sha256);
  }

  /** How the SHA-256 of a file is learnt. */
  interface Hashing {
    String of(Path file) throws IOException;
  }

  /**
   * Everything below a folder.
   *
   * @param known SHA-256 of files that need not be read, by name
   */
  static Manifest of(Path folder, Map<String, String> known, Hashing hashing) throws IOException {
    SortedMap<String, String> files = new TreeMap<>();
    SortedMap<String, Traits> traits = new TreeMap<>();
    try {
      for (Path path : all(folder)) {
        String name = name(folder, path);
        traits.put(name, Traits.of(path));
        if (!Files.isDirectory(path, LinkOption.NOFOLLOW_LINKS)) {
          String sha256 = known.get(name);
          files.put(name, sha256 == null ? hashing.of(path) : sha256);
        }
      }
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
    return new Manifest(files, traits);
  }

  private static List<Path> all(Path folder) throws IOException {
    try (Stream<Path> all = Files.walk(folder)) {
      return all.toList();
    }
  }

  /** The manifest kept in a file; empty if there is none. */
  static Manifest read(Path file) throws IOException {
    SortedMap<String, String> files = new TreeMap<>();
    SortedMap<String, Traits> traits = new TreeMap<>();
    if (Files.isRegularFile(file)) {
      // Garbage becomes names that nothing has.
      for (String line :
          new String(Files.readAllBytes(file), StandardCharsets.UTF_8).lines().toList()) {
        int at = line.indexOf(SEPARATOR);
        if (at > 0 && line.startsWith(TRAITS)) {
          traits.put(
              line.substring(at + SEPARATOR.length()),
              Traits.parse(line.substring(TRAITS.length(), at)));
        } else if (at > 0) {
          files.put(line.substring(at + SEPARATOR.length()), line.substring(0, at));
        }
      }
    }
    return new Manifest(files, traits);
  }

  void write(Path file) throws IOException {
    Files.write(file, lines());
  }

  List<String> lines() {
    List<String> lines = new ArrayList<>();
    files.forEach((name, hash) -> lines.add(hash + SEPARATOR + name));
    traits.forEach((name, own) -> lines.add(TRAITS + own.text() + SEPARATOR + name));
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
      return files.entrySet().stream()
          .filter(file -> isChanged(folder.resolve(file.getKey()), file.getValue()))
          .map(Map.Entry::getKey)
          .collect(Collectors.toCollection(TreeSet::new));
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
  }

  /**
   * How what stands in a folder differs from what was written into it, in words, by name. What is
   * missing, and what is not of this manifest, is for others to tell.
   */
  SortedMap<String, List<Sentence>> differencesIn(Path folder) throws IOException {
    SortedMap<String, List<Sentence>> differences = new TreeMap<>();
    for (String name : changedIn(folder)) {
      differences
          .computeIfAbsent(name, n -> new ArrayList<>())
          .add(Sentence.of("Its bytes are not those that were published."));
    }
    for (Map.Entry<String, Traits> published : traits.entrySet()) {
      Path path = folder.resolve(published.getKey());
      if (Files.exists(path, LinkOption.NOFOLLOW_LINKS)) {
        List<Sentence> own = Traits.of(path).differencesFrom(published.getValue());
        if (!own.isEmpty()) {
          differences.computeIfAbsent(published.getKey(), n -> new ArrayList<>()).addAll(own);
        }
      }
    }
    return differences;
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
    String name = folder.relativize(file).toString().replace('\\', '/');
    return name.isEmpty() ? ITSELF : name;
  }

  private static String sha256(Path file) {
    try (InputStream in = Files.newInputStream(file)) {
      return Sha256.of(in);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
