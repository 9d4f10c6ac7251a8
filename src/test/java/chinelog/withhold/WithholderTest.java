package chinelog.withhold;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.edition.Edition;
import chinelog.log.LogReader;
import chinelog.log.records.Log;
import chinelog.log.records.Readers;
import chinelog.photo.album.Album;
import chinelog.problem.Problem;
import chinelog.reckon.Reckoner;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class WithholderTest {

  private static final LocalDate APRIL = LocalDate.of(2026, 4, 30);
  private static final LocalDate MAY = LocalDate.of(2026, 5, 31);

  @TempDir Path folder;

  @BeforeEach
  void layDown() throws IOException {
    write(
        "log.yaml",
        """
        title: Building Merrow
        scale: 1:16
        currency: GBP
        zone: UTC
        agreements:
          lines: {with: Skerrick Yard, covers: the lines, presence: note}
          client: {with: The harbour, covers: the price, presence: nothing}
        readers:
          public: {title: Everybody, party-to: []}
          client: {title: The client, party-to: [client]}
          yard: {title: The yard, party-to: [lines]}
        stages:
          planking: {title: Planking}
          rigging: {title: Rigging}
        """);
    entry("2026-04-02-strips", "used: {strip: 6}\nmeasured: {hull.loa: 698 mm}");
  }

  private void write(String name, String text) throws IOException {
    Path file = folder.resolve(name);
    Files.createDirectories(file.getParent());
    Files.writeString(file, text);
  }

  private void add(String name, String text) throws IOException {
    write(name, Files.readString(folder.resolve(name)) + text);
  }

  private void entry(String id, String front) throws IOException {
    write(
        "entries/" + id + ".md",
        "---\n"
            + (front.contains("stage:") ? "" : "stage: planking\n")
            + front
            + "\n---\n\nA day.\n");
  }

  private Withholder.Withheld edition(LocalDate day, String readers, List<PrintedFigure> known)
      throws IOException {
    LogReader.Reading reading = new LogReader(day, ZoneOffset.UTC).read(folder);
    assertThat(reading.problems()).filteredOn(Problem::isError).isEmpty();
    Log log = reading.log().until(day);
    Reckoner.Reckoning reckoning = Reckoner.reckon(log);
    assertThat(reckoning.problems()).filteredOn(Problem::isError).isEmpty();
    Readers group =
        log.readers().stream().filter(r -> r.id().equals(readers)).findFirst().orElseThrow();
    return Withholder.prepare(
            log,
            reckoning.facts(),
            new Album(List.of(), List.of()),
            new NoPictures(),
            group,
            day,
            java.util.Set.of(),
            Correspondence.NONE)
        .against(known);
  }

  private Edition.Contents told(String readers) throws IOException {
    return edition(MAY, readers, List.of()).edition().contents();
  }

  private static List<String> errors(Withholder.Withheld withheld) {
    return withheld.problems().stream().filter(Problem::isError).map(Problem::toString).toList();
  }

  @Test
  void aLotOfWhichNothingMayShowLeavesTheOthersOfItsMaterialAsTheyWere() throws IOException {
    String open = "- {material: strip, title: Strip, bought: 60, price: 21.60 GBP}\n";
    write("stock.yaml", open);
    List<Edition.MaterialLine> alone = told("public").materials();
    write(
        "stock.yaml",
        "- {material: strip, title: Cheap, bought: 40, price: 4 GBP, date: 2026-01-01,"
            + " under: client}\n"
            + open);

    assertThat(told("public").materials()).isEqualTo(alone).isNotEmpty();
    assertThat(told("client").materials()).isNotEqualTo(alone);
  }

  @Test
  void aPriceUnderAnAgreementIsNotedInItsCellWhereTheAgreementIsNoted() throws IOException {
    String lot = "- {material: strip, title: Strip, bought: 60, price: %s}\n";
    add("log.yaml", "tell: {money: [public]}\n");
    for (String[] world :
        new String[][] {
          {"21.60 GBP", "£2.16"},
          {"{value: 21.60 GBP, under: lines}", "withheld"},
          {"{value: 33.10 GBP, under: lines}", "withheld"},
          {"{value: 21.60 GBP, under: client}", ""}
        }) {
      write("stock.yaml", lot.formatted(world[0]));
      assertThat(told("public").materials())
          .extracting(Edition.MaterialLine::cost)
          .containsExactly(world[1]);
    }
  }

  @Test
  void howASentenceReadsWithoutItsFigureIsToldForThoseWhoReadItSo() throws IOException {
    write("facts.yaml", "hull.beam: {is: 186.9 mm, under: lines}\n");
    write(
        "entries/2026-04-02-strips.md",
        "---\nstage: planking\n---\n\nWe planed. Her beam is [](fact:hull.beam), no more. Enough.\n");
    assertThat(edition(MAY, "public", List.of()).problems())
        .extracting(Problem::toString)
        .contains(
            "entries/2026-04-02-strips.md:5:24: reminder: For public this reads: “Her beam is […],"
                + " no more.” Let the sentence do without the figure, or put all of it under the"
                + " agreement.");
    assertThat(edition(MAY, "yard", List.of()).problems())
        .noneMatch(p -> p.toString().contains("this reads"));
  }

  @Test
  void nothingIsToldOfAMaterialThatTheOpenLotsDoNotCover() throws IOException {
    write(
        "stock.yaml",
        "- {material: strip, title: Strip, bought: 4}\n"
            + "- {material: strip, title: Strip, bought: 40, under: client}\n");

    Withholder.Withheld withheld = edition(MAY, "public", List.of());

    assertThat(withheld.edition().contents().materials()).isEmpty();
    assertThat(withheld.edition().contents().entries().get(0).materials()).isEmpty();
    assertThat(withheld.problems())
        .anyMatch(p -> !p.isError() && p.toString().contains("\"strip\""));
    assertThat(told("client").materials()).hasSize(1);
  }

  @Test
  void aLaterReadingUnderAnAgreementLeavesTheOneBefore() throws IOException {
    Edition.Contents alone = told("public");
    entry("2026-04-20-again", "measured: {hull.loa: 702 mm}\nunder: client");

    assertThat(told("public").figures()).isEqualTo(alone.figures());
    assertThat(told("client").figures()).isNotEqualTo(alone.figures());

    entry("2026-04-20-again", "measured: {hull.loa: 702 mm}\nunder: lines");
    assertThat(told("public").figures()).isEqualTo(alone.figures());
  }

  @Test
  void aMeasurementStaysWhereItsPlanIsHiddenUnlessItCameOutAsPlanned() throws IOException {
    Edition.Contents alone = told("public");
    write("facts.yaml", "hull.loa: {is: 500 mm, under: client}\n");
    assertThat(told("public").figures()).isEqualTo(alone.figures());

    write("facts.yaml", "hull.loa: {is: 700 mm, under: client}\n");
    assertThat(errors(edition(MAY, "public", List.of())))
        .singleElement()
        .asString()
        .contains("came out as planned");
  }

  @Test
  void aTotalOfTwoDaysTellsTheHoursBetween() throws IOException {
    entry("2026-04-03-a", "time: 3 h");
    entry("2026-04-04-b", "time: 5 h\nunder: lines");
    entry("2026-04-15-c", "stage: rigging\ntime: 7 h\nunder: lines");
    add(
        "log.yaml",
        """
        releases:
          - {fact: hours.total, under: lines, by: The yard, on: 2026-04-02, words: "Yes.", for: [public]}
        """);
    Withholder.Withheld april = edition(APRIL, "public", List.of());
    assertThat(errors(april)).isEmpty();

    entry("2026-05-06-d", "time: 4 h\nunder: lines");
    entry("2026-05-07-e", "time: 2 h");
    assertThat(errors(edition(MAY, "public", List.of()))).isEmpty();
    assertThat(errors(edition(MAY, "public", april.printed())))
        .anyMatch(e -> e.contains("hours.entry.2026_05_06_d can be worked out"))
        .allMatch(e -> e.contains("2026-04-30"));
  }

  // Handbook on Statistical Disclosure Control, 2nd edition, chapter 5: group disclosure.
  @Test
  void aTotalThatLiesInOneStageTellsTheStageOfAllThatIsWithheld() throws IOException {
    entry("2026-04-03-a", "time: 3 h");
    entry("2026-04-04-b", "time: 5 h\nunder: lines");
    entry("2026-04-15-c", "time: 7 h\nunder: lines");
    write("entries/2026-04-16-d.md", "---\n---\n[](fact:hours.stage.planking)\n");
    String release =
        "  - {fact: hours.%s, under: lines, by: They, on: 2026-04-02, words: Granted, for: [public]}\n";
    add("log.yaml", "releases:\n" + release.formatted("total"));
    assertThat(edition(MAY, "public", List.of()).problems())
        .noneMatch(p -> p.toString().contains("All of"));

    add("log.yaml", release.formatted("stage.planking"));
    assertThat(edition(MAY, "public", List.of()).problems())
        .anyMatch(p -> !p.isError() && p.toString().contains("All of \u201chours.total\u201d"));
  }

  @Test
  void aCountIsTriedInWholeNumbersAlone() throws IOException {
    add(
        "log.yaml",
        """
        releases:
          - {fact: boxes, under: lines, by: The yard, on: 2026-04-02, words: "Yes.", for: [public]}
        """);
    write("facts.yaml", "frames: {is: 10, under: lines}\nboxes: ceil(frames / 4)\n");
    assertThat(errors(edition(MAY, "public", List.of())))
        .singleElement()
        .asString()
        .contains("frames");

    write("facts.yaml", "frames: {is: 10.5, under: lines}\nboxes: ceil(frames / 4)\n");
    assertThat(errors(edition(MAY, "public", List.of()))).isEmpty();
  }

  @Test
  void twoThatMayMeetAreTakenAsOne() throws IOException {
    write(
        "facts.yaml",
        """
        keel.first: {is: 310 mm, under: [lines, client]}
        keel.second: {is: 250 mm, under: client}
        keel.whole: keel.first + keel.second
        """);
    add(
        "log.yaml",
        """
        releases:
          - {fact: keel.whole, under: lines, by: The yard, on: 2026-04-02, words: "Yes.", for: [client]}
          - {fact: keel.whole, under: client, by: They, on: 2026-04-02, words: "Yes.", for: [yard]}
        """);
    Withholder.Withheld client = edition(MAY, "client", List.of());
    assertThat(errors(client)).anyMatch(e -> e.contains("keel.first"));

    write(
        "facts.yaml",
        """
        keel.first: {is: 310 mm, under: [lines, client]}
        keel.second: {is: 250 mm, under: lines}
        keel.third: {is: 90 mm, under: client}
        keel.whole: keel.first + keel.second + keel.third
        """);
    client = edition(MAY, "client", List.of());
    assertThat(errors(client)).isEmpty();
    Withholder.Withheld yard = edition(MAY, "yard", List.of());
    assertThat(errors(yard)).isEmpty();
    assertThat(errors(edition(MAY, "yard", client.printed())))
        .singleElement()
        .asString()
        .contains("keel.first")
        .contains("for client");
  }

  @Test
  void anEarlierReadingIsNotNamedByTheFileOfItsNote() throws IOException {
    entry(
        "2026-04-20-quillfeather",
        "title: {value: For Quillfeather, under: client}\n"
            + "measured: {hull.loa: 699 mm}\nweighed: {hull: 400 g}");
    entry("2026-04-22-last", "measured: {hull.loa: 700 mm}\nweighed: {hull: 401 g}");
    write("entries/2026-04-23-b.md", "[](fact:hull.loa.at_2026_04_20_quillfeather)\n");
    Edition.Contents told = told("public");
    assertThat(told.figures())
        .extracting(f -> f.name())
        .contains("hull.loa.at_2026-04-20-entry", "mass.hull.at_2026-04-20-entry")
        .contains("hull.loa.at_2026-04-02-strips");
    assertThat(told.toString())
        .contains("hull.loa.at_2026-04-20-entry")
        .doesNotContain("uillfeather");
  }

  private void state(String agreement, String rule) throws IOException {
    write(
        "facts.yaml",
        """
        keel.length: {is: 310 mm, under: %1$s, on: 2026-02-03}
        keel.most: {is: 331 mm, under: %1$s}
        """
            .formatted(agreement));
    add(
        "log.yaml",
        """
        limits:
          keel: {title: Keel, rule: %s}
        releases:
          - {fact: keel.length, under: %s, by: They, on: 2026-04-02, words: "Yes.", for: [public]}
        """
            .formatted(rule, agreement));
  }

  @Test
  void aLimitOnAReleasedFigureShowsUnlessItsBoundMayNotBeTold() throws IOException {
    for (String agreement : List.of("lines", "client")) {
      layDown();
      state(agreement, "keel.length <= 1 m");
      assertThat(told("public").limits())
          .singleElement()
          .extracting(Edition.LimitLine::value, Edition.LimitLine::margin)
          .containsExactly("0.31\u202fm", "0.69\u202fm");
      layDown();
      state(agreement, "keel.length <= 1.1 * keel.most");
      assertThat(told("public").limits()).isEmpty();
      assertThat(told("workshop").limits()).hasSize(1);
      layDown();
      state(agreement, "keel.length <= hull.loa");
      assertThat(told("public").limits()).hasSize(1);
    }
  }

  @Test
  void aReleasedFigureDoesNotTellOfADayThatIsNotTold() throws IOException {
    for (String agreement : List.of("lines", "client")) {
      layDown();
      state(agreement, "keel.length <= 1 m");
      entry("2026-04-07-weighed", "under: " + agreement + "\nmeasured: {keel.depth: 12 mm}");
      entry("2026-04-08-seen", "measured: {keel.width: {is: 9 mm, under: " + agreement + "}}");
      String release =
          "  - {fact: keel.%s, under: %s, by: They, on: 2026-04-02, words: Granted, for: [public]}\n";
      add("log.yaml", release.formatted("depth", agreement));
      add("log.yaml", release.formatted("width", agreement));
      assertThat(told("public").figures())
          .filteredOn(f -> f.name().startsWith("keel."))
          .extracting(f -> f.name() + " " + f.date() + " " + f.origin())
          .containsExactly(
              "keel.depth null measured",
              "keel.length null stated",
              "keel.width 2026-04-08 measured, April 8, 2026");
    }
  }

  @Test
  void theToleranceOfAReleasedProductIsNotTold() throws IOException {
    write(
        "facts.yaml",
        """
        lid.a: {is: 812 mm ± 1 mm, under: lines}
        lid.b: {is: 403 mm ± 1 mm, under: lines}
        lid.area: lid.a * lid.b
        """);
    add(
        "log.yaml",
        """
        releases:
          - {fact: lid.area, under: lines, by: x, on: 2026-04-01, words: z, for: [public]}
        """);
    // A product and, with two equal tolerances, the sum of its factors would give both factors.
    assertThat(told("public").figures())
        .filteredOn(f -> f.name().equals("lid.area"))
        .singleElement()
        .satisfies(f -> assertThat(f.tolerance()).isEmpty());
    assertThat(told("yard").figures())
        .filteredOn(f -> f.name().equals("lid.area"))
        .singleElement()
        .satisfies(f -> assertThat(f.tolerance()).isNotEmpty());
  }

  @Test
  void aWithheldNumberOfFewPiecesIsNotLeftToBeTried() throws IOException {
    write(
        "facts.yaml",
        """
        rail.length: 412.5 mm
        rail.posts: {is: 5, under: lines}
        rail.spacing: rail.length / rail.posts
        rail.rounded: {is: 82 mm}
        """);
    assertThat(errors(edition(MAY, "public", List.of()))).isEmpty();
    add(
        "log.yaml",
        """
        releases:
          - {fact: rail.spacing, under: lines, by: x, on: 2026-04-01, words: z, for: [public]}
        """);
    assertThat(errors(edition(MAY, "public", List.of()))).anyMatch(e -> e.contains("rail.posts"));
  }

  @Test
  void aWithheldFigureAtFullSizeEmptiesNoCellOfAnOpenOne() throws IOException {
    write("facts.yaml", "hull.keel: 400 mm\n");
    List<?> without = told("public").figures();
    write("facts.yaml", "hull.keel: 400 mm\nfull.keel: {is: 9.1 m, under: lines}\n");
    assertThat(told("public").figures()).isEqualTo(without);
  }

  @Test
  void aWithheldStageMakesNoOtherTheLast() throws IOException {
    String log = Files.readString(folder.resolve("log.yaml"));
    String plan = "{title: Planking, start: 2026-04-01, finish: 2026-04-03, hours: 4 h}";
    String open =
        log.replace("{title: Planking}", plan).replace("  rigging: {title: Rigging}\n", "");
    write("log.yaml", open);
    List<Edition.Stage> without = told("public").stages();
    assertThat(without).extracting(Edition.Stage::progress).containsExactly(Edition.Progress.DONE);
    write("log.yaml", open + "  rigging: {title: Rigging, under: lines}\n");
    assertThat(told("public").stages()).isEqualTo(without);
  }

  @Test
  void aWithheldPostDecidesNothingAboutOthers() throws IOException {
    for (int day = 3; day < 8; day++) {
      entry("2026-04-0" + day + "-day", "time: 1 h");
    }
    List<Edition.Post> without = told("public").posts();
    add(
        "log.yaml",
        """
        posts:
          - {title: Kept, entries: [2026-04-02-strips, 2026-04-05-day], under: lines}
        """);
    assertThat(told("public").posts()).isEqualTo(without);
  }

  @Test
  void theSumOfTheOpenHoursDoesNotGiveTheWithheldTotalAway() throws IOException {
    entry("2026-04-03-open", "time: 7 h 25 min");
    entry("2026-04-04-kept", "stage: rigging\nunder: lines");
    Withholder.Withheld alike = edition(MAY, "public", List.of());
    boolean told =
        alike.edition().contents().totals().stream().anyMatch(l -> l.shown().contains("7 h 25"));
    assertThat(told && errors(alike).isEmpty()).isFalse();
  }
}
