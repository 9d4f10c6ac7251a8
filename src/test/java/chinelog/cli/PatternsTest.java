package chinelog.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import chinelog.OncePerRun;
import chinelog.cli.DrawnLines.Line;
import chinelog.cli.TinyLog.Said;
import java.awt.RenderingHints;
import java.awt.geom.Point2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.logging.LogManager;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.PDFAValidator;
import org.verapdf.pdfa.VeraPDFFoundry;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.TestAssertion;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/** Patterns as published, measured in the files that come out. All lengths in mm. */
@Timeout(120)
@ExtendWith(OncePerRun.class)
class PatternsTest {

  private static final double BOARD = 160;
  private static final double WIDE = 0.3;

  @TempDir private Path folder;

  /** A log with the demo's offsets, under an agreement, and moulds drawn from them. */
  private TinyLog log(String name, String more) throws IOException {
    return log(folder.resolve(name), more);
  }

  private static TinyLog log(Path place, String more) throws IOException {
    TinyLog log = TinyLog.in(place);
    try (InputStream in =
        Objects.requireNonNull(
            PatternsTest.class.getResourceAsStream("/chinelog/reckon/trade/offsets.csv"))) {
      log.write("tables/offsets.csv", in.readAllBytes());
    }
    log.write(
        "facts.yaml",
        log.read("facts.yaml")
            + """
            moulds:
              reckon: moulds
              offsets: offsets
              thickness: 2 mm
              siding: 2.5 mm
              draught: 52 mm
              board: 160 mm
              notch_width: 5 mm
              notch_depth: 6 mm
            """);
    log.write(
        "log.yaml",
        log.read("log.yaml")
                .replace("gets: [site]", "gets: [site, patterns]")
                .replace("party-to: all, gets: [site, patterns]", "party-to: all, gets: [patterns]")
            + "tables: {offsets: {under: lines}}\n"
            + more);
    return log;
  }

  /** Such a log with nothing more, published for the workshop. */
  static final class Plain implements AutoCloseable {

    private final Path folder;
    private final TinyLog log;

    Plain() throws IOException {
      folder = Files.createTempDirectory("patterns");
      log = published(PatternsTest.log(folder.resolve("merrow"), ""), "workshop");
    }

    TinyLog log() {
      return log;
    }

    @Override
    public void close() throws IOException {
      try (Stream<Path> all = Files.walk(folder)) {
        for (Path path : all.sorted(Comparator.reverseOrder()).toList()) {
          Files.delete(path);
        }
      }
    }
  }

  /**
   * One for a printer that is not true and a cutter with a kerf, with ply to cut from; she floats
   * at 1.5 mm below a line of the drawing, and on some moulds as little below the top.
   */
  static final class Fitted implements AutoCloseable {

    private final Path folder;
    private final TinyLog log;

    Fitted() throws IOException {
      folder = Files.createTempDirectory("fitted");
      log =
          published(
              PatternsTest.log(
                      folder.resolve("merrow"),
                      """
                      printer: {across: 99.6 mm, up: 100.2 mm}
                      patterns:
                        kerf: 0.2 mm
                        cut-from:
                          - material: ply
                            length: 600 mm
                            width: 300 mm
                            for: [moulds]
                            except: [moulds.building_board]
                          - {material: cedar, length: 914 mm, for: [planks]}
                      """)
                  .write(
                      "stock.yaml",
                      """
                      - {material: ply, title: Birch ply, bought: 2, price: 11.40 GBP}
                      - {material: cedar, title: "Cedar strip, 6 mm", bought: 60, price: 21.60 GBP}
                      """)
                  .replace(
                      "facts.yaml",
                      "moulds:",
                      "planks: {reckon: planking, offsets: offsets, strip_width: 6 mm,"
                          + " stock_length: 914 mm}\nmoulds:")
                  .replace("facts.yaml", "draught: 52 mm", "draught: 93.5 mm"),
              "workshop");
    }

    TinyLog log() {
      return log;
    }

