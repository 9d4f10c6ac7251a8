package chinelog.publish;

import chinelog.edition.Edition;
import chinelog.log.records.Readers;
import chinelog.problem.Place;
import chinelog.problem.Problem;
import chinelog.problem.ProblemException;
import chinelog.problem.Sentence;
import chinelog.problem.Suggestion;
import chinelog.talk.Length;
import chinelog.talk.Recording;
import chinelog.withhold.question.Questions;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** How long the instalments of a log take, and where the frames of a recording begin. */
public final class Rehearsal {

  private static final String GETS = "gets: [site, talk]";

  private final Path folder;
  private final Workshop.Opened opened;
  private final LocalDate today;
  private final Progress progress;

  private Rehearsal(Path folder, Workshop.Opened opened, LocalDate today, Progress progress) {
    this.folder = folder;
    this.opened = opened;
    this.today = today;
    this.progress = progress;
  }

  /** Reads a log. */
  public static Rehearsal of(Path folder, LocalDate today, ZoneId zone, Progress progress)
      throws IOException {
    return new Rehearsal(
        folder, Workshop.open(folder, today, today, zone, progress), today, progress);
  }

  public List<Problem> problems() {
    return opened.problems();
  }

  /**
   * What some readers are told.
   *
   * @param reminders of instalments that are too long, and of recordings
   */
  public record Told(String readers, List<Length> instalments, List<Problem> reminders) {}

  /**
   * What readers are told.
   *
   * @param wanted their ids; empty for all that get a talk
   * @throws ProblemException if there are no such readers, or they get no talk
   */
  public List<Told> told(List<String> wanted) throws IOException {
    List<Readers> all = opened.log().readers();
    List<String> ids = all.stream().map(Readers::id).toList();
    for (String id : wanted) {
      if (!ids.contains(id)) {
        throw new ProblemException(
            Place.of("log.yaml"),
            Sentence.of("This log names no readers \u201c{0}\u201d.", id),
            Suggestion.remedy(id, ids));
      }
    }
    List<Readers> chosen =
        all.stream()
            .filter(r -> wanted.isEmpty() || wanted.contains(r.id()))
            .filter(r -> r.outputs().contains(Readers.Output.TALK))
            .toList();
    if (chosen.isEmpty()) {
      throw new ProblemException(
          Place.of("log.yaml"),
          wanted.isEmpty()
              ? "No readers of this log get a talk."
              : Sentence.of("These readers get no talk: {0}.", String.join(", ", wanted)),
          Sentence.of("Write such as \"{0}\" for the readers that are to get it.", GETS));
    }
    Questions.Asked asked = opened.ask(chosen, today);
    List<Told> told = new ArrayList<>();
    for (Readers group : chosen) {
      Edition edition =
          opened.prepare(group, today, asked.photographs(), progress).against(List.of()).edition();
      told.add(new Told(group.id(), Length.all(edition), TalkReminders.of(opened.log(), edition)));
    }
    return told;
  }

  /**
   * When each frame begins in a recording, as far as its pauses tell.
   *
   * @throws ProblemException if the recording cannot be read
   */
  public static List<Long> marks(Length instalment, Recording recording) {
    List<Long> planned = new ArrayList<>();
    instalment.frames().forEach(f -> planned.add(f.beginMs()));
    planned.add(instalment.ms());
    return recording.propose(planned);
  }

  /**
   * Writes the marks of a recording into the log.
   *
   * @return their file below the log's folder
   * @throws ProblemException if there are marks already: they are never overwritten
   */
  public String write(String readers, Length instalment, List<Long> marks, long endMs)
      throws IOException {
    String name = "talk/" + readers + "/" + instalment.folder() + ".csv";
    StringBuilder text = new StringBuilder("frame,begins\n");
    for (int i = 0; i < marks.size(); i++) {
      text.append(i + 1).append(',').append(time(marks.get(i))).append('\n');
    }
    text.append("end,").append(time(endMs)).append('\n');
    text.append("script,").append(instalment.script()).append('\n');
    Path file = folder.resolve(name);
    Files.createDirectories(file.getParent());
    try {
      Files.writeString(
          file, text.toString(), StandardCharsets.UTF_8, StandardOpenOption.CREATE_NEW);
    } catch (FileAlreadyExistsException e) {
      throw new ProblemException(
          Place.of(name),
          "This instalment has marks already.",
          "Delete this file if the new ones are to take their place.",
          e);
    }
    return name;
  }

  /** Minutes and seconds to a tenth, such as {@code 1:04.5}. */
  public static String time(long ms) {
    long tenths = ms / 100;
    return String.format(Locale.ROOT, "%d:%02d.%d", tenths / 600, tenths / 10 % 60, tenths % 10);
  }
}
