package chinelog.reckon;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.log.LogReader;
import chinelog.log.records.Log;
import chinelog.problem.Problem;
import chinelog.quantity.Quantity;
import chinelog.quantity.UnitKinds;
import chinelog.reckon.formula.Evaluator;
import chinelog.reckon.formula.Formula;
import chinelog.reckon.formula.Function;
import chinelog.reckon.formula.Functions;
import chinelog.reckon.trade.Example;
import chinelog.reckon.trade.KeptResults;
import chinelog.reckon.trade.TradeReckoning;
import chinelog.reckon.trade.TradeReckonings;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every example of the pages is put into a folder and reckoned as a maker's would be. */
class ReckoningPagesTest {

  private static final LocalDate TODAY = LocalDate.of(2026, 6, 30);
  private static final Path PAGE = Path.of("RECKONINGS.md");

  static List<String> names() {
    return TradeReckonings.names();
  }

  static List<Function> functions() {
    return Functions.all();
  }

  @ParameterizedTest
  @MethodSource("names")
  void theExampleYieldsWhatThePagePromisesAndNothingElse(String name, @TempDir Path folder)
      throws IOException {
    TradeReckoning reckoning = TradeReckonings.find(name).orElseThrow();
    Example example = reckoning.example();
    Files.writeString(folder.resolve("log.yaml"), "title: Building Merrow\nscale: 1:16\n");
    Files.writeString(folder.resolve("facts.yaml"), example.facts());
    Files.createDirectory(folder.resolve("tables"));
    for (var table : example.tables().entrySet()) {
      Files.writeString(folder.resolve("tables/" + table.getKey() + ".csv"), table.getValue());
    }
    LogReader.Reading read = new LogReader(TODAY, ZoneOffset.UTC).read(folder);
    KeptResults kept = KeptResults.of(Map.of());
    Reckoner.Reckoning reckoned = Reckoner.reckon(read.log(), kept);
    assertThat(kept.fresh().orElseThrow())
        .as("what can be kept")
        .hasSameSizeAs(read.log().requests());
    assertThat(read.problems()).filteredOn(Problem::isError).isEmpty();
    assertThat(reckoned.problems()).isEmpty();
    Set<String> offered = new TreeSet<>();
    Log log = read.log();
    Set<String> yields =
        log.requests().stream()
            .filter(r -> r.reckoning().value().equals(name))
            .flatMap(
                r ->
                    reckoned.facts().byName().keySet().stream()
                        .filter(f -> f.startsWith(r.prefix() + "."))
                        .map(f -> f.substring(r.prefix().length() + 1)))
            .collect(Collectors.toSet());
    assertThat(yields).isNotEmpty();
    for (String yield : yields) {
      List<TradeReckoning.Offer> of =
          reckoning.offers().stream().filter(o -> covers(o.name(), yield)).toList();
      assertThat(of).as(yield).isNotEmpty();
      of.forEach(o -> offered.add(o.name()));
    }
    assertThat(reckoning.offers())
        .extracting(TradeReckoning.Offer::name)
        .allMatch(offered::contains);
    List<String> page = ReckoningPages.page(name).orElseThrow();
    reckoning
        .parameters()
        .forEach(p -> assertThat(page).anyMatch(l -> l.startsWith("  " + p.name() + ":")));
  }

  /** An end of … stands for a name for each row of a table. */
  private static boolean covers(String offer, String yield) {
    return offer.endsWith("…")
        ? yield.startsWith(offer.substring(0, offer.length() - 1))
        : yield.equals(offer);
  }

  @ParameterizedTest
  @MethodSource("functions")
  void theExampleOfAFunctionHasAValue(Function function) throws Exception {
    Formula formula = Formula.parse(function.example());
    Quantity value =
        Evaluator.evaluate(
            formula.tree(),
            n -> {
              throw new IllegalArgumentException(n);
            });
    assertThat(value.toString()).isNotBlank();
    assertThat(function.example()).startsWith(function.name() + "(");
  }

  @Test
  void everyUnitToldCanBeWritten() throws Exception {
    for (UnitKinds.Kind kind : UnitKinds.all()) {
      assertThat(kind.symbols()).as(kind.title()).isNotEmpty();
      for (String symbol : kind.symbols()) {
        assertThat(Quantity.parse("2 " + symbol).unit().symbol()).isEqualTo(symbol);
      }
    }
  }

  /** Written anew by {@code mvn test -Dtest=ReckoningPagesTest -Dchinelog.write=1}. */
  @Test
  void thePageOfDocumentationIsMadeFromTheSameRecords() throws IOException {
    if (System.getProperty("chinelog.write") != null) {
      Files.writeString(PAGE, ReckoningPages.markdown());
    }
    assertThat(Files.readString(PAGE)).isEqualTo(ReckoningPages.markdown());
  }
}
