package chinelog.desk.photographs;

import chinelog.desk.files.LogFiles;
import chinelog.desk.files.WriteOutcome;
import chinelog.desk.files.YamlText;
import chinelog.log.records.PhotoFile;
import chinelog.problem.ProblemException;
import java.nio.file.Path;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What photos.yaml says of photographs, changed where it stands; of one that nothing is said of, in
 * the photos.yaml beside it.
 */
final class Remarks {

  private static final String FILE = "photos.yaml";

  private final LogFiles files;

  Remarks(LogFiles files) {
    this.files = files;
  }

  /** Changes what is said of one photograph. */
  @FunctionalInterface
  interface Change {

    /**
     * @param key under which it stands, or is to stand
     */
    YamlText apply(YamlText yaml, String key, PhotoFile photo) throws ProblemException;
  }

  /** Changes what is said of some photographs, file by file; stops at what cannot be written. */
  WriteOutcome change(List<PhotoFile> photos, Change change, String why) {
    Map<String, List<PhotoFile>> byFile = new LinkedHashMap<>();
    photos.forEach(p -> byFile.computeIfAbsent(file(p), f -> new ArrayList<>()).add(p));
    WriteOutcome last = null;
    for (Map.Entry<String, List<PhotoFile>> entry : byFile.entrySet()) {
      last =
          files.edit(
              Path.of(entry.getKey()),
              now -> {
                YamlText yaml = YamlText.of(now);
                for (PhotoFile photo : entry.getValue()) {
                  yaml = change.apply(yaml, key(yaml, entry.getKey(), photo), photo);
                }
                return yaml.text();
              },
              why);
      if (!(last instanceof WriteOutcome.Written)) {
        return last;
      }
    }
    if (last == null) {
      throw new IllegalArgumentException("no photographs");
    }
    return last;
  }

  private static String file(PhotoFile photo) {
    String said = photo.place().file();
    return said.equals(FILE) || said.endsWith("/" + FILE) ? said : folder(photo.path()) + FILE;
  }

  private static String folder(String path) {
    return path.substring(0, path.lastIndexOf('/') + 1);
  }

  /** Systems write accents in two ways, and a key may be written in the other one. */
  private static String key(YamlText yaml, String file, PhotoFile photo) {
    String name = photo.path().substring(folder(file).length());
    String plain = Normalizer.normalize(name, Normalizer.Form.NFC);
    return yaml.keys(List.of()).stream()
        .filter(k -> Normalizer.normalize(k, Normalizer.Form.NFC).equals(plain))
        .findFirst()
        .orElse(name);
  }
}
