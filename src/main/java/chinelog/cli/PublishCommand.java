package chinelog.cli;

import chinelog.desk.files.Pins;
import chinelog.problem.Sentence;
import chinelog.publish.Outcome;
import chinelog.publish.ProgramVersion;
import chinelog.publish.Publisher;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Locale;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code chinelog publish}. */
@Command(
    name = "publish",
    description = "Make the editions of a log, audit them, and put them in place.",
    footer = {
      "",
      "Example: ${sys:chinelog.command:-chinelog} publish sample-log --for public --as-of 2026-05-20"
    })
final class PublishCommand extends EditionCommand {

  private static final Sentence SHOWN = Sentence.of("shown");
  private static final Sentence WITHHELD = Sentence.of("withheld");
  private static final Sentence RELEASED = Sentence.of("released");
  private static final Sentence AUDIT = Sentence.of("audit");
  private static final Sentence STANDS = Sentence.of("stands");
  private static final Sentence LOOK_AT = Sentence.of("look at");
  private static final List<Sentence> LABELS =
      List.of(SHOWN, WITHHELD, RELEASED, AUDIT, STANDS, LOOK_AT);

  @Option(
      names = "--draft",
      description =
          "Make the sites alone, into the workshop, for yourself to look at; nothing counts as"
              + " given out.")
  private boolean draft;

  PublishCommand(Terminal talk, Clock clock) {
    super(talk, clock);
  }

  @Override
  Outcome run(Publisher publisher, List<String> readers) throws IOException {
    talk().problems(Pins.pin(folder()));
    return draft ? publisher.draft(readers) : publisher.publish(readers);
  }

  @Override
  Sentence afterErrors() {
    return NOTHING_PUBLISHED;
  }

  @Override
  Sentence afterLeaks() {
    return NOTHING_PUBLISHED;
  }

  @Override
  void tell(Outcome outcome) throws IOException {
    PrintWriter out = talk().out();
    if (draft) {
      for (Outcome.Made site : outcome.editions()) {
        talk().say("Draft for {0}:", site.readers());
        lookAt(site.folder(), site.files());
      }
      return;
    }
    ProgramVersion.own().record(folder());
    for (Outcome.Made edition : outcome.editions()) {
      out.println();
      talk().say("For {0}:", edition.readers());
      row(
          SHOWN,
          talk()
              .list(
                  List.of(
                      Terminal.counted(edition.entries(), "{0} entry", "{0} entries"),
                      Terminal.counted(edition.plates(), "{0} plate", "{0} plates"),
                      Terminal.counted(edition.figures(), "{0} figure", "{0} figures"))));
      row(
          WITHHELD,
          edition.withheld().isEmpty()
              ? talk().worded("nothing")
              : talk()
                  .list(
                      edition.withheld().entrySet().stream()
                          .map(e -> Sentence.of("{0} under {1}", things(e.getValue()), e.getKey()))
                          .toList()));
      if (edition.released() > 0) {
        row(RELEASED, talk().worded("{0}, by permission", things(edition.released())));
      }
      row(AUDIT, talk().worded("clean"));
      lookAt(edition.folder(), edition.files());
    }
    for (Outcome.Unchanged edition : outcome.unchanged()) {
      out.println();
      talk().say("For {0}:", edition.readers());
      row(STANDS, talk().worded("as it was published and audited; nothing has changed since"));
      lookAt(edition.folder(), edition.files());
    }
    out.println();
    talk().say("The register of what is withheld, and the audit's report, are in records/.");
  }

  private static Sentence things(int n) {
    return Terminal.counted(n, "{0} thing", "{0} things");
  }

  private void lookAt(Path folder, List<String> files) {
    files.forEach(f -> row(LOOK_AT, folder.resolve(f).toString()));
  }

  /** A line of a table of two columns. */
  private void row(Sentence label, String text) {
    Locale language = talk().language();
    int wide = LABELS.stream().mapToInt(l -> l.in(language).length()).max().orElse(0);
    talk()
        .out()
        .println(
            "  " + label.in(language) + " ".repeat(wide - label.in(language).length() + 2) + text);
  }
}
