package chinelog.book;

import java.io.IOException;
import java.io.OutputStream;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.apache.pdfbox.contentstream.operator.Operator;
import org.apache.pdfbox.contentstream.operator.OperatorName;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSNull;
import org.apache.pdfbox.pdfparser.PDFStreamParser;
import org.apache.pdfbox.pdfwriter.ContentStreamWriter;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDStream;
import org.apache.pdfbox.pdmodel.documentinterchange.markedcontent.PDPropertyList;

/**
 * What is printed again at the head of a later page. A reader who follows the tags has heard it:
 * ISO 14289-1, 7.1, wants it marked as an artifact of pagination.
 */
final class Repetitions {

  private static final COSName PAGINATION = COSName.getPDFName("Pagination");
  private static final COSName HEADER = COSName.getPDFName("Header");

  /** Numbers of the marked contents, by page. */
  private final Map<COSDictionary, Set<Integer>> byPage = new LinkedHashMap<>();

  void add(COSDictionary page, int id) {
    byPage.computeIfAbsent(page, p -> new TreeSet<>()).add(id);
  }

  void makeArtifacts(PDDocument document) throws IOException {
    COSDictionary tree =
        document
            .getDocumentCatalog()
            .getStructureTreeRoot()
            .getCOSObject()
            .getCOSDictionary(COSName.PARENT_TREE);
    for (Map.Entry<COSDictionary, Set<Integer>> entry : byPage.entrySet()) {
      PDPage page = new PDPage(entry.getKey());
      rewrite(document, page, entry.getValue());
      forget(tree, page.getStructParents(), entry.getValue());
    }
  }

  private static void rewrite(PDDocument document, PDPage page, Set<Integer> ids)
      throws IOException {
    List<Object> tokens = new PDFStreamParser(page).parse();
    for (int i = 2; i < tokens.size(); i++) {
      if (tokens.get(i) instanceof Operator operator
          && operator.getName().equals(OperatorName.BEGIN_MARKED_CONTENT_SEQ)
          && ids.contains(id(page, tokens.get(i - 1)))) {
        tokens.set(i - 2, COSName.ARTIFACT);
        tokens.set(i - 1, header());
      }
    }
    PDStream content = new PDStream(document);
    try (OutputStream out = content.createOutputStream(COSName.FLATE_DECODE)) {
      new ContentStreamWriter(out).writeTokens(tokens);
    }
    page.setContents(content);
  }

  /** The number that the properties of a marked content give it; -1 for none. */
  private static int id(PDPage page, Object properties) {
    if (properties instanceof COSDictionary direct) {
      return direct.getInt(COSName.MCID);
    }
    PDPropertyList named =
        properties instanceof COSName name ? page.getResources().getProperties(name) : null;
    return named == null ? -1 : named.getCOSObject().getInt(COSName.MCID);
  }

  private static COSDictionary header() {
    COSDictionary header = new COSDictionary();
    header.setItem(COSName.TYPE, PAGINATION);
    header.setItem(COSName.SUBTYPE, HEADER);
    return header;
  }

  /** Takes the way from the contents of a page back to their tags out of the parent tree. */
  private static void forget(COSDictionary tree, int pageKey, Set<Integer> ids) {
    COSArray numbers = tree.getCOSArray(COSName.NUMS);
    for (int i = 0; i + 1 < numbers.size(); i += 2) {
      COSBase tags = numbers.getObject(i + 1);
      if (numbers.getInt(i) == pageKey && tags instanceof COSArray ofPage) {
        ids.forEach(id -> ofPage.set(id, COSNull.NULL));
      }
    }
  }
}