    @Override
    public void close() throws IOException {
      try (Stream<Path> all = Files.walk(folder)) {
        for (Path path : all.sorted(Comparator.reverseOrder()).toList()) {
          Files.delete(path);
        }
      }
    }
  }

  private static TinyLog published(TinyLog log, String readers) {
    Said said = log.run("publish", "--for", readers);
    assertThat(said.status()).as(said.err() + said.out()).isZero();
    return log;
  }

  private static SortedMap<String, byte[]> files(Path of) throws IOException {
    SortedMap<String, byte[]> files = new TreeMap<>();
    try (Stream<Path> all = Files.walk(of)) {
      for (Path file : all.filter(Files::isRegularFile).toList()) {
        files.put(of.relativize(file).toString(), Files.readAllBytes(file));
      }
    }
    return files;
  }

  private static Path workshop(TinyLog log) {
    return log.path("workshop/workshop");
  }

  /** The outline of a part in a cutter's file, x from the middle line, y from the base line. */
  private record Cut(List<Point2D> points) {

    static Cut read(Path svg) throws Exception {
      Element root = xml(svg).getDocumentElement();
      double width = Double.parseDouble(root.getAttribute("width").replace("mm", ""));
      assertThat(root.getAttribute("viewBox"))
          .isEqualTo(
              "0 0 "
                  + root.getAttribute("width").replace("mm", "")
                  + " "
                  + root.getAttribute("height").replace("mm", ""));
      assertThat(width).isPositive();
      List<Point2D> points = pointsOf(path(root, "cut"));
      double left = points.stream().mapToDouble(Point2D::getX).min().orElseThrow();
      double right = points.stream().mapToDouble(Point2D::getX).max().orElseThrow();
      double top = points.stream().mapToDouble(Point2D::getY).min().orElseThrow();
      List<Point2D> placed = new ArrayList<>();
      for (Point2D p : points) {
        placed.add(new Point2D.Double(p.getX() - (left + right) / 2, BOARD - (p.getY() - top)));
      }
      return new Cut(placed);
    }

    double distance(double x, double y) {
      double least = Double.MAX_VALUE;
      for (int i = 0; i < points.size(); i++) {
        Point2D a = points.get(i);
        Point2D b = points.get((i + 1) % points.size());
        least =
            Math.min(
                least,
                java.awt.geom.Line2D.ptSegDist(a.getX(), a.getY(), b.getX(), b.getY(), x, y));
      }
      return least;
    }
  }

  private static Document xml(Path svg) throws Exception {
    return DocumentBuilderFactory.newDefaultNSInstance().newDocumentBuilder().parse(svg.toFile());
  }

  /** The one closed path of a group. */
  private static String path(Element root, String group) {
    NodeList groups = root.getElementsByTagName("g");
    for (int i = 0; i < groups.getLength(); i++) {
      Element g = (Element) groups.item(i);
      if (g.getAttribute("id").equals(group)) {
        NodeList paths = g.getElementsByTagName("path");
        assertThat(paths.getLength()).isEqualTo(1);
        String d = ((Element) paths.item(0)).getAttribute("d");
        assertThat(d).matches("M[^M]*Z");
        return d;
      }
    }
    throw new AssertionError("no group " + group);
  }

  private static List<Point2D> pointsOf(String d) {
    List<Point2D> points = new ArrayList<>();
    Matcher m = Pattern.compile("[ML](-?[0-9.]+) (-?[0-9.]+)").matcher(d);
    while (m.find()) {
      points.add(
          new Point2D.Double(Double.parseDouble(m.group(1)), Double.parseDouble(m.group(2))));
    }
    return points;
  }

