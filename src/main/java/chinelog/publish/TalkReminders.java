package chinelog.publish;

import chinelog.edition.Edition;
import chinelog.edition.Talk;
import chinelog.log.records.Log;
import chinelog.log.records.PostPlan;
import chinelog.log.records.TalkPlan;
import chinelog.problem.Place;
import chinelog.problem.Problem;
import chinelog.problem.Sentence;
import chinelog.problem.Suggestion;
import chinelog.talk.Length;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Reminds the maker of instalments that are too long, and of recordings that fit none. */
final class TalkReminders {

  private static final long MINUTE_MS = 60_000;

  private TalkReminders() {}

  static List<Problem> of(Log log, Edition edition) {
    Talk talk = edition.contents().talk();
    List<Problem> reminders = new ArrayList<>();
    if (!talk.isTold()) {
      return reminders;
    }
    List<Length> lengths = Length.all(edition);
    String who = edition.contents().readers();
    for (Length length : lengths) {
      if (length.ms() > (talk.minutes() + talk.latitudeMinutes()) * MINUTE_MS) {
        reminders.add(tooLong(log, who, length, talk));
      }
    }
    for (int i = 0; i + 1 < lengths.size(); i++) {
      tooShort(log, who, lengths.get(i), lengths.get(i + 1), talk).ifPresent(reminders::add);
    }
    reminders.addAll(recordings(log, who, lengths));
    return reminders;
  }

  private static Place place(Log log, Length length) {
    return log.posts().stream()
        .filter(p -> p.title().equals(length.title()))
        .map(PostPlan::place)
        .findFirst()
        .orElse(Place.of("log.yaml"));
  }

  private static Sentence wanted(Talk talk) {
    return Sentence.of(
        "{0} minutes are wanted, give or take {1}", talk.minutes(), talk.latitudeMinutes());
  }

  private static Problem tooLong(Log log, String who, Length length, Talk talk) {
    Sentence what =
        Sentence.of(
            "For {0}, the instalment \u201c{1}\u201d takes {2} to tell; {3}.",
            who, length.title(), Length.clock(length.ms()), wanted(talk));
    int parts =
        Math.min(
            length.entries().size(),
            (int) Math.max(2, Math.round(length.ms() / (double) (talk.minutes() * MINUTE_MS))));
    if (parts < 2) {
      return Problem.reminder(
          place(log, length),
          what,
          Sentence.of(
              "It tells one entry, which a break cannot part: divide the note, or allow"
                  + " for more with talk: {minutes: {0}}.",
              length.ms() / MINUTE_MS + 1));
    }
    List<Integer> breaks = length.breaks(parts);
    List<String> begins = new ArrayList<>();
    List<String> times = new ArrayList<>();
    for (int i = 0; i < breaks.size(); i++) {
      int end = i + 1 < breaks.size() ? breaks.get(i + 1) : length.entries().size();
      times.add(
          Length.clock(
              length.entries().subList(breaks.get(i), end).stream()
                  .mapToLong(Length.Share::ms)
                  .sum()));
      if (i > 0) {
        begins.add("\u201c" + length.entries().get(breaks.get(i)).title() + "\u201d");
      }
    }
    return Problem.reminder(
        place(log, length),
        what,
        Sentence.of(
            "Let another post begin with {0}: the entries then take {1}.",
            String.join(", ", begins), String.join(", ", times)));
  }

  private static Optional<Problem> tooShort(
      Log log, String who, Length one, Length next, Talk talk) {
    long least = (talk.minutes() - talk.latitudeMinutes()) * MINUTE_MS;
    boolean fits =
        one.ms() + next.ms() <= (talk.minutes() + talk.latitudeMinutes()) * MINUTE_MS
            && (one.ms() < least || next.ms() < least);
    return fits
        ? Optional.of(
            Problem.reminder(
                place(log, one),
                Sentence.of(
                    "For {0}, the instalments \u201c{1}\u201d and \u201c{2}\u201d take {3} and"
                        + " {4} to tell; {5}.",
                    who,
                    one.title(),
                    next.title(),
                    Length.clock(one.ms()),
                    Length.clock(next.ms()),
                    wanted(talk)),
                "Make one post of the two."))
        : Optional.empty();
  }

  private static List<Problem> recordings(Log log, String who, List<Length> lengths) {
    List<Problem> reminders = new ArrayList<>();
    for (TalkPlan.Recording recording : log.head().talk().recordings()) {
      if (!recording.readers().equals(who)) {
        continue;
      }
      List<String> folders = lengths.stream().map(Length::folder).toList();
      int at = folders.indexOf(recording.instalment());
      if (at < 0) {
        reminders.add(
            Problem.reminder(
                recording.place(),
                "These readers are told no instalment of this name, so the marks are not used.",
                Suggestion.remedy(recording.instalment(), folders)));
        continue;
      }
      Length length = lengths.get(at);
      if (!recording.script().equals(length.script())
          || recording.beginsMs().size() != length.frames().size()) {
        reminders.add(
            Problem.reminder(
                recording.place(),
                "The words or the frames of this instalment have changed since it was recorded, so"
                    + " the marks are not used.",
                Sentence.of(
                    "Record it again; or, if the recording still says what the script says,"
                        + " mark its {0} frames and write \"script,{1}\".",
                    length.frames().size(), length.script())));
      } else if (length.hurried() > 0) {
        reminders.add(
            Problem.reminder(
                recording.place(),
                Sentence.of(
                    "{0} captions of this instalment stand too briefly to be read at 17"
                        + " characters a second.",
                    length.hurried()),
                "See whether the marks are right; else speak more slowly."));
      }
    }
    return reminders;
  }
}
