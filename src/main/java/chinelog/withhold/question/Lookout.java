package chinelog.withhold.question;

import chinelog.label.Agreement;
import chinelog.label.Label;
import chinelog.log.records.Entry;
import chinelog.log.records.Log;
import chinelog.log.records.Lot;
import chinelog.log.records.Marked;
import chinelog.log.records.Release;
import chinelog.log.records.Sheet;
import chinelog.log.records.Table;
import chinelog.photo.album.Album;
import chinelog.problem.Place;
import chinelog.problem.Sentence;
import chinelog.quantity.Quantity;
import chinelog.reckon.Fact;
import chinelog.reckon.FactId;
import chinelog.reckon.Facts;
import chinelog.reckon.Origin;
import chinelog.reckon.Similitude;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Looks for everything in a log that may need a mark, for some readers.
 *
 * @param sight of the readers
 * @param found takes what is found
 */
record Lookout(
    Log log,
    Facts facts,
    Album album,
    LocalDate asOf,
    OpenPassages texts,
    Sight sight,
    FoundQuestions found) {

  void look() {
    if (log.agreements().keySet().stream().allMatch(a -> sight.allows(Label.of(a)))) {
      ended();
      return;
    }
    List<SeenText> seen = new ArrayList<>();
    for (Passage passage : texts.passages()) {
      String text = passage.seen(sight);
      if (!text.isBlank()) {
        seen.add(new SeenText(passage, texts.reading(text)));
      }
    }
    CommonWords common = new CommonWords(seen);
    NameWatch names = new NameWatch(log.head().locale(), common);
    PassageWatch words = new PassageWatch(common);
    FigureWatch figures =
        new FigureWatch(log.head().locale(), log.head().closeness().doubleValue());
    DayWatch days = days();
    fill(seen, names, words, figures, days);
    for (SeenText text : seen) {
      if (text.passage().role() == Passage.Role.NAME) {
        // Who are party to one agreement know who gives leave in it, and none of the others.
        if (text.passage().pieces().stream().allMatch(p -> p.label().isNone())) {
          names.findInName(text).forEach(hit -> found.add(question(text, hit), sight.readers()));
        }
        continue;
      }
      List<Hit> hits = new ArrayList<>(names.find(text));
      hits.addAll(words.find(text));
      hits.addAll(figures.find(text));
      hits.addAll(days.find(text));
      for (Hit hit : hits) {
        found.add(question(text, hit), sight.readers());
      }
    }
    PhotoWatch.find(log, album, sight)
        .forEach((path, question) -> found.addDoubt(path, question, sight.readers()));
    ParagraphWatch.find(log, sight).forEach(q -> found.add(q, sight.readers()));
    TableWatch tables = new TableWatch(log, sight);
    tables.findIn(seen, (text, hit) -> found.add(question(text, hit), sight.readers()));
    tables.findInTables().forEach(q -> found.add(q, sight.readers()));
    new AliasWatch(log, facts, sight).find().forEach(q -> found.add(q, sight.readers()));
    ended();
    names.unguarded().forEach(found::unguarded);
    figures.unguarded().forEach(found::unguarded);
    found.unguardedReckoned(figures.unguardedReckoned());
  }

  private DayWatch days() {
    DayWatch days = new DayWatch();
    for (Entry entry : log.entries()) {
      if (sight.allows(Release.Kind.ENTRY, entry.id(), entry.label())) {
        days.show(entry.date());
      } else {
        days.withhold(
            entry.date(), Sentence.of("the day of the note {0}", entry.id()), entry.label());
      }
    }
    for (Agreement a : log.agreements().values()) {
      Label own = Label.of(a.id());
      if (!sight.allows(own)) {
        days.withhold(a.from(), Sentence.of("the day on which {0} was made", a.id()), own);
        days.withhold(a.until(), Sentence.of("the day on which {0} ends", a.id()), own);
      }
    }
    return days;
  }

  private Question question(SeenText text, Hit hit) {
    String words = text.text().substring(hit.start(), hit.end()).replaceAll("\\s+", " ").strip();
    String sentence = Letters.sentence(text.text(), hit.start(), hit.end()).strip();
    return Question.of(
        hit.kind(),
        log,
        texts.locator().find(text.passage().place(), words),
        words,
        sentence,
        hit.secret(),
        hit.label());
  }

  /** Tells the watches what is shown by right and what is withheld. */
  private void fill(
      List<SeenText> seen,
      NameWatch names,
      PassageWatch words,
      FigureWatch figures,
      DayWatch days) {
    for (SeenText text : seen) {
      if (text.passage().role() == Passage.Role.NAME) {
        names.show(text.text());
        words.show(text.text());
      }
    }
    for (Passage passage : texts.passages()) {
      for (Passage.Piece piece : passage.unseen(sight)) {
        CharSequence what = passage.what();
        switch (passage.role()) {
          case NAME -> {
            names.withhold(piece.text(), what, piece.label());
            words.withholdNumbers(piece.text(), what, piece.label());
          }
          case TERM -> words.withholdNumbers(piece.text(), what, piece.label());
          case PROSE, PROMISE -> {
            boolean promise = passage.role() == Passage.Role.PROMISE;
            CharSequence of =
                promise
                    ? what
                    : Sentence.of(
                        "the passage under {0} of {1}", piece.label().inWords(), Sentence.of(what));
            boolean guarded = words.withhold(piece.text(), of, piece.label());
            if (!guarded && !promise) {
              found.unguarded(of);
            }
            names.withholdNamesIn(piece.text(), of, piece.label(), texts.writtenSmall());
            figures.withholdFiguresIn(piece.text(), of, piece.label());
            days.withholdDaysIn(piece.text(), of, piece.label());
          }
        }
      }
    }
    for (Sheet sheet : log.sheets()) {
      Label label = sight.afterReleases(Release.Kind.SHEET, sheet.path(), sheet.label());
      if (!sight.allows(label)) {
        CharSequence what = Sentence.of("the sheet {0}", sheet.path());
        words.withholdNumbers(sheet.title(), what, label);
        if (sheet.title().contains(" ")) {
          words.withhold(sheet.title(), what, label);
        }
      }
    }
    figures(figures);
  }

  private void figures(FigureWatch figures) {
    for (Table table : log.tables()) {
      cells(table, figures);
      columns(table, figures);
    }
    Optional<Quantity> scale = facts.find(FactId.SCALE).map(Fact::value);
    for (Fact fact : facts.byName().values()) {
      String titles = Kinds.called(fact);
      if (sight.allows(Release.Kind.FACT, fact.name(), fact.label())) {
        figures.show(fact.value(), titles);
        if (fact.origin() != Origin.RECKONED
            && Kinds.isSpokenOf(fact)
            && sight.allows(fact.label())) {
          boolean vessel = Kinds.isOfTheVessel(fact);
          figures
              .findTwin(fact.value(), titles, vessel)
              .ifPresent(t -> found.add(twin(fact, t), sight.readers()));
        }
        continue;
      }
      Label label = sight.afterReleases(Release.Kind.FACT, fact.name(), fact.label());
      if (fact.id().equals(FactId.SCALE)) {
        figures.withholdScale(fact.value().value(), label);
      } else if (Kinds.isSpokenOf(fact)) {
        CharSequence what =
            Sentence.of("the figure {0}, {1}", fact.name(), Kinds.show(log, fact.value()));
        boolean firm = fact.origin() != Origin.RECKONED;
        figures.withhold(what, fact.value(), label, titles, firm, false);
        if (Kinds.isOfTheVessel(fact) && scale.isPresent() && isOfTheShape(fact)) {
          boolean full = Kinds.isFullSize(fact);
          Optional<Quantity> other =
              full
                  ? Similitude.findModel(fact.value(), scale.get())
                  : Similitude.findFullSize(fact.value(), scale.get());
          other.ifPresent(
              q ->
                  figures.withhold(
                      Sentence.of(
                          full ? "{0}, on the model" : "{0}, at full size", Sentence.of(what)),
                      q,
                      label,
                      titles,
                      false,
                      false));
        }
      }
    }
    Marked<Quantity> rate = log.head().rate();
    if (rate != null && !sight.allows(rate.label())) {
      figures.withhold("the rate", rate.value(), rate.label(), "rate hour", true, false);
    }
    for (Lot lot : log.stock()) {
      Marked<Quantity> price = lot.price();
      if (price != null && !sight.allows(lot.label().join(price.label()))) {
        String titles = "price " + lot.material() + " " + lot.title();
        Label label = lot.label().join(price.label());
        figures.withhold(
            Sentence.of("the price of {0}", lot.material()),
            price.value(),
            label,
            titles,
            true,
            false);
      }
    }
  }

  private Question twin(Fact fact, FigureWatch.Twin twin) {
    String figure = fact.name() + ", " + Kinds.show(log, fact.value());
    return Question.of(
        Question.Kind.ALIAS, log, fact.place(), figure, figure, twin.what(), twin.label());
  }

  /** Whether a fact has a counterpart at the other size. */
  private boolean isOfTheShape(Fact fact) {
    return Kinds.isFullSize(fact) || Similitude.hasCounterpart(fact, log);
  }

  private void cells(Table table, FigureWatch figures) {
    for (Table.Row row : table.rows()) {
      for (int i = 0; i < row.cells().size(); i++) {
        Quantity value = row.cells().get(i).quantity();
        Table.Column column = table.columns().get(i);
        Label label = table.label().join(row.label()).join(column.label());
        if (value != null && !sight.allows(label)) {
          figures.withhold(
              Sentence.of(
                  "a cell of the table {0}, {1} {2}",
                  table.name(), value.value(), value.unit().symbol()),
              value,
              label,
              table.name() + " " + column.name(),
              true,
              true);
        }
      }
    }
  }

  /** What the figures of a column come to that is withheld, in whole or in part. */
  private void columns(Table table, FigureWatch figures) {
    for (int i = 0; i < table.columns().size(); i++) {
      Table.Column column = table.columns().get(i);
      List<Quantity> values = new ArrayList<>();
      Label hidden = Label.NONE;
      for (Table.Row row : table.rows()) {
        Quantity value = row.cells().get(i).quantity();
        Label label = table.label().join(row.label()).join(column.label());
        if (value != null) {
          values.add(value);
          hidden = sight.allows(label) ? hidden : hidden.join(label);
        }
      }
      if (!hidden.isNone() && values.size() > 1) {
        figures.withholdColumn(table.name(), column.name(), values, hidden);
      }
    }
  }

  /** An agreement that has ended frees what it covered: a wrong year or clock would, too. */
  private void ended() {
    for (Agreement agreement : log.agreements().values()) {
      boolean party =
          log.readers().stream()
              .anyMatch(
                  r -> r.id().equals(sight.readers()) && r.partyTo().contains(agreement.id()));
      if (!party && agreement.isFreeOn(asOf)) {
        Label label = Label.of(agreement.id());
        found.add(
            Question.of(
                Question.Kind.ENDED,
                log,
                Place.of("log.yaml"),
                Sentence.of(
                    "the end of {0} on {1}", agreement.id(), String.valueOf(agreement.until())),
                "",
                "what it covered, which nothing keeps back since that day",
                label),
            sight.readers());
      }
    }
  }
}