  /** Half-breadths of the moulds in mm, by station and height, as the command tells them. */
  private static Map<String, Double> reckoned(TinyLog log) {
    Map<String, Double> halves = new TreeMap<>();
    Pattern line =
        Pattern.compile("\"?moulds\\.half_([0-9]+_[0-9_]+)\"?,(?:[^,\"]*|\"[^\"]*\"),\"?([0-9.]+)");
    for (String row : log.run("reckon", "--as", "csv").out().split("\n")) {
      Matcher m = line.matcher(row);
      if (m.find()) {
        halves.put(m.group(1), Double.parseDouble(m.group(2)));
      }
    }
    return halves;
  }

  @Test
  void aCuttersFileAndASheetHoldWhatWasReckoned(Plain shared) throws Exception {
    TinyLog log = shared.log();
    Map<String, Double> halves = reckoned(log);
    assertThat(halves).hasSizeGreaterThan(90);
    Map<String, Double> keels = new TreeMap<>();
    for (String row : log.read("tables/offsets.csv").lines().skip(1).toList()) {
      keels.put(row.split(",")[0], Double.parseDouble(row.split(",")[2]));
    }
    Map<String, Cut> cuts = new TreeMap<>();
    for (Map.Entry<String, Double> half : halves.entrySet()) {
      String[] name = half.getKey().split("_", 2);
      Cut cut = cuts.get(name[0]);
      if (cut == null) {
        cut = Cut.read(workshop(log).resolve("patterns/moulds-" + name[0] + ".svg"));
        cuts.put(name[0], cut);
      }
      double height = Double.parseDouble(name[1].replace('_', '.'));
      // Below the notch the keel is, and no mould.
      if (height > keels.get(name[0]) + 6) {
        assertThat(cut.distance(half.getValue(), height)).as(half.getKey()).isLessThan(0.05);
        assertThat(cut.distance(-half.getValue(), height)).as(half.getKey()).isLessThan(0.05);
      }
    }
    try (PDDocument pdf = Loader.loadPDF(workshop(log).resolve("patterns.pdf").toFile())) {
      List<Line> outlines = new ArrayList<>();
      for (int page = 3; page < pdf.getNumberOfPages(); page++) {
        DrawnLines.of(pdf.getPage(page)).stream()
            .filter(l -> l.closed() && l.widthMm() > WIDE && l.grey() < 0.1)
            .forEach(outlines::add);
      }
      cuts.forEach(
          (station, cut) ->
              assertThat(outlines)
                  .as("mould %s", station)
                  .anyMatch(l -> isSame(l.points(), cut.points())));
    }
  }

  /** Whether two outlines are one, but for their place and a quarter turn. */
  private static boolean isSame(List<Point2D> one, List<Point2D> other) {
    if (one.size() != other.size()) {
      return false;
    }
    boolean upright = true;
    boolean turned = true;
    for (int i = 1; i < one.size(); i++) {
      double dx = one.get(i).getX() - one.get(0).getX();
      double dy = one.get(i).getY() - one.get(0).getY();
      double ox = other.get(i).getX() - other.get(0).getX();
      double oy = other.get(i).getY() - other.get(0).getY();
      upright &= Math.hypot(dx - ox, dy - oy) < 0.05;
      turned &= Math.hypot(dx + oy, dy - ox) < 0.05;
    }
    return upright || turned;
  }

  @Test
  void readersWhoMayNotSeeTheTableGetNoPatternAndNoSignOfOne() throws Exception {
    for (String presence : List.of("note", "nothing")) {
      TinyLog log =
          log(presence, "")
              .replace(
                  "log.yaml", "from: 2026-03-02}", "from: 2026-03-02, presence: " + presence + "}");
      published(log, "public");
      SortedMap<String, byte[]> files = files(log.path("published/public"));
      assertThat(files.keySet()).noneMatch(f -> f.contains("pattern") || f.endsWith(".pdf"));
      for (Map.Entry<String, byte[]> file : files.entrySet()) {
        if (file.getKey().endsWith(".html")) {
          assertThat(new String(file.getValue(), StandardCharsets.UTF_8))
              .doesNotContain("Mould", "mould");
        }
      }
      assertThat(log.read("records/public/register.txt")).contains("patterns of moulds");
    }
  }

