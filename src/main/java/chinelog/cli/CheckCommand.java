package chinelog.cli;

import chinelog.desk.files.Pins;
import chinelog.photo.Progress;
import chinelog.photo.derivatives.Darkroom;
import chinelog.photo.likeness.Burst;
import chinelog.problem.Problem;
import chinelog.publish.Lookalikes;
import chinelog.publish.Publisher;
import chinelog.publish.Version;
import chinelog.publish.Workshop;
import chinelog.withhold.question.Questions;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code chinelog check}. */
@Command(
    name = "check",
    description = "Tell every problem of a log, with its place and what to do about it.",
    footer = {"", "Example: ${sys:chinelog.command:-chinelog} check sample-log"})
final class CheckCommand extends LogCommand {

  @Parameters(paramLabel = "LOG", description = "The log's folder.")
  private Path log = Path.of("");

  @Option(
      names = "--json",
      description = "Print one JSON object, for programs; its form is in the manual page.")
  private boolean json;

  CheckCommand(Talk talk, Clock clock) {
    super(talk, clock);
  }

  @Override
  Path folder() {
    return log;
  }

  @Override
  public Integer call() throws IOException {
    if (!json) {
      return check();
    }
    CheckReport report;
    try {
      Found found = find();
      found.problems.addAll(found.asked.open());
      report = found.report();
    } catch (IOException e) {
      report = new CheckReport(0, 0, 0, List.of(Main.problem(e, log.toString())));
    } finally {
      talk().endProgress();
    }
    result().println(report.json());
    return report.isSound() ? Main.DONE : Main.PROBLEMS;
  }

  private int check() throws IOException {
    Found found = find();
    talk().endProgress();
    talk().problems(found.problems.stream().sorted().toList());
    talk().questions(found.asked.open(), found.asked.found());
    CheckReport report = found.report();
    if (!found.asked.open().isEmpty() || !report.isSound()) {
      return Main.PROBLEMS;
    }
    talk()
        .out()
        .println(
            Talk.count(report.entries(), "entry")
                + ", "
                + Talk.count(report.photographs(), "photograph")
                + ", "
                + Talk.count(report.facts(), "fact")
                + ": no errors.");
    return Main.DONE;
  }

  /**
   * What is wrong, and what is asked.
   *
   * @param problems without the questions
   */
  private record Found(Workshop.Opened opened, List<Problem> problems, Questions.Asked asked) {

    CheckReport report() {
      return new CheckReport(
          opened.log().entries().size(),
          opened.album().photographs().size(),
          opened.facts().byName().size(),
          problems);
    }
  }

  private Found find() throws IOException {
    List<Problem> problems = new ArrayList<>(Pins.pin(requireFolder(log)));
    Workshop.Opened opened = Workshop.open(log, today(), today(), zone(), talk().progress());
    problems.addAll(opened.problems());
    problems.addAll(opened.fullCopies());
    if (!opened.hasErrors()) {
      pictures(opened, problems);
    }
    Questions.Asked asked = ask(opened);
    problems.addAll(asked.reminders());
    if (!opened.hasErrors()) {
      new Publisher(log, today(), today(), zone(), talk().progress())
          .foresee(opened, asked).stream()
              .filter(p -> !problems.contains(p))
              .forEach(problems::add);
    }
    Version.newerThanOwn(log).ifPresent(problems::add);
    return new Found(opened, problems, asked);
  }

  /** Questions are asked of a sound log alone: of another, much is not known yet. */
  private Questions.Asked ask(Workshop.Opened opened) {
    if (opened.hasErrors()) {
      return Questions.Asked.NOTHING;
    }
    talk().doing("comparing what is open with what is withheld");
    return opened.ask(opened.log().readers(), today());
  }

  private void pictures(Workshop.Opened opened, List<Problem> problems) throws IOException {
    Darkroom darkroom = new Darkroom(opened.log().folder());
    Progress progress = (done, of) -> talk().doing("photograph " + done + " of " + of);
    Burst.find(opened.album(), darkroom, progress).forEach(b -> problems.add(b.reminder()));
    problems.addAll(Lookalikes.inLog(opened, today(), talk().progress()));
  }
}
