package chinelog.reckon;

import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A reader with a calculator: works out a line such as {@code 2 × (1.5 cm × 3 cm + 4 cm²) ÷ cos
 * 30°} from what is printed, knowing nothing of the program but its units. Results are in SI units.
 */
public final class Calculator {

  /** What is no such line, such as one in words or with letters for figures. */
  private static final class NoFigures extends RuntimeException {
    private static final long serialVersionUID = 1;
  }

  private static final String DIGITS = "[0-9](?:[0-9,]*[0-9])?(?:\\.[0-9]+)?(?:E-?[0-9]+)?";
  private static final String UNIT = "(?:°C|[%‰°]|[\\p{L}µ][\\p{L}µ0-9²³⁴·/]*)";

  /** With a unit, or without; several together, such as 38 h 40 min. */
  private static final Pattern FIGURE =
      Pattern.compile(
          "(?:"
              + DIGITS
              + " h "
              + DIGITS
              + " min|(?:[0-9]+ )?[0-9]+⁄[0-9]+ in|"
              + DIGITS
              + "(?: ?"
              + UNIT
              + ")?)");

  private static final Map<Character, Double> FRACTIONS =
      Map.of('½', 1.0 / 2, '⅔', 2.0 / 3, '⅓', 1.0 / 3, '¼', 1.0 / 4, '¾', 3.0 / 4, '⅜', 3.0 / 8);

  private final String text;
  private int at;

  private Calculator(String text) {
    this.text = text;
  }

  /** What a printed line comes to, if it is one to be worked out: what stands after its last =. */
  public static OptionalDouble result(String line) {
    String text = line.strip().replaceAll("[\\u202f\\u00a0]", " ").replaceFirst("\\.$", "");
    int from = text.lastIndexOf(" = ");
    Calculator calculator = new Calculator(from < 0 ? text : text.substring(from + 3));
    try {
      double value = calculator.sum();
      calculator.space();
      return calculator.at == calculator.text.length()
          ? OptionalDouble.of(value)
          : OptionalDouble.empty();
    } catch (NoFigures e) {
      return OptionalDouble.empty();
    }
  }

  private void space() {
    while (at < text.length() && text.charAt(at) == ' ') {
      at++;
    }
  }

  private boolean takes(String sign) {
    space();
    boolean is = text.startsWith(sign, at);
    at += is ? sign.length() : 0;
    return is;
  }

  private void require(String sign) {
    if (!takes(sign)) {
      throw new NoFigures();
    }
  }

  private double sum() {
    double value = product();
    while (true) {
      if (takes("+")) {
        value += product();
      } else if (takes("−")) {
        value -= product();
      } else {
        return value;
      }
    }
  }

  private double product() {
    double value = power();
    while (true) {
      if (takes("×")) {
        value *= power();
      } else if (takes("÷")) {
        value /= power();
      } else {
        return value;
      }
    }
  }

  private double power() {
    double value = factor();
    if (takes("^⅔")) {
      return Math.cbrt(value * value);
    } else if (takes("^")) {
      return Math.pow(value, factor());
    }
    return takes("²") ? value * value : takes("³") ? value * value * value : value;
  }

  private double factor() {
    if (takes("−")) {
      return -factor();
    } else if (takes("√")) {
      return Math.sqrt(factor());
    } else if (takes("∛")) {
      return Math.cbrt(factor());
    } else if (takes("(")) {
      double value = sum();
      require(")");
      return value;
    } else if (takes("⌈")) {
      double value = sum();
      require("⌉");
      return Math.ceil(value - 1e-9);
    } else if (takes("⌊")) {
      double value = sum();
      require("⌋");
      return Math.floor(value + 1e-9);
    }
    return function();
  }

  private double function() {
    if (takes("cos² ")) {
      return Math.pow(Math.cos(factor()), 2);
    } else if (takes("tan² ")) {
      return Math.pow(Math.tan(factor()), 2);
    } else if (takes("sin ")) {
      return Math.sin(factor());
    } else if (takes("cos ")) {
      return Math.cos(factor());
    } else if (takes("tan ")) {
      return Math.tan(factor());
    } else if (takes("asin")) {
      return Math.asin(factor());
    } else if (takes("ln ")) {
      return Math.log(factor());
    } else if (takes("log10 ")) {
      return Math.log10(factor());
    } else if (takes("π")) {
      return Math.PI;
    }
    space();
    if (at < text.length() && FRACTIONS.containsKey(text.charAt(at))) {
      return FRACTIONS.getOrDefault(text.charAt(at++), 0.0);
    }
    return figure();
  }

  private double figure() {
    Matcher m = FIGURE.matcher(text).region(at, text.length());
    if (!m.lookingAt()) {
      throw new NoFigures();
    }
    at = m.end();
    try {
      return Quantity.parse(m.group().replace(",", "").replace('⁄', '/')).coherent();
    } catch (QuantityException e) {
      throw new NoFigures();
    }
  }
}
