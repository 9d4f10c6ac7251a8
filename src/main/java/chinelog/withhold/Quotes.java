package chinelog.withhold;

import chinelog.edition.Text;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;

/**
 * Straight quotation marks and apostrophes as printers set them: {@code "It's 5' 6" long"} becomes
 * {@code “It’s 5′ 6″ long”}. Code stays as it was typed.
 *
 * <p>What a line holds is looked at after it was copied for its readers, so that nothing withheld
 * decides how a mark is set.
 */
final class Quotes {

  private static final char APOSTROPHE = '\u2019';
  private static final char FEET = '\u2032';
  private static final char INCHES = '\u2033';

  /** Stands for what is no text: it is written close to, like a letter. */
  private static final char OBJECT = '\uFFFC';

  private static final String BEFORE_AN_OPENING = "([{<\u2013\u2014-/\"'\u00ab\u201c\u2018\u201e";

  /** Left out before these: in Dutch, "'s avonds" opens no quotation. */
  private static final String SHORTENED = "stnkm";

  /**
   * The marks of a language, outer and inner: those of Unicode CLDR 45 (delimiters), from memory,
   * but that double marks are the outer ones everywhere.
   */
  private record Marks(String open, String close, String innerOpen, String innerClose) {}

  private static final Marks ENGLISH = new Marks("\u201c", "\u201d", "\u2018", "\u2019");

  private static final Map<String, Marks> MARKS =
      Map.of(
          "de", new Marks("\u201e", "\u201c", "\u201a", "\u2018"),
          "fr", new Marks("\u00ab\u00a0", "\u00a0\u00bb", "\u201c", "\u201d"),
          "es", new Marks("\u00ab", "\u00bb", "\u201c", "\u201d"),
          "it", new Marks("\u00ab", "\u00bb", "\u201c", "\u201d"),
          "pl", new Marks("\u201e", "\u201d", "\u00ab", "\u00bb"),
          "sv", new Marks("\u201d", "\u201d", "\u2019", "\u2019"),
          "fi", new Marks("\u201d", "\u201d", "\u2019", "\u2019"));

  private final Marks marks;
  private final boolean isDutch;

  Quotes(Locale locale) {
    this.marks = MARKS.getOrDefault(locale.getLanguage(), ENGLISH);
    this.isDutch = locale.getLanguage().equals("nl");
  }

  /** The text with its marks set. */
  String set(String text) {
    return has(text) ? String.join("", characters(text)) : text;
  }

  /** The line with its marks set; a quotation may begin in one run and end in another. */
  List<Text.Run> set(List<Text.Run> line) {
    StringBuilder flat = new StringBuilder();
    line.forEach(run -> flatten(run, flat));
    return has(flat) ? rebuilt(line, characters(flat).iterator()::next) : notes(line);
  }

  private static boolean has(CharSequence text) {
    return text.chars().anyMatch(c -> c == '"' || c == '\'');
  }

  private static void flatten(Text.Run run, StringBuilder flat) {
    if (run instanceof Text.Plain plain) {
      flat.append(plain.text());
    } else if (run instanceof Text.Break) {
      flat.append(' ');
    } else if (isWhole(run)) {
      flat.append(OBJECT);
    } else {
      run.children().forEach(child -> flatten(child, flat));
    }
  }

  /** Whether a run is taken as it stands; a footnote is a line of its own. */
  private static boolean isWhole(Text.Run run) {
    return run instanceof Text.CodeRun
        || run instanceof Text.FigureLink
        || run instanceof Text.Gap
        || run instanceof Text.Footnote;
  }

  private interface Next {
    String get();
  }

  private List<Text.Run> rebuilt(List<Text.Run> line, Next next) {
    return each(
        line,
        run -> {
          if (run instanceof Text.Plain plain) {
            StringBuilder set = new StringBuilder();
            for (int i = 0; i < plain.text().length(); i++) {
              set.append(next.get());
            }
            return new Text.Plain(set.toString());
          }
          if (run instanceof Text.Break || isWhole(run)) {
            next.get();
            return note(run);
          }
          return within(run, children -> rebuilt(children, next));
        });
  }

