package chinelog.log;

import chinelog.label.Label;
import chinelog.log.reading.Yaml;
import chinelog.log.records.Entry;
import chinelog.problem.Place;
import chinelog.problem.Problems;
import chinelog.problem.Sentence;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.zone.ZoneOffsetTransition;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Reads time at work: {@code 09:10-12:40, 14:00-15:15}, {@code 2 h 30 min}, {@code PT2H30M}. */
record WorkedReader(LocalDate date, ZoneId zone, Problems problems) {

  private static final Pattern RANGE =
      Pattern.compile("([0-9]{1,2}:[0-9]{2})\\s*[-–—]\\s*([0-9]{1,2}:[0-9]{2})");
  private static final Pattern DECIMAL_COMMA = Pattern.compile("[0-9]{1,2},[0-9]{1,2}\\s*\\p{L}*");
  private static final String REMEDY =
      "Write such as 09:10-12:40, 14:00-15:15 (24 hours), or a length such as 2 h 30 min.";

  /** Longer than this at a stretch is asked about; common sense, no source. */
  private static final Duration LONG = Duration.ofHours(16);

  List<Entry.Worked> read(Yaml.Scalar written, Label label) {
    List<Entry.Worked> worked = new ArrayList<>();
    if (DECIMAL_COMMA.matcher(written.text().strip()).matches()) {
      problems.error(
          written.place(),
          "A comma parts two times here.",
          Sentence.of(
              "Write decimals after a point: {0}.",
              SpokenTime.findMeaning(written.text().strip()).orElse("2.5 h")));
      return worked;
    }
    int from = 0;
    for (String part : written.text().split(",", -1)) {
      int lead = part.length() - part.stripLeading().length();
      Place place = written.source().at(from + lead);
      Entry.Worked one = one(part.strip(), place, label);
      if (one != null) {
        worked.add(one);
      }
      from += part.length() + 1;
    }
    return worked;
  }

  private Entry.@Nullable Worked one(String text, Place place, Label label) {
    Matcher m = RANGE.matcher(text);
    if (m.matches()) {
      return range(m, place, label);
    }
    Duration length = Durations.parse(text);
    if (length == null || length.isNegative() || length.isZero()) {
      problems.error(
          place,
          Sentence.of("\"{0}\" is no time at work.", text),
          SpokenTime.findMeaning(text)
              .<CharSequence>map(t -> Sentence.of("Write {0}.", t))
              .orElse(REMEDY));
      return null;
    }
    if (length.compareTo(Duration.ofHours(24)) > 0) {
      problems.error(
          place,
          "This is more than a day's 24 hours.",
          "Divide it among the entries of several days.");
      return null;
    }
    return new Entry.Worked(null, null, length, label, place);
  }

  private Entry.@Nullable Worked range(Matcher m, Place place, Label label) {
    LocalTime begin = time(m.group(1), place);
    LocalTime end = m.group(2).equals("24:00") ? LocalTime.MIDNIGHT : time(m.group(2), place);
    if (begin == null || end == null) {
      return null;
    }
    if (begin.equals(end)) {
      problems.error(place, "This begins and ends at the same time.", REMEDY);
      return null;
    }
    ZonedDateTime from = at(date, begin, place);
    ZonedDateTime to = end.isAfter(begin) ? at(date, end, place) : null;
    if (to == null && !end.isAfter(begin)) {
      // Where the clock is put back, a later time may show less.
      ZonedDateTime again = ZonedDateTime.of(date, end, zone).withLaterOffsetAtOverlap();
      to = from != null && again.isAfter(from) ? again : at(date.plusDays(1), end, place);
    }
    if (from == null || to == null) {
      return null;
    }
    Duration length = Duration.between(from, to);
    if (length.compareTo(LONG) > 0) {
      problems.reminder(
          place,
          Sentence.of(
              "This lasts until the next day, {0} hours.", Math.round(length.toMinutes() / 60.0)),
          "If that is not so, swap the two times.");
    }
    return new Entry.Worked(from, to, length, label, place);
  }

  private @Nullable LocalTime time(String text, Place place) {
    try {
      return LocalTime.parse(text.length() == 4 ? "0" + text : text);
    } catch (DateTimeException e) {
      problems.error(place, Sentence.of("There is no time {0}.", text), REMEDY);
      return null;
    }
  }

  private @Nullable ZonedDateTime at(LocalDate day, LocalTime time, Place place) {
    LocalDateTime local = day.atTime(time);
    ZoneOffsetTransition change = zone.getRules().getTransition(local);
    if (change != null && change.isGap()) {
      problems.error(
          place,
          Sentence.of(
              "{0} did not exist on {1}: the clock was put forward from {2} to {3}.",
              time,
              day,
              change.getDateTimeBefore().toLocalTime(),
              change.getDateTimeAfter().toLocalTime()),
          "Write the time that the clock showed.");
      return null;
    }
    if (change != null) {
      problems.reminder(
          place,
          Sentence.of(
              "{0} came twice on {1}, as the clock was put back; the first is taken.", time, day),
          "Write a length, such as 2 h, if it was the second.");
    }
    return ZonedDateTime.of(local, zone);
  }

  /** Nobody works at two things at once: notes each stretch that begins before another's end. */
  static void refuseOverlaps(List<Entry> entries, Problems problems) {
    record Stretch(Entry.Worked worked, ZonedDateTime from, ZonedDateTime to) {}
    List<Stretch> all = new ArrayList<>();
    for (Entry entry : entries) {
      for (Entry.Worked w : entry.worked()) {
        ZonedDateTime from = w.from();
        ZonedDateTime to = w.to();
        if (from != null && to != null) {
          all.add(new Stretch(w, from, to));
        }
      }
    }
    all.sort(Comparator.comparing(Stretch::from).thenComparing(s -> s.worked().place()));
    Stretch latest = null;
    for (Stretch stretch : all) {
      if (latest != null && stretch.from().isBefore(latest.to())) {
        problems.error(
            stretch.worked().place(),
            Sentence.of("This overlaps with the time at {0}.", latest.worked().place()),
            "Correct one of the two; the hours would count twice.");
      }
      latest = latest == null || stretch.to().isAfter(latest.to()) ? stretch : latest;
    }
  }
}
