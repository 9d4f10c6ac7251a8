package chinelog.audit;

import chinelog.label.Agreement;
import chinelog.label.Clearance;
import chinelog.label.Label;
import chinelog.label.Presence;
import chinelog.log.records.BookChapters;
import chinelog.log.records.Entry;
import chinelog.log.records.Head;
import chinelog.log.records.LetterPlan;
import chinelog.log.records.Log;
import chinelog.log.records.Lot;
import chinelog.log.records.Marked;
import chinelog.log.records.Paper;
import chinelog.log.records.PatternSheets;
import chinelog.log.records.PhotoFile;
import chinelog.log.records.PostPlan;
import chinelog.log.records.Readers;
import chinelog.log.records.Release;
import chinelog.log.records.Request;
import chinelog.log.records.Sheet;
import chinelog.log.records.Stage;
import chinelog.log.records.Statement;
import chinelog.log.records.Table;
import chinelog.log.records.TalkPlan;
import chinelog.log.records.Valuation;
import chinelog.log.text.Block;
import chinelog.log.text.Inline;
import chinelog.problem.Place;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import java.math.BigDecimal;
import java.net.URI;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/** A small log of the pilot launch Merrow with something of every kind under an agreement. */
final class SampleLog {

  static final Clearance PUBLIC = new Clearance(new TreeSet<>());
  static final Clearance CLIENT = new Clearance(new TreeSet<>(Set.of("client")));
  static final Clearance WORKSHOP = new Clearance(new TreeSet<>(Set.of("client", "lines")));

  private static final Label LINES = Label.of("lines");
  private static final Label CLIENT_ONLY = Label.of("client");
  private static final Place HERE = Place.of("log.yaml", 1, 1);

  private SampleLog() {}

  static Log in(Path folder) {
    return in(folder, List.of());
  }

  static Log in(Path folder, List<Release> releases) {
    return new Log(
        folder,
        head(),
        List.of(new Stage("planking", "Planking", List.of(), null, null, null, Label.NONE, HERE)),
        new TreeMap<>(
            Map.of(
                "lines",
                agreement(
                    "lines",
                    "Skerrick Yard",
                    "the faired body plan and every ordinate read from it"),
                "client",
                agreement(
                    "client", "Marrowby Ferries", "what the work costs and who it is made for"))),
        List.of(
            new Readers("public", "Everybody", Set.of(), Set.of(Readers.Output.SITE), HERE),
            new Readers("workshop", "The workshop", Set.of(), Set.of(Readers.Output.SITE), HERE)),
        releases,
        List.of(),
        List.of(new PostPlan("How the pantograph was cheated", "", List.of(), null, LINES, HERE)),
        List.of(),
        List.of(
            new Statement(
                "full.loa",
                "Length over all",
                "11.20 m ± 5 mm",
                "sheets/lines.pdf",
                null,
                LINES,
                HERE,
                HERE),
            new Statement(
                "hull.loa",
                "Length of the model",
                "full.loa / scale",
                null,
                null,
                Label.NONE,
                HERE,
                HERE),
            new Statement(
                "mast.height",
                "Height of the mast",
                "0.184 m",
                null,
                null,
                Label.NONE,
                HERE,
                HERE)),
        List.of(
            new Request(
                "form",
                mark("hull-form", Label.NONE),
                new TreeMap<>(Map.of("offsets", mark("offsets", Label.NONE))),
                Label.NONE,
                HERE)),
        List.of(
            new Lot(
                "cedar_strip",
                "Red cedar strip",
                quantity("60"),
                new Marked<>(quantity("21.63 GBP"), CLIENT_ONLY, HERE),
                new Marked<>("Ottersby Timber", CLIENT_ONLY, HERE),
                null,
                List.of(),
                "",
                Label.NONE,
                HERE),
            new Lot(
                "glass_cloth",
                "Glass cloth",
                quantity("60"),
                new Marked<>(quantity("1480 GBP"), CLIENT_ONLY, HERE),
                new Marked<>("Fellmonger Cloths", CLIENT_ONLY, HERE),
                null,
                List.of(),
                "",
                Label.NONE,
                HERE)),
        List.of(table(), waterlines()),
        List.of(open(), closed()),
        List.of(
            photo("photos/T20_0412.jpg", Label.NONE, "The moulds stand on the board."),
            photo(
                "photos/T20_0458.jpg",
                LINES,
                "The rabbet drawn full size beside the brass batten rule.")),
        List.of(new Sheet("sheets/lines.pdf", "Lines plan SK-1142/3", LINES, List.of(), HERE)));
  }

