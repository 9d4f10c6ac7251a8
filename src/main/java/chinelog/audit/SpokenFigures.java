package chinelog.audit;

import chinelog.quantity.NumberWords;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Figures that are spelled out, read back: "eleven point two metres" as {@code 11.2 m}, "drei
 * Sechzehntel Zoll" as {@code 0 3/16 in}, "one to sixteen" as {@code 1:16}, in the five languages
 * of a log. Nothing of it is shared with whoever spells them.
 */
final class SpokenFigures {

  private static final Pattern WORD = Pattern.compile("[\\p{L}\\p{M}\u00ad]+");
  private static final Pattern ACCENTS = Pattern.compile("[\\p{M}\u00ad]");
  private static final List<String> LANGUAGES = List.of("en", "de", "nl", "fr", "es");
  private static final int MOST_WORDS = 12;
  private static final int UNIT_WORDS = 4;

  /** Words that may stand between a number and its unit. */
  private static final Set<String> BETWEEN = Set.of("of", "an", "a", "de", "d");

  private static final Set<String> AND = Set.of("and", "und", "en", "et", "y", "con");
  private static final Set<String> TO = Set.of("to", "zu", "op", "sur", "a");

  private static final Map<String, String> UNITS = new HashMap<>();
  private static final Map<String, Integer> PARTS = new HashMap<>();

  static {
    unit("m", "metre metres meter meters metern metro metros");
    unit("mm", "millimetre millimetres millimeter millimeters millimetern milimetro milimetros");
    unit("cm", "centimetre centimetres centimeter centimeters zentimeter zentimetern");
    unit("cm", "centimetro centimetros");
    unit("km", "kilometre kilometres kilometer kilometers kilometern kilometro kilometros");
    unit("in", "inch inches zoll pouce pouces pulgada pulgadas");
    unit("ft", "foot feet fuss voet pied pieds pie pies");
    unit("yd", "yard yards yarda yardas");
    unit("g", "gram grams gramme grammes gramm gramo gramos");
    unit("kg", "kilogram kilograms kilogramme kilogrammes kilogramm kilogramo kilogramos");
    unit("kg", "kilo kilos");
    unit("mg", "milligram milligrams milligramme milligrammes milligramm miligramo miligramos");
    unit("t", "tonne tonnes tonnen ton tons tonelada toneladas metrictons");
    unit("oz", "ounce ounces unze unzen once onces onza onzas");
    unit("lb", "pound pounds pfund pond livre livres libra libras");
    unit("mL", "millilitre millilitres milliliter milliliters millilitern mililitro mililitros");
    unit("L", "litre litres liter liters litern litro litros");
    unit("m²", "squaremetre squaremetres squaremeter squaremeters quadratmeter vierkantemeter");
    unit("m²", "metrecarre metrescarres metrocuadrado metroscuadrados");
    unit("cm²", "squarecentimetre squarecentimetres squarecentimeter squarecentimeters");
    unit("cm²", "quadratzentimeter vierkantecentimeter centimetrecarre centimetrescarres");
    unit("cm²", "centimetrocuadrado centimetroscuadrados");
    unit("mm²", "squaremillimetre squaremillimetres squaremillimeters quadratmillimeter");
    unit("mm²", "vierkantemillimeter millimetrecarre millimetrescarres milimetroscuadrados");
    unit("m³", "cubicmetre cubicmetres cubicmeter cubicmeters kubikmeter kubiekemeter");
    unit("m³", "metrecube metrescubes metrocubico metroscubicos");
    unit("cm³", "cubiccentimetre cubiccentimetres cubiccentimeter cubiccentimeters");
    unit("cm³", "kubikzentimeter kubiekecentimeter centimetrecube centimetrescubes");
    unit("cm³", "centimetrocubico centimetroscubicos");
    unit("kn", "knot knots knoten knoop knopen noeud noeuds nudo nudos");
    unit("m/s", "metrepersecond metrespersecond meterpersecond meterspersecond meterprosekunde");
    unit("m/s", "meterperseconde metreparseconde metresparseconde metroporsegundo");
    unit("m/s", "metrosporsegundo");
    unit("g/m²", "gramspersquaremetre gramspersquaremeter grammproquadratmeter");
    unit("g/m²", "grampervierkantemeter grammesparmetrecarre gramospormetrocuadrado");
    unit("GBP", "britishpounds librasesterlinas livressterling");
    unit("EUR", "euro euros");
    unit("USD", "dollar dollars dolar dolares");
    part(2, "half halves halb halber halbe halbes einhalb halve demi demie medio media");
    part(3, "third thirds drittel derde tiers tercio tercios");
    part(4, "quarter quarters viertel kwart quart quarts cuarto cuartos");
    part(8, "eighth eighths achtel achtste huitieme huitiemes octavo octavos");
    part(16, "sixteenth sixteenths sechzehntel zestiende seizieme seiziemes");
    part(16, "dieciseisavo dieciseisavos");
    part(32, "thirtysecond thirtyseconds zweiunddreissigstel tweeendertigste");
    part(32, "trentedeuxieme trentedeuxiemes treintaidosavo treintaidosavos");
    part(64, "sixtyfourth sixtyfourths vierundsechzigstel vierenzestigste");
    part(64, "soixantequatrieme soixantequatriemes sesentaicuatroavo sesentaicuatroavos");
    part(100, "hundredth hundredths hundertstel honderdste centieme centiemes centesimas");
    part(1000, "thousandth thousandths tausendstel duizendste millieme milliemes milesimas");
  }

  private final List<String> words;
  private final NumberWords numbers;
  private final List<String> found = new ArrayList<>();