  @Test
  void logsThatDifferInTheTableAloneGiveTheSameToReadersWhoMayNotSeeIt() throws Exception {
    for (String presence : List.of("note", "nothing")) {
      List<SortedMap<String, byte[]>> twins = new ArrayList<>();
      for (String half : List.of("74.0", "61.3")) {
        TinyLog log =
            log(presence + half, "")
                .replace(
                    "log.yaml",
                    "from: 2026-03-02}",
                    "from: 2026-03-02, presence: " + presence + "}")
                .replace("tables/offsets.csv", "74.0", half);
        twins.add(files(published(log, "public").path("published/public")));
      }
      assertThat(twins.get(0)).containsOnlyKeys(twins.get(1).keySet());
      twins
          .get(0)
          .forEach((name, bytes) -> assertThat(bytes).as(name).isEqualTo(twins.get(1).get(name)));
    }
  }

  @Test
  void aReleasedHalfBreadthDrawsNoCurve() throws Exception {
    TinyLog log =
        log(
            "released",
            """
            releases:
              - fact: moulds.half_7_52
                under: lines
                by: Ada Skerrick
                on: 2026-04-02
                words: You may give that one.
                for: [public]
            """);
    published(log, "public");
    assertThat(files(log.path("published/public")).keySet())
        .noneMatch(f -> f.contains("pattern") || f.endsWith(".pdf"));
  }

  @Test
  void theSquareIsAHundredMillimetresOnPaper(Plain shared) throws Exception {
    TinyLog log = shared.log();
    Path pdf = workshop(log).resolve("patterns.pdf");
    Path page = folder.resolve("page");
    Assumptions.assumeTrue(canRun("pdftoppm"), "pdftoppm is not installed");
    int status =
        new ProcessBuilder(
                "pdftoppm",
                "-r",
                "600",
                "-gray",
                "-png",
                "-f",
                "1",
                "-l",
                "1",
                "-singlefile",
                pdf.toString(),
                page.toString())
            .start()
            .waitFor();
    assertThat(status).isZero();
    BufferedImage image = ImageIO.read(page.resolveSibling("page.png").toFile());
    double mm = 600 / 25.4;
    // Along the middle of the square, where nothing else is drawn.
    int row = (int) Math.round(image.getHeight() - (8 + 9 + 4 + 50) * mm);
    int column = (int) Math.round((8 + 4 + 50) * mm);
    double[] across = lines(image, row, true, (int) (118 * mm));
    double[] up = lines(image, column, false, image.getHeight());
    assertThat((across[1] - across[0]) / mm).isCloseTo(100, within(0.1));
    assertThat((up[1] - up[0]) / mm).isCloseTo(100, within(0.1));
  }

  private static boolean canRun(String program) throws InterruptedException {
    try {
      return new ProcessBuilder(program, "-v").start().waitFor() == 0;
    } catch (IOException e) {
      return false;
    }
  }

  /** The middles of the outermost two dark runs along a row or a column. */
  private static double[] lines(BufferedImage image, int at, boolean row, int end) {
    List<Double> middles = new ArrayList<>();
    int from = -1;
    int start = row ? 0 : image.getHeight() / 2;
    for (int i = start; i < end; i++) {
      boolean dark = (row ? image.getRGB(i, at) : image.getRGB(at, i)) << 24 >>> 24 < 200;
      if (dark && from < 0) {
        from = i;
      } else if (!dark && from >= 0) {
        middles.add((from + i - 1) / 2.0);
        from = -1;
      }
    }
    assertThat(middles).hasSizeGreaterThanOrEqualTo(2);
    return new double[] {middles.get(0), middles.get(middles.size() - 1)};
  }

