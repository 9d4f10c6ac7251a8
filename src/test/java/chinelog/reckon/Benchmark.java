package chinelog.reckon;

import chinelog.log.LogFixture;
import chinelog.log.records.Log;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.Locale;

/**
 * How long reckoning takes: {@code main} prints a line for a log of 1,000 entries, 10,000
 * measurements and 20,000 lines of stock, one for ten times that, and one for a million facts.
 */
final class Benchmark {

  private static final LocalDate DAY = LocalDate.of(1990, 1, 1);
  private static final int ROUNDS = 5;

  private Benchmark() {}

  /** A log with ten measurements, twenty lots and one formula for each entry. */
  static Log log(int entries) {
    LogFixture log = LogFixture.merrow().scale("16").stage("planking");
    for (int lot = 0; lot < entries * 20; lot++) {
      log.lot("m" + lot % 50, "10", "12.34 GBP", DAY.plusDays(lot / 1000));
    }
    for (int i = 0; i < entries; i++) {
      int number = i;
      log.entry(
          "e" + i,
          DAY.plusDays(1000 + i),
          "planking",
          e -> {
            e.worked("1 h 20 min")
                .used("m" + number % 50, "7")
                .weighed("p" + number % 30, "12.5 g");
            for (int m = 0; m < 10; m++) {
              e.measured("fact.f" + number + "_" + m, "12.5 mm ± 0.1 mm");
            }
          });
      if (i > 0) {
        log.state("chain.c" + i, i == 1 ? "1 mm" : "chain.c" + (i - 1) + " + 1 mm");
      }
    }
    return log.build();
  }

  public static void main(String[] args) {
    PrintWriter out = new PrintWriter(System.out, true, StandardCharsets.UTF_8);
    for (int round = 0; round < ROUNDS; round++) {
      Reckoner.reckon(log(1_000));
    }
    for (int entries : new int[] {1_000, 10_000, 18_000}) {
      Log log = log(entries);
      long best = Long.MAX_VALUE;
      int facts = 0;
      for (int round = 0; round < ROUNDS; round++) {
        long start = System.nanoTime();
        facts = Reckoner.reckon(log).facts().byName().size();
        best = Math.min(best, System.nanoTime() - start);
      }
      out.printf(
          Locale.ROOT,
          "%,d entries, %,d measurements, %,d lines of stock: %,d facts in %.2f s (best of %d)%n",
          entries,
          entries * 10,
          entries * 20,
          facts,
          best / 1e9,
          ROUNDS);
    }
  }
}