  private SpokenFigures(List<String> words, NumberWords numbers) {
    this.words = words;
    this.numbers = numbers;
  }

  private static void unit(String symbol, String names) {
    for (String name : names.split(" ")) {
      UNITS.put(name, symbol);
    }
  }

  private static void part(int of, String names) {
    for (String name : names.split(" ")) {
      PARTS.put(name, of);
    }
  }

  /** All that are spelled out in a text, as they are written, with a form feed between. */
  static String in(String text) {
    List<String> words = new ArrayList<>();
    Matcher m = WORD.matcher(text);
    while (m.find()) {
      words.add(folded(m.group()));
    }
    List<String> found = new ArrayList<>();
    for (String language : LANGUAGES) {
      SpokenFigures figures =
          new SpokenFigures(words, NumberWords.of(Locale.forLanguageTag(language)));
      figures.read();
      found.addAll(figures.found);
    }
    return String.join("\f", found);
  }

  private static String folded(String word) {
    return ACCENTS
        .matcher(Normalizer.normalize(word, Normalizer.Form.NFKD))
        .replaceAll("")
        .toLowerCase(Locale.ROOT)
        .replace("ß", "ss")
        .replace("œ", "oe");
  }

  private String word(int at) {
    return at < words.size() ? words.get(at) : "";
  }

  private void read() {
    for (int at = 0; at < words.size(); at++) {
      Number whole = number(at);
      if (whole != null) {
        figure(whole);
        at = Math.max(at, whole.end - 1);
      }
    }
  }

  /**
   * A number.
   *
   * @param end of its words
   */
  private record Number(long value, int end) {}

  /** The longest that begins here; null for none. */
  private @Nullable Number number(int at) {
    StringBuilder letters = new StringBuilder();
    Number longest = null;
    for (int end = at; end < Math.min(words.size(), at + MOST_WORDS); end++) {
      String word = words.get(end);
      if (end > at && numbers.joins(word)) {
        continue;
      }
      if (end > at && PARTS.containsKey(word + word(end + 1))) {
        // "One thirty-second" is not a hundred and thirty.
        break;
      }
      letters.append(word);
      int value = numbers.findLarge(letters.toString());
      if (value >= 0) {
        longest = new Number(value, end + 1);
      }
    }
    return longest;
  }

  private void figure(Number whole) {
    int at = whole.end;
    if (whole.value == 1 && TO.contains(word(at))) {
      Number scale = number(at + 1);
      if (scale != null) {
        found.add("1:" + scale.value);
      }
    }
    if (numbers.isPoint(word(at))) {
      decimals(whole, at + 1);
      return;
    }
    Part alone = part(at);
    if (alone != null) {
      unit(alone.end, "0 " + whole.value + "/" + alone.of);
      return;
    }
    Part more = further(at);
    if (more != null) {
      unit(more.end, whole.value + " " + more.over + "/" + more.of);
    }
    String name = unit(at, String.valueOf(whole.value));
    if (!name.isEmpty()) {
      afterUnit(whole, name);
    }
  }

  private void decimals(Number whole, int from) {
    StringBuilder figure = new StringBuilder().append(whole.value).append('.');
    int at = from;
    Number digit = number(at);
    while (digit != null) {
      figure.append(digit.value);
      at = digit.end;
      digit = number(at);
    }
    if (at > from) {
      unit(at, figure.toString());
    }
  }

  /** Notes a figure if a unit follows, and tells its words run together. */
  private String unit(int from, String figure) {
    int at = from;
    while (BETWEEN.contains(word(at))) {
      at++;
    }
    String longest = "";
    StringBuilder name = new StringBuilder();
    for (int end = at; end < Math.min(words.size(), at + UNIT_WORDS); end++) {
      name.append(words.get(end));
      if (UNITS.containsKey(name.toString())) {
        longest = name.toString();
      }
    }
    if (!longest.isEmpty()) {
      found.add(figure + " " + UNITS.get(longest));
    }
    return longest;
  }

  /** Such as "un pouce trois seizièmes" or "twelve pounds forty". */
  private void afterUnit(Number whole, String name) {
    int at = whole.end;
    while (BETWEEN.contains(word(at))) {
      at++;
    }
    int length = 0;
    while (length < name.length()) {
      length += word(at++).length();
    }
    String symbol = UNITS.getOrDefault(name, "");
    Part more = further(at);
    if (more != null) {
      found.add(whole.value + " " + more.over + "/" + more.of + " " + symbol);
    }
    Number minor = number(AND.contains(word(at)) ? at + 1 : at);
    boolean isMoney = Set.of("GBP", "EUR", "USD", "lb").contains(symbol);
    if (minor != null && isMoney && minor.value < 100) {
      found.add(
          String.format(
              Locale.ROOT,
              "%d.%02d %s",
              whole.value,
              minor.value,
              symbol.equals("lb") ? "GBP" : symbol));
    }
  }

  /** A part of a whole, such as three sixteenths. */
  private record Part(long over, int of, int end) {}

  /** A fraction after a whole number: "and three sixteenths", "et demi". */
  private @Nullable Part further(int from) {
    int at = AND.contains(word(from)) ? from + 1 : from;
    Part half = part(word(at).equals("a") ? at + 1 : at);
    if (half != null) {
      return half;
    }
    Number over = number(at);
    Part part = over == null ? null : part(over.end);
    return over == null || part == null ? null : new Part(over.value, part.of, part.end);
  }

  private @Nullable Part part(int at) {
    Integer two = PARTS.get(word(at) + word(at + 1));
    if (two != null) {
      return new Part(1, two, at + 2);
    }
    Integer one = PARTS.get(word(at));
    return one == null ? null : new Part(1, one, at + 1);
  }
}
