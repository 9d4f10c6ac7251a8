package chinelog.reckon;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.log.LogReader;
import chinelog.log.PriceReader;
import chinelog.log.records.Log;
import chinelog.quantity.NumberStyle;
import chinelog.wording.Catalogue;
import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Locale;
import java.util.Objects;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** What the figures of the log in this repository read like. */
class SampleLogTest {

  private static final LocalDate TODAY = LocalDate.of(2026, 6, 1);
  private static final Path FOLDER = Path.of("sample-log");

  private static Log log;
  private static Reckoner.Reckoning reckoning;

  @BeforeAll
  static void reckon() throws IOException {
    log = new LogReader(TODAY, ZoneOffset.UTC).read(FOLDER).log();
    reckoning = Reckoner.reckon(log);
  }

  @Test
  void everyFigureIsReckoned() {
    assertThat(reckoning.problems()).isEmpty();
  }

  @Test
  void everyTitleBeginsAsASentenceDoes() {
    assertThat(reckoning.facts().byName().values())
        .extracting(f -> Catalogue.of(Facts.MESSAGES, Locale.UK).text(f.title()))
        .allMatch(t -> !Character.isLowerCase(t.codePointAt(0)));
  }

  @Test
  void noReckonedFigureIsShownToMoreDigitsThanAMakerCanUse() {
    NumberStyle style = new NumberStyle(log.head().locale(), log.head().inchDenominator());
    assertThat(reckoning.facts().byName().values())
        .filteredOn(f -> f.origin() == Origin.RECKONED && f.value().tolerance() == null)
        .filteredOn(f -> f.value().unit().currency() == null)
        .extracting(f -> style.show(f.value()))
        .allMatch(s -> significant(s) <= 4 || !s.contains("."));
  }

  private static int significant(String shown) {
    return shown
        .replaceFirst("[^0-9.,−].*", "")
        .replaceAll("\\D", "")
        .replaceFirst("^0+", "")
        .length();
  }

  @Test
  void itsQuotationIsReckonedToo() {
    PriceReader.Reading reading = PriceReader.read(FOLDER.resolve("quotation.yaml"), log, TODAY);
    assertThat(reading.problems()).isEmpty();
    NextBuild.Priced priced =
        NextBuild.price(Objects.requireNonNull(reading.plan()), log, reckoning.facts());
    assertThat(priced.problems()).isEmpty();
    assertThat(priced.notes()).isEmpty();
    assertThat(QuotationWriter.page(Objects.requireNonNull(priced.quotation()), priced, log))
        .contains("A second Merrow");
  }
}
