package chinelog.pattern;

import java.io.IOException;
import java.util.Map;
import java.util.TreeMap;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDNumberTreeNode;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDMarkInfo;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDParentTreeValue;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureTreeRoot;
import org.apache.pdfbox.pdmodel.documentinterchange.taggedpdf.PDLayoutAttributeObject;
import org.apache.pdfbox.pdmodel.documentinterchange.taggedpdf.StandardStructureTypes;

/** The tags of the sheets: a heading and a described figure each. All else is an artifact. */
final class Tags {

  private final PDStructureTreeRoot root = new PDStructureTreeRoot();
  private final PDStructureElement document =
      new PDStructureElement(StandardStructureTypes.DOCUMENT, root);
  private final Map<Integer, PDParentTreeValue> byPage = new TreeMap<>();
  private PDPage page = new PDPage();
  private COSArray onPage = new COSArray();

  Tags() {
    root.appendKid(document);
  }

  void turnTo(PDPage next) {
    page = next;
    onPage = new COSArray();
    page.setStructParents(byPage.size());
    byPage.put(byPage.size(), new PDParentTreeValue(onPage));
  }

  /** Begins what is read as a heading, a paragraph or a figure. */
  PDStructureElement begin(PDPageContentStream content, String type) throws IOException {
    PDStructureElement element = new PDStructureElement(type, document);
    element.setPage(page);
    int id = onPage.size();
    element.appendKid(id);
    onPage.add(element.getCOSObject());
    document.appendKid(element);
    content.beginMarkedContent(COSName.getPDFName(type), id);
    return element;
  }

  void beginFigure(PDPageContentStream content, String description) throws IOException {
    PDStructureElement figure = begin(content, StandardStructureTypes.Figure);
    figure.setAlternateDescription(description);
    PDLayoutAttributeObject layout = new PDLayoutAttributeObject();
    layout.setPlacement(PDLayoutAttributeObject.PLACEMENT_BLOCK);
    layout.setBBox(page.getMediaBox());
    figure.addAttribute(layout);
  }

  static void beginArtifact(PDPageContentStream content) throws IOException {
    content.beginMarkedContent(COSName.ARTIFACT);
  }

  void attach(PDDocument pdf) {
    PDNumberTreeNode tree = new PDNumberTreeNode(PDParentTreeValue.class);
    tree.setNumbers(byPage);
    root.setParentTree(tree);
    root.setParentTreeNextKey(byPage.size());
    pdf.getDocumentCatalog().setStructureTreeRoot(root);
    PDMarkInfo marks = new PDMarkInfo(new COSDictionary());
    marks.setMarked(true);
    pdf.getDocumentCatalog().setMarkInfo(marks);
  }
}
