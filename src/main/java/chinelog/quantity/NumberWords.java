package chinelog.quantity;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Whole numbers from 0 to 9,999 as they are spelled out, such as "one hundred and eighty-seven",
 * "hundertsiebenundachtzig" or "quatre-vingt-sept".
 *
 * <p>Known by their letters alone, run together and without the "and" between them.
 */
public final class NumberWords {

  private static final int HIGHEST = 9999;
  private static final int BEGINNING = 3;
  private static final Map<String, NumberWords> BY_LANGUAGE = new ConcurrentHashMap<>();

  private static final String[] EN =
      ("zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen"
              + " fifteen sixteen seventeen eighteen nineteen")
          .split(" ");
  private static final String[] EN_TENS =
      "- - twenty thirty forty fifty sixty seventy eighty ninety".split(" ");
  private static final String[] DE =
      ("null ein zwei drei vier funf sechs sieben acht neun zehn elf zwolf dreizehn vierzehn"
              + " funfzehn sechzehn siebzehn achtzehn neunzehn")
          .split(" ");
  private static final String[] DE_TENS =
      "- - zwanzig dreissig vierzig funfzig sechzig siebzig achtzig neunzig".split(" ");
  private static final String[] NL =
      ("nul een twee drie vier vijf zes zeven acht negen tien elf twaalf dertien veertien vijftien"
              + " zestien zeventien achttien negentien")
          .split(" ");
  private static final String[] NL_TENS =
      "- - twintig dertig veertig vijftig zestig zeventig tachtig negentig".split(" ");
  private static final String[] FR =
      ("zero un deux trois quatre cinq six sept huit neuf dix onze douze treize quatorze quinze"
              + " seize dixsept dixhuit dixneuf")
          .split(" ");
  private static final String[] FR_TENS =
      "- - vingt trente quarante cinquante soixante - quatrevingt -".split(" ");
  private static final String[] ES =
      ("cero uno dos tres cuatro cinco seis siete ocho nueve diez once doce trece catorce quince"
              + " dieciseis diecisiete dieciocho diecinueve veinte veintiuno veintidos veintitres"
              + " veinticuatro veinticinco veintiseis veintisiete veintiocho veintinueve")
          .split(" ");
  private static final String[] ES_TENS =
      "- - - treinta cuarenta cincuenta sesenta setenta ochenta noventa".split(" ");
  private static final String[] ES_HUNDREDS =
      ("- ciento doscientos trescientos cuatrocientos quinientos seiscientos setecientos"
              + " ochocientos novecientos")
          .split(" ");

  /** Words for the decimal sign. */
  private static final Map<String, List<String>> POINTS =
      Map.of(
          "en", List.of("point"),
          "de", List.of("komma"),
          "nl", List.of("komma"),
          "fr", List.of("virgule"),
          "es", List.of("coma"));

  private final String language;
  private final Map<String, Integer> byLetters = new HashMap<>();
  private final Set<String> beginnings = new HashSet<>();
  private int longest;

  private NumberWords(String language, int highest) {
    this.language = language;
    for (int n = 0; n <= highest; n++) {
      put(spell(n), n);
      switch (language) {
        case "en" -> english(n);
        case "de" -> german(n);
        case "nl" -> put(spell(n).replace("honderd", "honderden"), n);
        case "fr" -> french(n);
        case "es" -> spanish(n);
        default -> throw new IllegalArgumentException(language);
      }
    }
  }

  /** Those of a language; of English where another is not known. */
  public static NumberWords of(Locale locale) {
    return BY_LANGUAGE.computeIfAbsent(language(locale), l -> new NumberWords(l, HIGHEST));
  }

  /** The same, of the numbers up to one, which are spelled far sooner than all. */
  public static NumberWords upTo(int highest, Locale locale) {
    return new NumberWords(language(locale), highest);
  }

  private static String language(Locale locale) {
    return POINTS.containsKey(locale.getLanguage()) ? locale.getLanguage() : "en";
  }

  private void put(String letters, int n) {
    byLetters.putIfAbsent(letters, n);
    longest = Math.max(longest, letters.length());
    if (letters.length() >= BEGINNING) {
      beginnings.add(letters.substring(0, BEGINNING));
    }
  }

  /** Whether some number may be spelled by these letters and more; no less than that. */
  public boolean mayBegin(CharSequence letters) {
    return letters.length() < BEGINNING
        || beginnings.contains(letters.subSequence(0, BEGINNING).toString());
  }

  /** The number spelled by these letters; -1 where they spell none. */
  public int find(String letters) {
    return letters.length() > longest ? -1 : byLetters.getOrDefault(letters, -1);
  }

  /** As {@link #find}, up to 999,999. */
  public int findLarge(String letters) {
    int small = find(letters);
    String thousand =
        switch (language) {
          case "en" -> "thousand";
          case "de" -> "tausend";
          case "nl" -> "duizend";
          case "fr" -> "mille";
          default -> "mil";
        };
    for (int at = letters.indexOf(thousand);
        small < 0 && at > 0;
        at = letters.indexOf(thousand, at + 1)) {
      String below = letters.substring(at + thousand.length());
      int thousands = find(letters.substring(0, at));
      int rest = below.isEmpty() ? 0 : find(below);
      if (thousands > 0 && thousands < 1000 && rest >= 0 && rest < 1000) {
        small = thousands * 1000 + rest;
      }
    }
    return small;
  }

  public boolean isPoint(String word) {
    return POINTS.getOrDefault(language, List.of()).contains(word);
  }

