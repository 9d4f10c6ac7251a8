package chinelog.desk.begin;

import chinelog.desk.files.FileVersion;
import chinelog.desk.files.LogFiles;
import chinelog.desk.files.WriteOutcome;
import chinelog.desk.files.YamlText;
import chinelog.desk.files.YamlValue;
import chinelog.problem.Place;
import chinelog.problem.Problem;
import chinelog.problem.ProblemException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;

/**
 * A log as three answers make it: log.yaml with what was answered and nothing else, a first note,
 * and the folders for what is to come.
 *
 * @param subject what is built
 * @param kind what sort of thing that is; may be empty
 * @param scale such as 1:16; may be empty
 * @param language of the log
 * @param note the first note; may be empty
 */
record FirstLog(
    String subject, String kind, String scale, Locale language, ZoneId zone, String note) {

  private static final String HEAD =
      "# The log of one build, in plain text. \u201cchinelog begin FOLDER\u201d lays down another"
          + " that shows all that may stand here.\n";

  /**
   * Lays it down.
   *
   * @param folder made if it is not there
   * @param title of the log
   * @param heading of the first note
   * @throws ProblemException if anything is in the folder; nothing is written then
   */
  void layDown(Path folder, String title, String heading, LocalDate today) throws IOException {
    if (Files.exists(folder) && !isEmptyFolder(folder)) {
      throw new ProblemException(
          Problem.error(
              Place.of(folder.toString()),
              "Something is in this folder already, and nothing of yours is overwritten.",
              "Name a new folder."));
    }
    for (String part : new String[] {"entries", "photos", "sheets"}) {
      Files.createDirectories(folder.resolve(part));
    }
    Map<String, String> keys = new LinkedHashMap<>();
    keys.put("title", title);
    keys.put("subject", subject);
    keys.put("kind", kind);
    keys.put("scale", scale);
    keys.put("language", language.toLanguageTag());
    keys.put("zone", zone.getId());
    LogFiles files = LogFiles.open(folder);
    write(files, "log.yaml", now -> settings(now, keys), title);
    String name = "entries/" + today + "-begun.md";
    String text = "# " + heading + "\n\n" + (note.isBlank() ? "" : note.strip() + "\n");
    write(files, name, now -> text, title);
  }

  private static String settings(FileVersion now, Map<String, String> keys)
      throws ProblemException {
    YamlText yaml = YamlText.of(new FileVersion(now.path(), HEAD, now.stamp(), true));
    for (Map.Entry<String, String> key : keys.entrySet()) {
      if (!key.getValue().isBlank()) {
        yaml = yaml.with(java.util.List.of(key.getKey()), YamlValue.text(key.getValue().strip()));
      }
    }
    return yaml.text();
  }

  private static void write(LogFiles files, String name, LogFiles.Edit edit, String why)
      throws IOException {
    if (files.edit(Path.of(name), edit, why) instanceof WriteOutcome.Refused refused) {
      throw new ProblemException(refused.problem());
    }
  }

  private static boolean isEmptyFolder(Path folder) throws IOException {
    if (!Files.isDirectory(folder)) {
      return false;
    }
    try (Stream<Path> inside = Files.list(folder)) {
      return inside.allMatch(f -> f.getFileName().toString().startsWith("."));
    }
  }
}
