package chinelog.withhold.question;

import chinelog.log.records.Head;
import chinelog.log.records.Log;
import chinelog.quantity.NumberStyle;
import chinelog.quantity.Quantity;
import chinelog.quantity.Unit;
import chinelog.reckon.Fact;
import chinelog.reckon.FactId;
import chinelog.reckon.Facts;
import chinelog.wording.Catalogue;
import java.util.List;
import java.util.Locale;

/** What sorts of facts there are, for the watches. */
final class Kinds {

  private static final List<String> WHOLE =
      List.of(
          "total",
          "dry",
          "afloat",
          "displacement",
          "parts",
          "gesamt",
          "verdrangung",
          "totaal",
          "verplaatsing",
          "deplacement",
          "desplazamiento");

  private Kinds() {}

  /** Whether a fact is one that somebody would type: no line of the log's own books. */
  static boolean isSpokenOf(Fact fact) {
    return !fact.id().isOfTheBooks();
  }

  /** Whether a fact is a length, area, volume, mass or speed. */
  static boolean isOfTheVessel(Fact fact) {
    Unit unit = fact.value().unit();
    // A length named after a mass says where the part lies.
    boolean arm = fact.id().group().equals(FactId.MASS.group()) && unit.isCompatible(Unit.METRE);
    return isSpokenOf(fact)
        && !arm
        && !unit.isMoney()
        && !unit.isDimensionless()
        && !unit.isCompatible(Unit.HOUR)
        && fact.value().value().signum() != 0;
  }

  /** Whether a fact is of the subject herself, not of the model. */
  static boolean isFullSize(Fact fact) {
    return fact.id().isFullSize();
  }

  /** Whether a fact is the mass of all of her: of what is built, or of what she displaces. */
  static boolean isOfTheWholeBoat(Fact fact) {
    return Unit.GRAM.isCompatible(fact.value().unit())
        && Letters.words(called(fact).replace('.', ' ').replace('_', ' ')).stream()
            .anyMatch(w -> WHOLE.contains(w.letters()));
  }

  /** Name and title of a fact, the title in English where the program gave it. */
  static String called(Fact fact) {
    Catalogue english = Catalogue.of(Facts.MESSAGES, Locale.ENGLISH);
    return fact.name() + " " + english.text(fact.title());
  }

  static String show(Log log, Quantity value) {
    Head head = log.head();
    return new NumberStyle(head.locale(), head.inchDenominator()).show(value);
  }
}
