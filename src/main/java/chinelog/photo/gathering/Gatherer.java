package chinelog.photo.gathering;

import chinelog.digest.Sha256;
import chinelog.photo.PhotoProgress;
import chinelog.photo.album.Exif;
import chinelog.photo.album.Matching;
import chinelog.photo.pixels.Decoder;
import chinelog.photo.pixels.PhotoKind;
import chinelog.photo.pixels.UnusablePhoto;
import chinelog.problem.Place;
import chinelog.problem.Problem;
import chinelog.problem.Sentence;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * Brings photographs into a log: {@code IMG_0412.jpg} of a card becomes {@code
 * photos/2026-03-14/IMG_0412.jpg}.
 *
 * <p>The source is never altered. A picture that the log holds already is passed over, so that a
 * run that was cut short is simply run again.
 */
public final class Gatherer {

  private static final String UNDATED = "undated";
  private static final int NAMED = 4;

  private final Request request;
  private final List<Problem> problems = new ArrayList<>();
  private final List<Step> steps = new ArrayList<>();
  private final SortedMap<String, Duration> clocks;

  /** Names of files by what is wrong with them; a telephone's folder holds many a film. */
  private final SortedMap<Sentence, List<String>> passedOver =
      new TreeMap<>(Comparator.comparing(Sentence::toString));

  private Gatherer(Request request) {
    this.request = request;
    this.clocks = new TreeMap<>(request.clocks);
  }

  /**
   * What is to be brought in.
   *
   * @param from a folder or a zip
   * @param log the log's folder
   * @param zone of the log
   * @param clocks how far each camera's clock is fast, by model
   * @param clockPhoto a photograph of a clock, to find out how far its camera's is fast
   * @param today for the record
   * @param dryRun whether only to say what would be done
   */
  public record Request(
      Path from,
      Path log,
      ZoneId zone,
      SortedMap<String, Duration> clocks,
      @Nullable ClockPhoto clockPhoto,
      LocalDate today,
      boolean dryRun) {

    public Request {
      clocks = Collections.unmodifiableSortedMap(new TreeMap<>(clocks));
    }
  }

  /**
   * A photograph of a clock.
   *
   * @param name of the file, with or without the folders it lies in
   * @param shows the true time that its clock shows, in the log's zone
   */
  public record ClockPhoto(String name, LocalDateTime shows) {}

  /** What became of a file. */
  public enum Fate {
    /** Copied, and read back to make sure. */
    BROUGHT_IN,
    /** The log holds the very same picture. */
    ALREADY_THERE,
    /** No picture that a log can show. */
    PASSED_OVER
  }

  /**
   * One file of the source.
   *
   * @param source its name there
   * @param path where it is in the log; empty where it was passed over
   */
  public record Step(String source, String path, Fate fate) {}

  /**
   * What was done, or would be.
   *
   * @param steps one for each file, by name
   * @param clocks as asked for, with the one worked out from a photograph of a clock
   */
  public record Outcome(
      List<Step> steps, SortedMap<String, Duration> clocks, List<Problem> problems) {

    public Outcome {
      steps = List.copyOf(steps);
      clocks = Collections.unmodifiableSortedMap(new TreeMap<>(clocks));
      problems = List.copyOf(problems);
    }

    /** How many files met this fate. */
    public long count(Fate fate) {
      return steps.stream().filter(s -> s.fate == fate).count();
    }
  }

  /**
   * Brings photographs in, and writes down what came from where.
   *
   * @throws IOException if the source cannot be listed or the log cannot be written
   */
  public static Outcome gather(Request request, PhotoProgress progress) throws IOException {
    return new Gatherer(request).run(progress);
  }

  private Outcome run(PhotoProgress progress) throws IOException {
    if (request.from.toRealPath().startsWith(request.log.toRealPath())) {
      problems.add(
          Problem.error(
              Place.of(request.from.toString()),
              "This lies in the log already.",
              "Name the card, folder or zip that the photographs are to come from."));
      return outcome();
    }
    try (Card card = Card.open(request.from, request.log)) {
      ClockPhoto clock = request.clockPhoto;
      if (clock != null && !setClock(card, clock)) {
        return outcome();
      }
      GatheredList ledger = request.dryRun ? null : new GatheredList(request.log);
      PhotoFolders shelf = new PhotoFolders(request.log, request.dryRun);
      if (card.names().isEmpty()) {
        problems.add(
            Problem.reminder(
                Place.of(request.from.toString()),
                "No file lies in here.",
                "Name the folder that holds the photographs; on a card it is often called DCIM."));
      }
      for (String name : card.names()) {
        bring(card, name, shelf, ledger);
        progress.done(steps.size(), card.names().size());
      }
    }
    return outcome();
  }

  private Outcome outcome() {
    passedOver.forEach(
        (what, names) ->
            problems.add(
                Problem.reminder(Place.of(names.get(0)), passed(what, names), remedy(names))));
    return new Outcome(steps, clocks, problems);
  }

  private static String remedy(List<String> names) {
    if (names.stream().allMatch(n -> n.matches("(?i).*[.](zip|rar|7z|tar|gz)"))) {
      return "Unpack it, and bring in the folder that comes of it.";
    }
    if (names.stream().allMatch(n -> n.matches("(?i).*[.](mp4|mov|avi|mts|m4v|3gp|mkv|wmv)"))) {
      return "A film cannot be shown; save a picture out of it if it is to be told of.";
    }
    return "If it is a picture that another program opens, save it from there as JPEG and"
        + " bring that in.";
  }

