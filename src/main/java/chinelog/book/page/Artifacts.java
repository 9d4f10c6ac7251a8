package chinelog.book.page;

import chinelog.book.page.MarkedContent.Operation;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
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
    List<Operation> all = MarkedContent.read(page);
    List<Operation> kept = new ArrayList<>(all.size());
    for (int i = 0; i < all.size(); i++) {
      Operation operation = all.get(i);
      COSName named = operation.begins("Artifact") ? operation.propertiesName() : null;
      if (named != null && all.get(i + 1).ends()) {
        properties.removeItem(named);
        i++;
      } else {
        kept.add(isRepeated(operation, ids) ? operation.with(header()) : operation);
      }
    }
    PDStream stream = new PDStream(document);
    MarkedContent.write(kept, stream);
    page.setContents(stream);
  }

  private static boolean isRepeated(Operation operation, Set<Integer> ids) {
    COSDictionary own = operation.begins("Span") ? operation.properties() : null;
    return own != null && ids.contains(own.getInt(COSName.MCID));
  }

  private static List<Object> header() {
    COSDictionary kind = new COSDictionary();
    kind.setName(COSName.TYPE, "Pagination");
    kind.setName(COSName.SUBTYPE, "Header");
    return List.of(COSName.ARTIFACT, kind);
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
