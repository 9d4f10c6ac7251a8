package chinelog.publish;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.audit.AuditReport;
import chinelog.label.Clearance;
import chinelog.log.records.Entry;
import chinelog.log.records.Log;
import chinelog.log.records.Readers;
import chinelog.withhold.Correspondence;
import chinelog.withhold.Withholder;
import chinelog.withhold.question.Questions;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/**
 * Faults that a publisher might have, planted one by one in an edition of {@link SmallLog}; each is
 * numbered as in a catalogue of 74 ways in which a publisher that withholds can leak. The table
 * says by which instrument each is caught: the audit of the written bytes, the comparison of twins,
 * or the check of what can be worked out.
 */
@Order(2)
class PlantedFaultsTest {

  private static final String PAGE = "site/index.html";

  @TempDir static Path temp;

  private interface Fault {
    /** Spoils an edition as it would be spoilt by a writer that knew the whole log. */
    void spoil(Map<String, byte[]> files, Workshop.Opened opened) throws IOException;
  }

  private enum Instrument {
    AUDIT,
    TWINS
  }

  private record Planted(String threat, String name, Instrument by, Fault fault) {}

  private static final List<Planted> FAULTS = new ArrayList<>();

  private static void plant(String threat, String name, Instrument by, Fault fault) {
    FAULTS.add(new Planted(threat, name, by, fault));
  }

  private static void onPage(
      String threat, String name, Instrument by, java.util.function.Function<Log, String> html) {
    plant(threat, name, by, (files, opened) -> append(files, PAGE, html.apply(opened.log())));
  }

  static {
    onPage("T01", "a withheld paragraph on a page", Instrument.AUDIT, l -> hidden(l).text());
    onPage("T18", "the id of a withheld entry as an anchor", Instrument.AUDIT, l -> hidden(l).id());
    onPage(
        "T23",
        "a withheld title in a comment",
        Instrument.AUDIT,
        l -> "<!-- " + hidden(l).title() + " -->");
    onPage(
        "T24",
        "a withheld photograph's name as alternative text",
        Instrument.AUDIT,
        l -> "<img src=\"x.jpg\" alt=\"" + hiddenPhoto(l) + "\">");
    onPage(
        "T42",
        "the other party's name in a note",
        Instrument.AUDIT,
        l -> "withheld for " + l.agreements().get("lines").with());
    onPage("T45", "a link to a withheld entry", Instrument.AUDIT, l -> link(hidden(l).id()));
    onPage("T52", "a script", Instrument.AUDIT, l -> "<script>1</script>");
    onPage("T23", "a hidden block", Instrument.AUDIT, l -> "<p hidden>x</p>");
    onPage("T11", "a larger picture's address", Instrument.AUDIT, l -> link("full.jpg"));
    plant("T10", "a page of an earlier publish", Instrument.AUDIT, add("site/old.html", "<p>"));
    plant("T17", "version control", Instrument.AUDIT, add("site/.git/HEAD", "ref: x"));
    plant("T17", "an editor's copy", Instrument.AUDIT, add("site/index.html~", "x"));
    plant("T46", "a log of what was done", Instrument.AUDIT, add("site/made.log", "x"));
    plant("T70", "a packed page", Instrument.AUDIT, add("site/index.html.gz", "x"));
    plant("T22", "the photograph as it is in the log", Instrument.AUDIT, (f, o) -> original(f, o));
    plant("T08", "bytes after a picture", Instrument.AUDIT, (f, o) -> append(f, jpeg(f), "film"));
    plant("T06", "a comment in a picture", Instrument.AUDIT, (f, o) -> comment(f));
    plant(
        "T19",
        "bytes after the book",
        Instrument.AUDIT,
        (f, o) -> append(f, "build-book.pdf", "%x"));
    plant("T56", "a page that is not there", Instrument.AUDIT, (f, o) -> f.remove(PAGE));
    plant("T12", "a region left open in a picture", Instrument.AUDIT, (f, o) -> open(f, o));
    plant(
        "T25",
        "withheld words in the search index",
        Instrument.AUDIT,
        (f, o) -> append(f, search(f), "/* " + hidden(o.log()).text() + " */"));

    onPage("T80", "a line drawn through withheld offsets", Instrument.AUDIT, l -> drawing(l));

    onPage("T34", "a count over all entries", Instrument.TWINS, l -> "" + l.entries().size());
    onPage("T33", "a stand-in as long as the text", Instrument.TWINS, l -> gap(hidden(l)));
    onPage("T26", "the day of the youngest entry of all", Instrument.TWINS, l -> days(l));
    onPage("T35", "a scale fit to withheld hours", Instrument.TWINS, l -> "" + minutes(l));
    onPage("T39", "a hash of a withheld title", Instrument.TWINS, l -> hash(hidden(l).title()));
    onPage("T40", "the size of a withheld text", Instrument.TWINS, l -> "" + length(hidden(l)));
    onPage("T55", "the weekdays of all work", Instrument.TWINS, l -> weekdays(l));
    onPage(
        "T53", "a letter for the other party", Instrument.TWINS, l -> hash(party(l)).substring(1));
    plant("T64", "a PDF number from the whole log", Instrument.TWINS, PlantedFaultsTest::number);
    plant("T21", "a tint of a withheld photograph", Instrument.TWINS, PlantedFaultsTest::tint);
    plant("T59", "a quality fit to a withheld picture", Instrument.TWINS, PlantedFaultsTest::size);
    plant(
        "T18",
        "a counter over all photographs in a name",
        Instrument.TWINS,
        (f, o) -> rename(f, o));
  }

