package chinelog.desk.bench;

import chinelog.log.records.Entry;
import chinelog.photo.album.Photograph;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** Days on which photographs were taken that belong to no note, and of which no note tells. */
public final class UnnotedDays {

  private UnnotedDays() {}

  /** Those days, each with the paths of its photographs. */
  public static SortedMap<LocalDate, List<String>> of(Snapshot now) {
    Set<LocalDate> noted = now.log().notes().stream().map(Entry::date).collect(Collectors.toSet());
    SortedMap<LocalDate, List<String>> days = new TreeMap<>();
    for (Photograph photograph : now.opened().album().photographs()) {
      LocalDateTime taken = photograph.taken();
      if (taken != null
          && photograph.link() == Photograph.Link.UNPLACED
          && !noted.contains(taken.toLocalDate())) {
        days.computeIfAbsent(taken.toLocalDate(), d -> new ArrayList<>())
            .add(photograph.file().path());
      }
    }
    return days;
  }
}
