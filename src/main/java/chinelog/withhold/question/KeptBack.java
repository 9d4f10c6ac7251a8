package chinelog.withhold.question;

import chinelog.label.Label;
import chinelog.log.records.Log;
import chinelog.log.records.Lot;
import chinelog.log.records.Marked;
import chinelog.log.records.Release;
import chinelog.log.records.Table;
import chinelog.photo.album.Album;
import chinelog.photo.album.Photograph;
import chinelog.problem.Place;
import chinelog.problem.Sentence;
import chinelog.reckon.Fact;
import chinelog.reckon.Facts;
import chinelog.reckon.Origin;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * Everything in a log that may be under an agreement, by a hash of it, so that what was kept back
 * when an edition was last published is known again when its mark is lost.
 */
final class KeptBack {

  /** A shorter text is found in other places by chance. */
  private static final int LEAST_LETTERS = 12;

  /**
   * A thing of the log.
   *
   * @param whole of what it is a part, such as a note
   * @param shown what the maker knows it by
   * @param label of which releases are not taken off
   */
  private record Thing(
      String hash,
      CharSequence whole,
      CharSequence shown,
      Place place,
      Label label,
      boolean seen) {}

  private final Sight sight;
  private final List<Thing> things = new ArrayList<>();

  private KeptBack(Sight sight) {
    this.sight = sight;
  }

  private static KeptBack of(
      Log log, Facts facts, Album album, List<Passage> passages, Sight sight) {
    KeptBack all = new KeptBack(sight);
    passages.forEach(all::passage);
    facts.byName().values().stream()
        .filter(f -> f.origin() != Origin.RECKONED && Kinds.isSpokenOf(f))
        .forEach(all::fact);
    album.photographs().forEach(all::photograph);
    for (Lot lot : log.stock()) {
      Marked<?> price = lot.price();
      if (price != null) {
        CharSequence what = Sentence.of("the price of {0}", lot.material());
        all.add(what, price.place(), lot.label().join(price.label()));
      }
    }
    for (Table table : log.tables()) {
      for (Table.Column column : table.columns()) {
        CharSequence what = Sentence.of("column {0} of the table {1}", column.name(), table.name());
        all.add(what, column.place(), table.label().join(column.label()));
      }
    }
    return all;
  }

  /** What these readers do not see, by hash, with the agreements it is under. */
  static SortedMap<String, String> now(
      Log log, Facts facts, Album album, List<Passage> passages, Sight sight) {
    SortedMap<String, String> now = new TreeMap<>();
    for (Thing thing : of(log, facts, album, passages, sight).things) {
      if (!thing.seen) {
        now.put(thing.hash, String.join(" ", thing.label.agreements()));
      }
    }
    return Collections.unmodifiableSortedMap(now);
  }

  /**
   * A question for each note, figure or photograph that these readers would now see of which
   * something was kept back from them before, under an agreement that no mark names any more.
   *
   * @param before what {@link #now} was when their edition was last published
   */
  static List<Question> lost(
      Log log,
      Facts facts,
      Album album,
      List<Passage> passages,
      Sight sight,
      Map<String, String> before) {
    List<Thing> all = before.isEmpty() ? List.of() : of(log, facts, album, passages, sight).things;
    Map<String, Thing> first = new LinkedHashMap<>();
    Map<String, Label> labels = new TreeMap<>();
    Map<String, StringBuilder> about = new TreeMap<>();
    for (Thing thing : all) {
      String agreements = before.get(thing.hash);
      if (thing.seen && agreements != null) {
        Label label = Label.of(new TreeSet<>(List.of(agreements.split(" "))));
        if (!thing.label.agreements().containsAll(label.agreements())) {
          first.putIfAbsent(thing.whole.toString(), thing);
          labels.merge(thing.whole.toString(), label, Label::join);
          about
              .computeIfAbsent(thing.whole.toString(), w -> new StringBuilder())
              .append(thing.hash);
        }
      }
    }
    return first.values().stream()
        .map(
            t ->
                Question.of(
                    Question.Kind.LOST,
                    log,
                    t.place,
                    t.shown,
                    String.valueOf(about.get(t.whole.toString())),
                    t.whole,
                    labels.getOrDefault(t.whole.toString(), Label.NONE)))
        .toList();
  }

  private void passage(Passage passage) {
    if (passage.role() == Passage.Role.PROMISE) {
      return;
    }
    for (Passage.Piece piece : passage.pieces()) {
      String letters = Letters.fold(piece.text());
      if (letters.length() >= LEAST_LETTERS) {
        Label written = passage.outer().join(piece.label());
        String shown = piece.text().strip().replaceAll("\\s+", " ");
        things.add(
            new Thing(
                Question.hash("text " + letters),
                passage.what(),
                shown.length() > 60 ? shown.substring(0, 60) + "\u2026" : shown,
                passage.place(),
                written,
                sight.allows(passage.label(piece, sight))));
      }
    }
  }

  private void fact(Fact fact) {
    things.add(
        new Thing(
            Question.hash("fact " + fact.name()),
            Sentence.of("the figure {0}", fact.name()),
            fact.name(),
            fact.place(),
            fact.label(),
            sight.allows(Release.Kind.FACT, fact.name(), fact.label())));
  }

  private void photograph(Photograph photograph) {
    String path = photograph.file().path();
    if (photograph.link() != Photograph.Link.LEFT_OUT) {
      Label label = photograph.file().label();
      things.add(
          new Thing(
              Question.hash("photograph " + photograph.sha256()),
              Sentence.of("the photograph {0}", path),
              path,
              photograph.file().place(),
              label,
              sight.allows(Release.Kind.PHOTO, path, label)));
    }
  }

  private void add(CharSequence what, Place place, Label label) {
    things.add(
        new Thing(Question.hash(what.toString()), what, what, place, label, sight.allows(label)));
  }
}