  private static Sentence passed(Sentence what, List<String> names) {
    int named = Math.min(names.size(), NAMED);
    return Sentence.of(
        names.size() == 1
            ? "{0} It was passed over."
            : names.size() == named
                ? "{0} It was passed over, like {1}."
                : "{0} It was passed over, like {1} and {2} more.",
        what,
        String.join(", ", names.subList(1, named)),
        names.size() - named);
  }

  private boolean setClock(Card card, ClockPhoto clock) throws IOException {
    Place place = Place.of(clock.name);
    Optional<String> name =
        card.names().stream()
            .filter(n -> n.equals(clock.name) || n.endsWith("/" + clock.name))
            .findFirst();
    if (name.isEmpty()) {
      problems.add(
          Problem.error(
              place,
              "There is no such photograph to take the clock from.",
              "Write the name of the photograph of the clock as the card has it."));
      return false;
    }
    Exif exif = Exif.read(card.read(name.get()));
    LocalDateTime time = exif.taken(request.zone);
    if (time == null || exif.camera().isEmpty()) {
      problems.add(
          Problem.error(
              place,
              "This photograph does not tell which camera took it, and when.",
              "Photograph the clock with the camera itself, and bring in the file as it is."));
      return false;
    }
    Duration fast = Duration.between(clock.shows, time);
    clocks.put(exif.camera(), fast);
    problems.add(
        Problem.reminder(
            place,
            Sentence.of(
                fast.isZero()
                    ? "The clock of the camera {0} is right."
                    : fast.isNegative()
                        ? "The clock of the camera {0} is {1} slow."
                        : "The clock of the camera {0} is {1} fast.",
                exif.camera(),
                amount(fast.abs())),
            Sentence.of(
                "So that the log knows, write under clocks in log.yaml: \"{0}\": {1}",
                exif.camera(), amount(fast))));
    return true;
  }

  private void bring(Card card, String name, PhotoFolders shelf, @Nullable GatheredList ledger)
      throws IOException {
    byte[] bytes;
    PhotoKind kind;
    try {
      bytes = card.read(name);
      kind = PhotoKind.of(name, bytes);
    } catch (UnusablePhoto e) {
      steps.add(new Step(name, "", Fate.PASSED_OVER));
      passedOver.computeIfAbsent(e.what(), w -> new ArrayList<>()).add(name);
      return;
    } catch (IOException e) {
      steps.add(new Step(name, "", Fate.PASSED_OVER));
      problems.add(
          Problem.error(
              Place.of(name),
              "The file cannot be read.",
              name.indexOf('\ufffd') >= 0
                  ? "Its name is written in an alphabet that is not known here: rename it, and run"
                      + " this again."
                  : "Try another reader or port; the other files were still brought in."));
      return;
    }
    String sha256 = Sha256.of(bytes);
    Optional<String> there = shelf.find(sha256);
    if (there.isPresent()) {
      steps.add(new Step(name, there.get(), Fate.ALREADY_THERE));
      return;
    }
    lookWhetherWhole(name, kind, bytes);
    Exif exif = Exif.read(bytes);
    LocalDateTime taken = exif.taken(request.zone);
    LocalDate day = Matching.dayInName(name);
    if (taken != null) {
      taken = taken.minus(clocks.getOrDefault(exif.camera(), Duration.ZERO));
      day = taken.toLocalDate();
    }
    String path = shelf.pathFor(day == null ? UNDATED : day.toString(), name, kind);
    if (ledger == null) {
      shelf.put(path, bytes, sha256);
    } else {
      String time = taken == null ? "" : taken.toString();
      String today = request.today.toString();
      ledger.begin(path, sha256, List.of(today, name, path, sha256, exif.camera(), time));
      shelf.put(path, bytes, sha256);
      ledger.finish(sha256);
    }
    steps.add(new Step(name, path, Fate.BROUGHT_IN));
  }

  /** Half a picture may be the only one there is, so it comes in; but its maker is to know. */
  private void lookWhetherWhole(String name, PhotoKind kind, byte[] bytes) {
    if (kind == PhotoKind.HEIF) {
      return;
    }
    try {
      if (Decoder.looksWhole(kind, bytes)) {
        Decoder.size(kind, bytes);
      } else {
        Decoder.decode(kind, bytes);
      }
    } catch (UnusablePhoto e) {
      problems.add(
          Problem.reminder(
              Place.of(name),
              request.dryRun ? e.what() : Sentence.of("{0} It was brought in as it is.", e.what()),
              "See whether the camera or another card has it whole."));
    }
  }

  /** A time as log.yaml has it, such as {@code 1 h 12 min}; with a minus where it is negative. */
  public static String amount(Duration time) {
    Duration d = time.abs();
    List<String> parts = new ArrayList<>();
    if (d.toHours() > 0) {
      parts.add(d.toHours() + " h");
    }
    if (d.toMinutesPart() > 0) {
      parts.add(d.toMinutesPart() + " min");
    }
    if (d.toSecondsPart() > 0 || parts.isEmpty()) {
      parts.add(d.toSecondsPart() + " s");
    }
    return (time.isNegative() ? "-" : "") + String.join(" ", parts);
  }
}
