package chinelog.withhold;

import chinelog.edition.Edition;
import chinelog.edition.Letter;
import chinelog.edition.Plate;
import chinelog.edition.Text;
import chinelog.label.Agreement;
import chinelog.label.Label;
import chinelog.log.records.Log;
import chinelog.log.records.Readers;
import chinelog.problem.Place;
import chinelog.problem.Problem;
import chinelog.problem.Sentence;
import chinelog.quantity.NumberStyle;
import chinelog.reckon.NextBuild;
import chinelog.reckon.trade.Quotation;
import chinelog.withhold.question.Sight;
import chinelog.wording.Catalogue;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** Writes the letters of an edition out of what it tells anyway. */
final class LetterMaker {

  /** A letter without a day to begin at tells of about a month. */
  private static final int DAYS = 31;

  private static final int MOST_PLATES = 6;

  private final Sight sight;
  private final Catalogue words;
  private final NumberStyle style;
  private final Log log;
  private final Set<Readers.Output> wanted;
  private final List<Problem> problems = new ArrayList<>();

  LetterMaker(Sight sight, Catalogue words, NumberStyle style, Log log, Readers readers) {
    this.sight = sight;
    this.words = words;
    this.style = style;
    this.log = log;
    this.wanted = readers.outputs();
  }

  /** Why a letter that readers should get is not made. */
  List<Problem> problems() {
    return problems;
  }

  /**
   * What the edition tells anyway.
   *
   * @param own the maker's words, as far as they may be seen
   */
  record Told(
      String subject,
      List<Text.Block> own,
      List<Edition.Entry> entries,
      List<Edition.Stage> stages,
      List<Edition.HoursLine> hours,
      List<Plate> plates) {}

  List<Letter> make(Told told, NextBuild.@Nullable Priced priced) {
    List<Letter> letters = new ArrayList<>();
    if (wanted.contains(Readers.Output.LETTER)) {
      letters.add(progress(told));
    }
    if (wanted.contains(Readers.Output.PHOTO_SHEET)) {
      letters.add(
          new Letter(
              Letter.Kind.PHOTOGRAPHS,
              words.text("letter.photographs.title", told.subject()),
              List.of(),
              List.of(
                  section(
                      "",
                      List.of(words.text("letter.since", words.date(since(told)))),
                      List.of(),
                      plates(told))),
              List.of(),
              ""));
    }
    if (wanted.contains(Readers.Output.QUOTATION)) {
      Letter quotation = priced == null ? null : quotation(priced);
      if (quotation != null) {
        letters.add(quotation);
      } else if (priced == null) {
        problems.add(
            Problem.error(
                Place.of("quotation.yaml"),
                "Readers are to get a quotation, but this file does not make one.",
                "See what \u201creckon LOG --price LOG/quotation.yaml\u201d says of it; or take"
                    + " \u201cquotation\u201d out of \u201cgets\u201d in log.yaml."));
      }
    }
    return letters;
  }

  private Letter progress(Told told) {
    LocalDate since = since(told);
    List<Edition.Line> noted =
        told.entries().stream()
            .filter(e -> e.date().isAfter(since))
            .map(e -> line(words.date(e.date()), e.title()))
            .toList();
    Map<String, Edition.HoursLine> hours = new TreeMap<>();
    told.hours().forEach(h -> hours.put(h.stage(), h));
    List<Edition.Line> stages =
        told.stages().stream().map(s -> line(s.title(), state(s, hours.get(s.id())))).toList();
    List<Plate> plates = plates(told);
    return new Letter(
        Letter.Kind.PROGRESS,
        words.text("letter.progress.title", told.subject()),
        told.own(),
        List.of(
            section(
                words.text("letter.since", words.date(since)),
                noted.isEmpty() ? List.of(words.text("letter.nothing")) : List.of(),
                noted,
                List.of()),
            section(
                stages.isEmpty() ? "" : words.text("letter.stages"), List.of(), stages, List.of()),
            section(
                plates.isEmpty() ? "" : words.text("letter.photographs"),
                List.of(),
                List.of(),
                plates.subList(Math.max(0, plates.size() - MOST_PLATES), plates.size()))),
        List.of(),
        "");
  }

  private String state(Edition.Stage stage, Edition.@Nullable HoursLine hours) {
    String state = words.text("letter.stage." + stage.progress().name());
    return hours == null || hours.worked().isEmpty()
        ? state
        : words.text("letter.stage.hours", state, hours.worked());
  }

  /** The day of the last letter; else about a month before the latest entry that is told. */
  private LocalDate since(Told told) {
    LocalDate since = log.head().letter().since();
    if (since != null) {
      return since;
    }
    LocalDate latest =
        told.entries().stream()
            .map(Edition.Entry::date)
            .max(LocalDate::compareTo)
            .orElse(sight.asOf());
    return latest.minusDays(DAYS);
  }

  private List<Plate> plates(Told told) {
    LocalDate since = since(told);
    Map<String, LocalDate> days = new TreeMap<>();
    told.entries().forEach(e -> days.put(e.id(), e.date()));
    return told.plates().stream()
        .filter(
            p -> {
              String entry = p.entry();
              LocalDate day = p.date() == null && entry != null ? days.get(entry) : p.date();
              return day != null && day.isAfter(since);
            })
        .toList();
  }

  /**
   * The price alone, which is for whoever gets it; what the workshop keeps to itself (its rate, its
   * margin) stays so. Null, after the problem was noted, if it rests on what is promised to others.
   */
  private @Nullable Letter quotation(NextBuild.Priced priced) {
    Quotation quotation = priced.quotation();
    Label promised = priced.label().without(Agreement.OWN_MONEY).without(Agreement.OWN_CLIENT);
    for (String party : sight.clearance().agreements()) {
      promised = promised.without(party);
    }
    if (quotation == null) {
      return null;
    }
    if (!promised.isNone()) {
      problems.add(
          Problem.error(
              Place.of("quotation.yaml"),
              Sentence.of(
                  "The quotation rests on what is under {0}, to which these readers are not"
                      + " party, and its price would tell of it.",
                  promised),
              "Price without those stages and figures, or take \u201cquotation\u201d out of"
                  + " \u201cgets\u201d in log.yaml."));
      return null;
    }
    return new Letter(
        Letter.Kind.QUOTATION,
        quotation.title(),
        List.of(),
        List.of(
            section(
                "",
                List.of(),
                List.of(
                    line(words.text("letter.net"), style.show(quotation.net())),
                    line(words.text("letter.tax"), style.show(quotation.tax())),
                    line(words.text("letter.price"), style.show(quotation.total()))),
                List.of())),
        List.of(
            words.text("letter.agreed"), words.text("letter.day"), words.text("letter.signature")),
        "");
  }

  static Letter.Section section(
      String heading, List<String> paragraphs, List<Edition.Line> lines, List<Plate> plates) {
    return new Letter.Section(heading, paragraphs, lines, plates);
  }

  static Edition.Line line(String title, String shown) {
    return new Edition.Line(title, shown, "", null);
  }
}
