package chinelog.publish;

import chinelog.book.Press;
import chinelog.edition.Edition;
import chinelog.edition.Letter;
import chinelog.log.records.Readers;
import chinelog.markup.Theme;
import chinelog.pattern.PatternWriter;
import chinelog.site.SiteWriter;
import chinelog.talk.TalkWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Semaphore;

/**
 * Writes what the readers of one edition get: its site, its books. Of the edition that stands it
 * takes every file that would be made of the very same.
 *
 * @param log the folder of the log
 * @param program that writes
 * @param making an empty folder
 */
record EditionWriter(
    Path log,
    Edition edition,
    Theme theme,
    EarlierEdition earlier,
    String program,
    Path making,
    Progress progress) {

  /** Books that may be laid out at a time: each takes hundreds of MiB. */
  private static final Semaphore PRESSES = new Semaphore(2);

  private String readers() {
    return edition.contents().readers();
  }

  /** Whether a booklet would hold nothing but forms to be filled in. */
  private boolean hasNothingToHandOver() {
    Edition.Contents contents = edition.contents();
    return contents.handover().stream().allMatch(s -> s.text().isEmpty())
        && contents.materials().isEmpty()
        && contents.figures().isEmpty();
  }

  /** Writes one form of the edition. */
  void write(Readers.Output output) throws IOException {
    if ((output == Readers.Output.HANDOVER || output == Readers.Output.HANDOVER_SHEETS)
        && hasNothingToHandOver()) {
      return;
    }
    switch (output) {
      case SITE -> site();
      case BOOK ->
          print(Step.Kind.PRINTING_BOOK, "build-book.pdf", edition.contents(), this::buildBook);
      case HANDOVER ->
          print(
              Step.Kind.PRINTING_HANDOVER,
              "handover.pdf",
              Press.handoverParts(edition, theme),
              file -> Press.printHandover(edition, theme, file));
      case HANDOVER_SHEETS ->
          print(
              Step.Kind.PRINTING_HANDOVER_SHEETS,
              "handover-sheets.pdf",
              Press.handoverParts(edition, theme),
              file ->
                  Press.printHandoverSheets(
                      edition, theme, Press.Options.of(edition, false), file));
      case PRINT_READY -> {
        String book = "build-book-print-ready.pdf";
        print(
            Step.Kind.PRINTING_PRINT_READY,
            book,
            edition.contents(),
            file -> Press.printBuildBook(edition, theme, Press.Options.of(edition, true), file));
        print(
            Step.Kind.PRINTING_PRINT_READY,
            "build-book-cover.pdf",
            edition.contents(),
            file -> Press.printCover(edition, theme, making.resolve(book), file));
      }
      case LETTER -> letter(Letter.Kind.PROGRESS, Step.Kind.PRINTING_LETTER, "letter.pdf");
      case PHOTO_SHEET ->
          letter(Letter.Kind.PHOTOGRAPHS, Step.Kind.PRINTING_PHOTO_SHEET, "photographs.pdf");
      case QUOTATION ->
          letter(Letter.Kind.QUOTATION, Step.Kind.PRINTING_QUOTATION, "quotation.pdf");
      case PATTERNS -> {
        progress.begin(Step.of(Step.Kind.DRAWING_PATTERNS, readers()));
        PatternWriter.write(edition, theme, making);
      }
      case TALK -> {
        Step step = Step.of(Step.Kind.PREPARING_TALK, readers());
        if (earlier.keepFolder("talk", made())) {
          progress.skip(step);
          return;
        }
        progress.begin(step);
        TalkWriter.write(
            edition,
            theme,
            making,
            (script, file) ->
                Press.printScript(
                    edition,
                    theme,
                    script.title(),
                    script.style(),
                    script.body(),
                    script.pictures(),
                    file));
      }
    }
  }

  private void site() throws IOException {
    progress.begin(Step.of(Step.Kind.WRITING_SITE, readers()));
    Path own = log.resolve("site-template");
    Path templates = Files.isDirectory(own) ? own : null;
    SiteWriter.write(
        edition,
        theme,
        templates,
        Files.createDirectory(making.resolve("site")),
        earlier.site(),
        program + theme.digest() + SiteWriter.digest(templates));
  }

  /** Of what part of an edition a book is made, only its writer knows: all of it counts. */
  private String made() throws IOException {
    return earlier.hashes().of(List.of(program, theme.digest(), edition.contents()));
  }

  private void buildBook(Path file) throws IOException {
    Press.Options options = Press.Options.of(edition, false);
    BookLayout layout =
        BookLayout.of(
            log, readers() + "-" + file.getFileName(), List.of(program, theme.digest(), options));
    layout.keep(Press.printBuildBook(edition, theme, options, layout.find(), file));
  }

  private void letter(Letter.Kind kind, Step.Kind what, String name) throws IOException {
    for (Letter letter : edition.contents().letters()) {
      if (letter.kind() == kind) {
        print(
            what,
            name,
            List.of(edition.contents(), letter),
            file -> Press.printLetter(edition, theme, letter, file));
      }
    }
  }

  private interface Printing {
    void into(Path file) throws IOException;
  }

  /**
   * Prints a book, unless the one that stands was made of the same.
   *
   * @param parts of the edition that it is made of
   */
  private void print(Step.Kind what, String name, Object parts, Printing printing)
      throws IOException {
    String made = earlier.hashes().of(List.of(program, theme.digest(), parts));
    Step step = Step.of(what, readers());
    if (earlier.keep(name, made)) {
      progress.skip(step);
      return;
    }
    PRESSES.acquireUninterruptibly();
    try {
      progress.begin(step);
      printing.into(making.resolve(name));
    } finally {
      PRESSES.release();
    }
  }
}
