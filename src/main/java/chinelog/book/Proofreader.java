package chinelog.book;

import chinelog.book.page.Manuscript;
import chinelog.book.setting.Coverage;
import chinelog.problem.Place;
import chinelog.problem.Problem;
import chinelog.problem.Sentence;
import java.io.StringReader;
import java.lang.Character.UnicodeScript;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

/** Reads written pages for characters that will not come out in print as they were written. */
final class Proofreader {

  /** Where the maker can put fonts. */
  private static final Place FONTS = Place.of("themes/fonts");

  private static final Set<String> NOT_PRINTED = Set.of("style", "title");

  /** These say again what stands elsewhere. */
  private static final Set<String> REPEATING = Set.of("contents", "running", "runningtitle");

  private static final Pattern HEADING = Pattern.compile("h[1-6]");

  /** So many characters are named, and so many more told by number. */
  private static final int NAMED = 8;

  /** Scripts that take shaping to be right: common practice, no source. */
  private static final Set<UnicodeScript> JOINED =
      EnumSet.of(
          UnicodeScript.DEVANAGARI,
          UnicodeScript.BENGALI,
          UnicodeScript.GURMUKHI,
          UnicodeScript.GUJARATI,
          UnicodeScript.ORIYA,
          UnicodeScript.TAMIL,
          UnicodeScript.TELUGU,
          UnicodeScript.KANNADA,
          UnicodeScript.MALAYALAM,
          UnicodeScript.SINHALA,
          UnicodeScript.KHMER,
          UnicodeScript.MYANMAR,
          UnicodeScript.TIBETAN,
          UnicodeScript.MONGOLIAN);

  private static final int EXCERPT = 24;

  private final Coverage coverage;
  private final Set<Integer> lacking = new LinkedHashSet<>();
  private CharSequence firstLacking = "";
  private CharSequence firstTurned = "";
  private String heading = "";

  private Proofreader(Coverage coverage) {
    this.coverage = coverage;
  }

  static List<Problem> read(List<Manuscript> manuscripts, Coverage coverage) {
    Proofreader reader = new Proofreader(coverage);
    manuscripts.forEach(manuscript -> reader.read(manuscript.html()));
    return reader.found();
  }

  private void read(String html) {
    XMLInputFactory factory = XMLInputFactory.newDefaultFactory();
    factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
    factory.setProperty(XMLInputFactory.IS_COALESCING, true);
    try {
      XMLStreamReader xml = factory.createXMLStreamReader(new StringReader(html));
      int skipping = 0;
      boolean isInHeading = false;
      while (xml.hasNext()) {
        int event = xml.next();
        if (event == XMLStreamConstants.START_ELEMENT) {
          skipping += skipping > 0 || isSkipped(xml) ? 1 : 0;
          if (HEADING.matcher(xml.getLocalName()).matches()) {
            isInHeading = true;
            heading = "";
          }
        } else if (event == XMLStreamConstants.END_ELEMENT) {
          skipping -= skipping > 0 ? 1 : 0;
          isInHeading &= !HEADING.matcher(xml.getLocalName()).matches();
        } else if (event == XMLStreamConstants.CHARACTERS && skipping == 0) {
          heading = isInHeading ? heading + xml.getText() : heading;
          look(xml.getText());
        }
      }
    } catch (XMLStreamException e) {
      throw new IllegalStateException("the pages are not well-formed", e);
    }
  }

  private static boolean isSkipped(XMLStreamReader xml) {
    String kind = xml.getAttributeValue(null, "class");
    return NOT_PRINTED.contains(xml.getLocalName())
        || kind != null && List.of(kind.split(" ")).stream().anyMatch(REPEATING::contains);
  }

  private void look(String text) {
    for (int i = 0; i < text.length(); ) {
      int character = text.codePointAt(i);
      int next = i + Character.charCount(character);
      if (isShown(character)) {
        if (!coverage.has(character) && lacking.add(character) && lacking.size() == 1) {
          firstLacking = around(text, i, next);
        }
        if (isTurned(character) && firstTurned.isEmpty()) {
          firstTurned = around(text, i, next);
        }
      }
      i = next;
    }
  }

  private static boolean isShown(int character) {
    int type = Character.getType(character);
    return type != Character.CONTROL
        && type != Character.FORMAT
        && !Character.isWhitespace(character)
        && !Character.isSpaceChar(character);
  }

  /** Whether a character stands in a script that runs to the left, or whose letters are joined. */
  private static boolean isTurned(int character) {
    byte direction = Character.getDirectionality(character);
    return direction == Character.DIRECTIONALITY_RIGHT_TO_LEFT
        || direction == Character.DIRECTIONALITY_RIGHT_TO_LEFT_ARABIC
        || JOINED.contains(UnicodeScript.of(character));
  }

  private Sentence around(String text, int from, int to) {
    int start = from <= EXCERPT ? 0 : text.offsetByCodePoints(from, -cut(text, 0, from));
    int end =
        text.length() - to <= EXCERPT
            ? text.length()
            : text.offsetByCodePoints(to, cut(text, to, text.length()));
    String words =
        (start > 0 ? "\u2026" : "")
            + text.substring(start, end).replaceAll("\\s+", " ").strip()
            + (end < text.length() ? "\u2026" : "");
    return heading.isBlank()
        ? Sentence.of("\u201c{0}\u201d", words)
        : Sentence.of("\u201c{0}\u201d, below the heading \u201c{1}\u201d", words, heading.strip());
  }

  private static int cut(String text, int from, int to) {
    return Math.min(EXCERPT, text.codePointCount(from, to));
  }

  private List<Problem> found() {
    List<Problem> problems = new ArrayList<>();
    if (!lacking.isEmpty()) {
      problems.add(
          Problem.reminder(
              FONTS,
              Sentence.of(
                  "No font of the book has {0}, so that it cannot be printed. It stands first"
                      + " in {1}.",
                  names(), firstLacking),
              "Put a TrueType font that has it (a file that ends in .ttf) into the folder"
                  + " themes/fonts of the log, or write it in other words."));
    }
    if (!firstTurned.isEmpty()) {
      problems.add(
          Problem.reminder(
              FONTS,
              Sentence.of(
                  "The book sets every line from left to right and does not join letters, so"
                      + " that Hebrew, Arabic and the scripts of India come out wrong. The first"
                      + " such word stands in {0}.",
                  firstTurned),
              "For print, write it in other letters; the site shows it as it should be."));
    }
    return problems;
  }

  private CharSequence names() {
    String named =
        lacking.stream().limit(NAMED).map(Proofreader::name).collect(Collectors.joining(", "));
    int more = lacking.size() - NAMED;
    return more > 0 ? Sentence.of("{0} and {1} more", named, more) : named;
  }

  /** Such as {@code “漢” (U+6F22)}. */
  private static String name(int character) {
    return String.format(
        Locale.ROOT, "\u201c%s\u201d (U+%04X)", Character.toString(character), character);
  }
}
