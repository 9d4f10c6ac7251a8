package chinelog.photo.derivatives;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.digest.Sha256;
import chinelog.photo.Shots;
import chinelog.publish.Outcome;
import chinelog.publish.Publisher;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.stream.Stream;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** What was written into photographs' files, and what is written into them, all the way. */
@Timeout(120)
class PublishedPhotosTest {

  private static final LocalDate DAY = LocalDate.of(2026, 5, 20);

  private static final String LOG =
      """
      title: Building Merrow
      maker: {value: Tern Lane Workshop, under: lines}
      licence: Shown by kind permission
      credit-photos: true
      agreements:
        lines: {with: Skerrick Yard, covers: the lines plan, from: 2026-03-02}
        office: {with: Ravel Sound Pilotage, covers: who ordered her, presence: nothing}
      sheets: {under: lines}
      readers:
        public: {gets: [site]}
        workshop: {gets: [site]}
      """;

  @TempDir Path folder;

  @BeforeEach
  void begin() throws IOException {
    byte[] part = shot(3, "The inlet below the waterline");
    write("log.yaml", LOG);
    write("entries/2026-04-01-day.md", "# A day\n\nPlanked both sides.\n");
    write(
        "photos/photos.yaml",
        """
        b.jpg: {under: lines}
        c.jpg:
          sha256: %s
          regions: [{box: [0, 0, 0.5, 0.5], under: lines}]
        d.jpg: {caption: Cooling down}
        f.jpg: {caption: "[Made to order]{under=office}"}
        """
            .formatted(Sha256.of(part)));
    write("photos/a.jpg", shot(1, "Clamps along the sheer"));
    write("photos/b.jpg", shot(2, "The knuckle nobody may see"));
    write("photos/c.jpg", part);
    write("photos/d.jpg", shot(4, "Never read over"));
    write("photos/f.jpg", shot(6, "Ordered for the watch room"));
  }

  @Test
  void aCaptionInAFileStandsWhereTheLogGivesNoneAndIsWithheldWithItsPhotograph()
      throws IOException {
    publish("public");

    assertThat(site("public"))
        .contains("Clamps along the sheer", "Cooling down")
        .doesNotContain("The knuckle", "The inlet", "Never read over", "watch room");

    publish("workshop");

    assertThat(site("workshop"))
        .contains("The knuckle nobody may see", "The inlet below the waterline")
        .doesNotContain("Never read over");
  }

  @Test
  void aShownPhotographThatLooksLikeAWithheldOneIsPointedOut() throws IOException {
    write("photos/e.jpg", Shots.jpeg(Shots.scene(400, 300, 2), 0.8));

    assertThat(run("public").problems())
        .anyMatch(
            p ->
                p.place().file().equals("photos/e.jpg")
                    && p.isError()
                    && p.what().toString().contains("looks like photos/b.jpg"));
    assertThat(run("workshop").problems())
        .noneMatch(p -> p.what().toString().contains("looks like"));
  }

  @Test
  void aCreditNamesOnlyWhatItsReadersMaySee() throws IOException {
    publish("public");
    assertThat(pictures("public"))
        .isNotEmpty()
        .allMatch(p -> p.contains("Shown by kind permission") && !p.contains("Tern Lane"));

    publish("workshop");
    assertThat(pictures("workshop"))
        .isNotEmpty()
        .allMatch(p -> p.contains("Shown by kind permission") && p.contains("Tern Lane Workshop"));
  }

  @Test
  void aSheetIsShownOnlyIfItWasReleasedFromItsOwnAgreement() throws IOException {
    try (PDDocument pdf = new PDDocument();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream()) {
      pdf.addPage(new PDPage());
      pdf.save(bytes);
      write("sheets/lines.pdf", bytes.toByteArray());
    }
    publish("public");
    int without = pictures("public").size();
    String release =
        LOG
            + "releases:\n  - {sheet: sheets/lines.pdf, under: %s, by: They, on: 2026-04-02,"
            + " words: You may show it., for: [public]}\n";
    write("log.yaml", release.formatted("office"));
    publish("public");
    assertThat(pictures("public")).hasSize(without);

    write("log.yaml", release.formatted("lines"));
    publish("public");
    assertThat(pictures("public")).hasSizeGreaterThan(without);
  }

  private void publish(String readers) throws IOException {
    Outcome outcome = run(readers);
    assertThat(outcome.hasErrors()).as("%s", outcome.problems()).isFalse();
    assertThat(outcome.hasLeaks()).as("%s", outcome.editions()).isFalse();
  }

  private Outcome run(String readers) throws IOException {
    return new Publisher(folder, DAY, DAY, ZoneId.of("UTC"), step -> {}).publish(List.of(readers));
  }

  private String site(String readers) throws IOException {
    StringBuilder all = new StringBuilder();
    for (String text : files(readers, ".html", StandardCharsets.UTF_8)) {
      all.append(text.replaceAll("\\s+", " "));
    }
    return all.toString();
  }

  private List<String> pictures(String readers) throws IOException {
    return files(readers, ".jpg", StandardCharsets.ISO_8859_1);
  }

  private List<String> files(String readers, String ending, java.nio.charset.Charset charset)
      throws IOException {
    List<String> all = new java.util.ArrayList<>();
    try (Stream<Path> found =
        Files.walk(
            folder
                .resolve(readers.equals("workshop") ? "workshop" : "published")
                .resolve(readers))) {
      for (Path file : found.filter(p -> p.toString().endsWith(ending)).sorted().toList()) {
        all.add(Files.readString(file, charset));
      }
    }
    return all;
  }

  private static byte[] shot(long seed, String caption) {
    byte[] jpeg = Shots.withIptc(Shots.jpeg(Shots.scene(400, 300, seed), 0.9), 120, caption);
    return Shots.withExif(jpeg, 1, "T-20", "2026:04:01 10:00:0" + seed, "");
  }

  private void write(String path, String text) throws IOException {
    write(path, text.getBytes(StandardCharsets.UTF_8));
  }

  private void write(String path, byte[] bytes) throws IOException {
    Files.createDirectories(folder.resolve(path).getParent());
    Files.write(folder.resolve(path), bytes);
  }
}
