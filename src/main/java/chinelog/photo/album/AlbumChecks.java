package chinelog.photo.album;

import chinelog.label.Clearance;
import chinelog.log.records.Entry;
import chinelog.log.records.Head;
import chinelog.log.records.PhotoFile;
import chinelog.problem.Place;
import chinelog.problem.Problem;
import chinelog.problem.Problems;
import chinelog.problem.Sentence;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** What may be wrong with a log's photographs, told to its maker. */
final class AlbumChecks {

  private static final int NAMED = 4;

  private final Problems problems = new Problems();

  void add(Problem problem) {
    problems.add(problem);
  }

  List<Problem> problems() {
    return problems.list();
  }

  void beyond(PhotoFile.Region region, Exposure exposure) {
    problems.error(
        region.place(),
        Sentence.of(
            "This region reaches beyond the picture, which is {0} pixels wide and {1}" + " high.",
            exposure.uprightWidthPx(), exposure.uprightHeightPx()),
        "Write pixels of the upright picture, from its left top corner.");
  }

  void regions(PhotoFile file, Exposure exposure) {
    if (file.regions().isEmpty()) {
      return;
    }
    String pinned = file.pinnedSha256();
    if (pinned == null) {
      problems.error(
          file.place(),
          Sentence.of(
              "The photograph {0} has regions, but no sha256 of 64 digits says which file"
                  + " they were drawn on.",
              file.path()),
          Sentence.of(
              "See that the regions lie right, then write beside them: sha256: {0}",
              exposure.sha256()));
    } else if (!pinned.equals(exposure.sha256())) {
      problems.error(
          file.place(),
          Sentence.of("The photograph {0} has changed since its regions were drawn.", file.path()),
          Sentence.of("Draw the regions again, then write: sha256: {0}", exposure.sha256()));
    }
    if (!exposure.kind().keepsRegionsApart()) {
      problems.error(
          file.place(),
          Sentence.of(
              "Regions of a {0} file cannot be filled for certain, as its compression"
                  + " spreads them.",
              exposure.kind().word()),
          "Put the whole photograph under the agreement, or save it as PNG and draw the"
              + " regions on that.");
    }
    if (exposure.exif().orientationDoubtful()) {
      problems.error(
          file.place(),
          Sentence.of(
              "The file {0} does not say clearly which side is up, so its regions may lie"
                  + " elsewhere.",
              file.path()),
          "Save it afresh in a picture editor and draw the regions on that.");
    }
    words(file);
  }

  /** What is said of a photograph is told to those as well who see it with a region filled. */
  private void words(PhotoFile file) {
    boolean alt = !file.alt().isBlank();
    boolean caption = !file.caption().isEmpty();
    if (alt || caption) {
      problems.reminder(
          file.place(),
          Sentence.of(
              !caption
                  ? "Who sees {0} with a region filled is told its alternative text as well."
                  : alt
                      ? "Who sees {0} with a region filled is told its alternative text and its caption as well."
                      : "Who sees {0} with a region filled is told its caption as well.",
              file.path()),
          "See that nothing in it tells what lies there; or crop the photograph to what all may"
              + " see, and show that instead.");
    }
  }

  void copies(List<PhotoFile> same, PhotoFile kept) {
    for (PhotoFile copy : same) {
      if (copy == kept) {
        continue;
      }
      if (copy.label().equals(kept.label()) && sameRegions(copy, kept)) {
        problems.reminder(
            Place.of(copy.path()),
            Sentence.of(
                "It is a copy of {0}, byte for byte, and is shown only where an entry shows"
                    + " it.",
                kept.path()),
            "Delete one of the two.");
      } else {
        problems.error(
            copy.place(),
            Sentence.of(
                "{0} and {1} are the same picture, but are not under the same agreements.",
                copy.path(), kept.path()),
            "Delete one of the two, or mark both alike in photos.yaml.");
      }
    }
  }

  private static boolean sameRegions(PhotoFile a, PhotoFile b) {
    return regions(a).equals(regions(b));
  }

  private static List<String> regions(PhotoFile file) {
    return file.regions().stream()
        .map(r -> r.left() + " " + r.top() + " " + r.right() + " " + r.bottom() + r.label())
        .sorted()
        .toList();
  }