  private record Told(String id, String title, String text) {}

  private static Told hidden(Log log) {
    Entry entry =
        log.entries().stream()
            .filter(e -> e.label().toString().equals("lines"))
            .findFirst()
            .orElseThrow();
    String text = entry.text().toString();
    int at = text.indexOf("Text[text=") + "Text[text=".length();
    return new Told(entry.id(), entry.title().value(), text.substring(at, text.indexOf(']', at)));
  }

  private static String hiddenPhoto(Log log) {
    return log.photos().stream()
        .filter(p -> !p.label().isNone())
        .map(p -> p.path())
        .findFirst()
        .orElseThrow();
  }

  private static String party(Log log) {
    return log.agreements().get("lines").with();
  }

  private static String link(String target) {
    return "<a href=\"" + target + "\">see</a>";
  }

  private static String drawing(Log log) {
    return log.tables().stream()
        .filter(t -> t.name().equals("offsets"))
        .flatMap(t -> t.rows().stream())
        .map(r -> r.cells().get(0).text() + " " + r.cells().get(1).text())
        .collect(Collectors.joining(" L", "<svg><path d=\"M", "\"/></svg>"));
  }

  private static String gap(Told told) {
    return "<span>" + "\u2003".repeat(told.text().length()) + "</span>";
  }

  private static int length(Told told) {
    return told.text().getBytes(StandardCharsets.UTF_8).length;
  }

  private static String days(Log log) {
    return log.entries().stream().map(Entry::date).sorted().findFirst().orElseThrow().toString();
  }

  private static String weekdays(Log log) {
    StringBuilder marks = new StringBuilder();
    log.entries().forEach(e -> marks.append((char) ('A' + e.date().getDayOfMonth())));
    return marks.toString();
  }

  private static long minutes(Log log) {
    return log.entries().stream()
        .flatMap(e -> e.worked().stream())
        .mapToLong(w -> w.duration().toMinutes())
        .sum();
  }

  private static String hash(String text) {
    return Integer.toHexString(text.hashCode());
  }

  private static Fault add(String name, String text) {
    return (files, opened) -> files.put(name, text.getBytes(StandardCharsets.UTF_8));
  }

  private static String jpeg(Map<String, byte[]> files) {
    return files.keySet().stream().filter(n -> n.endsWith(".jpg")).findFirst().orElseThrow();
  }

  private static String search(Map<String, byte[]> files) {
    return files.keySet().stream().filter(n -> n.endsWith(".js")).findFirst().orElseThrow();
  }

