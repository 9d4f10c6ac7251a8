package chinelog.withhold;

import static chinelog.withhold.LetterMaker.line;
import static chinelog.withhold.LetterMaker.section;

import chinelog.edition.Edition;
import chinelog.edition.Figure;
import chinelog.edition.Letter;
import chinelog.edition.Plate;
import chinelog.label.Agreement;
import chinelog.log.records.Log;
import chinelog.log.records.Release;
import chinelog.wording.Catalogue;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Writes the forms that are put before the other side of an agreement. They say of a thing what an
 * edition for that side would, and no more: it may be under other agreements as well.
 *
 * @param entries that the other side may see, and so on
 * @param plates by the log's paths
 * @param entryIds the edition's ids by the log's
 */
record FormMaker(
    Catalogue words,
    Log log,
    List<Edition.Entry> entries,
    List<Figure> figures,
    Map<String, Plate> plates,
    Map<String, String> entryIds) {

  Letter make(Correspondence.Form form, String maker, String subject) {
    Agreement agreement = log.agreements().get(form.agreement());
    if (agreement == null) {
      throw new IllegalArgumentException("no agreement " + form.agreement());
    }
    Release.Kind asked = form.asked();
    return asked == null
        ? agreement(agreement, maker, subject)
        : release(agreement, form, asked, subject);
  }

  private Letter agreement(Agreement agreement, String maker, String subject) {
    LocalDate from = agreement.from();
    LocalDate until = agreement.until();
    List<Edition.Line> lines = new ArrayList<>();
    lines.add(line(words.text("form.maker"), maker));
    lines.add(line(words.text("form.other"), agreement.with()));
    lines.add(line(words.text("form.model"), subject));
    lines.add(line(words.text("form.covers"), agreement.covers()));
    lines.add(line(words.text("form.from"), from == null ? "" : words.date(from)));
    lines.add(
        line(
            words.text("form.until"),
            until == null ? words.text("form.until.never") : words.date(until)));
    lines.add(
        line(
            words.text("form.afterwards"),
            words.text(agreement.freeAfterwards() ? "form.free" : "form.kept")));
    return new Letter(
        Letter.Kind.AGREEMENT,
        words.text("form.agreement.title"),
        List.of(),
        List.of(
            section("", List.of(), lines, List.of()),
            section(
                "",
                List.of(words.text("form.promise"), words.text("form.releases")),
                List.of(),
                List.of())),
        List.of(
            words.text("form.maker"),
            words.text("letter.day"),
            words.text("letter.signature"),
            words.text("form.other"),
            words.text("letter.day"),
            words.text("letter.signature")),
        words.text("form.law"));
  }

  private Letter release(
      Agreement agreement, Correspondence.Form form, Release.Kind kind, String subject) {
    List<Edition.Line> lines = new ArrayList<>();
    lines.add(line(words.text("form.other"), agreement.with()));
    lines.add(line(words.text("form.under"), agreement.covers()));
    lines.add(line(words.text("form.model"), subject));
    lines.add(line(words.text("form.thing"), thing(kind, form.name())));
    lines.add(line(words.text("form.whom"), form.forWhom()));
    Plate plate = plates.get(form.name());
    return new Letter(
        Letter.Kind.RELEASE,
        words.text("form.release.title"),
        List.of(),
        List.of(
            section("", List.of(words.text("form.asked")), lines, List.of()),
            section("", List.of(), List.of(), plate == null ? List.of() : List.of(plate))),
        List.of(
            words.text("form.words"),
            "",
            words.text("form.conditions"),
            words.text("form.name"),
            words.text("letter.day"),
            words.text("letter.signature")),
        words.text("form.law"));
  }

  /** A thing in words that the other side may read; else the bare kind of thing that it is. */
  private String thing(Release.Kind kind, String name) {
    String bare = words.text("form.thing." + kind.name());
    Optional<String> told =
        switch (kind) {
          case FACT ->
              figures.stream()
                  .filter(f -> f.name().equals(name))
                  .findFirst()
                  .map(f -> f.title() + ": " + f.shown());
          case ENTRY ->
              entries.stream()
                  .filter(e -> e.id().equals(entryIds.get(name)))
                  .findFirst()
                  .map(e -> words.date(e.date()) + ": " + e.title());
          case PHOTO -> Optional.ofNullable(plates.get(name)).map(p -> words.text("form.shown"));
          case SHEET -> Optional.of(name.replaceFirst("^sheets/", ""));
        };
    return told.map(t -> bare + ": " + t).orElse(bare);
  }
}
