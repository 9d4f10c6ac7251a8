package chinelog.quantity;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;

/** Inches as a reduced fraction, such as 1 3⁄16. */
record InchFraction(BigInteger numerator, BigInteger denominator) {

  private static final char FRACTION_SLASH = '\u2044';

  /** The nearest fraction with that denominator; a tie goes up (away from zero). */
  static InchFraction nearest(BigDecimal inches, int denominator) {
    BigInteger n =
        inches
            .multiply(BigDecimal.valueOf(denominator))
            .setScale(0, RoundingMode.HALF_UP)
            .toBigIntegerExact();
    BigInteger d = BigInteger.valueOf(denominator);
    BigInteger common = n.signum() == 0 ? d : n.gcd(d);
    return new InchFraction(n.divide(common), d.divide(common));
  }

  BigDecimal value() {
    return new BigDecimal(numerator).divide(new BigDecimal(denominator), Unit.PRECISION);
  }

  String text() {
    BigInteger[] parts = numerator.abs().divideAndRemainder(denominator);
    String sign = numerator.signum() < 0 ? "\u2212" : "";
    String fraction = parts[1].toString() + FRACTION_SLASH + denominator;
    if (parts[1].signum() == 0) {
      return sign + parts[0];
    }
    return parts[0].signum() == 0
        ? sign + fraction
        : sign + parts[0] + NumberStyle.NARROW_SPACE + fraction;
  }

  /** As {@link #text}, but with a 0 before a lone fraction where feet stand before it. */
  String textAfterFeet(boolean feet) {
    boolean lone = numerator.compareTo(denominator) < 0 && numerator.signum() > 0;
    return feet && lone ? "0" + NumberStyle.NARROW_SPACE + text() : text();
  }
}
