package chinelog.book.page;

import java.awt.geom.AffineTransform;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.regex.Pattern;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.multipdf.LayerUtility;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentCatalog;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDMetadata;
import org.apache.pdfbox.pdmodel.common.PDNumberTreeNode;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDMarkInfo;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDParentTreeValue;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureTreeRoot;
import org.apache.pdfbox.pdmodel.documentinterchange.taggedpdf.StandardStructureTypes;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;
import org.apache.pdfbox.util.Matrix;

/**
 * Lays the pages of a booklet two on a side, so that the sheets, printed on both sides, turned over
 * the short edge, laid in each other, folded and stitched through the fold, make the booklet.
 *
 * <p>Eight pages go on two sheets: 8 and 1, 2 and 7; 6 and 3, 4 and 5. Where there are fewer pages
 * than places, those left over are ruled to write on, but for the back cover. Short marks show
 * where to fold.
 */
public final class Imposition {

  private static final int PAGES_PER_SHEET = 4;

  private static final float HAIRLINE_PT = 0.3f;
  private static final float GREY = 0.75f;

  /** 14 mm. */
  private static final float MARGIN_PT = 40;

  /** 8 mm from line to line. */
  private static final float RULING_PT = 22.7f;

  /** 4 mm. */
  private static final float FOLD_PT = 11.3f;

  /** Pages to a side; the last of all is the back cover and stays white. */
  private static final int LAST_IS_BLANK = 2;

  private static final Pattern CLAIM =
      Pattern.compile("<(pdfa|pdfua)id:(part|conformance)>[^<]*</\\1id:\\2>");

  private Imposition() {}

  /** Numbers of the pages on the sides of the sheets, left and right; those beyond are blank. */
  static List<List<Integer>> sides(int pageCount) {
    int sheets = (pageCount + PAGES_PER_SHEET - 1) / PAGES_PER_SHEET;
    int last = sheets * PAGES_PER_SHEET;
    List<List<Integer>> sides = new ArrayList<>();
    for (int sheet = 0; sheet < sheets; sheet++) {
      int outer = 2 * sheet;
      sides.add(List.of(last - outer, outer + 1));
      sides.add(List.of(outer + 2, last - outer - 1));
    }
    return sides;
  }

  public static void impose(Path booklet, String pageWord, Path sheets) throws IOException {
    try (PDDocument pages = Loader.loadPDF(booklet.toFile());
        PDDocument imposed = new PDDocument()) {
      new Sheets(pages, imposed, pageWord).lay();
      imposed.setDocumentId((long) pages.getDocumentInformation().getTitle().hashCode());
      imposed.save(sheets.toFile());
    }
  }

  /**
   * The sheets of one booklet. Each page on them is tagged as a figure that tells its number, in
   * the order of the booklet; to be read aloud, there is the booklet itself.
   */
  private static final class Sheets {

    private final PDDocument pages;
    private final PDDocument imposed;
    private final String pageWord;
    private final LayerUtility layers;
    private final SortedMap<Integer, PDStructureElement> figures = new TreeMap<>();
    private final PDNumberTreeNode tagsBySide = new PDNumberTreeNode(PDParentTreeValue.class);
    private final Map<Integer, PDParentTreeValue> sideTags = new TreeMap<>();

    Sheets(PDDocument pages, PDDocument imposed, String pageWord) {
      this.pages = pages;
      this.imposed = imposed;
      this.pageWord = pageWord;
      this.layers = new LayerUtility(imposed);
    }

    void lay() throws IOException {
      PDStructureTreeRoot root = new PDStructureTreeRoot();
      PDStructureElement document = new PDStructureElement(StandardStructureTypes.DOCUMENT, root);
      root.appendKid(document);
      for (List<Integer> side : sides(pages.getNumberOfPages())) {
        side(side, document);
      }
      figures.values().forEach(document::appendKid);
      tagsBySide.setNumbers(sideTags);
      root.setParentTree(tagsBySide);
      root.setParentTreeNextKey(sideTags.size());
      describe(root);
    }

