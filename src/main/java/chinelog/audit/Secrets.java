package chinelog.audit;

import chinelog.label.Label;
import chinelog.log.records.Table;
import chinelog.problem.Sentence;
import chinelog.quantity.Quantity;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Sorts what a log says into what the readers may see and what they may not, and cuts the latter
 * into pieces worth looking for.
 *
 * <p>The rule, so that common words stop no maker: of a long text, every run of five words and at
 * least 20 letters; a title, name or phrase of at least eight letters, or of five where it is a
 * name; single words of at least five letters that are written as names (a capital within a
 * sentence, the first word of a name) or as numbers of drawings and files (letters and at least two
 * digits). Nothing is looked for that the readers see by right: open figures, titles and names.
 */
final class Secrets {

  private static final int RUN_WORDS = 5;
  private static final int RUN_LETTERS = 20;
  private static final int PHRASE_LETTERS = 8;
  private static final int LONG_WORD = 4;
  private static final int LONG_WORDS = 3;
  private static final Pattern WORD = Pattern.compile("[\\p{L}\\p{N}][\\p{L}\\p{N}\\p{M}_/’'-]*");
  private static final Pattern SENTENCE_END = Pattern.compile("[.!?:;…\"“”(\\n\\f][\\s)\"”*_]*$");
  private static final Pattern FIGURE = Pattern.compile("\\d+[\\p{L}²³]{0,3}");

  /** Words of the trade and of every page; as single words they tell nothing. */
  private static final Set<String> HOUSE_WORDS =
      Set.of(
          "about",
          "agreement",
          "april",
          "august",
          "beam",
          "book",
          "booklet",
          "build",
          "cautions",
          "chart",
          "client",
          "company",
          "contents",
          "cover",
          "december",
          "diary",
          "draught",
          "drawing",
          "drawings",
          "edition",
          "entries",
          "entry",
          "english",
          "february",
          "figure",
          "figures",
          "friday",
          "full",
          "hours",
          "hull",
          "index",
          "january",
          "july",
          "june",
          "keel",
          "launch",
          "length",
          "licence",
          "limited",
          "limits",
          "lines",
          "march",
          "materials",
          "model",
          "models",
          "monday",
          "museum",
          "november",
          "october",
          "plate",
          "plates",
          "posts",
          "register",
          "scale",
          "saturday",
          "search",
          "september",
          "series",
          "sheet",
          "sheets",
          "stage",
          "stages",
          "station",
          "stock",
          "sunday",
          "table",
          "tables",
          "thursday",
          "tuesday",
          "waterline",
          "wednesday",
          "width",
          "workshop",
          "yard");

  /** How a text is cut into pieces. */
  enum Kind {
    /** Sentences. */
    PROSE,
    /** A few words of the maker's own, such as a title or a caption. */
    PHRASE,
    /** A word of the trade, such as a figure's name: only long ones tell something. */
    TERM,
    /** A name of a person, firm or boat, or of a file. */
    NAME
  }

  /** Runs of words most of which only join others. */
  private final Set<String> joints = new HashSet<>();

  private final boolean namesHaveCapitals;
  private final Needles needles = new Needles();
  private final FigureNet figures = new FigureNet();
  private final StringBuilder open = new StringBuilder();
  private final StringBuilder visible = new StringBuilder();
  private final List<Quantity> visibleQuantities = new ArrayList<>();
  private final Set<String> undrawn = new TreeSet<>();
  private final CurveNet curves = new CurveNet();
  private final Set<String> tooCommon = new TreeSet<>();
  private final Set<String> reckonedTooCommon = new TreeSet<>();
  private int withheld;

  Secrets(Locale locale) {
    // German and Luxembourgish write every noun with a capital.
    this.namesHaveCapitals = !Set.of("de", "lb").contains(locale.getLanguage());
  }

  void show(String text) {
    visible.append(text).append('\f');
  }

  /**
   * Notes a text of the maker's own wording that readers see. That it is open frees nothing that
   * stands in it, but for words that it shows to be of everyday speech: those it writes small, and
   * runs of words most of which only join others.
   */
  void mention(String text) {
    open.append(text).append('\f');
  }

  void show(Quantity quantity) {
    visibleQuantities.add(quantity);
  }

  /**
   * Notes that {@code text} must not appear.
   *
   * @param what it is, such as "the title of 2026-03-14-drawings"
   */
  void withhold(String text, Kind kind, Sentence what) {
    Folded folded = Folded.of(text);
    if (folded.length() == 0) {
      return;
    }
    withheld++;
    FigureNet.quantities(text)
        .forEach(q -> figures.add(q, true, Sentence.of("a figure of {0}", what)));
    List<String> words = words(folded);
    boolean any = addNames(text, kind, what);
    if (kind == Kind.PROSE && words.size() > RUN_WORDS) {
      any |= addRuns(words, what);
    } else if (isWorthWhile(folded, kind, words.size())) {
      needles.add(new Needles.Needle(folded.letters(), what));
      any = true;
    }
    if (!any) {
      tooCommon.add(what.toString().replaceFirst(" \\([^()]*:\\d+:\\d+\\)$", ""));
    }
  }

  /** As {@link #withhold}, for a name that is left out, but no secret that must be found. */
  void leaveOut(String text, Sentence what) {
    int before = withheld;
    withhold(text, Kind.PHRASE, what);
    withheld = before;
  }