  private static Head head() {
    return new Head(
        mark("Building Merrow", Label.NONE),
        mark("Merrow", Label.NONE),
        mark("harbour pilot launch", Label.NONE),
        List.of(paragraph("A working model of a pilot launch.", Label.NONE)),
        new Marked<>(BigDecimal.valueOf(16), Label.NONE, HERE),
        Locale.UK,
        ZoneId.of("Europe/London"),
        mark("Tern Lane Workshop", Label.NONE),
        mark("Marrowby Ferries", CLIENT_ONLY),
        "GBP",
        64,
        new BigDecimal("0.05"),
        new Marked<>(quantity("34.75 GBP/h"), CLIENT_ONLY, HERE),
        new TreeMap<>(),
        URI.create("https://merrow.example/"),
        null,
        "plain",
        Paper.A4,
        0.12,
        BookChapters.STAGES,
        new TreeMap<>(),
        null,
        false,
        Valuation.FIFO,
        PatternSheets.USUAL,
        TalkPlan.USUAL,
        null,
        LetterPlan.NONE,
        List.of());
  }

  private static Agreement agreement(String id, String with, String covers) {
    return new Agreement(id, with, covers, null, null, false, Presence.NOTE);
  }

  /** Half-breadths of two waterlines and the sheer, at seven stations, in mm. */
  static final int[][] WATERLINES = {
    {0, 12, 30, 48},
    {100, 41, 60, 70},
    {200, 62, 78, 84},
    {300, 70, 83, 88},
    {400, 58, 74, 82},
    {500, 31, 49, 63},
    {600, 4, 16, 29}
  };

  private static Table waterlines() {
    List<Table.Column> columns =
        List.of("x", "WL 20 half-breadth", "WL 50 half-breadth", "sheer half-breadth").stream()
            .map(name -> new Table.Column(name, Unit.MILLIMETRE, Label.NONE, HERE))
            .toList();
    List<Table.Row> rows =
        Arrays.stream(WATERLINES)
            .map(
                row ->
                    new Table.Row(
                        Arrays.stream(row)
                            .mapToObj(n -> new Table.Cell(n + "", quantity(n + " mm"), HERE))
                            .toList(),
                        Label.NONE,
                        HERE))
            .toList();
    return new Table("waterlines", columns, rows, LINES, HERE);
  }

  private static Table table() {
    List<Table.Row> rows =
        List.of("231.56", "187.25").stream()
            .map(
                n ->
                    new Table.Row(
                        List.of(new Table.Cell(n, quantity(n + " mm"), HERE)), Label.NONE, HERE))
            .toList();
    return new Table(
        "offsets",
        List.of(new Table.Column("half-breadth", Unit.MILLIMETRE, Label.NONE, HERE)),
        rows,
        LINES,
        HERE);
  }

  private static Entry open() {
    return new Entry(
        "2026-03-14-drawings",
        mark("The drawings come out", Label.NONE),
        LocalDate.of(2026, 3, 14),
        "planking",
        List.of(
            new Block.Paragraph(
                List.of(
                    new Inline.Text("We set the moulds up on the board, "),
                    new Inline.Phrase(
                        List.of(
                            new Inline.Text(
                                "with the sheer hollowed four hairs below Quillfeather's batten at"
                                    + " the seventh station")),
                        LINES,
                        HERE),
                    new Inline.Text(", and went home. See the "),
                    new Inline.Link(
                        "https://tides.example/tables",
                        List.of(new Inline.Text("tide tables")),
                        HERE),
                    new Inline.Text(".")),
                Label.NONE,
                HERE),
            paragraph(
                "Nobody may hear that the stem knee is laminated from ropewalk elm offcuts.",
                LINES)),
        List.of(),
        List.of(),
        List.of(
            new Entry.Measurement(
                "hull.loa", quantity("700.5 mm"), "Length of the model", Label.NONE, HERE)),
        List.of(
            new Entry.Weighing(
                "hull", quantity("412.6 g"), "The bare hull", null, null, LINES, HERE)),
        Label.NONE,
        HERE);
  }

  private static Entry closed() {
    return new Entry(
        "2026-03-17-keelson-scarf",
        mark("The scarf in the keelson", Label.NONE),
        LocalDate.of(2026, 3, 17),
        "planking",
        List.of(
            paragraph(
                "The propeller aperture was widened after the towing basin complained of noise.",
                Label.NONE)),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        LINES,
        HERE);
  }

  private static PhotoFile photo(String path, Label label, String caption) {
    return new PhotoFile(
        path,
        List.of(new Inline.Text(caption)),
        caption,
        List.of(new PhotoFile.Part(0.5, 0.5, caption, HERE)),
        List.of(),
        false,
        null,
        null,
        null,
        label,
        HERE);
  }

  private static Block paragraph(String text, Label label) {
    return new Block.Paragraph(List.of(new Inline.Text(text)), label, HERE);
  }

  private static <T> Marked<T> mark(T value, Label label) {
    return new Marked<>(value, label, HERE);
  }

  static Quantity quantity(String text) {
    try {
      return Quantity.parse(text);
    } catch (QuantityException e) {
      throw new IllegalArgumentException(text, e);
    }
  }
}