    private void side(List<Integer> side, PDStructureElement document) throws IOException {
      PDRectangle page = pages.getPage(0).getMediaBox();
      PDPage both = new PDPage(new PDRectangle(2 * page.getWidth(), page.getHeight()));
      both.setStructParents(sideTags.size());
      imposed.addPage(both);
      COSArray tags = new COSArray();
      try (PDPageContentStream content = new PDPageContentStream(imposed, both)) {
        for (int i = 0; i < side.size(); i++) {
          if (side.get(i) <= pages.getNumberOfPages()) {
            tags.add(figure(side.get(i), document, both, tags.size()));
            place(content, side.get(i), i * page.getWidth(), tags.size() - 1);
          } else if (side.get(i) < LAST_IS_BLANK * sides(pages.getNumberOfPages()).size()) {
            lines(content, page, i * page.getWidth());
          }
        }
        fold(content, page);
      }
      sideTags.put(sideTags.size(), new PDParentTreeValue(tags));
    }

    /** A page that the booklet leaves over is ruled, to write on. */
    private static void lines(PDPageContentStream content, PDRectangle page, float left)
        throws IOException {
      content.beginMarkedContent(COSName.ARTIFACT);
      content.setLineWidth(HAIRLINE_PT);
      content.setStrokingColor(GREY);
      float top = page.getHeight() - MARGIN_PT;
      for (float y = top; y >= MARGIN_PT; y -= RULING_PT) {
        content.moveTo(left + MARGIN_PT, y);
        content.lineTo(left + page.getWidth() - MARGIN_PT, y);
      }
      content.stroke();
      content.endMarkedContent();
    }

    /** Where the sheet is folded, at its head and at its foot. */
    private static void fold(PDPageContentStream content, PDRectangle page) throws IOException {
      content.beginMarkedContent(COSName.ARTIFACT);
      content.setLineWidth(HAIRLINE_PT);
      content.setStrokingColor(GREY);
      content.setLineDashPattern(new float[] {2, 2}, 0);
      content.moveTo(page.getWidth(), page.getHeight());
      content.lineTo(page.getWidth(), page.getHeight() - FOLD_PT);
      content.moveTo(page.getWidth(), 0);
      content.lineTo(page.getWidth(), FOLD_PT);
      content.stroke();
      content.endMarkedContent();
    }

    private COSBase figure(int number, PDStructureElement document, PDPage both, int id) {
      PDStructureElement figure = new PDStructureElement(StandardStructureTypes.Figure, document);
      figure.setPage(both);
      figure.setAlternateDescription(pageWord.replace("{0}", String.valueOf(number)));
      figure.appendKid(id);
      figures.put(number, figure);
      return figure.getCOSObject();
    }

    private void place(PDPageContentStream content, int number, float x, int id)
        throws IOException {
      PDFormXObject form = layers.importPageAsForm(pages, number - 1);
      MarkedContent.strip(form);
      content.beginMarkedContent(COSName.getPDFName(StandardStructureTypes.Figure), id);
      content.saveGraphicsState();
      content.transform(new Matrix(AffineTransform.getTranslateInstance(x, 0)));
      content.drawForm(form);
      content.restoreGraphicsState();
      content.endMarkedContent();
    }

    private void describe(PDStructureTreeRoot root) throws IOException {
      PDDocumentCatalog of = pages.getDocumentCatalog();
      PDDocumentCatalog catalog = imposed.getDocumentCatalog();
      catalog.setStructureTreeRoot(root);
      PDMarkInfo marks = new PDMarkInfo();
      marks.setMarked(true);
      catalog.setMarkInfo(marks);
      catalog.setLanguage(of.getLanguage());
      imposed.setDocumentInformation(pages.getDocumentInformation());
      String told = new String(of.getMetadata().toByteArray(), StandardCharsets.UTF_8);
      PDMetadata metadata = new PDMetadata(imposed);
      // The sheets do not meet the standards that the booklet meets, and may not say so.
      metadata.importXMPMetadata(
          CLAIM.matcher(told).replaceAll("").getBytes(StandardCharsets.UTF_8));
      catalog.setMetadata(metadata);
    }
  }
}
