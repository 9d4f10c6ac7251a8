package chinelog.withhold.question;

import chinelog.label.Label;
import chinelog.problem.Sentence;
import chinelog.quantity.NumberWords;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Looks for withheld figures, in whatever unit, rounding or words they are typed.
 *
 * <p>A figure of three digits that count is asked about wherever a withheld one of its kind rounds
 * to it; one of two digits, where it is exactly what was stated or measured; a rounder one, or one
 * without its unit, where a word for the withheld figure stands in the same sentence. Nothing is
 * asked about a figure that a fact shows by right, unless the sentence speaks of the withheld one.
 */
final class FigureWatch {

  private static final int THREE_DIGITS = 100;

  /** With decimals, a figure as fine as 0.50 m is asked about. */
  private static final int DECIMALS = 50;

  private static final int FOUR_DIGITS = 1000;
  private static final int TWO_DIGITS = 10;
  private static final double SAME = 1e-9;

  /** Units in which people say a figure without naming them. */
  private static final List<String> SPOKEN =
      List.of(
          "mm", "cm", "m", "in", "ft", "g", "kg", "oz", "lb", "L", "kn", "m/s", "cm³", "m³", "m²");

  /** How sure it is that a figure is the withheld one, the least first. */
  private enum Match {
    NONE,
    ROUND,
    EXACT,
    NAMED
  }

  /** So many last digits of a long number are no chance. */
  private static final int LONG = 7;

  private static final Pattern LONG_NUMBER =
      Pattern.compile("(?<![\\p{L}\\d])[+(]*\\d(?:[ \u00a0\u202f()/.\u2013-]{0,3}\\d){6,}");

  private static final Pattern NO_DIGIT = Pattern.compile("\\D");
  private static final Pattern DAY = Pattern.compile("\\d{4}-\\d{2}-\\d{2}");

  private final Map<String, Twin> longNumbers = new HashMap<>();
  private final List<NumberWords> languages = new ArrayList<>();
  private final double closeness;
  private final List<Secret> secrets = new ArrayList<>();
  private final List<Secret> prices = new ArrayList<>();
  private final List<Shown> shown = new ArrayList<>();
  private final Map<Unit, double[]> inUnit = new HashMap<>();
  private final Map<Unit, double[]> shownInUnit = new HashMap<>();
  private final Map<Pattern, Secret> scales = new HashMap<>();
  private final Set<CharSequence> unguarded = new TreeSet<>(CharSequence::compare);
  private final List<Typed> typed = new ArrayList<>();
  private int unguardedReckoned;

  /**
   * A figure in a withheld text.
   *
   * @param step of its last digit, in its own unit; 0 if it was worked out
   * @param near words that speak of it; empty if its size is enough
   */
  private record Typed(
      CharSequence what, Quantity value, double step, Label label, Set<String> near) {}

  /** A withheld figure that an open one may be, and what it is under. */
  record Twin(CharSequence what, Label label) {}

  /**
   * A figure of a withheld text or column that a fact may be, where it has digits enough to tell.
   *
   * @param titles what the fact is called
   * @param ofTheVessel whether it is a figure of her, which its size alone may tell
   */
  Optional<Twin> findTwin(Quantity fact, String titles, boolean ofTheVessel) {
    // A zero after the point was read off; one before it may only say how large the figure is.
    boolean decimals = fact.value().scale() > 0;
    if ((decimals ? fact.value() : fact.value().stripTrailingZeros()).precision() < 3) {
      return Optional.empty();
    }
    double digit = Math.pow(10, -Math.max(0, fact.value().scale()));
    Quantity last = Quantity.of(BigDecimal.valueOf(digit), fact.unit());
    Set<String> near = TradeWords.near(titles);
    return typed.stream()
        .filter(t -> t.value.unit().isCompatible(fact.unit()))
        .filter(t -> t.near.isEmpty() ? ofTheVessel : t.near.stream().anyMatch(near::contains))
        .filter(
            t ->
                Math.abs(in(fact, t.value.unit()) - t.value.value().doubleValue())
                    <= (t.step > 0 ? t.step : in(last, t.value.unit())) / 2 * (1 + SAME))
        .map(t -> new Twin(t.what, t.label))
        .findFirst();
  }

  /**
   * A withheld figure.
   *
   * @param near words that speak of it
   * @param firm whether it was stated, measured or paid, and not worked out
   * @param cell whether it is one of the many of a table
   */
  private record Secret(
      CharSequence what,
      Quantity value,
      Label label,
      Set<String> near,
      boolean firm,
      boolean cell) {}

