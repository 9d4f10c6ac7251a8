package chinelog.cli;

import chinelog.problem.Place;
import chinelog.problem.Problem;
import chinelog.problem.ProblemException;
import chinelog.publish.Rehearsal;
import chinelog.talk.Length;
import chinelog.talk.Recording;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code chinelog talk}. */
@Command(
    name = "talk",
    description = "Time instalments, or find when a recording's frames begin.",
    footer = {
      "",
      "Example: ${sys:chinelog.command:-chinelog} talk my-build --for public --post 2"
          + " --recording second.wav"
    })
final class TalkCommand extends ReadCommand {

  @Option(
      names = "--for",
      paramLabel = "READERS",
      description = "Only for these readers; may be given again. Default: all who get a talk.")
  private List<String> readers = new ArrayList<>();

  @Option(names = "--post", paramLabel = "N", description = "Only this instalment, by its number.")
  private @Nullable Integer post;

  @Option(
      names = "--recording",
      paramLabel = "FILE",
      description = "A WAV of that instalment, the voice alone: its pauses tell the frames apart.")
  private @Nullable Path recording;

  @Option(
      names = "--write",
      description = "Write the marks into the log (talk/READERS/INSTALMENT.csv).")
  private boolean write;

  TalkCommand(Terminal talk, Clock clock) {
    super(talk, clock);
  }

  @Override
  public Integer call() throws IOException {
    Path wav = recording;
    if (write && wav == null) {
      throw wrong("--write wants a recording to take the marks from: add --recording FILE.");
    }
    if (wav != null && !Files.isRegularFile(wav)) {
      throw new ProblemException(
          Place.of(wav.toString()), "There is no such file.", "Name the recording's WAV file.");
    }
    Rehearsal rehearsal = Rehearsal.of(requireFolder(folder()), today(), zone(), talk().progress());
    List<Problem> errors = rehearsal.problems().stream().filter(Problem::isError).toList();
    if (!errors.isEmpty()) {
      talk().endProgress();
      talk().problems(errors);
      return Main.PROBLEMS;
    }
    List<Rehearsal.Told> told = rehearsal.told(readers);
    talk().endProgress();
    if (wav == null) {
      told.forEach(this::tell);
      return Main.DONE;
    }
    mark(rehearsal, told, wav);
    return Main.DONE;
  }

  private List<Length> chosen(Rehearsal.Told told) {
    Integer wanted = post;
    return told.instalments().stream().filter(l -> wanted == null || l.number() == wanted).toList();
  }

  private void tell(Rehearsal.Told told) {
    result().println(talk().worded("For {0}:", told.readers()));
    for (Length length : chosen(told)) {
      result()
          .printf(
              "  %8s  %s%s%n",
              Length.clock(length.ms()),
              length.folder(),
              length.isRecorded() ? talk().worded(" (as recorded)") : "");
      result().printf("            %s,%s%n", talk().worded("script"), length.script());
    }
    talk().problems(told.reminders());
  }

  private void mark(Rehearsal rehearsal, List<Rehearsal.Told> told, Path wav) throws IOException {
    if (told.size() != 1) {
      throw wrong(
          "A recording is made for some readers: name them with --for, such as --for {0}.",
          told.get(0).readers());
    }
    List<Length> chosen = chosen(told.get(0));
    if (chosen.size() != 1) {
      throw wrong(
          chosen.isEmpty()
              ? "There is no instalment {0}; these readers are told {1}."
              : "A recording is of one instalment: name it with --post, such as --post 1.",
          post,
          told.get(0).instalments().size());
    }
    Length instalment = chosen.get(0);
    Recording heard = Recording.listen(wav);
    List<Long> marks = Rehearsal.marks(instalment, heard);
    result()
        .println(
            talk()
                .worded(
                    "{0}: {1} recorded, {2} planned, {3}.",
                    instalment.folder(),
                    Length.clock(heard.lengthMs()),
                    Length.clock(instalment.ms()),
                    Terminal.counted(heard.pauses().size(), "{0} pause", "{0} pauses")));
    for (int i = 0; i < marks.size(); i++) {
      result()
          .printf(
              "  %3d  %8s  %s%n",
              i + 1, Rehearsal.time(marks.get(i)), instalment.frames().get(i).shows());
    }
    result().printf("  %s  %8s%n", talk().worded("end"), Rehearsal.time(heard.lengthMs()));
    if (write) {
      String file = rehearsal.write(told.get(0).readers(), instalment, marks, heard.lengthMs());
      result()
          .println(
              talk().worded("Written to {0}; put right there what is wrong, then publish.", file));
    } else {
      result()
          .println(
              talk()
                  .worded(
                      "Nothing is written. If that is right, run it again with --write; put right"
                          + " single marks in the file then."));
    }
  }
}