  /** The line as it is, but for its footnotes. */
  private List<Text.Run> notes(List<Text.Run> line) {
    return each(line, run -> isWhole(run) ? note(run) : within(run, this::notes));
  }

  private static List<Text.Run> each(List<Text.Run> line, Function<Text.Run, Text.Run> change) {
    List<Text.Run> changed = new ArrayList<>();
    line.forEach(run -> changed.add(change.apply(run)));
    return List.copyOf(changed);
  }

  private Text.Run note(Text.Run run) {
    return run instanceof Text.Footnote note ? new Text.Footnote(set(note.children())) : run;
  }

  private static Text.Run within(Text.Run run, Function<List<Text.Run>, List<Text.Run>> changed) {
    if (run instanceof Text.Emphasis emphasis) {
      return new Text.Emphasis(changed.apply(emphasis.children()));
    } else if (run instanceof Text.Strong strong) {
      return new Text.Strong(changed.apply(strong.children()));
    } else if (run instanceof Text.Link link) {
      return new Text.Link(link.target(), changed.apply(link.children()));
    } else if (run instanceof Text.Phrase phrase) {
      return new Text.Phrase(changed.apply(phrase.children()), phrase.under());
    }
    return run;
  }

  /** What each character becomes. */
  private List<String> characters(CharSequence text) {
    List<String> set = new ArrayList<>();
    boolean isQuoted = false;
    boolean isQuotedWithin = false;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      char before = i == 0 ? ' ' : text.charAt(i - 1);
      char after = i == text.length() - 1 ? ' ' : text.charAt(i + 1);
      if (c == '"' && !isQuoted && isFigure(before)) {
        set.add(String.valueOf(INCHES));
      } else if (c == '"') {
        isQuoted = isOpening(before, after);
        set.add(isQuoted ? marks.open : marks.close);
      } else if (c != '\'') {
        set.add(String.valueOf(c));
      } else if (isOpening(before, after) && isQuotation(text, i, after)) {
        isQuotedWithin = true;
        set.add(marks.innerOpen);
      } else if (isFigure(before) && !isQuotedWithin && !Character.isLetter(after)) {
        set.add(String.valueOf(FEET));
      } else if (isQuotedWithin && !isLetter(after) && !isOpening(before, after)) {
        isQuotedWithin = false;
        set.add(marks.innerClose);
      } else {
        set.add(String.valueOf(APOSTROPHE));
      }
    }
    return set;
  }

  private static boolean isOpening(char before, char after) {
    boolean isFirst = isSpace(before) || BEFORE_AN_OPENING.indexOf(before) >= 0;
    return isFirst && !isSpace(after);
  }

  /** Whether a mark opens a quotation that something closes; else it stands for a letter. */
  private boolean isQuotation(CharSequence text, int at, char after) {
    boolean isShortened =
        isDutch
            && SHORTENED.indexOf(after) >= 0
            && (at + 2 >= text.length() || isSpace(text.charAt(at + 2)));
    if (Character.isDigit(after) || isShortened) {
      return false;
    }
    for (int i = at + 2; i < text.length(); i++) {
      boolean isLast = i == text.length() - 1;
      if (text.charAt(i) == '\''
          && !isSpace(text.charAt(i - 1))
          && (isLast || !isLetter(text.charAt(i + 1)))) {
        return true;
      }
    }
    return false;
  }

  private static boolean isSpace(char c) {
    return Character.isWhitespace(c) || Character.isSpaceChar(c);
  }

  private static boolean isLetter(char c) {
    return Character.isLetterOrDigit(c) || c == OBJECT;
  }

  /** A digit, or a fraction such as ½. */
  private static boolean isFigure(char c) {
    return Character.isDigit(c) || Character.getType(c) == Character.OTHER_NUMBER;
  }
}
