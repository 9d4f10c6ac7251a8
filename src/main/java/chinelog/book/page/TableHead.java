package chinelog.book.page;

import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSInteger;
import org.apache.pdfbox.cos.COSName;
import org.jspecify.annotations.Nullable;

/**
 * The tag of a table's head. The head is printed on every page of the table, and must be read aloud
 * on the first one only.
 */
final class TableHead {

  private final COSDictionary tag;
  private final Artifacts artifacts;
  private @Nullable COSBase firstPage;

  TableHead(COSDictionary tag, Artifacts artifacts) {
    this.tag = tag;
    this.artifacts = artifacts;
  }

  /** Takes what is on later pages out of the tag, and notes it as repeated. */
  void tellOnce() {
    isElsewhere(tag, null);
  }

  /** Whether all that a tag holds is on a page after the first; what is there goes. */
  private boolean isElsewhere(COSDictionary node, @Nullable COSBase pageAround) {
    COSBase own = node.getDictionaryObject(COSName.PG);
    COSBase page = own == null ? pageAround : own;
    COSBase kids = node.getDictionaryObject(COSName.K);
    if (kids instanceof COSArray all) {
      int before = all.size();
      for (int i = 0; i < all.size(); i++) {
        if (isKidElsewhere(all.getObject(i), page)) {
          all.remove(i);
          i--;
        }
      }
      return before > 0 && all.size() == 0;
    }
    return kids != null && isKidElsewhere(kids, page);
  }

  private boolean isKidElsewhere(COSBase kid, @Nullable COSBase page) {
    if (kid instanceof COSInteger id) {
      return isLater(page, id.intValue());
    }
    if (kid instanceof COSDictionary inner) {
      if (inner.containsKey(COSName.S)) {
        return isElsewhere(inner, page);
      }
      COSBase own = inner.getDictionaryObject(COSName.PG);
      return isLater(own == null ? page : own, inner.getInt(COSName.MCID));
    }
    return false;
  }

  private boolean isLater(@Nullable COSBase page, int id) {
    if (firstPage == null) {
      firstPage = page;
    }
    if (page == firstPage) {
      return false;
    }
    if (page instanceof COSDictionary later) {
      artifacts.addRepeated(later, id);
    }
    return true;
  }
}
