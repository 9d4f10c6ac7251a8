package chinelog.photo.gathering;

import chinelog.photo.pixels.PhotoLoader;
import chinelog.photo.pixels.UnusablePhoto;
import chinelog.problem.Place;
import chinelog.problem.ProblemException;
import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipFile;

/** Where photographs are brought in from: a folder or a zip. It is only ever read. */
interface Card extends Closeable {

  /** Of all files, sorted, with '/' between folders; hidden ones and links are passed over. */
  List<String> names();

  /**
   * @throws UnusablePhoto if the file is too large to be a photograph
   */
  byte[] read(String name) throws IOException;

  /**
   * @param log is passed over where it lies inside
   */
  static Card open(Path from, Path log) throws IOException {
    return Files.isDirectory(from) ? new FolderCard(from, log) : new ZipCard(zip(from));
  }

  private static ZipFile zip(Path from) throws IOException {
    try {
      return new ZipFile(from.toFile());
    } catch (ZipException e) {
      // Old programs write names in no declared alphabet.
      return zipOfOldNames(from);
    }
  }

  private static ZipFile zipOfOldNames(Path from) throws IOException {
    try {
      return new ZipFile(from.toFile(), StandardCharsets.ISO_8859_1);
    } catch (ZipException e) {
      boolean locked = String.valueOf(e.getMessage()).contains("encrypted");
      throw new ProblemException(
          Place.of(from.toString()),
          locked
              ? "This zip is locked with a password."
              : "This is neither a folder nor a zip that can be opened.",
          locked
              ? "Unpack it, and name the folder that comes of it."
              : "Name the folder of the card or telephone, or copy the zip afresh; to bring in"
                  + " one photograph, name the folder it lies in.",
          e);
    }
  }

  private static UnusablePhoto tooLarge() {
    return new UnusablePhoto(
        "The file is larger than any photograph.", "Copy it by hand if you need it.");
  }

  /** A card's or telephone's folder, with all below it. */
  record FolderCard(Path root, List<String> names) implements Card {

    FolderCard(Path root, Path log) throws IOException {
      this(root, list(root, log.toAbsolutePath().normalize()));
    }

    private static List<String> list(Path root, Path log) throws IOException {
      List<String> names = new ArrayList<>();
      Files.walkFileTree(
          root,
          new SimpleFileVisitor<>() {
            @Override
            public FileVisitResult preVisitDirectory(Path dir, BasicFileAttributes attributes) {
              boolean over =
                  !dir.equals(root) && isHidden(dir)
                      || dir.toAbsolutePath().normalize().equals(log);
              return over ? FileVisitResult.SKIP_SUBTREE : FileVisitResult.CONTINUE;
            }

            @Override
            public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
              if (attributes.isRegularFile() && !isHidden(file)) {
                names.add(name(root.relativize(file)));
              }
              return FileVisitResult.CONTINUE;
            }

            @Override
            public FileVisitResult visitFileFailed(Path file, IOException e) {
              names.add(name(root.relativize(file)));
              return FileVisitResult.CONTINUE;
            }
          });
      names.sort(null);
      return List.copyOf(names);
    }

    /** With '/' between folders; elsewhere than on Windows a \\ may be part of a name. */
    private static String name(Path file) {
      List<String> parts = new ArrayList<>();
      file.forEach(part -> parts.add(part.toString()));
      return String.join("/", parts);
    }

    private static boolean isHidden(Path path) {
      return path.getFileName().toString().startsWith(".");
    }

    @Override
    public byte[] read(String name) throws IOException {
      Path file = root.resolve(name);
      if (!Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)) {
        throw new IOException("not a file: " + name);
      }
      if (Files.size(file) > PhotoLoader.MOST_BYTES) {
        throw tooLarge();
      }
      return Files.readAllBytes(file);
    }

    @Override
    public void close() {}
  }

  /** A zip; the names in it are never used as paths. */
  record ZipCard(ZipFile zip, SortedMap<String, ZipEntry> entries) implements Card {

    ZipCard(ZipFile zip) {
      this(zip, list(zip));
    }

    private static SortedMap<String, ZipEntry> list(ZipFile zip) {
      SortedMap<String, ZipEntry> entries = new TreeMap<>();
      zip.stream()
          .filter(
              e ->
                  !e.isDirectory() && !e.getName().matches("(.*/)?[.][^./][^/]*(/.*)?|__MACOSX/.*"))
          .forEach(e -> entries.put(e.getName(), e));
      return entries;
    }

    @Override
    public List<String> names() {
      return List.copyOf(entries.keySet());
    }

    @Override
    public byte[] read(String name) throws IOException {
      ZipEntry entry = entries.get(name);
      if (entry == null) {
        throw new IOException("not in the zip: " + name);
      }
      if (entry.getSize() > PhotoLoader.MOST_BYTES) {
        throw tooLarge();
      }
      try (InputStream in = zip.getInputStream(entry)) {
        byte[] bytes = in.readNBytes((int) PhotoLoader.MOST_BYTES);
        if (in.read() >= 0) {
          throw tooLarge();
        }
        return bytes;
      }
    }

    @Override
    public void close() throws IOException {
      zip.close();
    }
  }
}
