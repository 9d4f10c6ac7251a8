package chinelog.book.writing;

import chinelog.book.page.Manuscript;
import chinelog.book.page.PageNumbers;
import chinelog.edition.Edition;
import java.util.ArrayList;
import java.util.List;

/** Writes the build book: what stands before, the chapters, and the appendices. */
public final class BuildBook {

  private BuildBook() {}

  public static Manuscript write(Setting setting, String style) {
    Edition.Contents edition = setting.edition;
    RunWriter runs = new RunWriter(setting, true);
    PlateWriter plates = new PlateWriter(setting, runs);
    BlockWriter blocks = new BlockWriter(setting, runs, plates);
    FrontPages front = new FrontPages(setting);

    List<Section> sections = new ArrayList<>(new Chapters(setting, blocks, plates).sections());
    sections.addAll(new Appendices(setting).sections());
    List<Section> all = new ArrayList<>();
    if (!edition.agreements().isEmpty()) {
      all.add(Section.of("agreements", setting.words.say("agreements"), () -> {}));
    }
    if (!setting.edition.figures().isEmpty() || setting.edition.hasWithheld()) {
      all.add(Section.of("reading", setting.words.say("reading"), front::reading));
    }
    all.add(
        Section.of(
            "particulars",
            setting.words.say("particulars"),
            () -> front.particulars("particulars", true)));
    all.addAll(sections);

    Shell shell = new Shell(setting, style);
    shell.open("book.kind", "book.description", all);
    front.cover(setting.words.say("book.kind"));
    setting.out.open("div", "class", "blind");
    front.frontispiece(plates);
    front.halfTitle(blocks);
    setting.out.close();
    setting.out.open("div", "class", "front");
    front.contents(all);
    String set = setting.words.say("colophon.set", setting.words.date(edition.asOf()));
    front.imprint("book.description", List.of(set, setting.words.say("colophon.made")));
    setting.out.close();
    setting.out.open("div", "class", "body", "id", PageNumbers.BODY);
    all.forEach(section -> section.write().run());
    setting.out.close();
    return shell.close();
  }
}