  private record Shown(Quantity value, Set<String> near) {}

  FigureWatch(Locale locale, double closeness) {
    languages.add(NumberWords.of(locale));
    this.closeness = closeness;
  }

  /** Notes a figure that these readers see by right. */
  void show(Quantity value, String titles) {
    shown.add(new Shown(value, TradeWords.near(titles)));
  }

  void withhold(
      CharSequence what, Quantity value, Label label, String titles, boolean firm, boolean cell) {
    Unit unit = value.unit();
    boolean hours = unit.symbol().matches("h|min|d|week");
    boolean number = firm && !cell && unit.equals(Unit.ONE) && isNumber(value);
    if (value.value().signum() == 0 || unit.isDimensionless() && !number || hours) {
      if (firm && !cell) {
        unguarded.add(what);
      } else if (!cell) {
        unguardedReckoned++;
      }
      return;
    }
    Secret secret = new Secret(what, value, label, TradeWords.near(titles), firm, cell);
    secrets.add(secret);
    if (unit.isMoney()) {
      prices.add(secret);
    }
  }

  /** Whether a plain number has digits enough to be known again, as a hull's has. */
  private static boolean isNumber(Quantity value) {
    BigDecimal plain = value.value().stripTrailingZeros();
    return plain.precision() >= 3 && plain.compareTo(BigDecimal.TEN) >= 0;
  }

  /** Notes what the figures of a column come to that is withheld, in whole or in part. */
  void withholdColumn(String table, String column, List<Quantity> values, Label label) {
    Unit unit = values.get(0).unit();
    String titles = table + " " + column;
    Set<String> near = TradeWords.nearInAnyNumber(titles);
    if (TradeWords.near(column).isEmpty()) {
      // Of a column "x" no word tells what it is of.
      return;
    }
    Map<String, BigDecimal> all = new TreeMap<>();
    List<BigDecimal> figures = values.stream().map(Quantity::value).toList();
    BigDecimal sum = figures.stream().reduce(BigDecimal.ZERO, BigDecimal::add);
    all.put("sum", sum);
    all.put("mean", sum.divide(BigDecimal.valueOf(figures.size()), MathContext.DECIMAL64));
    all.put("min", Collections.min(figures));
    all.put("max", Collections.max(figures));
    all.forEach(
        (function, figure) -> {
          Sentence what = Sentence.of("{0} of the table {1}", function + "(" + column + ")", table);
          Quantity value = Quantity.of(figure, unit);
          typed.add(new Typed(what, value, 0, label, near));
          withhold(what, value, label, String.join(" ", near), true, true);
        });
  }

  /** Notes a withheld scale, such as 16 for 1:16. */
  void withholdScale(BigDecimal denominator, Label label) {
    String n = denominator.stripTrailingZeros().toPlainString();
    Quantity value = Quantity.of(denominator, Unit.ONE);
    scales.put(
        Pattern.compile(
            "(?<![\\d:.,])(?:1|one|eins|een|un|uno)\\s?(?:[:/∶]|to|zu|op|sur|a)\\s?\\Q"
                + n
                + "\\E(?![\\d:])"),
        new Secret(Sentence.of("the scale, 1:{0}", n), value, label, Set.of(), true, false));
  }

  /** Notes the figures of a withheld text, and its long numbers, such as one to ring. */
  void withholdFiguresIn(String text, CharSequence what, Label label) {
    Matcher digits = LONG_NUMBER.matcher(text);
    while (digits.find()) {
      Sentence number =
          Sentence.of(
              "the figure \u201c{0}\u201d of {1}", digits.group().strip(), Sentence.of(what));
      ending(digits.group())
          .ifPresent(end -> longNumbers.putIfAbsent(end, new Twin(number, label)));
    }
    for (Mention m : Mentions.in(text, Letters.all(text), languages)) {
      Unit unit = m.unit();
      if (unit == null || m.spelled() && m.value() < TWO_DIGITS && m.step() == 1) {
        continue;
      }
      int decimals = (int) Math.max(0, Math.round(-Math.log10(m.step())));
      Quantity value =
          Quantity.of(BigDecimal.valueOf(m.value()).setScale(decimals, RoundingMode.HALF_UP), unit);
      String sentence = Letters.sentence(text, m.start(), m.end());
      Set<String> words = letters(sentence);
      words.removeIf(w -> TradeWords.near(w).size() < 3);
      CharSequence figure =
          Sentence.of(
              "the figure \u201c{0}\u201d of {1}",
              text.substring(m.start(), m.end()), Sentence.of(what));
      if (m.fineness() >= THREE_DIGITS && !unit.isDimensionless()) {
        typed.add(new Typed(figure, value, m.step(), label, Set.of()));
      }
      withhold(figure, value, label, String.join(" ", words), m.fineness() >= THREE_DIGITS, false);
    }
  }

