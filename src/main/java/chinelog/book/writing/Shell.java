package chinelog.book.writing;

import chinelog.book.page.Manuscript;
import chinelog.edition.Edition.Contents;
import java.util.List;

/** The outermost parts of the pages: head, style sheet, bookmarks, and the title in the heads. */
final class Shell {

  private final Setting setting;
  private final Xhtml out;
  private final String style;

  Shell(Setting setting, String style) {
    this.setting = setting;
    this.out = setting.out;
    this.style = style;
  }

  void open(String kindKey, String descriptionKey, List<BookSection> sections) {
    Contents edition = setting.edition;
    BookWords words = setting.words;
    String description =
        words.say(
            descriptionKey, edition.title(), edition.readersTitle(), words.date(edition.asOf()));
    out.open(
        "html", "xmlns", "http://www.w3.org/1999/xhtml", "lang", edition.locale().toLanguageTag());
    out.open("head");
    out.leaf("title", edition.title() + ": " + words.say(kindKey));
    out.empty("meta", "name", "author", "content", edition.maker());
    out.empty("meta", "name", "subject", "content", description);
    out.empty("meta", "name", "description", "content", description);
    out.leaf("style", style, "type", "text/css");
    bookmarks(sections);
    out.close().open("body", "class", kindKey.substring(0, kindKey.indexOf('.')));
    out.leaf("div", BookWords.shortened(edition.title()), "class", "runningtitle");
  }

  private void bookmarks(List<BookSection> sections) {
    out.open("bookmarks");
    out.empty("bookmark", "name", setting.edition.title(), "href", "#" + FrontPages.COVER);
    if (FrontPages.hasContents(sections)) {
      String contents = setting.words.say("contents");
      out.empty("bookmark", "name", contents, "href", "#" + FrontPages.CONTENTS);
    }
    for (BookSection section : sections) {
      out.open("bookmark", "name", section.title(), "href", "#" + section.id());
      section.within().forEach(e -> out.empty("bookmark", "name", e.title(), "href", "#" + e.id()));
      out.close();
    }
    out.close();
  }

  Manuscript close() {
    return close(Manuscript.Slug.NONE);
  }

  Manuscript close(Manuscript.Slug slug) {
    out.close().close();
    return new Manuscript(
        out.done(),
        setting.pictures,
        setting.edition.locale(),
        setting.edition.asOf(),
        setting.trim,
        setting.words.shared().text("under.mark", ""),
        slug);
  }
}
