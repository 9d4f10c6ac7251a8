package chinelog.book.setting;

import com.openhtmltopdf.extend.FontContext;
import com.openhtmltopdf.extend.OutputDevice;
import com.openhtmltopdf.extend.TextRenderer;
import com.openhtmltopdf.pdfboxout.PdfBoxFSFont;
import com.openhtmltopdf.pdfboxout.PdfBoxTextRenderer;
import com.openhtmltopdf.render.FSFont;
import com.openhtmltopdf.render.JustificationInfo;
import java.awt.Font;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.jspecify.annotations.Nullable;

/**
 * Sets lines with kerned letters, and justifies them by their word spaces alone: the library would
 * put a fifth of the slack between the letters.
 */
public final class Typesetter extends PdfBoxTextRenderer {

  /** As the library has it: less is a rounding error, and no reason for another dot. */
  private static final float ERROR_DOTS = 0.01f;

  private final Map<PDFont, Optional<Kerning>> kernings = new HashMap<>();
  private final Map<PDFont, Advances> advances = new HashMap<>();

  @Override
  public int getWidth(FontContext context, FSFont font, String text) {
    String printed = printed(text);
    float advance = advances(font).of(printed);
    int width =
        advance < 0
            ? super.getWidth(context, font, text)
            : (int) Math.ceil(advance / 1000f * font.getSize2D() - ERROR_DOTS);
    float kern = kerning(font).map(k -> k.within(printed) / 1000f * font.getSize2D()).orElse(0f);
    return width + (int) Math.ceil(kern);
  }

  @Override
  public void drawString(OutputDevice device, String text, float x, float y) {
    draw(device, printed(text), x, y, null);
  }

  @Override
  public void drawString(
      OutputDevice device, String text, float x, float y, JustificationInfo slack) {
    String printed = printed(text);
    draw(device, printed, x, y, inWordSpaces(printed, slack));
  }

  private void draw(
      OutputDevice device, String text, float x, float y, @Nullable JustificationInfo slack) {
    FSFont font = DeviceFont.of(device);
    Kerning kerning = kerning(font).orElse(null);
    // Else the renderer takes letters of other faces, too, which have their own kerning.
    if (kerning == null || !advances(font).coverAllOf(text)) {
      put(device, text, x, y, slack);
      return;
    }
    int start = 0;
    float at = x;
    for (int i = 1; i < text.length(); i++) {
      float kern = kerning.between(text.charAt(i - 1), text.charAt(i));
      if (kern != 0) {
        String piece = text.substring(start, i);
        put(device, piece, at, y, slack);
        at += advance(font, piece, slack) + kern / 1000f * font.getSize2D();
        start = i;
      }
    }
    put(device, text.substring(start), at, y, slack);
  }

  private void put(
      OutputDevice device, String text, float x, float y, @Nullable JustificationInfo slack) {
    if (slack == null) {
      super.drawString(device, text, x, y);
    } else {
      super.drawString(device, text, x, y, slack);
    }
  }

  private float advance(FSFont font, String text, @Nullable JustificationInfo slack) {
    float width = advances(font).of(text) / 1000f * font.getSize2D();
    if (slack == null) {
      return width;
    }
    int spaces = spaces(text);
    return width
        + spaces * slack.getSpaceAdjust()
        + (text.length() - spaces) * slack.getNonSpaceAdjust();
  }

  /** The layout gave this run its width; a run without a word space must fill it by its letters. */
  private static JustificationInfo inWordSpaces(String text, JustificationInfo slack) {
    // Spaced letters are told in the same way, with as much after a space as after a letter.
    if (slack.getSpaceAdjust() == slack.getNonSpaceAdjust()) {
      return slack;
    }
    int spaces = spaces(text);
    JustificationInfo result = new JustificationInfo();
    if (spaces == 0) {
      result.setNonSpaceAdjust(slack.getNonSpaceAdjust());
      return result;
    }
    int letters = text.length() - spaces;
    result.setSpaceAdjust(slack.getSpaceAdjust() + slack.getNonSpaceAdjust() * letters / spaces);
    result.setNonSpaceAdjust(0);
    return result;
  }

  private static int spaces(String text) {
    return (int) text.chars().filter(PdfBoxTextRenderer::isJustificationSpace).count();
  }

  private static String printed(String text) {
    return TextRenderer.getEffectivePrintableString(text);
  }

  private Advances advances(FSFont font) {
    return advances.computeIfAbsent(pdfFont(font), Advances::new);
  }

  private Optional<Kerning> kerning(FSFont font) {
    return kernings.computeIfAbsent(pdfFont(font), Typesetter::findKerning);
  }

  private static Optional<Kerning> findKerning(PDFont font) {
    // A subset's name has a tag of six letters before it: "ABCDEF+SourceSerif4-Regular".
    Font shaper = Faces.shaper(font.getName().replaceFirst("^[A-Z]{6}\\+", ""));
    return Optional.ofNullable(shaper).map(Kerning::new);
  }

  private static PDFont pdfFont(FSFont font) {
    return ((PdfBoxFSFont) font).getFontDescriptions().get(0).getFont();
  }
}
