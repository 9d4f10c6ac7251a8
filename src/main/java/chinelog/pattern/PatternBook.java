package chinelog.pattern;

import chinelog.edition.Edition;
import chinelog.edition.Patterns;
import chinelog.markup.Theme;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.io.IOUtils;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.documentinterchange.taggedpdf.StandardStructureTypes;
import org.jspecify.annotations.Nullable;

/** The patterns on sheets for the maker's own printer. */
final class PatternBook {

  private static final double LINE = 5.8;

  /** Above the square. */
  private static final double TEXT_ENDS = Square.NEEDS + 6;

  private static final List<String> ADVICE =
      List.of(
          "print", "measure", "join", "lines", "caution.blade", "caution.dust", "caution.laser");

  private final Edition.Contents contents;
  private final Patterns patterns;
  private final PatternWords words;
  private final PDDocument pdf;
  private final Face face;
  private final Scans scans;
  private final Tags tags = new Tags();
  private final List<PrintedSheet> sheets;
  private final String title;

  private PatternBook(Edition.Contents contents, PDDocument pdf, Face face) {
    this.contents = contents;
    this.patterns = contents.patterns();
    this.words = PatternWords.of(contents.locale());
    this.pdf = pdf;
    this.face = face;
    this.scans = new Scans(pdf);
    this.sheets = SheetLayout.of(patterns);
    this.title =
        contents.subject().isEmpty()
            ? words.say("title")
            : words.say("title.of", contents.subject());
  }