  /** The first few by name, so that a card's worth of them stays one line. */
  private static CharSequence names(List<String> paths) {
    String first = String.join(", ", paths.subList(0, Math.min(NAMED, paths.size())));
    int more = paths.size() - NAMED;
    return more > 0 ? Sentence.of("{0} and {1} more", first, more) : first;
  }

  /** A credit that the log asks for and gives no words for. */
  void credit(Head head, Clearance everything) {
    if (head.creditPhotos() && Credit.of(head, everything).isNone()) {
      problems.reminder(
          Place.of("log.yaml"),
          "Photographs are to carry a credit, but the log names neither maker nor licence.",
          "Write maker: or licence: in log.yaml, or take credit-photos away.");
    }
  }

  /** Days that were photographed and count no hours, in a log that keeps them. */
  private void hours(List<Entry> entries, Set<String> shown) {
    Set<LocalDate> worked =
        entries.stream()
            .filter(e -> !e.worked().isEmpty())
            .map(Entry::date)
            .collect(Collectors.toCollection(TreeSet::new));
    List<Entry> idle =
        entries.stream().filter(e -> shown.contains(e.id()) && !worked.contains(e.date())).toList();
    List<String> days = idle.stream().map(e -> e.date().toString()).distinct().toList();
    if (!worked.isEmpty() && !days.isEmpty()) {
      problems.reminder(
          idle.get(0).place(),
          Sentence.of(
              days.size() == 1
                  ? "This day has photographs and no hours: {1}."
                  : "{0} days have photographs and no hours: {1}.",
              days.size(),
              names(days)),
          "Write such as \"time: 2 h\" into the note, or a line into hours.csv.");
    }
  }

  void days(List<Photograph> photographs, List<Entry> entries) {
    SortedMap<LocalDate, List<String>> without = new TreeMap<>();
    List<String> dayless = new ArrayList<>();
    for (Photograph photograph : photographs) {
      LocalDateTime taken = photograph.taken();
      String path = photograph.file().path();
      LocalDate day = taken == null ? Matching.dayInName(path) : taken.toLocalDate();
      if (photograph.link() == Photograph.Link.UNPLACED && day != null) {
        without.computeIfAbsent(day, d -> new ArrayList<>()).add(path);
      } else if (photograph.link() == Photograph.Link.UNPLACED) {
        dayless.add(path);
      }
    }
    if (!dayless.isEmpty()) {
      problems.reminder(
          Place.of(dayless.get(0)),
          dayless.size() == 1
              ? "Nothing tells on which day this photograph was taken."
              : Sentence.of(
                  "Nothing tells on which day {0} photographs were taken: {1}.",
                  dayless.size(), names(dayless)),
          "Show it in an entry, or write its time as \"taken\" in photos.yaml.");
    }
    without.forEach(
        (day, paths) ->
            problems.reminder(
                Place.of(paths.get(0)),
                Sentence.of(
                    paths.size() == 1
                        ? "One photograph was taken on {1}, and no entry has that date."
                        : "{0} photographs were taken on {1}, and no entry has that date: {2}.",
                    paths.size(),
                    day,
                    names(paths)),
                "Write an entry for the day, show them in another, or leave them out."));
    Set<String> shown =
        photographs.stream()
            .filter(p -> p.entry() != null && p.link() != Photograph.Link.LEFT_OUT)
            .map(p -> Objects.toString(p.entry()))
            .collect(Collectors.toCollection(TreeSet::new));
    hours(entries, shown);
    List<Entry> bare =
        entries.stream()
            .filter(e -> e.isTold() && !e.worked().isEmpty() && !shown.contains(e.id()))
            .toList();
    // A log that is kept without photographs need not hear of it.
    if (!bare.isEmpty() && !photographs.isEmpty()) {
      problems.reminder(
          bare.get(0).place(),
          bare.size() == 1
              ? "No photograph belongs to this entry."
              : Sentence.of(
                  "No photograph belongs to {0} entries: {1}.",
                  bare.size(), names(bare.stream().map(Entry::id).toList())),
          "If one was taken that day, bring it in or show it in the entry.");
    }
  }
}
