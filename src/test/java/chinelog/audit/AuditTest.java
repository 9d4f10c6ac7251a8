package chinelog.audit;

import static chinelog.audit.SampleEdition.BOOK;
import static chinelog.audit.SampleEdition.PAGE;
import static chinelog.audit.SampleEdition.PLATE;
import static chinelog.audit.SampleEdition.utf8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import chinelog.label.Clearance;
import chinelog.log.records.Release;
import chinelog.problem.Place;
import chinelog.problem.Sentence;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.graphics.image.JPEGFactory;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class AuditTest {

  @TempDir Path folder;
  private Path edition;
  private Path log;

  @BeforeEach
  void layDown() throws IOException {
    edition = Files.createDirectory(folder.resolve("public"));
    log = Files.createDirectories(folder.resolve("log/photos")).getParent();
    Files.createDirectories(log.resolve("sheets"));
    Files.write(
        log.resolve("photos/T20_0412.jpg"),
        SampleEdition.encode(SampleEdition.picture(256, 192, 3), "jpeg"));
    Files.write(
        log.resolve("sheets/lines.pdf"),
        SampleEdition.encode(SampleEdition.picture(64, 64, 9), "jpeg"));
  }

  @Test
  void aCleanEditionPasses() throws IOException {
    write(SampleEdition.files());
    AuditReport report = search(SampleLog.PUBLIC);
    assertThat(report.findings()).isEmpty();
    assertThat(report.searched()).first().asString().startsWith("8 files were opened: 1 css");
  }

  @Test
  void theWorkshopMaySeeWhatThePublicMayNot() throws IOException {
    Map<String, byte[]> files = SampleEdition.files();
    files.put(PAGE, utf8(SampleEdition.page("../", "<p>Skerrick Yard drew 11.20 m.</p>")));
    write(files);
    assertThat(search(SampleLog.WORKSHOP).findings()).isEmpty();
    assertThat(search(SampleLog.PUBLIC).findings())
        .extracting(f -> f.what().toString())
        .contains("It holds the other party to \"lines\".", "It holds the fact full.loa.");
  }

  @Test
  void readersOfOneAgreementDoNotSeeWhatIsUnderAnother() throws IOException {
    Map<String, byte[]> files = SampleEdition.files();
    files.put(PAGE, utf8(SampleEdition.page("../", "<p>For Marrowby Ferries at £34.75/h.</p>")));
    write(files);
    assertThat(search(SampleLog.CLIENT).findings()).isEmpty();
    assertThat(search(SampleLog.PUBLIC).isClean()).isFalse();
    files.put(PAGE, utf8(SampleEdition.page("../", "<p>Drawn by Skerrick Yard.</p>")));
    write(files);
    assertThat(search(SampleLog.CLIENT).isClean()).isFalse();
  }

  @Test
  void aReleasedFigureMayBeShownToItsReadersOnly() throws IOException {
    Map<String, byte[]> files = SampleEdition.files();
    files.put(PAGE, utf8(SampleEdition.page("../", "<p>She is 11.20 m long.</p>")));
    write(files);
    Release release =
        new Release(
            Release.Kind.FACT,
            "full.loa",
            "lines",
            "the yard's secretary",
            LocalDate.of(2026, 4, 2),
            "the length may be told",
            Set.of("public"),
            Place.of("log.yaml"));
    assertThat(search(SampleLog.PUBLIC, "public", List.of(release)).findings()).isEmpty();
    assertThat(search(SampleLog.PUBLIC, "others", List.of(release)).isClean()).isFalse();
  }

  @Test
  void aFigureThatTheReadersSeeAnywayIsNoLeak() throws IOException {
    Map<String, byte[]> files = SampleEdition.files();
    files.put(PAGE, utf8(SampleEdition.page("../", "<p>The keel weighs 412.6 g.</p>")));
    write(files);
    assertThat(search(SampleLog.PUBLIC).isClean()).isFalse();
    AuditReport report =
        Audit.search(
            edition,
            manifest(),
            SampleLog.in(log),
            "public",
            SampleLog.PUBLIC,
            List.of(),
            Set.of("412.6 g"),
            SampleEdition.pictures(),
            Before.nothing());
    assertThat(report.findings()).isEmpty();
  }

  @Test
  void reckonedFiguresAndTextsMayBeAddedToTheSearch() throws IOException {
    Map<String, byte[]> files = SampleEdition.files();
    files.put(PAGE, utf8(SampleEdition.page("../", "<p>She displaces 1.873 kg.</p>")));
    write(files);
    List<Canary> more =
        List.of(new Canary("1.873 kg", Sentence.of("the fact {0}", "hull.displacement")));
    AuditReport report =
        Audit.search(
            edition,
            manifest(),
            SampleLog.in(log),
            "public",
            SampleLog.PUBLIC,
            more,
            Set.of(),
            SampleEdition.pictures(),
            Before.nothing());
    assertThat(report.findings())
        .singleElement()
        .satisfies(f -> assertThat(f.what()).contains("hull.displacement"));
  }

  @Test
  void aFileFoundCleanIsSearchedAgainOnlyForANewSecret() throws IOException {
    Map<String, byte[]> files = SampleEdition.files();
    files.put(PAGE, utf8(SampleEdition.page("../", "<p>She displaces 1.873 kg.</p>")));
    write(files);
    Map<String, String> hashes = new TreeMap<>();
    files.forEach((name, bytes) -> hashes.put(name, SampleEdition.sha256(bytes)));
    AuditReport first =
        search(
            List.of(), new Before(new Decoded(List.of()), hashes, Searched.NOTHING, bytes -> null));
    assertThat(first.findings()).isEmpty();

    Before known = new Before(new Decoded(List.of()), hashes, first.outcome(), bytes -> null);
    AuditReport second = search(List.of(), known);
    assertThat(second.findings()).isEmpty();
    assertThat(second.searched()).anyMatch(line -> line.contains("not searched again"));
    assertThat(second.outcome()).isEqualTo(first.outcome());

    List<Canary> secret =
        List.of(new Canary("1.873 kg", Sentence.of("the fact {0}", "hull.displacement")));
    assertThat(search(secret, known).findings())
        .singleElement()
        .satisfies(f -> assertThat(f.what()).contains("hull.displacement"));

    hashes.put(PAGE, SampleEdition.sha256(utf8("other bytes")));
    AuditReport changed =
        search(
            List.of(), new Before(new Decoded(List.of()), hashes, first.outcome(), bytes -> null));
    assertThat(changed.searched()).anyMatch(line -> line.startsWith(files.size() - 1 + " of them"));
  }

  @Test
  void aPhotographThatCameLaterIsLookedForInWhatWasFoundClean() throws IOException {
    byte[] open = SampleEdition.encode(SampleEdition.picture(256, 192, 7), "jpeg");
    String packed = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789".repeat(40);
    Map<String, byte[]> files = SampleEdition.files();
    files.put(PLATE, open);
    files.put(
        BOOK,
        SampleEdition.pdf(
            "We set the moulds up.",
            (pdf, font) -> {
              draw(pdf, open);
              note(pdf, packed);
            }));
    write(files);
    List<AllowedPicture> pictures = new ArrayList<>(SampleEdition.pictures());
    pictures.add(SampleEdition.told(open));
    Before known = after(files, pictures);
    assertThat(searchFor(pictures, manifest(), known).findings()).isEmpty();

    Path later = log.resolve("photos/T20_0458.jpg");
    String found = "It holds bytes of photos/T20_0458.jpg as they are in the log.";
    Files.write(later, open);
    assertThat(searchFor(pictures, manifest(), known).findings())
        .extracting(Finding::file, f -> f.what().toString())
        .contains(tuple(BOOK, found), tuple(PLATE, found));
    Files.write(later, utf8(packed));
    assertThat(searchFor(pictures, manifest(), known).findings())
        .extracting(Finding::file, f -> f.what().toString())
        .containsOnly(tuple(BOOK, found));
  }

  @Test
  void aPictureStandsByWhateverNameUntilItIsToBeFilled() throws IOException {
    byte[] open = SampleEdition.encode(SampleEdition.picture(256, 192, 7), "jpeg");
    Map<String, byte[]> files = SampleEdition.files();
    files.put(PLATE, open);
    write(files);
    List<AllowedPicture> pictures = new ArrayList<>(SampleEdition.pictures());
    pictures.add(SampleEdition.told(open));
    String renamed = PLATE.replace("001", "002");
    Before known = after(files, pictures);
    known.hashes().put(renamed, SampleEdition.sha256(open));
    Files.move(edition.resolve(PLATE), edition.resolve(renamed));
    Set<String> names = new TreeSet<>(manifest());
    names.remove(PLATE);
    names.add(renamed);
    AuditReport again = searchFor(pictures, names, known);
    assertThat(again.findings()).extracting(Finding::file).doesNotContain(renamed);
    assertThat(again.searched())
        .contains(
            "2 of them are as they were when an earlier audit searched them for all of the"
                + " following, and were not searched again.");

    pictures.add(SampleEdition.told(open, pictures.get(1).filled().get(0)));
    assertThat(searchFor(pictures, names, known).findings())
        .extracting(Finding::file, f -> f.what().toString())
        .contains(tuple(renamed, "It is not filled with one colour."));
  }

  /** What is known after a first audit. */
  private Before after(Map<String, byte[]> files, List<AllowedPicture> pictures)
      throws IOException {
    Map<String, String> hashes = new TreeMap<>();
    files.forEach((name, bytes) -> hashes.put(name, SampleEdition.sha256(bytes)));
    AuditReport first =
        searchFor(
            pictures,
            manifest(),
            new Before(new Decoded(List.of()), hashes, Searched.NOTHING, bytes -> null));
    assertThat(first.findings()).isEmpty();
    return new Before(new Decoded(List.of()), hashes, first.outcome(), bytes -> null);
  }

  private AuditReport search(List<Canary> more, Before before) throws IOException {
    return Audit.search(
        edition,
        manifest(),
        SampleLog.in(log),
        "public",
        SampleLog.PUBLIC,
        more,
        Set.of(),
        SampleEdition.pictures(),
        before);
  }

  @Test
  void whatIsFilledMustBeOfOneColourInFilesAndInDocuments() throws IOException {
    byte[] open = SampleEdition.encode(SampleEdition.picture(256, 192, 7), "jpeg");
    Map<String, byte[]> files = SampleEdition.files();
    files.put(PLATE, open);
    files.put(BOOK, SampleEdition.pdf("We set the moulds up.", (pdf, font) -> draw(pdf, open)));
    write(files);
    // As if the picture had been made without filling anything, and the edition held it so.
    List<AllowedPicture> pictures = new ArrayList<>(SampleEdition.pictures());
    pictures.add(SampleEdition.told(open, pictures.get(1).filled().get(0)));
    assertThat(searchFor(pictures).findings())
        .extracting(Finding::file, f -> f.what().toString())
        .containsExactly(
            tuple(BOOK, "It is not filled with one colour."),
            tuple(PLATE, "It is not filled with one colour."));
  }

  @Test
  void aPictureThatTheEditionIsNotMadeOfIsFoundInFilesAndInDocuments() throws IOException {
    byte[] other = SampleEdition.encode(SampleEdition.picture(256, 192, 8), "jpeg");
    Map<String, byte[]> files = SampleEdition.files();
    files.put(PLATE, other);
    files.put(BOOK, SampleEdition.pdf("We set the moulds up.", (pdf, font) -> draw(pdf, other)));
    write(files);
    assertThat(searchFor(SampleEdition.pictures()).findings())
        .extracting(Finding::file, f -> f.what().toString())
        .containsExactly(
            tuple(BOOK, "It is none of the pictures that the log gives these readers."),
            tuple(PLATE, "It is none of the pictures that the log gives these readers."));
  }

  @Test
  void theFilledPartsThatWereLookedAtAreCountedOnceForEachPicture() throws IOException {
    write(SampleEdition.files());
    assertThat(searchFor(SampleEdition.pictures()).searched())
        .contains("1 filled parts of 1 pictures were looked at.");
  }

  @Test
  void aLineDrawnTwiceWhereOnePageEndsAndTheNextBeginsIsInSight() throws IOException {
    Map<String, byte[]> files = SampleEdition.files();
    files.put(
        BOOK,
        SampleEdition.pdf(
            "We set the moulds up.",
            (pdf, font) -> PlantedLeaksTest.cutOffAndThen(pdf, font, "up they go")));
    write(files);
    assertThat(search(SampleLog.PUBLIC).findings()).isEmpty();
  }

  @Test
  void aSentenceThatBeginsLikeAnAddressMaySayWhatAPageIsAbout() throws IOException {
    Map<String, byte[]> files = SampleEdition.files();
    files.put(
        PAGE,
        utf8(
            SampleEdition.page(
                "../", "<meta name=\"description\" content=\"// stands for http://\">")));
    write(files);
    assertThat(search(SampleLog.PUBLIC).findings()).isEmpty();
  }

  @Test
  void theSearchIndexMayHoldWhateverTheTextsSay() throws IOException {
    Map<String, byte[]> files = SampleEdition.files();
    files.put(
        "site/search.js",
        utf8("window.pagesToSearch = [{\"words\":[\"eval(\\\"https://a.example\\\")\"]}];\n"));
    write(files);
    assertThat(search(SampleLog.PUBLIC).findings()).isEmpty();
  }

  private AuditReport searchFor(List<AllowedPicture> pictures) throws IOException {
    return searchFor(pictures, manifest(), Before.nothing());
  }

  private AuditReport searchFor(List<AllowedPicture> pictures, Set<String> names, Before before)
      throws IOException {
    return Audit.search(
        edition,
        names,
        SampleLog.in(log),
        "public",
        SampleLog.PUBLIC,
        List.of(),
        Set.of(),
        pictures,
        before);
  }

  /** Writes a line that nobody sees into a stream that is packed. */
  private static void note(PDDocument pdf, String line) throws IOException {
    try (PDPageContentStream content =
        new PDPageContentStream(pdf, pdf.getPage(0), PDPageContentStream.AppendMode.APPEND, true)) {
      content.addComment(line);
    }
  }

  private static void draw(PDDocument pdf, byte[] jpeg) throws IOException {
    try (PDPageContentStream content =
        new PDPageContentStream(pdf, pdf.getPage(0), PDPageContentStream.AppendMode.APPEND, true)) {
      content.drawImage(JPEGFactory.createFromByteArray(pdf, jpeg), 60, 100);
    }
  }

  @Test
  void theSameBytesGiveTheSameReport() throws IOException {
    Map<String, byte[]> files = SampleEdition.files();
    files.put(BOOK, SampleEdition.pdf("Skerrick Yard, 11.20 m, Ottersby Timber"));
    write(files);
    assertThat(search(SampleLog.PUBLIC)).isEqualTo(search(SampleLog.PUBLIC));
  }

  private AuditReport search(Clearance clearance) throws IOException {
    return search(clearance, "public", List.of());
  }

  private AuditReport search(Clearance clearance, String readers, List<Release> releases)
      throws IOException {
    return Audit.search(
        edition,
        manifest(),
        SampleLog.in(log, releases),
        readers,
        clearance,
        List.of(),
        Set.of(),
        SampleEdition.pictures(),
        Before.nothing());
  }

  private static Set<String> manifest() {
    return new TreeSet<>(SampleEdition.files().keySet());
  }

  private void write(Map<String, byte[]> files) throws IOException {
    for (Map.Entry<String, byte[]> file : new TreeMap<>(files).entrySet()) {
      Path path = edition.resolve(file.getKey());
      Files.createDirectories(path.getParent());
      Files.write(path, file.getValue());
    }
  }
}
