package chinelog.cli;

import chinelog.keep.Keep;
import chinelog.label.Agreement;
import chinelog.log.LogReader;
import chinelog.log.records.Log;
import chinelog.problem.Place;
import chinelog.problem.Problem;
import chinelog.problem.ProblemException;
import chinelog.publish.ProgramVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code chinelog keep}. */
@Command(
    name = "keep",
    description = {
      "Make a verified copy of what cannot be made again.",
      "That is notes, photographs, sheets and records; editions and caches are left out. It holds"
          + " what is under agreements. To restore, copy its folder \u201cdata\u201d."
    },
    footer = {
      "",
      "Example: ${sys:chinelog.command:-chinelog} keep my-build --into /media/stick/my-build.zip",
      "         ${sys:chinelog.command:-chinelog} keep --check /media/stick/my-build.zip"
    })
final class KeepCommand extends LogCommand {

  private static final int NAMED = 4;

  @Parameters(
      arity = "0..1",
      paramLabel = "LOG",
      description = "The log's folder; with --check alone, a copy.")
  private @Nullable Path log;

  @Option(
      names = "--into",
      paramLabel = "COPY",
      description = "A new folder, or a new zip (a name that ends in .zip).")
  private @Nullable Path into;

  @Option(
      names = "--check",
      description = "Verify a copy instead; with LOG and --into, also tell what has changed since.")
  private boolean check;

  KeepCommand(Terminal talk, Clock clock) {
    super(talk, clock);
  }

  @Override
  Path folder() {
    return into != null ? into : log != null ? log : Path.of("");
  }

  @Override
  public Integer call() throws IOException {
    try {
      return check ? check() : keep();
    } finally {
      talk().endProgress();
    }
  }

  private int keep() throws IOException {
    if (log == null) {
      throw wrong("Missing required parameter: 'LOG'");
    }
    if (into == null) {
      throw wrong("Missing required option: '--into=COPY'");
    }
    Log read = requireLog(log);
    Keep.Kept kept =
        Keep.make(
            new Keep.Request(log, into, ProgramVersion.own().toString(), today()),
            progress("copying"));
    talk().endProgress();
    talk().out().println(whole(kept.files(), kept.bytes()) + " are in " + kept.place() + ",");
    talk().out().println("and were read back: every one is the same as in the log.");
    if (!kept.leftOut().isEmpty()) {
      talk().out().println("Left out, since it is made again: " + leftOut(kept) + ".");
    }
    talk().err().println(warning(read, kept.place()));
    return Main.DONE;
  }

  private static String leftOut(Keep.Kept kept) {
    return kept.leftOut().entrySet().stream()
        .map(e -> e.getKey() + " (" + Terminal.count(e.getValue(), "file") + ")")
        .collect(Collectors.joining(", "));
  }

  private static String warning(Log log, Path place) {
    String with =
        log.promises().isEmpty()
            ? ""
            : ", also what is under the agreements with "
                + log.agreements().values().stream()
                    .filter(a -> !a.isOwn())
                    .map(Agreement::with)
                    .distinct()
                    .collect(Collectors.joining(", "));
    return "PRIVATE: "
        + place
        + " holds everything"
        + with
        + ".\n"
        + "Nothing is left out of it and nothing is locked: keep it where nobody else can read it.";
  }

  /** Even a log with errors in it is worth a copy; but some other folder was named by mistake. */
  private Log requireLog(Path folder) throws IOException {
    Log read = new LogReader(today(), zone()).read(requireFolder(folder)).log();
    if (read.entries().isEmpty()
        && read.photos().isEmpty()
        && !Files.exists(folder.resolve("log.yaml"))) {
      throw new ProblemException(
          Place.of(folder.toString()),
          "This folder holds no log: no log.yaml, no note (.md) and no photograph.",
          "Name the folder of your build.");
    }
    return read;
  }

  private int check() throws IOException {
    Path copy = into != null ? into : log;
    if (copy == null) {
      throw wrong("Name the copy that is to be verified.");
    }
    Keep.Checked checked = Keep.check(copy, progress("verifying"));
    talk().endProgress();
    talk().problems(checked.problems());
    if (checked.problems().stream().anyMatch(Problem::isError)) {
      talk().err().println("This copy is not what it was.");
      return Main.PROBLEMS;
    }
    talk()
        .out()
        .println(
            "The copy of "
                + checked.madeOn()
                + " is whole: "
                + whole(checked.files().size(), checked.bytes())
                + ".");
    if (into != null && log != null) {
      tellChanges(Keep.changedSince(checked, requireFolder(log)));
    }
    return Main.DONE;
  }

  private void tellChanges(List<String> changes) {
    if (changes.isEmpty()) {
      talk().out().println("The log is as it was then.");
      return;
    }
    int named = Math.min(NAMED, changes.size());
    talk()
        .out()
        .println(
            "Changed in the log since: "
                + String.join(", ", changes.subList(0, named))
                + (changes.size() > named ? " and " + (changes.size() - named) + " more" : "")
                + ".");
  }

  private Keep.Progress progress(String doing) {
    return (done, of) -> talk().doing(doing + ", step " + done + " of " + of);
  }

  private static String whole(int files, long bytes) {
    return Terminal.count(files, "file") + String.format(Locale.ROOT, " (%.1f MB)", bytes / 1e6);
  }
}
