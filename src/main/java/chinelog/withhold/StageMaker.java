package chinelog.withhold;

import chinelog.edition.Edition;
import chinelog.log.records.Entry;
import chinelog.log.records.Stage;
import chinelog.withhold.question.Sight;
import chinelog.wording.Catalogue;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** Tells how far each stage has come, by the entries that are told. */
final class StageMaker {

  private final Account account;
  private final Sight sight;
  private final Catalogue words;
  private final TextCopier copier;
  private final HoursTold hours;
  private final MaterialsTold materials;
  private final Map<String, List<Entry>> byStage = new HashMap<>();
  private final Map<String, String> entryIds;

  /**
   * @param entries those that are told, by date
   * @param entryIds the edition's id of each, by the log's
   */
  StageMaker(
      Account account,
      Catalogue words,
      TextCopier copier,
      HoursTold hours,
      MaterialsTold materials,
      List<Entry> entries,
      Map<String, String> entryIds) {
    this.account = account;
    this.sight = account.sight();
    this.words = words;
    this.copier = copier;
    this.hours = hours;
    this.materials = materials;
    this.entryIds = entryIds;
    entries.forEach(e -> byStage.computeIfAbsent(e.stage(), s -> new ArrayList<>()).add(e));
  }

  List<Edition.Stage> make(List<Stage> stages) {
    // One that is withheld neither comes after another nor is the last.
    List<Stage> seen =
        stages.stream()
            .filter(s -> account.sees(s.label(), s.place(), Register.Kind.STAGE, s.id()))
            .toList();
    List<Edition.Stage> made = new ArrayList<>();
    int latest = -1;
    for (int i = 0; i < seen.size(); i++) {
      if (byStage.containsKey(seen.get(i).id())) {
        latest = i;
      }
    }
    for (int i = 0; i < seen.size(); i++) {
      made.add(stage(seen.get(i), i < latest, i == seen.size() - 1));
    }
    return made;
  }

  private Edition.Stage stage(Stage stage, boolean passed, boolean last) {
    List<Entry> own = byStage.getOrDefault(stage.id(), List.of());
    List<Edition.Line> totals = new ArrayList<>();
    hours.stageLine(stage.id()).ifPresent(totals::add);
    Set<String> ids = own.stream().map(Entry::id).collect(Collectors.toSet());
    materials.costLine(ids::contains).ifPresent(totals::add);
    return new Edition.Stage(
        stage.id(),
        stage.title(),
        copier.blocks(stage.about()),
        dates(own),
        progress(stage, passed, last, !own.isEmpty()),
        own.stream().map(Entry::id).map(entryIds::get).toList(),
        totals,
        sight.under(stage.label()));
  }

  private Edition.Progress progress(Stage stage, boolean passed, boolean last, boolean begun) {
    LocalDate finish = stage.finish();
    if (passed || last && begun && finish != null && sight.asOf().isAfter(finish)) {
      return Edition.Progress.DONE;
    }
    return begun ? Edition.Progress.UNDER_WAY : Edition.Progress.AHEAD;
  }

  private String dates(List<Entry> own) {
    if (own.isEmpty()) {
      return "";
    }
    LocalDate first = own.get(0).date();
    LocalDate last = own.get(own.size() - 1).date();
    return first.equals(last)
        ? words.date(first)
        : words.text("dates.range", words.date(first), words.date(last));
  }
}
