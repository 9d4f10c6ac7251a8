package chinelog.quantity;

import chinelog.problem.Sentence;
import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * Numbers that stand for a thickness, such as wire of {@code swg(20)}, 0.036 in.
 *
 * <p>The same number means another size in every gauge, so each is named.
 */
public enum Gauge {
  /** American wire gauge: 0.005 in × 92^((36 − n)/39), n from 0 to 40 (ASTM B258). */
  AWG {
    @Override
    Optional<Quantity> findSize(int n) {
      if (n < 0 || n > 40) {
        return Optional.empty();
      }
      double inches = 0.005 * StrictMath.pow(92, (36 - n) / 39.0);
      return Optional.of(Quantity.of(BigDecimal.valueOf(inches), Unit.INCH));
    }
  },
  /** Standard wire gauge, 0 to 40, in thousandths of an inch (BS 3737; from memory but for 20). */
  SWG {
    @Override
    Optional<Quantity> findSize(int n) {
      return n < 0 || n >= SWG_MILS.size()
          ? Optional.empty()
          : Optional.of(Quantity.of(new BigDecimal(SWG_MILS.get(n)), Unit.known("mil")));
    }
  },
  /**
   * Manufacturers' Standard gauge of sheet steel, 3 to 38: ounces to the square foot at 501.84
   * lb/ft³ (from memory but for 18).
   */
  MSG {
    @Override
    Optional<Quantity> findSize(int n) {
      if (n < 3 || n - 3 >= MSG_OUNCES.size()) {
        return Optional.empty();
      }
      BigDecimal feet =
          new BigDecimal(MSG_OUNCES.get(n - 3))
              .divide(new BigDecimal("16").multiply(new BigDecimal("501.84")), Unit.PRECISION);
      return Optional.of(
          Quantity.of(feet.multiply(BigDecimal.valueOf(12), Unit.PRECISION), Unit.INCH));
    }
  },
  /** Median grain of coated abrasives, P12 to P2500 (FEPA 43-1, ISO 6344; from memory but P320). */
  GRIT {
    @Override
    Optional<Quantity> findSize(int n) {
      return Optional.ofNullable(GRIT_MICRONS.get(n))
          .map(size -> Quantity.of(new BigDecimal(size), Unit.known("µm")));
    }
  };

  private static final List<String> SWG_MILS =
      List.of(
          "324", "300", "276", "252", "232", "212", "192", "176", "160", "144", "128", "116", "104",
          "92", "80", "72", "64", "56", "48", "40", "36", "32", "28", "24", "22", "20", "18",
          "16.4", "14.8", "13.6", "12.4", "11.6", "10.8", "10.0", "9.2", "8.4", "7.6", "6.8", "6.0",
          "5.2", "4.8");

  private static final List<String> MSG_OUNCES =
      List.of(
          "160", "150", "140", "130", "120", "110", "100", "90", "80", "70", "60", "50", "45", "40",
          "36", "32", "28", "24", "22", "20", "18", "16", "14", "12", "11", "10", "9", "8", "7",
          "6.5", "6", "5.5", "5", "4.5", "4.25", "4");

  private static final Map<Integer, String> GRIT_MICRONS = new TreeMap<>();

  static {
    String sizes =
        "12 1815 16 1324 20 1000 24 764 30 642 36 538 40 425 50 336 60 269 80 201 100 162 120 125"
            + " 150 100 180 82 220 68 240 58.5 280 52.2 320 46.2 360 40.5 400 35.0 500 30.2 600"
            + " 25.8 800 21.8 1000 18.3 1200 15.3 1500 12.6 2000 10.3 2500 8.4";
    String[] words = sizes.split(" ", -1);
    for (int i = 0; i < words.length; i += 2) {
      GRIT_MICRONS.put(Integer.valueOf(words[i]), words[i + 1]);
    }
  }

  abstract Optional<Quantity> findSize(int n);

  /**
   * The thickness, diameter or grain that number {@code n} stands for.
   *
   * @throws QuantityException if the gauge has no such number
   */
  public Quantity size(int n) throws QuantityException {
    return findSize(n)
        .orElseThrow(
            () ->
                new QuantityException(
                    Sentence.of("{0} has no number {1}.", name(), n),
                    "Write a number of that gauge, or the size itself.",
                    0));
  }

  /** The gauge that a formula names, such as {@code swg}. */
  public static Optional<Gauge> find(String function) {
    return Stream.of(values())
        .filter(g -> g.name().toLowerCase(Locale.ROOT).equals(function))
        .findFirst();
  }
}