  private static Set<String> letters(String text) {
    Set<String> letters = new HashSet<>();
    Letters.words(text).forEach(w -> letters.add(w.letters()));
    return letters;
  }

  /** The last digits of a long number, however it is grouped; none of a day. */
  private static Optional<String> ending(String number) {
    String digits = NO_DIGIT.matcher(number).replaceAll("");
    return digits.length() < LONG || DAY.matcher(number).find()
        ? Optional.empty()
        : Optional.of(digits.substring(digits.length() - LONG));
  }

  List<Hit> find(SeenText text) {
    List<Hit> hits = new ArrayList<>();
    Matcher digits = LONG_NUMBER.matcher(text.text());
    while (!longNumbers.isEmpty() && digits.find()) {
      Twin twin = ending(digits.group()).map(longNumbers::get).orElse(null);
      if (twin != null) {
        hits.add(
            new Hit(Question.Kind.FIGURE, digits.start(), digits.end(), twin.what, twin.label));
      }
    }
    scales.forEach(
        (pattern, secret) -> {
          Matcher m = pattern.matcher(text.text());
          while (m.find()) {
            hits.add(new Hit(Question.Kind.FIGURE, m.start(), m.end(), secret.what, secret.label));
          }
        });
    if (secrets.isEmpty()) {
      return hits;
    }
    for (Mention mention : text.reading().mentions(languages)) {
      Secret secret = find(mention, text.text());
      if (secret != null
          && hits.stream().noneMatch(h -> h.start() < mention.end() && mention.start() < h.end())) {
        hits.add(
            new Hit(
                Question.Kind.FIGURE, mention.start(), mention.end(), secret.what, secret.label));
      }
    }
    return hits;
  }

  private @Nullable Secret find(Mention m, String text) {
    Around around = new Around(text, m);
    Secret best = null;
    Match how = Match.NONE;
    List<Mention> readings = new ArrayList<>();
    if (m.unit() == null) {
      if (m.fineness() < TWO_DIGITS) {
        return null;
      }
      SPOKEN.forEach(s -> readings.add(m.with(UnitWords.find(s).orElseThrow())));
      readings.add(m.with(Unit.ONE));
    } else {
      readings.add(m);
    }
    for (Mention reading : readings) {
      Unit unit = Objects.requireNonNull(reading.unit());
      double[] values = inUnit.computeIfAbsent(unit, this::convert);
      for (int i = 0; i < values.length; i++) {
        if (!Double.isNaN(values[i])) {
          Match match = match(reading, values[i], secrets.get(i), m.unit() == null, around);
          if (match.compareTo(how) > 0) {
            how = match;
            best = secrets.get(i);
          }
        }
      }
      if (how != Match.NONE && isShown(reading, unit, how == Match.NAMED ? around : null)) {
        return null;
      }
    }
    if (m.unit() == null) {
      for (Secret secret : prices) {
        Match match = money(m, secret, around);
        if (match.compareTo(how) > 0) {
          how = match;
          best = secret;
        }
      }
    }
    boolean plain = m.unit() == null || m.unit().isDimensionless();
    return best == null && plain && m.step() < 1 ? ofARatio(m, around) : best;
  }

  /**
   * What a ratio gives away, such as "3.75 times as long as she is broad": a withheld figure beside
   * a shown one of its kind, or two withheld ones, both spoken of in the sentence.
   */
  private @Nullable Secret ofARatio(Mention m, Around around) {
    if (m.spelled() || m.fineness() < DECIMALS) {
      return null;
    }
    double one = m.unit() == null ? 1 : Quantity.of(1, m.unit()).coherent();
    List<Secret> spoken =
        secrets.stream()
            .filter(s -> !s.cell && !s.value.unit().isDimensionless() && around.speaksOf(s.near))
            .toList();
    for (Secret secret : spoken) {
      for (Shown open : m.fineness() < THREE_DIGITS ? List.<Shown>of() : shown) {
        if (isRatio(m, one, secret.value, open.value) && around.speaksOf(open.near)) {
          return secret;
        }
      }
      for (Secret other : spoken) {
        if (!other.near.equals(secret.near) && isRatio(m, one, secret.value, other.value)) {
          return secret;
        }
      }
    }
    return null;
  }

