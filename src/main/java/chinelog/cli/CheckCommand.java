package chinelog.cli;

import chinelog.desk.files.Pins;
import chinelog.photo.PhotoProgress;
import chinelog.photo.derivatives.Darkroom;
import chinelog.photo.likeness.Burst;
import chinelog.problem.Problem;
import chinelog.problem.Sentence;
import chinelog.publish.Course;
import chinelog.publish.Foreseen;
import chinelog.publish.Lookalikes;
import chinelog.publish.Outcome;
import chinelog.publish.ProgramVersion;
import chinelog.publish.Publisher;
import chinelog.publish.Remembered;
import chinelog.publish.Step;
import chinelog.publish.Workshop;
import chinelog.withhold.question.Questions;
import java.io.IOException;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code chinelog check}. */
@Command(
    name = "check",
    description = "Tell every problem of a log, with its place and its remedy.",
    footer = {"", "Example: ${sys:chinelog.command:-chinelog} check sample-log"})
final class CheckCommand extends ReadCommand {

  @Option(
      names = "--json",
      description = "Print one JSON object, for programs; its form is in the manual page.")
  private boolean json;

  @Option(
      names = "--all",
      description =
          "Also make every edition, search it and throw it away, which takes as long as publishing.")
  private boolean all;

  CheckCommand(Terminal talk, Clock clock) {
    super(talk, clock);
  }

  @Override
  public Integer call() throws IOException {
    if (all && json) {
      throw wrong("--json tells what is known without making anything: leave --all out.");
    }
    if (!json) {
      int status = check();
      return all && status == Main.DONE ? rehearse() : status;
    }
    CheckReport report;
    try {
      report = find().reportWithQuestions();
    } catch (IOException e) {
      report = new CheckReport(0, 0, 0, List.of(Main.problem(e, folder().toString())));
    } finally {
      talk().endProgress();
    }
    result().println(report.json());
    return report.isSound() ? Main.DONE : Main.PROBLEMS;
  }

  private int check() throws IOException {
    Checked found = find();
    talk().endProgress();
    talk().problems(found.problems().stream().sorted().toList());
    talk().questions(found.questions(), found.asked());
    CheckReport report = found.report();
    if (!found.questions().isEmpty() || !report.isSound()) {
      return Main.PROBLEMS;
    }
    talk()
        .say(
            "{0}: no errors.",
            talk()
                .list(
                    List.of(
                        Terminal.counted(report.entries(), "{0} entry", "{0} entries"),
                        Terminal.counted(report.photographs(), "{0} photograph", "{0} photographs"),
                        Terminal.counted(report.facts(), "{0} fact", "{0} facts"))));
    if (found.foreseen() != null) {
      tell(found.foreseen());
    }
    return Main.DONE;
  }

  private int rehearse() throws IOException {
    Outcome outcome;
    try {
      outcome = new Publisher(folder(), today(), today(), zone(), talk().progress()).rehearse();
    } finally {
      talk().endProgress();
    }
    talk().problems(outcome.problems().stream().filter(Problem::isError).toList());
    talk().problems(outcome.remindersOfEditions());
    if (outcome.hasErrors()) {
      return Main.PROBLEMS;
    }
    if (outcome.hasLeaks()) {
      talk().findings(outcome, Sentence.of("Publishing would stop at it."));
      return Main.LEAK;
    }
    talk().say("Every edition was made, searched and thrown away: publishing would do.");
    return Main.DONE;
  }

  private void tell(Foreseen foreseen) {
    String readers = "";
    for (Foreseen.PostTold post : foreseen.posts()) {
      if (!post.readers().equals(readers)) {
        readers = post.readers();
        talk().say("Posts for {0}:", readers);
      }
      talk()
          .out()
          .println(
              String.format(
                  Locale.ROOT,
                  "%4d  %s: %s, %d min",
                  post.number(),
                  post.title(),
                  talk()
                      .list(
                          List.of(
                              Terminal.counted(post.entries(), "{0} entry", "{0} entries"),
                              Terminal.counted(post.words(), "{0} word", "{0} words"))),
                  post.minutes()));
    }
    if (!all) {
      talk()
          .say(
              foreseen.printed()
                  ? "Not looked at: whether all finds room on the pages, and the finished files."
                      + " \u201c{0}\u201d does, and so does publishing."
                  : "Not looked at: the finished files. \u201c{0}\u201d does, and so does publishing.",
              Terminal.command("check --all", folder()));
    }
  }

  /** What is wrong, and what is asked; where nothing has changed, as it was found then. */
  private Checked find() throws IOException {
    try (Course course = Course.ofCheck(requireFolder(folder()), talk().progress())) {
      List<Problem> pinned = Pins.pin(folder());
      Optional<Remembered> remembered = Remembered.find(folder(), "check", today() + " " + zone());
      if (remembered.isEmpty()) {
        return findAnew(pinned, course);
      }
      Optional<List<List<String>>> rows = remembered.get().recall();
      if (rows.isPresent() && pinned.isEmpty()) {
        return Checked.of(rows.get());
      }
      Checked found = findAnew(pinned, course);
      course.remember();
      if (pinned.isEmpty()) {
        remembered.get().keep(found.rows());
      }
      return found;
    }
  }

  private Checked findAnew(List<Problem> pinned, Course course) throws IOException {
    List<Problem> problems = new ArrayList<>(pinned);
    Workshop.Opened opened = Workshop.open(folder(), today(), today(), zone(), course);
    problems.addAll(opened.problems());
    problems.addAll(opened.fullCopies());
    if (!opened.hasErrors()) {
      pictures(opened, problems, course);
    }
    Questions.Asked asked = ask(opened, course);
    problems.addAll(asked.reminders());
    Foreseen foreseen = null;
    if (!opened.hasErrors()) {
      foreseen = new Publisher(folder(), today(), today(), zone(), course).foresee(opened, asked);
      foreseen.problems().stream().filter(p -> !problems.contains(p)).forEach(problems::add);
    }
    ProgramVersion.newerThanOwn(folder()).ifPresent(problems::add);
    return new Checked(
        opened.log().notes().size(),
        opened.album().photographs().size(),
        opened.facts().byName().size(),
        problems,
        asked.open(),
        asked.found(),
        foreseen);
  }

  /** Questions are asked of a sound log alone: of another, much is not known yet. */
  private Questions.Asked ask(Workshop.Opened opened, Course course) {
    if (opened.hasErrors()) {
      return Questions.Asked.NOTHING;
    }
    course.begin(Step.of(Step.Kind.ASKING));
    return opened.ask(opened.log().readers(), today());
  }

  private void pictures(Workshop.Opened opened, List<Problem> problems, Course course)
      throws IOException {
    Darkroom darkroom = new Darkroom(opened.log().folder());
    Step comparing = Step.of(Step.Kind.COMPARING_PHOTOGRAPHS);
    PhotoProgress progress = (done, of) -> course.count(comparing, done, of);
    Burst.find(opened.album(), darkroom, progress).forEach(b -> problems.add(b.reminder()));
    problems.addAll(Lookalikes.inLog(opened, today(), course));
  }
}
