package chinelog.book.setting;

import com.openhtmltopdf.extend.FSTextBreaker;
import com.openhtmltopdf.layout.UrlAwareLineBreakIterator;
import java.text.BreakIterator;
import java.util.Locale;

/**
 * Where a line may end: as the library has it, but never within a figure. The JDK would part "−0."
 * from "97" after a minus sign that is not a hyphen.
 */
public final class LineBreaks implements FSTextBreaker {

  private static final String POINTS = ".,";

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
    while (isWithinFigure(place)) {
      place = all.next();
    }
    return place;
  }

  private boolean isWithinFigure(int place) {
    return place > 1
        && place < text.length()
        && POINTS.indexOf(text.charAt(place - 1)) >= 0
        && Character.isDigit(text.charAt(place - 2))
        && Character.isDigit(text.charAt(place));
  }
}
