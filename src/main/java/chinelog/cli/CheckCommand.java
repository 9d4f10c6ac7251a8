package chinelog.cli;

import chinelog.log.PhotoFile;
import chinelog.photo.Burst;
import chinelog.photo.Darkroom;
import chinelog.photo.Likeness;
import chinelog.photo.Progress;
import chinelog.problem.Problem;
import chinelog.publish.Workshop;
import chinelog.withhold.question.Questions;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** {@code chinelog check}. */
@Command(
    name = "check",
    description = "Tell every problem of a log, with its place and what to do about it.",
    footer = {"", "Example: ${sys:chinelog.command:-chinelog} check sample-log"})
final class CheckCommand extends LogCommand {

  @Parameters(paramLabel = "LOG", description = "The log's folder.")
  private Path log = Path.of("");

  CheckCommand(Talk talk, Clock clock) {
    super(talk, clock);
  }

  @Override
  Path folder() {
    return log;
  }

  @Override
  public Integer call() throws IOException {
    Workshop.Opened opened =
        Workshop.open(requireFolder(log), today(), today(), zone(), talk().progress());
    List<Problem> problems = new ArrayList<>(opened.problems());
    if (!opened.hasErrors()) {
      pictures(opened, problems);
    }
    Questions.Asked asked = ask(opened);
    problems.addAll(asked.reminders());
    talk().endProgress();
    talk().problems(problems.stream().sorted().toList());
    talk().questions(asked.open(), asked.found());
    if (!asked.open().isEmpty() || problems.stream().anyMatch(Problem::isError)) {
      return Main.PROBLEMS;
    }
    talk()
        .out()
        .println(
            Talk.count(opened.log().entries().size(), "entry")
                + ", "
                + Talk.count(opened.album().photographs().size(), "photograph")
                + ", "
                + Talk.count(opened.facts().byName().size(), "fact")
                + ": no errors.");
    return Main.DONE;
  }

  /** Questions are asked of a sound log alone: of another, much is not known yet. */
  private Questions.Asked ask(Workshop.Opened opened) {
    if (opened.hasErrors()) {
      return new Questions.Asked(List.of(), List.of(), 0);
    }
    talk().progress().begin("comparing what is open with what is withheld");
    return opened.ask(opened.log().readers(), today());
  }

  private void pictures(Workshop.Opened opened, List<Problem> problems) throws IOException {
    Darkroom darkroom = new Darkroom(opened.log().folder());
    Progress progress = (done, of) -> talk().progress().begin("photograph " + done + " of " + of);
    Burst.find(opened.album(), darkroom, progress).forEach(b -> problems.add(b.reminder()));
    Set<String> hidden =
        opened.log().photos().stream()
            .filter(p -> !p.label().isNone() || !p.regions().isEmpty())
            .map(PhotoFile::path)
            .collect(Collectors.toCollection(TreeSet::new));
    Likeness.find(opened.album(), darkroom, hidden, progress).stream()
        .filter(l -> !l.isSettled())
        .forEach(l -> problems.add(l.problem()));
  }
}
