package chinelog.cli;

import chinelog.problem.Place;
import chinelog.problem.ProblemException;
import chinelog.problem.Sentence;
import chinelog.publish.ProgramVersion;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;

/** What all commands on a log have in common. */
abstract class LogCommand extends AnyCommand implements Callable<Integer> {

  @SuppressWarnings("unused") // picocli sets it
  @Option(
      names = {"-q", "--quiet"},
      description = "Say nothing but what is wrong.")
  private boolean quiet;

  private static final Pattern LANGUAGE =
      Pattern.compile("(?m)^language\\s*:\\s*[\"']?([\\p{Alnum}-]+)");

  private final Clock clock;

  LogCommand(Terminal talk, Clock clock) {
    super(talk);
    this.clock = clock;
  }

  @Override
  Terminal talk() {
    Terminal talk = super.talk().in(language(folder()));
    return quiet ? talk.hushed() : talk;
  }

  /** Where to print what was asked for, which is told to the quiet, too. */
  PrintWriter result() {
    return super.talk().out();
  }

  /** Tells that a newer program has published this log, if one has. */
  void tellNewer(Path log) throws IOException {
    if (!talk().quiet()) {
      ProgramVersion.newerThanOwn(log)
          .ifPresent(newer -> talk().err().println(newer.line(talk().language())));
    }
  }

  /** The language that log.yaml names, whatever else is wrong with it; else English. */
  static Locale language(Path log) {
    try {
      Matcher named = LANGUAGE.matcher(Files.readString(log.resolve("log.yaml")));
      return named.find() ? Locale.forLanguageTag(named.group(1)) : Locale.ENGLISH;
    } catch (IOException e) {
      return Locale.ENGLISH;
    }
  }

  /** The folder that the command reads or writes. */
  abstract Path folder();

  LocalDate today() {
    return LocalDate.ofInstant(clock.instant(), clock.getZone());
  }

  Clock clock() {
    return clock;
  }

  ZoneId zone() {
    return clock.getZone();
  }

  /**
   * @throws ProblemException if it is none, or is not there
   */
  static Path requireFolder(Path folder) throws ProblemException {
    if (!Files.isDirectory(folder)) {
      throw new ProblemException(
          Place.of(folder.toString()),
          Files.exists(folder) ? "This is no folder." : "There is no such folder.",
          "Name the folder that holds the log.");
    }
    return folder;
  }

  static boolean isEmptyFolder(Path folder) throws IOException {
    if (!Files.isDirectory(folder)) {
      return false;
    }
    try (Stream<Path> inside = Files.list(folder)) {
      return inside.findAny().isEmpty();
    }
  }

  ParameterException wrong(String english, @Nullable Object... parts) {
    return new ParameterException(
        spec().commandLine(), Sentence.of(english, parts).in(language(folder())));
  }
}
