package chinelog.book.page;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSNull;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDStream;

/**
 * What is painted and not read. The head of a table that is printed again on a later page becomes
 * an artifact of pagination, as ISO 14289-1, 7.1, wants it; and the library's marks of backgrounds
 * that there are none of, two for each line of text, are taken out.
 */
final class Artifacts {

  // The library writes one space between operands and ends each operator's line. No text on a page
  // has the end of a line in it, so that none can be taken for a mark.

  private static final String ARTIFACT = "/Artifact /";
  private static final String NOTHING = " BDC\nEMC\n";
  private static final String HEADER = "/Artifact <</Type /Pagination /Subtype /Header>> BDC\n";

  /** Numbers of the marked contents that are repetitions, by page. */
  private final Map<COSDictionary, Set<Integer>> repeated = new HashMap<>();

  void addRepeated(COSDictionary page, int id) {
    repeated.computeIfAbsent(page, p -> new TreeSet<>()).add(id);
  }

  void mark(PDDocument document) throws IOException {
    COSDictionary tree =
        document
            .getDocumentCatalog()
            .getStructureTreeRoot()
            .getCOSObject()
            .getCOSDictionary(COSName.PARENT_TREE);
    for (PDPage page : document.getPages()) {
      Set<Integer> ids = repeated.getOrDefault(page.getCOSObject(), Set.of());
      rewrite(document, page, ids);
      forget(tree, page.getStructParents(), ids);
    }
  }

  private static void rewrite(PDDocument document, PDPage page, Set<Integer> ids)
      throws IOException {
    COSDictionary properties =
        page.getResources().getCOSObject().getCOSDictionary(COSName.PROPERTIES);
    String all;
    try (InputStream in = page.getContents()) {
      all = new String(in.readAllBytes(), StandardCharsets.ISO_8859_1);
    }
    String kept = withoutEmpty(all, properties);
    for (int id : ids) {
      kept = kept.replace("/Span <</MCID " + id + ">> BDC\n", HEADER);
    }
    PDStream stream = new PDStream(document);
    try (OutputStream out = stream.createOutputStream(COSName.FLATE_DECODE)) {
      out.write(kept.getBytes(StandardCharsets.ISO_8859_1));
    }
    page.setContents(stream);
  }

  /**
   * The commands of a page without empty marks.
   *
   * @param properties of the page, from which those of the marks are taken out
   */
  private static String withoutEmpty(String all, COSDictionary properties) {
    StringBuilder kept = new StringBuilder(all.length());
    int done = 0;
    for (int at = all.indexOf(ARTIFACT); at >= 0; at = all.indexOf(ARTIFACT, at + 1)) {
      int name = at + ARTIFACT.length();
      int end = all.indexOf(' ', name);
      if (end >= 0 && all.startsWith(NOTHING, end)) {
        properties.removeItem(COSName.getPDFName(all.substring(name, end)));
        kept.append(all, done, at);
        done = end + NOTHING.length();
      }
    }
    return kept.append(all, done, all.length()).toString();
  }

  /** Takes the way from the contents of a page back to their tags out of the parent tree. */
  private static void forget(COSDictionary tree, int pageKey, Set<Integer> ids) {
    COSArray numbers = tree.getCOSArray(COSName.NUMS);
    for (int i = 0; i + 1 < numbers.size() && !ids.isEmpty(); i += 2) {
      COSBase tags = numbers.getObject(i + 1);
      if (numbers.getInt(i) == pageKey && tags instanceof COSArray ofPage) {
        ids.forEach(id -> ofPage.set(id, COSNull.NULL));
      }
    }
  }
}