  /** Whether a word joins the parts of a number and may be left out. */
  public boolean joins(String word) {
    return switch (language) {
      case "en" -> word.equals("and");
      case "fr" -> word.equals("et");
      case "es" -> word.equals("y");
      default -> false;
    };
  }

  private String spell(int n) {
    return switch (language) {
      case "en" -> thousands(n, EN, "thousand", "hundred", "one", "one");
      case "de" -> thousands(n, DE, "tausend", "hundert", "ein", "ein");
      case "nl" -> thousands(n, NL, "duizend", "honderd", "", "");
      case "fr" -> thousands(n, FR, "mille", "cent", "", "");
      default -> spanishHundreds(n);
    };
  }

  private String thousands(
      int n,
      String[] ones,
      String thousand,
      String hundred,
      String oneThousand,
      String oneHundred) {
    if (n < 100) {
      return belowHundred(n);
    }
    String letters = "";
    if (n >= 1000) {
      int t = n / 1000;
      letters = (t == 1 ? oneThousand : ones[t]) + thousand;
    }
    int h = n / 100 % 10;
    if (h > 0) {
      letters += (h == 1 ? oneHundred : ones[h]) + hundred;
    }
    int rest = n % 100;
    return letters + (rest == 0 ? "" : belowHundred(rest));
  }

  private String belowHundred(int n) {
    int tens = n / 10;
    int ones = n % 10;
    return switch (language) {
      case "en" -> n < 20 ? EN[n] : EN_TENS[tens] + (ones == 0 ? "" : EN[ones]);
      case "de" ->
          n < 20 ? (n == 1 ? "eins" : DE[n]) : (ones == 0 ? "" : DE[ones] + "und") + DE_TENS[tens];
      case "nl" -> n < 20 ? NL[n] : (ones == 0 ? "" : NL[ones] + "en") + NL_TENS[tens];
      case "fr" -> {
        if (n < 20) {
          yield FR[n];
        }
        boolean twenties = tens == 7 || tens == 9;
        int base = twenties ? tens - 1 : tens;
        int rest = twenties ? ones + 10 : ones;
        yield FR_TENS[base] + (rest == 0 ? "" : FR[rest]);
      }
      default -> n < 30 ? ES[n] : ES_TENS[tens] + (ones == 0 ? "" : ES[ones]);
    };
  }

  private String spanishHundreds(int n) {
    String letters = n >= 1000 ? (n / 1000 == 1 ? "" : ES[n / 1000]) + "mil" : "";
    int h = n / 100 % 10;
    int rest = n % 100;
    if (h > 0) {
      letters += h == 1 && rest == 0 ? "cien" : ES_HUNDREDS[h];
    }
    return rest == 0 && !letters.isEmpty() ? letters : letters + belowHundred(rest);
  }

  private void english(int n) {
    put(spell(n).replaceFirst("^one(?=hundred|thousand)", "a"), n);
    if (n >= 1100 && n % 1000 >= 100) {
      int rest = n % 100;
      put(belowHundred(n / 100) + "hundred" + (rest == 0 ? "" : belowHundred(rest)), n);
    }
    if (n > 100 && n < 1000 && n % 100 >= 10) {
      // "one eighty-seven", as it is said at the bench.
      put(EN[n / 100] + belowHundred(n % 100), n);
    }
  }

  private void german(int n) {
    String letters = spell(n);
    put(letters.replaceFirst("^ein(?=hundert|tausend)", ""), n);
    put(letters.replace("tausend", "tausendund"), n);
    put(letters.replace("tausendein", "tausend"), n);
    put(letters.replaceFirst("^eintausend", "tausend").replace("tausendein", "tausend"), n);
    put(letters.replace("hundert", "hundertund"), n);
    put(letters.replaceFirst("^ein(?=hundert)", "").replace("hundert", "hundertund"), n);
    if (letters.endsWith("eins")) {
      for (String ending : List.of("", "e", "em", "en", "er", "es")) {
        put(letters.replaceFirst("s$", ending), n);
      }
    }
    if (n >= 1100 && n < 2000) {
      int rest = n % 100;
      put(belowHundred(n / 100) + "hundert" + (rest == 0 ? "" : belowHundred(rest)), n);
    }
    put(letters.replace("zwei", "zwo"), n);
  }

  private void french(int n) {
    String letters = spell(n);
    put(letters.replace("cent", "cents"), n);
    put(letters.replaceFirst("quatrevingt$", "quatrevingts"), n);
    put(letters.replaceFirst("un$", "une"), n);
    String other = letters;
    for (String[] belgian : new String[][] {{"soixante", "septante"}, {"quatrevingt", "nonante"}}) {
      for (int k = 19; k >= 10; k--) {
        String tail = k == 10 ? "" : FR[k - 10];
        if (other.endsWith(belgian[0] + FR[k])) {
          put(
              other.substring(0, other.length() - (belgian[0] + FR[k]).length())
                  + belgian[1]
                  + tail,
              n);
        }
      }
    }
    if (n >= 1100 && n < 2000 && n / 100 % 10 > 0) {
      int rest = n % 100;
      put(belowHundred(n / 100) + "cent" + (rest == 0 ? "" : belowHundred(rest)), n);
    }
  }

  private void spanish(int n) {
    for (String letters :
        List.of(
            spell(n), spell(n).replace("cientos", "cientas").replace("quinientos", "quinientas"))) {
      put(letters, n);
      put(letters.replaceFirst("uno$", "un"), n);
      put(letters.replaceFirst("uno$", "una"), n);
    }
  }
}
