package chinelog.book.writing;

import chinelog.book.page.Manuscript;
import chinelog.book.page.PageNumbers;
import chinelog.book.page.Trim;
import chinelog.edition.Edition;
import chinelog.edition.Plate;
import chinelog.problem.Place;
import chinelog.problem.Problem;
import chinelog.problem.Sentence;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Writes the build book: what stands before, the chapters, and the appendices. */
public final class BuildBook {

  private BuildBook() {}

  /** Fewer show in print: common practice of printing houses, no source. */
  private static final int DOTS_PER_INCH = 200;

  /** A reminder where the picture on the cover is too small to be printed finely. */
  public static Optional<Problem> findCoarseCover(Edition.Contents edition, Trim trim) {
    Plate hero = edition.hero();
    if (hero == null) {
      return Optional.empty();
    }
    double dots = FrontPages.dotsPerInch(hero, trim);
    if (dots >= DOTS_PER_INCH) {
      return Optional.empty();
    }
    long wide = Math.round(hero.picture().largest().widthPx() * DOTS_PER_INCH / dots);
    return Optional.of(
        Problem.reminder(
            Place.of("log.yaml"),
            Sentence.of(
                "The photograph on the cover of the book has {0} dots to the inch, which"
                    + " will look coarse.",
                Math.round(dots)),
            Sentence.of("Take another as hero, at least {0} pixels wide.", wide)));
  }

  public static Manuscript write(Setting setting, String style) {
    Edition.Contents edition = setting.edition;
    RunWriter runs = new RunWriter(setting, true);
    PlateWriter plates = new PlateWriter(setting, runs);
    BlockWriter blocks = new BlockWriter(setting, runs, plates);
    FrontPages front = new FrontPages(setting);

    List<BookSection> sections = new ArrayList<>(new Chapters(setting, blocks, plates).sections());
    sections.addAll(new Appendices(setting).sections());
    List<BookSection> all = new ArrayList<>();
    if (!setting.agreements().isEmpty()) {
      all.add(BookSection.of("agreements", setting.words.say("agreements"), () -> {}));
    }
    if (!setting.listed.isEmpty() || setting.edition.hasWithheld()) {
      all.add(BookSection.of("reading", setting.words.say("reading"), front::reading));
    }
    all.add(
        BookSection.of(
            "particulars",
            setting.words.say("particulars"),
            () -> front.particulars("particulars", true)));
    all.addAll(sections);

    Shell shell = new Shell(setting, style);
    shell.open("book.kind", "book.description", all);
    if (setting.bleedMm > 0) {
      front.firstLeaf();
    } else {
      front.cover(setting.words.say("book.kind"));
    }
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
