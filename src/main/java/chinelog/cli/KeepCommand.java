package chinelog.cli;

import chinelog.keep.Keep;
import chinelog.label.Agreement;
import chinelog.log.LogReader;
import chinelog.log.records.Log;
import chinelog.problem.Place;
import chinelog.problem.Problem;
import chinelog.problem.ProblemException;
import chinelog.problem.Sentence;
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
            progress("copying, step {0} of {1}"));
    talk().endProgress();
    talk()
        .say(
            "{0} are in {1}, and were read back: every one is the same as in the log.",
            whole(kept.files(), kept.bytes()), kept.place());
    if (!kept.leftOut().isEmpty()) {
      talk().say("Left out, since it is made again: {0}.", talk().list(leftOut(kept)));
    }
    talk().warn(warning(read, kept.place()));
    talk()
        .warn(
            "Nothing is left out of it and nothing is locked: keep it where nobody else can read"
                + " it.");
    return Main.DONE;
  }

  private static List<Sentence> leftOut(Keep.Kept kept) {
    return kept.leftOut().entrySet().stream()
        .map(e -> Sentence.of("{0} ({1})", e.getKey(), files(e.getValue())))
        .toList();
  }

  private static Sentence files(int n) {
    return Terminal.counted(n, "{0} file", "{0} files");
  }

  private static Sentence warning(Log log, Path place) {
    return log.promises().isEmpty()
        ? Sentence.of("PRIVATE: {0} holds everything.", place)
        : Sentence.of(
            "PRIVATE: {0} holds everything, also what is under the agreements with {1}.",
            place,
            log.agreements().values().stream()
                .filter(a -> !a.isOwn())
                .map(Agreement::with)
                .distinct()
                .collect(Collectors.joining(", ")));
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
    Keep.Checked checked = Keep.check(copy, progress("verifying, step {0} of {1}"));
    talk().endProgress();
    talk().problems(checked.problems());
    if (checked.problems().stream().anyMatch(Problem::isError)) {
      talk().warn("This copy is not what it was.");
      return Main.PROBLEMS;
    }
    talk()
        .say(
            "The copy of {0} is whole: {1}.",
            checked.madeOn(), whole(checked.files().size(), checked.bytes()));
    if (into != null && log != null) {
      tellChanges(Keep.changedSince(checked, requireFolder(log)));
    }
    return Main.DONE;
  }

  private void tellChanges(List<String> changes) {
    if (changes.isEmpty()) {
      talk().say("The log is as it was then.");
      return;
    }
    int named = Math.min(NAMED, changes.size());
    String first = String.join(", ", changes.subList(0, named));
    int more = changes.size() - named;
    if (more > 0) {
      talk().say("Changed in the log since: {0} and {1} more.", first, more);
    } else {
      talk().say("Changed in the log since: {0}.", first);
    }
  }

  private Keep.Progress progress(String doing) {
    return (done, of) -> talk().doing(talk().worded(doing, done, of));
  }

  private static Sentence whole(int files, long bytes) {
    return Sentence.of(
        "{0} ({1})", files(files), String.format(Locale.ROOT, "%.1f MB", bytes / 1e6));
  }
}
