package chinelog.book.page;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
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

  /** As the library writes them, each on a line of its own. */
  private static final Pattern EMPTY = Pattern.compile("\n/Artifact /(Prop\\d+) BDC\nEMC(?=\n)");

  private static final Pattern NUMBERED = Pattern.compile("\n/Span <</MCID (\\d+) ?>> BDC(?=\n)");

  private static final String HEADER = "\n/Artifact <</Type /Pagination /Subtype /Header>> BDC";

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
    String content;
    try (InputStream in = page.getContents()) {
      content = new String(in.readAllBytes(), StandardCharsets.ISO_8859_1);
    }
    COSDictionary properties =
        page.getResources().getCOSObject().getCOSDictionary(COSName.PROPERTIES);
    String kept =
        EMPTY
            .matcher(content)
            .replaceAll(
                empty -> {
                  properties.removeItem(COSName.getPDFName(empty.group(1)));
                  return "";
                });
    if (!ids.isEmpty()) {
      kept = NUMBERED.matcher(kept).replaceAll(mark -> marked(mark, ids));
    }
    PDStream stream = new PDStream(document);
    try (OutputStream out = stream.createOutputStream(COSName.FLATE_DECODE)) {
      out.write(kept.getBytes(StandardCharsets.ISO_8859_1));
    }
    page.setContents(stream);
  }

  private static String marked(MatchResult mark, Set<Integer> ids) {
    return ids.contains(Integer.valueOf(mark.group(1))) ? HEADER : mark.group();
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
