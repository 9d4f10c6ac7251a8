package chinelog.cli;

import chinelog.log.LogReader;
import chinelog.log.records.Head;
import chinelog.photo.gathering.Gatherer;
import chinelog.problem.Place;
import chinelog.problem.Problem;
import chinelog.problem.ProblemException;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.LocalDateTime;
import java.time.format.DateTimeParseException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code chinelog gather}. */
@Command(
    name = "gather",
    description =
        "Bring photographs in from a card, a folder or a zip: verified copies, no duplicates, the"
            + " clock put right.",
    footer = {
      "",
      "Example: ${sys:chinelog.command:-chinelog} gather /media/card/DCIM --into my-build --dry-run"
    })
final class GatherCommand extends LogCommand {

  @Parameters(paramLabel = "PHOTOS", description = "A folder or a zip, which is never altered.")
  private Path photos = Path.of("");

  @Option(names = "--into", paramLabel = "LOG", required = true, description = "The log's folder.")
  private Path log = Path.of("");

  @Option(
      names = "--fast",
      paramLabel = "CAMERA=TIME",
      description = {"How far a camera's clock is fast, such as", "\"T-20=1 h 12 min\"."})
  private Map<String, String> fast = new LinkedHashMap<>();

  @Option(
      names = "--clock",
      paramLabel = "PHOTO=TIME",
      description = {
        "A photograph of a clock and its true time, such as",
        "P1.JPG=2026-05-16T10:16:04."
      })
  private Map<String, String> clockPhoto = new LinkedHashMap<>();

  @Option(names = "--dry-run", description = "Only say what would be done.")
  private boolean dryRun;

  GatherCommand(Terminal talk, Clock clock) {
    super(talk, clock);
  }

  @Override
  Path folder() {
    return log;
  }

  @Override
  public Integer call() throws IOException {
    requireFolder(log);
    if (!Files.exists(photos)) {
      throw new ProblemException(
          Place.of(photos.toString()),
          "There is no such folder or zip.",
          "Name the folder of the card or telephone, or a zip of it.");
    }
    LogReader.Reading reading = new LogReader(today(), zone()).read(log);
    List<Problem> ofSettings =
        reading.problems().stream()
            .filter(p -> p.isError() && p.place().file().equals("log.yaml"))
            .toList();
    // A log may be begun with its photographs; but one whose clocks cannot be read is not added to.
    if (Files.exists(log.resolve("log.yaml")) && !ofSettings.isEmpty()) {
      talk().problems(ofSettings);
      return Main.PROBLEMS;
    }
    Head head = reading.log().head();
    SortedMap<String, Duration> clocks = new TreeMap<>(head.clocks());
    fast.forEach((camera, time) -> clocks.put(camera, duration(time)));
    Gatherer.Outcome outcome;
    try {
      outcome =
          Gatherer.gather(
              new Gatherer.Request(photos, log, head.zone(), clocks, clockPhoto(), today(), dryRun),
              (done, of) -> talk().doing(talk().worded("photograph {0} of {1}", done, of)));
    } finally {
      talk().endProgress();
    }
    talk().problems(outcome.problems());
    tell(outcome);
    return outcome.problems().stream().anyMatch(Problem::isError) ? Main.PROBLEMS : Main.DONE;
  }

  private void tell(Gatherer.Outcome outcome) {
    long brought = outcome.count(Gatherer.Fate.BROUGHT_IN);
    long there = outcome.count(Gatherer.Fate.ALREADY_THERE);
    long passed = outcome.count(Gatherer.Fate.PASSED_OVER);
    if (dryRun) {
      outcome.steps().stream()
          .filter(s -> s.fate() == Gatherer.Fate.BROUGHT_IN)
          .forEach(s -> talk().out().println(s.source() + " -> " + s.path()));
    } else if (brought > 0) {
      talk().say("What came from where is written in records/gathered.csv.");
    }
    talk()
        .say(
            dryRun
                ? "{0} would be brought in, {1} there already, {2} passed over."
                : "{0} brought in, {1} there already, {2} passed over.",
            Terminal.counted(brought, "{0} photograph", "{0} photographs"),
            Terminal.counted(there, "{0} is", "{0} are"),
            passed);
  }

  private Gatherer.@Nullable ClockPhoto clockPhoto() {
    if (clockPhoto.size() > 1) {
      throw wrong("One photograph of a clock is enough; bring in each camera's by itself.");
    }
    for (Map.Entry<String, String> entry : clockPhoto.entrySet()) {
      try {
        return new Gatherer.ClockPhoto(
            entry.getKey(), LocalDateTime.parse(entry.getValue().replace(' ', 'T')));
      } catch (DateTimeParseException e) {
        throw wrong(
            "\u201c{0}\u201d is not a date and time. Write 2026-05-16T10:16:04.", entry.getValue());
      }
    }
    return null;
  }

  private Duration duration(String text) {
    try {
      boolean slow = text.startsWith("-");
      Quantity time = Quantity.parse(slow ? text.substring(1) : text);
      Duration duration = Duration.ofSeconds(time.valueIn(Unit.parse("s")).longValue());
      return slow ? duration.negated() : duration;
    } catch (QuantityException e) {
      throw wrong(
          "\u201c{0}\u201d does not say how far a clock is fast. Write such as 1 h 12 min.", text);
    }
  }
}
