package chinelog.book.setting;

import chinelog.markup.Theme;
import chinelog.problem.Place;
import chinelog.problem.ProblemException;
import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FSFontUseCase;
import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.pdfboxout.PDFontSupplier;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import java.awt.Font;
import java.awt.FontFormatException;
import java.awt.font.TextAttribute;
import java.io.ByteArrayInputStream;
import java.io.Closeable;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.jspecify.annotations.Nullable;

/** The typefaces of a printed edition, laid into one document. */
public final class Faces implements Closeable {

  /** The JDK keeps a file open for each font made, so that each is made but once. */
  private static final Map<String, Font> SHAPERS = new LinkedHashMap<>();

  private static final String SERIF = "Serif";

  /** Where a font's directory tells how many tables there are, and where and how long they are. */
  private static final int TABLES = 4;

  private static final int DIRECTORY = 12;
  private static final int RECORD = 16;
  private static final int GSUB = 0x47535542;
  private static final int HIDDEN = 0x67737562;

  private static final Set<String> FILES = new HashSet<>();

  private final PDDocument document;
  private final List<Theme.Font> fonts;
  private final List<TrueTypeFont> parsed = new ArrayList<>();
  private final Map<String, PDFont> laid = new LinkedHashMap<>();

  public Faces(PDDocument document, List<Theme.Font> fonts) {
    this.document = document;
    this.fonts = fonts;
  }

  /**
   * Lends the faces to what is drawn in charts, which have no serifs; only where these are painted:
   * the library works out a digest of each face every time.
   */
  public void offerToCharts(PdfRendererBuilder builder) {
    for (Theme.Font face : fonts) {
      if (face.family().contains(SERIF)) {
        continue;
      }
      builder.useFont(
          () -> new ByteArrayInputStream(bytes(face)),
          face.family(),
          face.weight(),
          style(face),
          true,
          EnumSet.of(FSFontUseCase.SVG));
    }
  }

  private static FontStyle style(Theme.Font face) {
    return face.italic() ? FontStyle.ITALIC : FontStyle.NORMAL;
  }

  public void offerTo(PdfRendererBuilder builder) {
    for (Theme.Font face : fonts) {
      builder.useFont(
          new PDFontSupplier(null) {
            @Override
            public PDFont supply() {
              return lay(face);
            }
          },
          face.family(),
          face.weight(),
          style(face),
          true);
    }
  }

  /** The upright sans, for what is drawn onto finished pages. */
  public PDFont sans() {
    return fonts.stream()
        .filter(f -> f.family().contains("Sans") && !f.italic())
        .findFirst()
        .map(this::lay)
        .orElseThrow();
  }

  private PDFont lay(Theme.Font face) {
    return laid.computeIfAbsent(face.file(), file -> embed(face));
  }

  private PDFont embed(Theme.Font face) {
    try {
      TrueTypeFont font = parse(face);
      // Ligature glyphs have no Unicode of their own: they would fail the standards and break
      // copying.
      font.setEnableGsub(false);
      parsed.add(font);
      PDFont embedded = PDType0Font.load(document, font, true);
      if (face.own() == null) {
        makeShaper(face);
      }
      return embedded;
    } catch (IOException e) {
      throw new UncheckedIOException(face.own() == null ? e : unfit(face, e));
    }
  }

  /**
   * Reads a font.
   *
   * @throws ProblemException if it is one of the log's own, and none that can be printed
   */
  static TrueTypeFont parse(Theme.Font face) throws IOException {
    byte[] bytes = face.bytes();
    hideSubstitutions(bytes);
    try {
      return new TTFParser().parse(new RandomAccessReadBuffer(bytes));
    } catch (IOException e) {
      throw face.own() == null ? e : unfit(face, e);
    }
  }

  /**
   * Renames the table of glyph substitutions in a font's directory (OpenType 1.9, "Table
   * Directory"): it is used by nobody here, and takes longer to read than all others together.
   */
  private static void hideSubstitutions(byte[] font) {
    ByteBuffer bytes = ByteBuffer.wrap(font);
    for (int at = DIRECTORY; at + RECORD <= font.length; at += RECORD) {
      if (at >= DIRECTORY + RECORD * bytes.getShort(TABLES)) {
        return;
      }
      if (bytes.getInt(at) == GSUB) {
        bytes.putInt(at, HIDDEN);
      }
    }
  }

  private static ProblemException unfit(Theme.Font face, IOException cause) {
    return new ProblemException(
        Place.of("themes/fonts/" + face.file()),
        "This is no TrueType font that may be put into a book.",
        "Take it out of the folder, or put another in its place.",
        cause);
  }

  /**
   * The same face for the JDK's shaper, at 1000 units to the em.
   *
   * @param postScriptName such as {@code SourceSerif4-Regular}
   */
  static @Nullable Font shaper(String postScriptName) {
    synchronized (SHAPERS) {
      return SHAPERS.get(postScriptName);
    }
  }

  private static void makeShaper(Theme.Font face) throws IOException {
    synchronized (SHAPERS) {
      if (FILES.add(face.file())) {
        Font font = read(face);
        SHAPERS.put(
            font.getPSName(),
            font.deriveFont(
                Map.of(
                    TextAttribute.KERNING, TextAttribute.KERNING_ON, TextAttribute.SIZE, 1000f)));
      }
    }
  }

  private static Font read(Theme.Font face) throws IOException {
    try {
      return Font.createFont(Font.TRUETYPE_FONT, new ByteArrayInputStream(face.bytes()));
    } catch (FontFormatException e) {
      throw new IOException(face.file() + " is not a font that can be used: " + e.getMessage(), e);
    }
  }

  private static byte[] bytes(Theme.Font face) {
    try {
      return face.bytes();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Override
  public void close() throws IOException {
    for (TrueTypeFont font : parsed) {
      font.close();
    }
  }
}
