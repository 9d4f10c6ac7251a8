package chinelog.reckon;

import chinelog.log.records.Entry;
import chinelog.log.records.HandoverSection;
import chinelog.log.records.Log;
import chinelog.log.records.PhotoFile;
import chinelog.log.records.Stage;
import chinelog.log.text.Block;
import chinelog.log.text.Inline;
import chinelog.problem.Sentence;
import chinelog.quantity.NumberStyle;
import chinelog.quantity.QuantityException;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;

/** Holds every figure written in a text against the fact that it names. */
final class LinkCheck {

  private final Log log;
  private final Ledger ledger;
  private final NumberStyle style;

  /** Facts measured or weighed more than once: what they were by then, as the entries go by. */
  private final Map<String, String> byThen = new TreeMap<>();

  LinkCheck(Log log, Ledger ledger, NumberStyle style) {
    this.log = log;
    this.ledger = ledger;
    this.style = style;
  }

  void check() {
    checkAll(Block.runs(log.head().about()));
    checkAll(Block.runs(log.head().letter().text()));
    for (Stage stage : log.stages()) {
      checkAll(Block.runs(stage.about()));
    }
    for (HandoverSection section : log.handover()) {
      checkAll(Block.runs(section.text()));
    }
    for (PhotoFile photo : log.photos()) {
      checkAll(Inline.runs(photo.caption()));
    }
    for (Entry entry : log.entries()) {
      entry.measured().forEach(m -> remember(new FactId.Named(m.fact()), entry));
      entry.weighed().forEach(w -> remember(new FactId.Mass(w.part()), entry));
      checkAll(Block.runs(entry.text()));
    }
  }

  private void remember(FactId fact, Entry entry) {
    byThen.put(fact.name(), new FactId.Reading(fact, entry.id()).name());
  }

  private void checkAll(Stream<Inline> runs) {
    runs.filter(Inline.FactLink.class::isInstance)
        .map(Inline.FactLink.class::cast)
        .forEach(this::check);
  }

  private void check(Inline.FactLink link) {
    Fact fact =
        ledger
            .find(byThen.getOrDefault(link.fact(), link.fact()))
            .or(() -> ledger.find(link.fact()))
            .orElse(null);
    if (fact == null && ledger.isBroken(link.fact())) {
      return;
    }
    if (fact == null) {
      ledger.error(
          link.place(),
          Sentence.of("There is no fact \"{0}\".", link.fact()),
          Ledger.remedyFor(link.fact(), ledger.facts().keySet()));
      return;
    }
    String written = link.written().strip();
    if (written.isEmpty() || !WrittenFigure.isFigure(written)) {
      return;
    }
    try {
      WrittenFigure figure =
          WrittenFigure.parse(written, log.head().locale(), log.head().currency());
      if (!figure.agrees(fact)) {
        ledger.error(
            link.place(),
            Sentence.of(
                "\"{0}\" is written, but \"{1}\" is {2} ({3}).",
                written, fact.name(), style.show(fact.value()), fact.place()),
            "Correct the figure or the fact, or leave the brackets empty to have it filled"
                + " in.");
      }
    } catch (QuantityException e) {
      ledger.error(
          link.place(),
          Sentence.of(
              "\"{0}\" cannot be held against \"{1}\": {2}", written, fact.name(), e.what()),
          e.remedy());
    }
  }
}
