package chinelog.cli;

import chinelog.problem.Place;
import chinelog.problem.Problem;
import chinelog.problem.ProblemException;
import chinelog.problem.Sentence;
import java.io.Console;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeParseException;
import java.util.Locale;
import java.util.Objects;
import java.util.regex.Pattern;
import picocli.CommandLine;

/** Starts chinelog: parses the command line, runs the command, and exits with its status. */
public final class Main {

  /** Done. */
  static final int DONE = 0;

  /** The log has problems; nothing was published. */
  static final int PROBLEMS = 1;

  /** Wrong usage. */
  static final int USAGE = 2;

  /** The audit found a leak; the edition that stood before still stands. */
  static final int LEAK = 3;

  /** A fault of chinelog itself (EX_SOFTWARE of sysexits.h). */
  static final int FAULT = 70;

  /** As Linux, macOS and Windows say it. */
  private static final Pattern NO_ROOM =
      Pattern.compile("(?i)no space left|not enough space|disk quota exceeded");

  private Main() {}

  public static void main(String[] args) {
    PrintWriter out = new PrintWriter(System.out, true, StandardCharsets.UTF_8);
    PrintWriter err = new PrintWriter(System.err, true, StandardCharsets.UTF_8);
    Console console = System.console();
    Terminal talk =
        console == null
            ? new Terminal(out, err, false)
            : new Terminal(
                out,
                err,
                question -> Objects.requireNonNullElse(console.readLine("%s ", question), ""));
    System.exit(run(args, talk, Clock.system(ZoneId.systemDefault())));
  }

  /** The exit status of a command. */
  static int run(String[] args, Terminal talk, Clock clock) {
    CommandLine line =
        new CommandLine(new TopCommand())
            .addSubcommand(new BeginCommand(talk, clock))
            .addSubcommand(new GatherCommand(talk, clock))
            .addSubcommand(new CheckCommand(talk, clock))
            .addSubcommand(new ReckonCommand(talk, clock))
            .addSubcommand(new OpenCommand(talk, clock))
            .addSubcommand(new PublishCommand(talk, clock))
            .addSubcommand(new AuditCommand(talk, clock))
            .addSubcommand(new TalkCommand(talk, clock))
            .addSubcommand(new FormCommand(talk, clock))
            .addSubcommand(new KeepCommand(talk, clock))
            .addSubcommand(new TextCommand.Completion(talk))
            .addSubcommand(new TextCommand.Manual(talk))
            .setOut(talk.out())
            .setErr(talk.err())
            .setUsageHelpWidth(80)
            .registerConverter(LocalDate.class, Main::date)
            .registerConverter(Path.class, Main::path)
            .setCaseInsensitiveEnumValuesAllowed(true)
            .setExecutionExceptionHandler(
                (e, command, result) -> {
                  talk.endProgress();
                  int status = failed(e, folder(command), talk);
                  if (status == PROBLEMS && command.getCommandName().equals("publish")) {
                    talk.in(LogCommand.language(Path.of(folder(command))))
                        .warn(EditionCommand.NOTHING_PUBLISHED);
                  }
                  return status;
                });
    return line.execute(args);
  }

  private static LocalDate date(String text) {
    try {
      return LocalDate.parse(text);
    } catch (DateTimeParseException e) {
      throw new CommandLine.TypeConversionException(
          "\u201c" + text + "\u201d is no date. Write year-month-day, such as 2026-05-20.");
    }
  }

  private static Path path(String text) {
    try {
      return Path.of(text);
    } catch (InvalidPathException e) {
      throw new CommandLine.TypeConversionException(
          "\u201c" + text + "\u201d cannot be the name of a file or folder on this computer.");
    }
  }

  private static String folder(CommandLine command) {
    return command.getCommand() instanceof LogCommand of ? of.folder().toString() : "";
  }

  /**
   * @param folder that the command was given, to stand in for a file that was not named
   */
  private static int failed(Exception thrown, String folder, Terminal talk) {
    Locale language = LogCommand.language(Path.of(folder));
    Throwable io = thrown instanceof UncheckedIOException ? thrown.getCause() : thrown;
    if (io instanceof IOException e) {
      talk.err().println(problem(e, folder).line(language));
      return PROBLEMS;
    }
    talk.in(language)
        .warn(
            "This is a fault of chinelog, not of your log; nothing of yours was changed. ({0})",
            thrown + place(thrown));
    return FAULT;
  }

  static Problem problem(IOException e, String folder) {
    if (e instanceof ProblemException known) {
      return known.problem();
    }
    String file = e instanceof FileSystemException f && f.getFile() != null ? f.getFile() : "";
    Place place = Place.of(file.isEmpty() ? folder : file);
    if (e instanceof NoSuchFileException) {
      return Problem.error(
          place, "There is no such file or folder.", "Put it there, or correct its name.");
    }
    if (e instanceof AccessDeniedException) {
      return Problem.error(
          place,
          "This may not be read or written.",
          "Give yourself the right to it, or choose another place.");
    }
    if (e instanceof FileAlreadyExistsException) {
      return Problem.error(
          place, "Something of this name is there already.", "Move it away, or rename it.");
    }
    String reason = e instanceof FileSystemException f ? f.getReason() : e.getMessage();
    if (reason != null && NO_ROOM.matcher(reason).find()) {
      return Problem.error(
          place, "The disk is full.", "Make room on it, then run the same command again.");
    }
    return Problem.error(
        place,
        reason == null
            ? "A file cannot be read or written."
            : Sentence.of(
                "A file cannot be read or written: {0}.", reason.replaceFirst("[.\\s]+$", "")),
        "See that the disk is sound and has room, and that you may write there.");
  }

  private static String place(Throwable e) {
    StackTraceElement[] trace = e.getStackTrace();
    return trace.length == 0 ? "" : " at " + trace[0];
  }
}
