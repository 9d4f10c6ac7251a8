package chinelog.withhold.question;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A number that counts nothing but names a thing: a hull, an order, a drawing, as in "No. 1174",
 * "Baunummer 1174" or "SY-1142/3".
 *
 * @param digits without what is before them
 * @param named whether a word before it says that it is one
 */
record SerialNumber(int start, int end, String digits, boolean named) {

  private static final int LONG = 5;
  private static final int ENOUGH = 4;

  private static final Pattern SERIAL =
      Pattern.compile(
          "(?<named>(?:(?<![\\p{L}\\d])(?:no|nos|nr|num|n\u00fam|number|nummer|num\u00e9ro|n\u00famero|numero|hull|yard"
              + "|order|job|sheet|drawing|ref|reference|baunummer|bau|auftrag|auftragsnummer|rumpf"
              + "|zeichnung|blatt|bouwnummer|opdracht|ordernummer|tekening|romp|coque|commande|plan"
              + "|dessin|casco|pedido|plano|encargo)|n[\u00b0\u00ba]|n\\.[\u00b0\u00bao]|\u2116|#|[\\p{L}\\d][-/])"
              + "[.:,]?[\\s\u00a0]{0,2})?(?<![\\p{L}\\d][.,:]|[\\d\u00a3\u20ac$])"
              + "(?<digits>\\d{3,9})(?![\\p{L}\\d]|[.,:]\\d|[-/]\\d{2}(?!\\d))",
          Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE);

  /** What it counts, if it counts something. */
  private static final Pattern UNIT =
      Pattern.compile("[\\s\u00a0\u202f-]{0,2}([\\p{L}\u00b0%\u00a3\u20ac$]+[\u00b2\u00b3]?)");

  static List<SerialNumber> in(String text) {
    List<SerialNumber> found = new ArrayList<>();
    Matcher m = SERIAL.matcher(text);
    while (m.find()) {
      if (!hasUnit(text, m.end())) {
        boolean named = m.group("named") != null;
        found.add(new SerialNumber(m.start("digits"), m.end(), m.group("digits"), named));
      }
    }
    return found;
  }

  private static boolean hasUnit(String text, int from) {
    Matcher m = UNIT.matcher(text).region(from, text.length());
    if (!m.lookingAt() || m.group(1).equals("in") || m.group(1).equals("a")) {
      return false;
    }
    return UnitWords.find(m.group(1)).isPresent()
        || !UnitWords.named(Letters.fold(m.group(1))).isEmpty();
  }

  /** Whether a withheld text tells of it, and not of a year or of so many things. */
  boolean isTold() {
    return named && !isYear() || digits.length() >= LONG;
  }

  /** Whether an open text may mean the same. */
  boolean isTelling() {
    return named || digits.length() >= ENOUGH;
  }

  private boolean isYear() {
    return digits.length() == ENOUGH && (digits.startsWith("19") || digits.startsWith("20"));
  }
}