  @Test
  void whatThePrinterDoesToALengthIsCorrected(Fitted fitted) throws Exception {
    TinyLog log = fitted.log();
    try (PDDocument pdf = Loader.loadPDF(workshop(log).resolve("patterns.pdf").toFile())) {
      for (int page = 0; page < pdf.getNumberOfPages(); page++) {
        assertThat(DrawnLines.of(pdf.getPage(page)))
            .as("page %s", page)
            .anyMatch(
                l ->
                    l.closed()
                        && Math.abs(l.width() * 0.996 - 100) < 0.01
                        && Math.abs(l.height() * 1.002 - 100) < 0.01);
      }
    }
  }

  /** Ten pixels to a millimetre, black lines alone: what is grey belongs to the sheet. */
  private static BufferedImage raster(PDDocument pdf, int page) throws IOException {
    PDFRenderer renderer = new PDFRenderer(pdf);
    RenderingHints hints =
        new RenderingHints(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_OFF);
    hints.put(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
    renderer.setRenderingHints(hints);
    return renderer.renderImageWithDPI(page, 254, ImageType.RGB);
  }

  private static boolean isBlack(BufferedImage image, int x, int y) {
    return x >= 0
        && y >= 0
        && x < image.getWidth()
        && y < image.getHeight()
        && (image.getRGB(x, y) & 0xFF) < 64;
  }

  @Test
  void tilesLaidOnTheirMarksAreTheWhole(Plain shared) throws Exception {
    TinyLog tiled = shared.log();
    TinyLog whole = published(log("whole", "patterns: {paper: roll 1500 mm}\n"), "workshop");
    try (PDDocument tiles = Loader.loadPDF(workshop(tiled).resolve("patterns.pdf").toFile());
        PDDocument roll = Loader.loadPDF(workshop(whole).resolve("patterns.pdf").toFile())) {
      int last = tiles.getNumberOfPages() - 1;
      BufferedImage one = raster(roll, roll.getNumberOfPages() - 1);
      double[] inWhole = corner(roll, roll.getNumberOfPages() - 1, 720);
      BufferedImage joined =
          new BufferedImage(one.getWidth(), one.getHeight(), BufferedImage.TYPE_BYTE_BINARY);
      for (int i = 0; i < 4; i++) {
        BufferedImage tile = raster(tiles, last - 3 + i);
        double[] inTile = corner(tiles, last - 3 + i, 720);
        int dx = (int) Math.round((inWhole[0] - inTile[0]) * 10);
        double down =
            high(roll, roll.getNumberOfPages() - 1) - high(tiles, last) - inWhole[1] + inTile[1];
        int dy = (int) Math.round(10 * down);
        // What is drawn on: between the margins, above the foot.
        for (int y = 80; y < 2970 - 170; y++) {
          for (int x = 80; x < 2100 - 80; x++) {
            if (isBlack(tile, x, y)) {
              joined.setRGB(x + dx, y + dy, 0xFFFFFF);
            }
          }
        }
      }
      int left = (int) Math.round(inWhole[0] * 10) - 3;
      int foot = (int) Math.round((high(roll, roll.getNumberOfPages() - 1) - inWhole[1]) * 10) + 3;
      long seen = 0;
      List<String> different = new ArrayList<>();
      for (int y = foot - (int) Math.round(inWhole[2] * 10) - 6; y < foot; y++) {
        for (int x = left; x < left + 7206; x++) {
          boolean black = isBlack(one, x, y);
          seen += black ? 1 : 0;
          if (black != ((joined.getRGB(x, y) & 0xFF) > 0)) {
            different.add(x + "," + y);
          }
        }
      }
      assertThat(seen).isGreaterThan(100_000);
      // On the rounded edges of letters, single precision turns a pixel here and there; a line off
      // by one would turn rows of them.
      assertThat(different.size()).as("of %s", seen).isLessThan(100);
      for (String pixel : different) {
        int comma = pixel.indexOf(',');
        int x = Integer.parseInt(pixel.substring(0, comma));
        int y = Integer.parseInt(pixel.substring(comma + 1));
        assertThat(different).doesNotContain((x + 2) + "," + y, x + "," + (y + 2));
      }
    }
  }

  private static double high(PDDocument pdf, int page) {
    return pdf.getPage(page).getMediaBox().getHeight() * 25.4 / 72;
  }

  /** The lower left corner of the part that is so wide. */
  private static double[] corner(PDDocument pdf, int page, double width) throws IOException {
    Line outline =
        DrawnLines.of(pdf.getPage(page)).stream()
            .filter(l -> l.closed() && l.grey() < 0.1 && Math.abs(l.width() - width) < 0.1)
            .findFirst()
            .orElseThrow();
    return new double[] {
      outline.points().stream().mapToDouble(Point2D::getX).min().orElseThrow(),
      outline.points().stream().mapToDouble(Point2D::getY).min().orElseThrow(),
      outline.height()
    };
  }

  @Test
  void aKerfLiesOutsideThePart(Plain shared, Fitted fitted) throws Exception {
    TinyLog plain = shared.log();
    TinyLog kerf = fitted.log();
    Cut part = Cut.read(workshop(plain).resolve("patterns/moulds-7.svg"));
    Element root = xml(workshop(kerf).resolve("patterns/moulds-7.svg")).getDocumentElement();
    List<Point2D> wider = pointsOf(path(root, "cut"));
    double left = wider.stream().mapToDouble(Point2D::getX).min().orElseThrow();
    double right = wider.stream().mapToDouble(Point2D::getX).max().orElseThrow();
    double top = wider.stream().mapToDouble(Point2D::getY).min().orElseThrow();
    List<Double> offs =
        wider.stream()
            .map(p -> part.distance(p.getX() - (left + right) / 2, BOARD + 0.1 - (p.getY() - top)))
            .toList();
    assertThat(offs).allMatch(off -> off > 0.09 && off < 0.25);
    // At sharp corners alone it is more than half the kerf.
    assertThat(offs.stream().filter(off -> off > 0.11).count()).isLessThan(12);
  }

  @Test
  void theSheetsMeetTheStandardsOfTheBook(Plain shared) throws Exception {
    LogManager.getLogManager().reset();
    VeraGreenfieldFoundryProvider.initialise();
    TinyLog log = shared.log();
    byte[] bytes = Files.readAllBytes(workshop(log).resolve("patterns.pdf"));
    try (VeraPDFFoundry foundry = Foundries.defaultInstance();
        PDFAValidator validator =
            foundry.createValidator(List.of(PDFAFlavour.PDFUA_1, PDFAFlavour.PDFA_2_A));
        PDFAParser parser = foundry.createParser(new ByteArrayInputStream(bytes))) {
      assertThat(validator.validateAll(parser))
          .hasSize(2)
          .flatExtracting(r -> r.getTestAssertions())
          .filteredOn(a -> a.getStatus() == TestAssertion.Status.FAILED)
          .extracting(a -> a.getRuleId().getClause() + " " + a.getMessage())
          .isEmpty();
    }
  }

  @Test
  void theSameLogGivesTheSameBytes(Plain shared) throws Exception {
    SortedMap<String, byte[]> first = files(workshop(shared.log()));
    SortedMap<String, byte[]> second = files(workshop(published(log("b", ""), "workshop")));
    assertThat(first.keySet()).hasSize(15).isEqualTo(second.keySet());
    first.forEach((name, bytes) -> assertThat(bytes).as(name).isEqualTo(second.get(name)));
  }

  @Test
  void partsLieApartOnTheSheetsAndWhatIsShortIsToldWithItsCost(Fitted fitted) throws Exception {
    Path patterns = workshop(fitted.log()).resolve("patterns");
    List<String> cuts = Files.readAllLines(patterns.resolve("cutting-list.csv"));
    assertThat(cuts.get(0))
        .isEqualTo("Part,Cut from,Sheet,Along [mm],Across [mm],Length [mm],Width [mm]");
    List<double[]> boxes = new ArrayList<>();
    for (String cut : cuts.subList(1, cuts.size())) {
      assertThat(cut).matches("Mould [0-9]+,Birch ply,[0-9]+(,[0-9.]+){4}");
      String[] cells = cut.split(",");
      double[] box = new double[5];
      for (int i = 0; i < 5; i++) {
        box[i] = Double.parseDouble(cells[i + 2]);
      }
      assertThat(box[1] + box[3]).isLessThanOrEqualTo(600);
      assertThat(box[2] + box[4]).isLessThanOrEqualTo(300);
      // As wide and as high as the outline in the cutter's file, less the kerf.
      Cut outline =
          Cut.read(
              patterns.resolve(
                  cells[0].toLowerCase(java.util.Locale.ROOT).replace(" ", "s-") + ".svg"));
      double width =
          outline.points().stream().mapToDouble(Point2D::getX).max().orElseThrow()
              - outline.points().stream().mapToDouble(Point2D::getX).min().orElseThrow();
      assertThat(box[3]).isCloseTo(width - 0.2, within(0.06));
      for (double[] other : boxes) {
        boolean apart =
            other[0] != box[0]
                || other[1] + other[3] < box[1]
                || box[1] + box[3] < other[1]
                || other[2] + other[4] < box[2]
                || box[2] + box[4] < other[2];
        assertThat(apart).as(cut).isTrue();
      }
      boxes.add(box);
    }
    assertThat(boxes).hasSize(13);
    double sheets = boxes.stream().mapToDouble(b -> b[0]).max().orElseThrow();
    List<String> bought = Files.readAllLines(patterns.resolve("shopping-list.csv"));
    int isShort = (int) sheets - 2;
    assertThat(isShort).isPositive();
    assertThat(bought.get(1))
        .isEqualTo(
            String.format(
                java.util.Locale.ROOT,
                "Birch ply,600 × 300 mm,%.0f,2,%d,£5.70,£%.2f",
                sheets,
                isShort,
                5.70 * isShort));
    assertThat(bought.get(2)).matches("\"Cedar strip, 6 mm\",914 mm,[0-9]+,60,0,£0.36,£0.00");
    try (PDDocument pdf = Loader.loadPDF(workshop(fitted.log()).resolve("patterns.pdf").toFile())) {
      String text = new org.apache.pdfbox.text.PDFTextStripper().getText(pdf);
      assertThat(text).contains("Cut from: Birch ply", "What to buy", "Sheet 1: Mould");
    }
  }

  @Test
  void whatCannotBeDrawnIsSaidWithPlaceAndRemedy() throws Exception {
    TinyLog wide = log("wide", "").replace("facts.yaml", "notch_width: 5 mm", "notch_width: 50 mm");
    assertThat(wide.run("check").err() + wide.run("check").out())
        .contains("facts.yaml:10:", "The notch is wider than the mould of station 12")
        .contains("Give a narrower");
    TinyLog low = log("low", "").replace("facts.yaml", "board: 160 mm", "board: 120 mm");
    assertThat(low.run("check").err() + low.run("check").out())
        .contains(
            "facts.yaml:9:", "The building board lies below the top of station 10", "142.1 mm");
    TinyLog paper =
        log("paper", "patterns: {paper: a5, overlap: 70 mm}\nprinter: {across: 9 mm}\n");
    assertThat(paper.run("check").err() + paper.run("check").out())
        .contains("\"a5\" is not a paper for patterns.", "roll 610 mm")
        .contains("Write from 4 mm to 50 mm.", "Write from 90 mm to 110 mm.");
    TinyLog stock =
        log(
            "stock",
            "patterns: {cut-from: [{material: oak, length: 600 mm, width: 100 mm, for: [moulds]},"
                + " {material: cedar, length: 1 m, for: [mulds]}]}\n");
    assertThat(stock.run("check").err() + stock.run("check").out())
        .contains("log.yaml:", "There is no \"oak\" in stock.yaml.")
        .contains("No reckoning of facts.yaml, nor a part of one, is called \"mulds\".")
        .contains("The part \"7\" of \"moulds\" is")
        .contains("larger than a sheet of \"oak\".", "mould: half");
  }
}
