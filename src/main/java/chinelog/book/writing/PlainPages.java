package chinelog.book.writing;

import chinelog.book.page.Manuscript;
import chinelog.book.page.PictureStore;
import chinelog.book.page.Trim;
import chinelog.edition.Edition;
import chinelog.edition.Picture;
import chinelog.markup.HtmlWriter;
import java.util.Map;

/** Pages that another renderer wrote, made ready for print. */
public final class PlainPages {

  private static final double PICTURE_MM = 62;
  private static final double MARGIN_MM = 22;

  private PlainPages() {}

  public static Manuscript write(
      Edition.Contents edition,
      Trim trim,
      String title,
      String style,
      String body,
      Map<String, Picture> pictures) {
    PictureStore store = new PictureStore();
    pictures.values().forEach(p -> store.address(p, PICTURE_MM));
    HtmlWriter out = new HtmlWriter();
    out.open(
            "html",
            "xmlns",
            "http://www.w3.org/1999/xhtml",
            "lang",
            edition.locale().toLanguageTag())
        .open("head")
        .element("title", title)
        .empty("meta", "name", "author", "content", edition.maker())
        .empty("meta", "name", "subject", "content", title)
        .empty("meta", "name", "description", "content", title)
        .open("style", "type", "text/css")
        .raw(style)
        .raw(page(trim))
        .close("style")
        .close("head")
        .open("body")
        .open("div", "class", "body")
        .raw(body)
        .close("div")
        .close("body")
        .close("html");
    return new Manuscript(
        out.toString(), store, edition.locale(), edition.asOf(), trim, "", Manuscript.Slug.NONE);
  }

  private static String page(Trim trim) {
    return "@page { size: "
        + Trim.mm(trim.widthMm)
        + " "
        + Trim.mm(trim.heightMm)
        + "; margin: "
        + Trim.mm(MARGIN_MM)
        + "; }\nbody { background: none; padding: 0; max-width: none; font-size: 12pt; }\n"
        + ".frame img { width: "
        + Trim.mm(PICTURE_MM)
        + "; }\n.said, .frame { page-break-inside: avoid; }\n.frame, h2 { page-break-after: avoid; }\n";
  }
}