  private static void append(Map<String, byte[]> files, String name, String text) {
    byte[] before = files.get(name);
    if (name.endsWith(".html")) {
      String page = new String(before, StandardCharsets.UTF_8);
      files.put(name, page.replace("</main>", text + "</main>").getBytes(StandardCharsets.UTF_8));
      assertThat(page).contains("</main>");
      return;
    }
    byte[] more = text.getBytes(StandardCharsets.UTF_8);
    byte[] both = Arrays.copyOf(before, before.length + more.length);
    System.arraycopy(more, 0, both, before.length, more.length);
    files.put(name, both);
  }

  private static void original(Map<String, byte[]> files, Workshop.Opened opened)
      throws IOException {
    files.put(
        jpeg(files), Files.readAllBytes(opened.log().folder().resolve("photos/a-region.jpg")));
  }

  /** The region's picture, decoded and encoded afresh without its region filled. */
  private static void open(Map<String, byte[]> files, Workshop.Opened opened) throws IOException {
    byte[] source = Files.readAllBytes(opened.log().folder().resolve("photos/a-region.jpg"));
    for (String name : List.copyOf(files.keySet())) {
      if (name.endsWith(".jpg")) {
        var image = javax.imageio.ImageIO.read(new java.io.ByteArrayInputStream(source));
        var out = new java.io.ByteArrayOutputStream();
        javax.imageio.ImageIO.write(image, "jpeg", out);
        files.put(name, out.toByteArray());
      }
    }
  }

  private static void comment(Map<String, byte[]> files) {
    byte[] before = files.get(jpeg(files));
    byte[] comment = {(byte) 0xFF, (byte) 0xFE, 0, 6, 'c', 'a', 'm', '1'};
    byte[] after = new byte[before.length + comment.length];
    System.arraycopy(before, 0, after, 0, 2);
    System.arraycopy(comment, 0, after, 2, comment.length);
    System.arraycopy(before, 2, after, 2 + comment.length, before.length - 2);
    files.put(jpeg(files), after);
  }

  private static void number(Map<String, byte[]> files, Workshop.Opened opened) {
    append(files, "build-book.pdf", hash(opened.log().toString()));
  }

  private static void tint(Map<String, byte[]> files, Workshop.Opened opened) throws IOException {
    byte[] source = Files.readAllBytes(opened.log().folder().resolve(hiddenPhoto(opened.log())));
    append(files, PAGE, "<i>#" + Integer.toHexString(Arrays.hashCode(source)) + "</i>");
  }

  private static void size(Map<String, byte[]> files, Workshop.Opened opened) throws IOException {
    long size = Files.size(opened.log().folder().resolve(hiddenPhoto(opened.log())));
    append(files, jpeg(files), "x".repeat((int) (size % 1000)));
  }

  private static void rename(Map<String, byte[]> files, Workshop.Opened opened) {
    String name = jpeg(files);
    long minutes = minutes(opened.log());
    files.put(name.replace(".jpg", "-" + minutes + ".jpg"), files.remove(name));
  }

  /** An edition as published, with what is needed to search it. */
  private record Standing(
      Workshop.Opened opened,
      Withholder.Withheld withheld,
      Set<String> mayStand,
      Map<String, byte[]> files) {}

  private static Standing standing(Path log) throws IOException {
    ByteTwinsTest.publish(log, "public");
    Workshop.Opened opened =
        Workshop.open(
            log, ByteTwinsTest.AS_OF, ByteTwinsTest.AS_OF, ZoneId.of("UTC"), Progress.SILENT);
    Readers everybody =
        opened.log().readers().stream()
            .filter(r -> r.id().equals("public"))
            .findFirst()
            .orElseThrow();
    Withholder.Withheld withheld =
        Withholder.prepare(
                opened.log(),
                opened.facts(),
                opened.album(),
                new LogPictures(opened.log(), new Clearance(new TreeSet<>()), Progress.SILENT),
                everybody,
                ByteTwinsTest.AS_OF,
                java.util.Set.of(),
                Correspondence.NONE)
            .against(List.of());
    Path edition = log.resolve("published/public");
    Map<String, byte[]> files = new TreeMap<>();
    try (Stream<Path> all = Files.walk(edition)) {
      for (Path file : all.filter(Files::isRegularFile).toList()) {
        files.put(edition.relativize(file).toString(), Files.readAllBytes(file));
      }
    }
    Set<String> mayStand =
        OpenWords.of(opened, everybody, withheld, Questions.Asked.NOTHING, ByteTwinsTest.AS_OF)
            .mayStand();
    return new Standing(opened, withheld, mayStand, files);
  }

