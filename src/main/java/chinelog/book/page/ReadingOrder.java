package chinelog.book.page;

import com.openhtmltopdf.layout.Layer;
import com.openhtmltopdf.pdfboxout.PdfBoxAccessibilityHelper;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.render.BlockBox;
import com.openhtmltopdf.render.Box;
import com.openhtmltopdf.render.InlineLayoutBox;
import java.io.IOException;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.jspecify.annotations.Nullable;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/**
 * Mends the tags of a laid-out document: the library tags footnotes and positioned boxes at the end
 * of the document, where a reader that follows the tags would hear them last.
 *
 * <p>A footnote is read after the paragraph that calls it, a positioned box where the markup has
 * it.
 */
final class ReadingOrder {

  /** A note is not read in the middle of these, but after them. */
  private static final Set<String> UNBROKEN =
      Set.of(
          "p", "h1", "h2", "h3", "h4", "h5", "em", "strong", "span", "a", "figcaption", "caption");

  private static final Set<String> POINTLESS_IF_EMPTY =
      Set.of("THead", "TFoot", "TBody", "Sect", "Div");

  private final Map<Element, PDStructureElement> tags = new LinkedHashMap<>();
  private final Map<COSBase, Element> elements = new IdentityHashMap<>();
  private final Set<Element> astray = new LinkedHashSet<>();
  private final Artifacts artifacts = new Artifacts();

  private ReadingOrder() {}

  /** Mends the document that the renderer holds, painted but not yet saved. */
  static void mend(PdfBoxRenderer renderer) throws IOException {
    ReadingOrder order = new ReadingOrder();
    order.collect(renderer.getRootBox().getLayer(), true);
    order.tags.forEach((element, tag) -> order.elements.put(tag.getCOSObject(), element));
    order.astray.forEach(order::bringBack);
    order.nameTags();
    order.artifacts.mark(renderer.getPdfDocument());
    prune(renderer.getPdfDocument().getDocumentCatalog().getStructureTreeRoot().getCOSObject());
  }

  private void collect(Layer layer, boolean isRoot) {
    BlockBox master = layer.getMaster();
    if (!isRoot && master.getElement() != null) {
      addAstray(master);
    }
    collect(master);
    for (Layer child : new ArrayList<>(layer.getChildren())) {
      collect(child, false);
    }
  }

  private void addAstray(Box box) {
    Element element = box.getElement();
    if (element == null || element.getTagName().startsWith("fs-")) {
      box.getChildren().forEach(this::addAstray);
    } else {
      astray.add(element);
    }
  }

  private void collect(Box box) {
    if (box.getElement() != null && !box.isAnonymous()) {
      PDStructureElement tag = PdfBoxAccessibilityHelper.getStructualElementForBox(box);
      if (tag != null) {
        tags.putIfAbsent(box.getElement(), tag);
      }
    }
    box.getChildren().forEach(this::collect);
    if (box instanceof InlineLayoutBox inline) {
      for (Object child : inline.getInlineChildren()) {
        if (child instanceof Box inner) {
          collect(inner);
        }
      }
    }
  }

  private void bringBack(Element element) {
    PDStructureElement tag = tags.get(element);
    if (tag == null) {
      return;
    }
    Element anchor = element;
    Element home = parent(element);
    while (home != null && (!tags.containsKey(home) || isNote(element) && isUnbroken(home))) {
      anchor = home;
      home = parent(home);
    }
    PDStructureElement homeTag = home == null ? null : tags.get(home);
    if (homeTag != null) {
      move(tag.getCOSObject(), homeTag.getCOSObject(), anchor);
    }
  }

  private void move(COSDictionary tag, COSDictionary home, Element anchor) {
    COSArray before = kids(tag.getCOSDictionary(COSName.P));
    for (int i = before.size() - 1; i >= 0; i--) {
      if (before.getObject(i) == tag) {
        before.remove(i);
      }
    }
    COSArray after = kids(home);
    after.add(placeAfter(anchor, after), tag);
    tag.setItem(COSName.P, home);
  }

  private int placeAfter(Element anchor, COSArray kids) {
    for (int i = 0; i < kids.size(); i++) {
      Element kid = elements.get(kids.getObject(i));
      if (kid != null) {
        int position = anchor.compareDocumentPosition(kid);
        if ((position & Node.DOCUMENT_POSITION_FOLLOWING) != 0
            && (position & Node.DOCUMENT_POSITION_CONTAINED_BY) == 0) {
          return i;
        }
      }
    }
    return kids.size();
  }

  private void nameTags() {
    int notes = 0;
    for (Map.Entry<Element, PDStructureElement> entry : tags.entrySet()) {
      Element element = entry.getKey();
      PDStructureElement tag = entry.getValue();
      if (isNote(element)) {
        tag.setStructureType("Note");
        notes++;
        tag.setElementIdentifier("note-" + notes);
      } else if (element.getTagName().equals("figcaption")) {
        tag.setStructureType("Caption");
      } else if (element.getTagName().equals("thead")) {
        new TableHead(tag.getCOSObject(), artifacts).tellOnce();
      } else if (element.getTagName().equals("code")) {
        tag.setStructureType("Code");
      }
    }
  }

  /** Takes out containers left without content; true if this one is such. */
  private static boolean prune(COSDictionary tag) {
    COSBase kids = tag.getDictionaryObject(COSName.K);
    boolean pointless = POINTLESS_IF_EMPTY.contains(tag.getNameAsString(COSName.S, ""));
    if (kids == null) {
      return pointless;
    }
    if (kids instanceof COSDictionary only && !only.containsKey(COSName.S)) {
      return false;
    }
    COSArray all = kids(tag);
    for (int i = all.size() - 1; i >= 0; i--) {
      if (all.getObject(i) instanceof COSDictionary kid
          && kid.containsKey(COSName.S)
          && prune(kid)) {
        all.remove(i);
      }
    }
    return all.size() == 0 && pointless;
  }

  /** The kids of a tag as an array, which the format leaves out for an only kid. */
  private static COSArray kids(COSDictionary tag) {
    if (tag.getDictionaryObject(COSName.K) instanceof COSArray array) {
      return array;
    }
    COSArray array = new COSArray();
    COSBase only = tag.getItem(COSName.K);
    if (only != null) {
      array.add(only);
    }
    tag.setItem(COSName.K, array);
    return array;
  }

  private static boolean isNote(Element element) {
    return List.of(element.getAttribute("class").split(" ")).contains("note");
  }

  private static boolean isUnbroken(Element element) {
    return UNBROKEN.contains(element.getTagName());
  }

  private static @Nullable Element parent(Element element) {
    return element.getParentNode() instanceof Element parent ? parent : null;
  }
}