  void withhold(Quantity quantity, boolean named, Sentence what) {
    withheld++;
    if (!figures.add(quantity, named, what)) {
      tooCommon.add(what.toString().replaceFirst(" \\([^()]*:\\d+:\\d+\\)$", ""));
    }
  }

  /** Of reckoned figures there are many: like cells, they need four digits to be told apart. */
  void withholdReckoned(String shown, Sentence what) {
    List<Quantity> quantities = FigureNet.quantities(shown);
    if (quantities.isEmpty()) {
      withhold(shown, Kind.PHRASE, what);
    }
    for (Quantity quantity : quantities) {
      withheld++;
      if (!figures.add(quantity, false, what)) {
        reckonedTooCommon.add(what.toString());
      }
    }
  }

  void withholdScale(BigDecimal denominator) {
    withheld++;
    figures.addScale(denominator, Sentence.of("the scale"));
  }

  private static boolean isWorthWhile(Folded folded, Kind kind, int words) {
    String letters = folded.letters();
    if (FIGURE.matcher(letters).matches() || letters.chars().allMatch(Character::isDigit)) {
      return false;
    }
    if (words == 1 && HOUSE_WORDS.contains(letters)) {
      return false;
    }
    if (kind == Kind.TERM) {
      return letters.length() >= RUN_LETTERS;
    }
    return letters.length() >= (kind == Kind.NAME ? Needles.LEAST : PHRASE_LETTERS)
        && (kind == Kind.NAME || words > 1 || letters.length() >= 2 * PHRASE_LETTERS);
  }

  private boolean addRuns(List<String> words, Sentence what) {
    boolean any = false;
    for (int from = 0; from + RUN_WORDS <= words.size(); from++) {
      StringBuilder run = new StringBuilder();
      int to = from;
      while (to < words.size() && (to < from + RUN_WORDS || run.length() < RUN_LETTERS)) {
        run.append(words.get(to++));
      }
      if (words.subList(from, to).stream().filter(w -> w.length() >= LONG_WORD).count()
          < LONG_WORDS) {
        joints.add(run.toString());
      }
      if (run.length() >= RUN_LETTERS) {
        needles.add(new Needles.Needle(run.toString(), what));
        any = true;
      }
    }
    return any;
  }

  /** Single words that are names or numbers of their own. */
  private boolean addNames(String text, Kind kind, Sentence what) {
    boolean any = false;
    Matcher m = WORD.matcher(text);
    while (m.find()) {
      String word = m.group().replaceFirst("['’]s?$", "");
      String letters = Folded.of(word).letters();
      boolean isName =
          namesHaveCapitals
              && (kind == Kind.NAME ? m.start() == 0 : kind == Kind.PROSE)
              && Character.isUpperCase(word.codePointAt(0))
              && !HOUSE_WORDS.contains(letters)
              && (kind == Kind.NAME || !beginsASentence(text, m.start()));
      if (letters.length() >= Needles.LEAST && (isName || isNumbered(word, letters))) {
        needles.add(
            new Needles.Needle(letters, Sentence.of("the word \"{0}\" of {1}", word, what)));
        any = true;
      }
    }
    return any;
  }

  private static boolean beginsASentence(String text, int at) {
    return at == 0 || SENTENCE_END.matcher(text.substring(0, at)).find();
  }

  /** Such as SY-1142/3 or T20_0412, but neither 190mm nor 2026-03-14. */
  private static boolean isNumbered(String word, String letters) {
    return letters.chars().filter(Character::isDigit).count() >= 2
        && letters.chars().anyMatch(Character::isLetter)
        && !FIGURE.matcher(letters).matches()
        && !word.matches("[12]\\d{3}-\\d\\d-\\d\\d.*");
  }

  private static List<String> words(Folded folded) {
    List<String> words = new ArrayList<>();
    int from = 0;
    while (from < folded.length()) {
      int to = folded.wordStarts().nextSetBit(from + 1);
      words.add(folded.letters().substring(from, to));
      from = to;
    }
    return words;
  }

  /** Nothing may be drawn of a reckoning, since what is drawn can be measured. */
  void withholdDrawings(String reckoning) {
    undrawn.add(reckoning);
  }

  /** What of a table is withheld must not be drawn, either. */
  void withholdCurves(Table table, Predicate<Label> isWithheld) {
    curves.add(table, isWithheld);
  }

  /** Everything withheld that can be told from what the readers see. */
  Search search() {
    figures.exempt(visible.toString(), visibleQuantities);
    Needles telling = needles.without(Folded.of(visible.toString()));
    Set<String> everyday = everyday();
    return new Search(
        telling.without(n -> everyday.contains(n.letters())), figures, undrawn, curves);
  }

  private Set<String> everyday() {
    Set<String> everyday = new HashSet<>();
    Set<String> small = new HashSet<>();
    Matcher m = WORD.matcher(open);
    while (m.find()) {
      String word = m.group();
      if (Character.isLowerCase(word.codePointAt(0)) && small.add(word)) {
        everyday.add(Folded.of(word).letters());
      }
    }
    needles.find(Folded.of(open.toString()), RUN_LETTERS).stream()
        .map(Needles.Needle::letters)
        .filter(joints::contains)
        .forEach(everyday::add);
    return everyday;
  }

  /** How many texts and figures are withheld. */
  int withheld() {
    return withheld;
  }

  /** What was withheld but is too short or too common to be looked for by itself. */
  Set<String> tooCommon() {
    return tooCommon;
  }

  /** The same of reckoned figures, of which there may be many. */
  Set<String> reckonedTooCommon() {
    return reckonedTooCommon;
  }
}