  @TestFactory
  Stream<DynamicTest> everyPlantedFaultIsCaught() throws IOException {
    // Of these two twins, the open parts are the same to the byte (ByteTwinsTest).
    Standing one = standing(new SmallLog(1, 11).write(temp.resolve("one")));
    Standing other = standing(new SmallLog(1, 12).write(temp.resolve("other")));
    assertThat(FAULTS).hasSizeGreaterThanOrEqualTo(30);
    return FAULTS.stream()
        .map(
            f ->
                DynamicTest.dynamicTest(
                    f.threat + ": " + f.name + ", by " + f.by, () -> tryOut(f, one, other)));
  }

  @TestFactory
  Stream<DynamicTest> whatCanBeWorkedOutIsCaughtByTheCheckOfFigures() {
    Map<String, String> facts = new TreeMap<>();
    facts.put(
        "T05: full size from model and scale",
        "full.keel: {is: 1 m, under: lines}\nhull.keel: 62.5 mm\n");
    facts.put(
        "T04: the part that is left",
        "a.all: 131 mm\na.one: 100 mm\na.two: {is: a.all - a.one, under: lines}\n");
    facts.put(
        "T05: a product of open figures",
        "a.long: 131 mm\na.wide: 100 mm\na.plan: {is: a.long * a.wide, under: lines}\n");
    facts.put(
        "T38: a mean of open figures",
        "a.one: 131 mm\na.two: 100 mm\na.mean: {is: 'mean(a.one, a.two)', under: lines}\n");
    facts.put(
        "T38: a ratio of open figures",
        "a.one: 131 mm\na.two: 100 mm\na.part: {is: a.one / a.two, under: lines}\n");
    return facts.entrySet().stream()
        .map(
            f ->
                DynamicTest.dynamicTest(
                    f.getKey(),
                    () -> {
                      Path log = Files.createTempDirectory(temp, "figures");
                      new SmallLog(1, 11).with("facts.yaml", f.getValue()).write(log);
                      Outcome outcome =
                          new Publisher(
                                  log,
                                  ByteTwinsTest.AS_OF,
                                  ByteTwinsTest.AS_OF,
                                  ZoneId.of("UTC"),
                                  Progress.SILENT)
                              .publish(List.of("public"));
                      assertThat(outcome.problems())
                          .anyMatch(p -> p.isError() && p.toString().contains("worked out"));
                      assertThat(log.resolve("published")).doesNotExist();
                    }));
  }

  private static void tryOut(Planted planted, Standing one, Standing other) throws IOException {
    Map<String, byte[]> spoilt = new TreeMap<>(one.files);
    planted.fault.spoil(spoilt, one.opened);
    if (planted.by == Instrument.AUDIT) {
      assertThat(audit(spoilt, one).findings()).isNotEmpty();
    } else {
      Map<String, byte[]> twin = new TreeMap<>(other.files);
      planted.fault.spoil(twin, other.opened);
      assertThat(text(twin)).isNotEqualTo(text(spoilt));
      assertThat(text(one.files)).isEqualTo(text(other.files));
    }
  }

  private static AuditReport audit(Map<String, byte[]> files, Standing standing)
      throws IOException {
    Path folder = Files.createTempDirectory(temp, "spoilt");
    for (Map.Entry<String, byte[]> file : files.entrySet()) {
      Path path = folder.resolve(file.getKey());
      Files.createDirectories(path.getParent());
      Files.write(path, file.getValue());
    }
    Manifest manifest = Manifest.of(standing.opened.log().folder().resolve("published/public"));
    return new EditionSearch(
            folder, manifest, standing.opened, standing.withheld, standing.mayStand, "public")
        .afresh();
  }

  private static Map<String, String> text(Map<String, byte[]> files) {
    Map<String, String> text = new TreeMap<>();
    files.forEach((name, bytes) -> text.put(name, bytes.length + " " + Arrays.hashCode(bytes)));
    return text;
  }
}
