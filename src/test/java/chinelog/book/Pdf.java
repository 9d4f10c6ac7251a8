package chinelog.book;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedSet;
import java.util.TreeSet;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSInteger;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDParentTreeValue;
import org.apache.pdfbox.pdmodel.documentinterchange.markedcontent.PDMarkedContent;
import org.apache.pdfbox.text.PDFMarkedContentExtractor;
import org.apache.pdfbox.text.TextPosition;

/** Reads a file by its tags, as a screen reader does (ISO 32000-1, 14.7 and 14.8). */
final class Pdf {

  private final Map<COSBase, Map<Integer, String>> pieces = new HashMap<>();
  private final List<Piece> read = new ArrayList<>();
  private final SortedSet<String> reached = new TreeSet<>();

  /** A run of text as it is reached by the tags. */
  record Piece(String tag, int page, String text) {}

  private final Map<COSBase, Integer> pages = new HashMap<>();

  private Pdf(PDDocument document) throws IOException {
    for (PDPage page : document.getPages()) {
      pages.put(page.getCOSObject(), pages.size());
      PDFMarkedContentExtractor extractor = new PDFMarkedContentExtractor();
      extractor.processPage(page);
      Map<Integer, String> byId = new HashMap<>();
      extractor.getMarkedContents().forEach(c -> collect(c, byId));
      pieces.put(page.getCOSObject(), byId);
    }
    COSDictionary root = document.getDocumentCatalog().getStructureTreeRoot().getCOSObject();
    walk(root.getDictionaryObject(COSName.K), "", null);
  }

  static List<Piece> byTags(PDDocument document) throws IOException {
    return new Pdf(document).read;
  }

  private static void collect(PDMarkedContent content, Map<Integer, String> byId) {
    StringBuilder text = new StringBuilder();
    for (Object inside : content.getContents()) {
      if (inside instanceof TextPosition position) {
        text.append(position.getUnicode());
      } else if (inside instanceof PDMarkedContent nested) {
        collect(nested, byId);
      }
    }
    if (content.getMCID() >= 0) {
      byId.merge(content.getMCID(), text.toString(), String::concat);
    }
  }

  private void walk(COSBase node, String tag, COSBase page) {
    if (node instanceof COSArray all) {
      for (int i = 0; i < all.size(); i++) {
        walk(all.getObject(i), tag, page);
      }
    } else if (node instanceof COSInteger id) {
      add(tag, page, id.intValue());
    } else if (node instanceof COSDictionary kid) {
      COSBase own = kid.getDictionaryObject(COSName.PG);
      COSBase here = own == null ? page : own;
      if (kid.containsKey(COSName.S)) {
        walk(kid.getDictionaryObject(COSName.K), kid.getNameAsString(COSName.S), here);
      } else if (kid.containsKey(COSName.MCID)) {
        add(tag, here, kid.getInt(COSName.MCID));
      }
    }
  }

  /** The numbers of the marked contents of all pages, such as {@code 3/12} for page 3 from 0. */
  static SortedSet<String> numbersOnPages(PDDocument document) throws IOException {
    Pdf pdf = new Pdf(document);
    SortedSet<String> numbers = new TreeSet<>();
    pdf.pieces.forEach(
        (page, byId) -> byId.keySet().forEach(id -> numbers.add(pdf.name(page, id))));
    return numbers;
  }

  /** Those to which the tags lead. */
  static SortedSet<String> numbersInTags(PDDocument document) throws IOException {
    return new Pdf(document).reached;
  }

  /** Those from which the parent tree leads back to a tag (ISO 32000-1, 14.7.4.4). */
  static SortedSet<String> numbersInParentTree(PDDocument document) throws IOException {
    SortedSet<String> numbers = new TreeSet<>();
    Map<Integer, ?> tree =
        document.getDocumentCatalog().getStructureTreeRoot().getParentTree().getNumbers();
    for (int page = 0; page < document.getNumberOfPages(); page++) {
      Object ofPage = tree.get(document.getPage(page).getStructParents());
      if (ofPage instanceof PDParentTreeValue value
          && value.getCOSObject() instanceof COSArray tags) {
        for (int id = 0; id < tags.size(); id++) {
          if (tags.getObject(id) instanceof COSDictionary) {
            numbers.add(page + "/" + id);
          }
        }
      }
    }
    return numbers;
  }

  private String name(COSBase page, int id) {
    return pages.get(page) + "/" + id;
  }

  private void add(String tag, COSBase page, int id) {
    reached.add(name(page, id));
    String text = pieces.getOrDefault(page, Map.of()).getOrDefault(id, "");
    if (!text.isBlank()) {
      read.add(new Piece(tag, pages.get(page), text));
    }
  }
}
