package chinelog.book.setting;

import com.openhtmltopdf.extend.FSTextBreaker;
import com.openhtmltopdf.layout.UrlAwareLineBreakIterator;
import java.text.BreakIterator;
import java.util.Locale;
import java.util.regex.Pattern;

/**
 * Where a line may end: as the library has it, but never within a figure, nor beside a quotation
 * mark or an apostrophe, nor within a unit. The JDK would part "−0." from "97" after a minus sign
 * that is not a hyphen, and "boat’" from "s"; the library, which knows addresses, "3" from "/64"
 * and "160 g" from "/m²".
 */
public final class LineBreaks implements FSTextBreaker {

  private static final String POINTS = ".,";
  private static final String MARKS =
      "\u2018\u2019\u201a\u201c\u201d\u201e\u00ab\u00bb\u2039\u203a";

  /** A figure with the beginning of its unit, up to the stroke. */
  private static final Pattern UNIT_BEGUN =
      Pattern.compile("\\d[ \u00a0\u202f]?\\p{L}{1,3}[\u00b2\u00b3]?$");

  /** The longest that it finds. */
  private static final int BEGUN = 6;

  private final FSTextBreaker all =
      new UrlAwareLineBreakIterator(BreakIterator.getLineInstance(Locale.US));
  private String text = "";

  @Override
  public void setText(String newText) {
    text = newText;
    all.setText(newText);
  }

  @Override
  public int next() {
    int place = all.next();
    while (isWithinFigure(place) || isBesideMark(place) || isWithinUnit(place)) {
      place = all.next();
    }
    return place;
  }

  private boolean isBesideMark(int place) {
    if (place < 1 || place >= text.length()) {
      return false;
    }
    char before = text.charAt(place - 1);
    char after = text.charAt(place);
    boolean isFraction =
        after == '/' && Character.isDigit(before) || before == '/' && Character.isDigit(after);
    return isFraction
        || !Character.isWhitespace(before)
            && (MARKS.indexOf(before) >= 0 || MARKS.indexOf(after) >= 0);
  }

  private boolean isWithinUnit(int place) {
    if (place < 1 || place >= text.length()) {
      return false;
    }
    int stroke = text.charAt(place - 1) == '/' ? place - 1 : place;
    return text.charAt(stroke) == '/'
        && UNIT_BEGUN.matcher(text.substring(Math.max(0, stroke - BEGUN), stroke)).find();
  }

  private boolean isWithinFigure(int place) {
    return place > 1
        && place < text.length()
        && POINTS.indexOf(text.charAt(place - 1)) >= 0
        && Character.isDigit(text.charAt(place - 2))
        && Character.isDigit(text.charAt(place));
  }
}
