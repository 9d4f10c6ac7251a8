package chinelog.log;

import chinelog.log.reading.Fields;
import chinelog.log.reading.Scope;
import chinelog.log.reading.WrittenDate;
import chinelog.problem.Place;
import chinelog.problem.Sentence;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The day of a note: as its keys say, else as its name begins. */
final class EntryDate {

  private final Scope scope;
  private final String path;
  private final Fields fields;
  private boolean wrong;

  EntryDate(Scope scope, String path, Fields fields) {
    this.scope = scope;
    this.path = path;
    this.fields = fields;
  }

  /** The day, or null where none is written or, after the problem was noted, it is wrong. */
  @Nullable LocalDate find() {
    if (fields.has("date")) {
      LocalDate date = fields.pastDate("date");
      wrong = date == null;
      return date;
    }
    for (String name : names()) {
      if (name.matches("\\d{4}-\\d{2}-\\d{2}.*")) {
        return named(name.substring(0, 10));
      }
    }
    List<LocalDate> likely = scope.loose() ? likely() : List.of();
    return likely.size() == 1 ? likely.get(0) : null;
  }

  /** Days that the file's name may begin with, though not as one is written here. */
  private List<LocalDate> likely() {
    String name = path.substring(path.lastIndexOf('/') + 1);
    return WrittenDate.atStart(name).stream().filter(d -> !d.isAfter(scope.today())).toList();
  }

  /** What the name of the file should be; empty where it begins with nothing like a date. */
  String betterName() {
    List<LocalDate> likely = likely();
    return likely.isEmpty() ? "" : String.valueOf(likely.get(0));
  }

  /** Whether a date is written that can be none. */
  boolean isWrong() {
    return wrong;
  }

  /** The file's name; where there is no log.yaml, also those of the folders it is in. */
  private List<String> names() {
    List<String> parts = new ArrayList<>(List.of(path.split("/")));
    Collections.reverse(parts);
    return scope.loose() ? parts : parts.subList(0, 1);
  }

  private @Nullable LocalDate named(String text) {
    LocalDate date = null;
    try {
      date = LocalDate.parse(text);
    } catch (DateTimeException e) {
      scope.error(
          Place.of(path),
          Sentence.of("There is no day {0}.", text),
          "Correct the name of this file.");
    }
    if (date != null && date.isAfter(scope.today())) {
      scope.error(
          Place.of(path),
          Sentence.of("{0} has not come yet; today is {1}.", date, scope.today()),
          "Correct the name of this file, or set the clock of this computer right.");
      date = null;
    }
    wrong = date == null;
    return date;
  }
}
