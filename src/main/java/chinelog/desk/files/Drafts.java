package chinelog.desk.files;

import chinelog.digest.Sha256;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** What is being typed and not yet written into the log, one file for each of the log's. */
record Drafts(Path folder, Disk disk) {

  void keep(TypedDraft draft) throws IOException {
    Disk.makePrivate(folder);
    String text = draft.path() + "\n" + draft.stampSeen() + "\n" + draft.text();
    Path next = folder.resolve("next");
    disk.write(next, text.getBytes(StandardCharsets.UTF_8));
    disk.swap(next, file(draft.path()));
  }

  void drop(String path) throws IOException {
    Files.deleteIfExists(file(path));
  }

  Optional<TypedDraft> find(String path) throws IOException {
    return Files.exists(file(path)) ? Optional.of(read(file(path))) : Optional.empty();
  }

  /** All of them, by path. */
  List<TypedDraft> list() throws IOException {
    List<TypedDraft> drafts = new ArrayList<>();
    if (Files.isDirectory(folder)) {
      try (Stream<Path> files = Files.list(folder)) {
        for (Path file : files.filter(f -> f.toString().endsWith(".txt")).toList()) {
          drafts.add(read(file));
        }
      }
    }
    drafts.sort((a, b) -> a.path().compareTo(b.path()));
    return drafts;
  }

  private static TypedDraft read(Path file) throws IOException {
    String[] parts = Files.readString(file).split("\n", 3);
    if (parts.length < 3) {
      throw new IOException("a draft is damaged: " + file.getFileName());
    }
    return new TypedDraft(parts[0], parts[1], parts[2]);
  }

  private Path file(String path) {
    return folder.resolve(Sha256.of(path) + ".txt");
  }
}