  static void write(Edition.Contents contents, Theme theme, Path file) throws IOException {
    try (PDDocument pdf = new PDDocument(IOUtils.createTempFileOnlyStreamCache());
        Face face = new Face(pdf, theme)) {
      PatternBook book = new PatternBook(contents, pdf, face);
      book.front();
      for (int i = 0; i < book.sheets.size(); i++) {
        book.sheet(i);
      }
      book.tags.attach(pdf);
      Imprint.stamp(pdf, contents, book.title);
      try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(file))) {
        pdf.save(out);
      }
    }
  }

  /** Draws a page within its marks. */
  private interface Drawing {
    void onto(PDPageContentStream content, Pen pen, Extent area) throws IOException;
  }

  private void page(PaperSize paper, Drawing drawing) throws IOException {
    bare(
        paper,
        (content, pen, area) -> {
          square(content, pen);
          drawing.onto(content, pen, area);
        });
  }

  private static void square(PDPageContentStream content, Pen pen) throws IOException {
    Tags.beginArtifact(content);
    Square.draw(pen);
    content.endMarkedContent();
  }

  private void bare(PaperSize paper, Drawing drawing) throws IOException {
    double pt = 72 / 25.4;
    PDPage page =
        new PDPage(
            new PDRectangle((float) (paper.widthMm() * pt), (float) (paper.heightMm() * pt)));
    pdf.addPage(page);
    tags.turnTo(page);
    try (PDPageContentStream content = new PDPageContentStream(pdf, page)) {
      Pen pen = new Pen(content, face, scans);
      pen.begin(paper);
      drawing.onto(content, pen, paper.area());
      pen.end();
    }
  }

  /** The pages before the sheets are on paper of a usual size, even where the sheets are not. */
  private PaperSize frontPaper() {
    PaperSize own = PaperSize.of(patterns);
    return patterns.heightMm() > 0 ? own : new PaperSize(210, 297, own.across(), own.up());
  }

  private void front() throws IOException {
    PaperSize paper = frontPaper();
    page(
        paper,
        (content, pen, area) -> {
          double y = area.top() - 8;
          pen.ink();
          tags.begin(content, StandardStructureTypes.H1);
          pen.write(title, 0, y, 6, false);
          content.endMarkedContent();
          y -= 3;
          for (String advice : ADVICE) {
            y = paragraph(content, pen, words.say(advice), y - 2.5, area);
          }
        });
    List<Overview.Group> groups = Overview.groups(sheets);
    page(
        paper,
        (content, pen, area) -> {
          heading(content, pen, words.say("overview"), area);
          tags.beginFigure(content, words.say("overview.about", sheets.size()));
          Extent room = new Extent(0, TEXT_ENDS, area.right(), area.top() - 14);
          int scale = Overview.draw(pen, groups, room);
          content.endMarkedContent();
          if (scale > 0) {
            tags.begin(content, StandardStructureTypes.P);
            pen.write("1:" + scale, area.right() - 14, area.top() - 8, Pen.LETTERING, false);
            content.endMarkedContent();
          }
        });
    list(paper, groups);
    for (Nest nest : Nest.of(patterns)) {
      nest(paper, nest);
    }
    shopping(paper);
  }

  /** The sheets of one material with what is cut from each. */
  private void nest(PaperSize paper, Nest nest) throws IOException {
    if (nest.cuts().isEmpty()) {
      return;
    }
    ShoppingLine line =
        ShoppingLine.of(patterns, List.of(nest), contents.locale())
            .get(patterns.stock().indexOf(nest.stock()));
    page(
        paper,
        (content, pen, area) -> {
          heading(content, pen, words.say("cut.title", nest.stock().title()), area);
          tags.beginFigure(content, words.say("cut.about", nest.cuts().size(), nest.sheets()));
          Extent room = new Extent(0, TEXT_ENDS, area.right(), area.top() - 22);
          int scale = NestDrawing.draw(pen, nest, room);
          content.endMarkedContent();
          String said =
              words.say("cut.about", nest.cuts().size(), nest.sheets())
                  + ", "
                  + line.size()
                  + (scale > 0 ? " (1:" + scale + ")" : "");
          pen.ink();
          paragraph(content, pen, said, area.top() - 10, area);
        });
    List<String> lines = new ArrayList<>();
    for (Nest.Cut cut : nest.cuts()) {
      lines.add(
          words.say(
              "cut.line",
              cut.sheet(),
              cut.part().title(),
              ShoppingLine.millimetres(cut.length()),
              ShoppingLine.millimetres(cut.width()),
              ShoppingLine.millimetres(cut.along()),
              ShoppingLine.millimetres(cut.across())));
    }
    lines(paper, words.say("cut.title", nest.stock().title()), lines);
  }

  private void shopping(PaperSize paper) throws IOException {
    List<String> lines = new ArrayList<>();
    for (ShoppingLine line : ShoppingLine.of(patterns, Nest.of(patterns), contents.locale())) {
      StringBuilder said =
          new StringBuilder(
              words.say("shop.line", line.stock().title(), line.size(), line.needed()));
      if (!line.isShort().isEmpty()) {
        said.append(words.say("shop.short", line.atHand(), line.isShort()));
      }
      if (!line.cost().isEmpty()) {
        said.append(words.say("shop.cost", line.each(), line.cost()));
      }
      lines.add(said.toString());
    }
    lines(paper, words.say("shop.title"), lines);
  }

  /** Which parts are on which sheets. */
  private void list(PaperSize paper, List<Overview.Group> groups) throws IOException {
    List<String> lines = new ArrayList<>();
    for (Overview.Group group : groups) {
      int last = group.first() + group.sheets().size() - 1;
      String which = group.first() == last ? "" + group.first() : group.first() + "\u2013" + last;
      lines.add(which + "   " + String.join(", ", group.sheets().get(0).titles()));
    }
    lines(paper, words.say("sheets"), lines);
  }

  /** Lines under a heading, on as many pages as it takes. */
  private void lines(PaperSize paper, String heading, List<String> lines) throws IOException {
    int at = 0;
    while (at < lines.size()) {
      int from = at;
      int[] next = {from};
      page(
          paper,
          (content, pen, area) -> {
            heading(content, pen, heading, area);
            double y = area.top() - 14;
            while (next[0] < lines.size()) {
              int rows = pen.wrapped(lines.get(next[0]), Pen.LETTERING, area.width()).size();
              if (y - rows * LINE < TEXT_ENDS && next[0] > from) {
                break;
              }
              y = paragraph(content, pen, lines.get(next[0]), y, area);
              next[0]++;
            }
          });
      at = next[0];
    }
  }

  private void heading(PDPageContentStream content, Pen pen, String text, Extent area)
      throws IOException {
    pen.ink();
    tags.begin(content, StandardStructureTypes.H2);
    pen.write(text, 0, area.top() - 8, 5, false);
    content.endMarkedContent();
  }

  private double paragraph(PDPageContentStream content, Pen pen, String text, double y, Extent area)
      throws IOException {
    double at = y;
    tags.begin(content, StandardStructureTypes.P);
    for (String line : pen.wrapped(text, 3, area.width())) {
      at -= 5;
      pen.write(line, 0, at, 3, false);
    }
    content.endMarkedContent();
    return at;
  }

  private void sheet(int i) throws IOException {
    PrintedSheet sheet = sheets.get(i);
    boolean scanned = sheet.parts().stream().anyMatch(p -> p.pattern().scan() != null);
    bare(
        sheet.paper(),
        (content, pen, area) -> {
          // A scan would cover what is drawn before it.
          if (!scanned) {
            furniture(content, pen, sheet.tile(), area);
          }
          pen.ink();
          tags.begin(content, StandardStructureTypes.H2);
          pen.write(footLine(pen, sheet, i, area), 0, 3.5 - PaperSize.FOOT, Pen.LETTERING, false);
          content.endMarkedContent();
          tags.beginFigure(content, words.say("figure", String.join(", ", sheet.titles())));
          if (sheet.tile() != null) {
            pen.clip(area);
          }
          for (Placed placed : sheet.parts()) {
            pen.draw(placed);
          }
          if (sheet.tile() != null) {
            pen.unclip();
          }
          content.endMarkedContent();
          if (scanned) {
            furniture(content, pen, sheet.tile(), area);
          }
        });
  }

  /** The square, and what shows how the sheet joins its neighbours. */
  private static void furniture(
      PDPageContentStream content, Pen pen, PrintedSheet.@Nullable Tile tile, Extent area)
      throws IOException {
    square(content, pen);
    if (tile != null) {
      Tags.beginArtifact(content);
      Joins.draw(pen, tile, area);
      content.endMarkedContent();
    }
  }

  private String footLine(Pen pen, PrintedSheet sheet, int i, Extent area) throws IOException {
    String parts = String.join(", ", sheet.titles());
    if (sheet.tile() != null) {
      parts = words.say("part", parts, sheet.tile().name());
    }
    String line =
        words.say("sheet", i + 1, sheets.size())
            + " \u00b7 "
            + parts
            + (contents.subject().isEmpty() ? "" : " \u00b7 " + contents.subject());
    while (pen.width(line, Pen.LETTERING) > area.width() && line.length() > 20) {
      line = line.substring(0, line.length() - 2) + "\u2026";
    }
    return line;
  }
}