  private static boolean isRatio(Mention m, double one, Quantity a, Quantity b) {
    return a.unit().isCompatible(b.unit())
        && (isSame(m, one, a.coherent() / b.coherent())
            || isSame(m, one, b.coherent() / a.coherent()));
  }

  private static boolean isSame(Mention m, double one, double ratio) {
    return Math.abs(m.value() * one - ratio) <= m.step() * one / 2 * (1 + SAME);
  }

  private Match match(Mention m, double value, Secret secret, boolean bare, Around around) {
    double off = Math.abs(Math.abs(value) - m.value());
    boolean exact = off <= m.step() / 2 * (1 + SAME);
    boolean same = off <= SAME * Math.abs(value);
    double fineness = m.fineness();
    if (bare) {
      boolean own = secret.firm && !secret.cell && Objects.equals(secret.value.unit(), m.unit());
      boolean telling = exact && (own || fineness >= THREE_DIGITS || same);
      return telling && around.speaksOf(secret.near) ? Match.NAMED : Match.NONE;
    }
    boolean close = off <= closeness * Math.abs(value) && fineness >= 2;
    if ((exact || close) && around.speaksOf(secret.near)) {
      return exact || !secret.cell ? Match.NAMED : Match.NONE;
    }
    // Whoever writes decimals has read them off something.
    double enough = m.step() < 1 ? DECIMALS : THREE_DIGITS;
    if (exact && fineness >= (secret.cell ? FOUR_DIGITS : enough)) {
      return Match.EXACT;
    }
    return same && fineness >= TWO_DIGITS && secret.firm && !secret.cell ? Match.EXACT : Match.NONE;
  }

  /** A price without its currency. */
  private static Match money(Mention m, Secret secret, Around around) {
    double value = Math.abs(secret.value.value().doubleValue());
    boolean exact = Math.abs(value - m.value()) <= m.step() / 2 * (1 + SAME);
    boolean year = m.step() == 1 && m.value() >= 1900 && m.value() < 2100;
    if (!exact || m.fineness() < TWO_DIGITS) {
      return Match.NONE;
    }
    if (around.speaksOf(secret.near)) {
      return Match.NAMED;
    }
    return m.fineness() >= FOUR_DIGITS && !year ? Match.EXACT : Match.NONE;
  }

  /**
   * Whether a figure may be one that a fact shows by right.
   *
   * @param around the sentence, which must speak of that fact; null where it need not
   */
  private boolean isShown(Mention m, Unit unit, @Nullable Around around) {
    double[] values =
        shownInUnit.computeIfAbsent(
            unit, u -> shown.stream().mapToDouble(s -> in(s.value, u)).toArray());
    for (int i = 0; i < values.length; i++) {
      if (Math.abs(Math.abs(values[i]) - m.value()) <= m.step() / 2 * (1 + SAME)
          && (around == null || around.speaksOf(shown.get(i).near))) {
        return true;
      }
    }
    return false;
  }

  private double[] convert(Unit unit) {
    return secrets.stream().mapToDouble(s -> in(s.value, unit)).toArray();
  }

  private static double in(Quantity quantity, Unit unit) {
    Unit own = quantity.unit();
    try {
      if (own.isCompatible(unit)) {
        return quantity.doubleIn(unit);
      }
    } catch (QuantityException e) {
      throw new IllegalStateException("units of one kind", e);
    }
    // "£34 an hour" names the hour in words.
    boolean rate = own.isMoney() && unit.isMoney() && own.symbol().startsWith(unit.symbol() + "/");
    return rate ? quantity.value().doubleValue() : Double.NaN;
  }

  /** The sentence around a figure; read only if it matters. */
  private static final class Around {
    private final String text;
    private final Mention mention;
    private @Nullable Set<String> words;

    Around(String text, Mention mention) {
      this.text = text;
      this.mention = mention;
    }

    boolean speaksOf(Set<String> near) {
      Set<String> there = words;
      if (there == null) {
        there = letters(Letters.sentence(text, mention.start(), mention.end()));
        words = there;
      }
      return there.stream().anyMatch(near::contains);
    }
  }

  /** How many figures that were worked out nothing looks for. */
  int unguardedReckoned() {
    return unguardedReckoned;
  }

  /** Stated figures that nothing looks for. */
  Set<CharSequence> unguarded() {
    return unguarded;
  }
}
