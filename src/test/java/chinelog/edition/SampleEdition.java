package chinelog.edition;

import static chinelog.edition.SampleText.line;
import static chinelog.edition.SampleText.p;
import static chinelog.edition.SampleText.runs;

import chinelog.Like;
import chinelog.edition.Edition.AgreementLegend;
import chinelog.edition.Edition.Caution;
import chinelog.edition.Edition.Contents;
import chinelog.edition.Edition.Day;
import chinelog.edition.Edition.Entry;
import chinelog.edition.Edition.HandoverSection;
import chinelog.edition.Edition.HoursLine;
import chinelog.edition.Edition.LimitLine;
import chinelog.edition.Edition.Line;
import chinelog.edition.Edition.MaterialLine;
import chinelog.edition.Edition.Post;
import chinelog.edition.Edition.Progress;
import chinelog.edition.Edition.Stage;
import chinelog.wording.Fragment;
import chinelog.wording.WorkedLine;
import java.math.BigDecimal;
import java.net.URI;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * A realistic edition of the model of the Merrow, for trying renderers without the floors below.
 */
public final class SampleEdition {

  private static final List<String> NONE = List.of();

  private final SamplePictures pictures;
  private final boolean seesAll;
  private final Map<String, Plate> plates = new TreeMap<>();

  private SampleEdition(SamplePictures pictures, boolean seesAll) {
    this.pictures = pictures;
    this.seesAll = seesAll;
  }

  /** What the public gets, with small painted pictures: quick to make. */
  public static Edition forPublic() {
    return forPublic("slipway");
  }

  /** What the public gets, in a theme. */
  public static Edition forPublic(String theme) {
    return new SampleEdition(new SamplePictures(null), false).edition(theme);
  }

  /** What the workshop gets, with the marks of the agreements. */
  public static Edition forWorkshop() {
    return new SampleEdition(new SamplePictures(null), true).edition("slipway");
  }

  /**
   * What a very long build gives: as many posts of one entry each as are asked for, each with as
   * many plates.
   */
  public static Edition large(int posts, int platesOfEach) {
    Contents sample = forPublic().contents();
    Picture picture = sample.plates().get(0).picture();
    List<Plate> plates = new ArrayList<>();
    List<Entry> entries = new ArrayList<>();
    List<Post> told = new ArrayList<>();
    for (int i = 1; i <= posts; i++) {
      Entry like = sample.entries().get(i % sample.entries().size());
      String id = "day-" + i;
      List<Plate> ofDay = new ArrayList<>();
      for (int k = 0; k < platesOfEach; k++) {
        int number = plates.size() + 1;
        Picture own = new Picture("plate-" + number, picture.renditions(), List.of());
        ofDay.add(
            new Plate(
                number,
                own,
                runs("As it stood."),
                "A hull.",
                null,
                "planking",
                id,
                List.of(),
                NONE));
        plates.add(ofDay.get(k));
      }
      List<Text.Block> text =
          like.text().stream().filter(b -> !(b instanceof Text.Heading)).toList();
      entries.add(
          Like.but(
              like, "id", id, "text", text, "plates", ofDay, "drawings", List.of(), "under", NONE));
      told.add(
          new Post(
              id,
              i,
              like.title(),
              "Part " + i,
              like.date(),
              ofDay.get(0),
              List.of(id),
              60,
              1,
              NONE));
    }
    return Edition.seal(
        Like.but(
            bare(),
            "about",
            sample.about(),
            "hero",
            null,
            "posts",
            told,
            "entries",
            entries,
            "plates",
            plates));
  }

  /** What everybody may see of the boat, without what was done from day to day. */
  public static Contents bare() {
    return Like.but(
        forPublic().contents(),
        "about",
        List.of(),
        "sameView",
        List.of(),
        "stages",
        List.of(),
        "posts",
        List.of(),
        "entries",
        List.of(),
        "plates",
        List.of(),
        "unplaced",
        List.of(),
        "handover",
        List.of(),
        "hasWithheld",
        false,
        "agreements",
        List.of(),
        "patterns",
        Patterns.NONE,
        "talk",
        Talk.NONE,
        "letters",
        List.of());
  }

  /** The folder of the demo photographs; null where it is not at hand. */
  public static @Nullable Path photographs() {
    return SamplePictures.findPhotographs();
  }

  private Edition edition(String theme) {
    shoot();
    List<Entry> entries = entries();
    return Edition.seal(
        new Contents(
            seesAll ? "workshop" : "public",
            seesAll ? "The workshop" : "Everybody",
            LocalDate.of(2026, 5, 20),
            Locale.UK,
            seesAll ? null : URI.create("https://merrow.example/"),
            theme,
            Edition.Paper.A4,
            0.12,
            Edition.Chapters.STAGES,
            "Building Merrow",
            "Merrow",
            "harbour pilot launch",
            "Tern Lane Workshop",
            seesAll ? "The Saltern Trust" : "",
            "All rights reserved. Photographs may be shared with the name of the workshop.",
            "1:16",
            about(),
            plate("hero"),
            List.of(plate("bow"), plate("bench"), plate("hero")),
            stages(),
            posts(),
            entries,
            List.copyOf(byNumber()),
            List.of(new Day(LocalDate.of(2026, 5, 2), List.of(plate("bow")))),
            figures(),
            limits(),
            materials(),
            "£201.40",
            hours(),
            List.of(
                line("Hours so far", "73 h 20 min", "of 96 h planned", "hours.total"),
                line("Entries", "12", "", null),
                line("Length over all", "700 mm", "11.20 m full size", "hull.loa"),
                line("Mass as she floats", "2.24 kg", "budget 2.30 kg", "mass.total")),
            charts(),
            List.of(),
            cautions(),
            handover(),
            true,
            seesAll
                ? List.of(
                    new AgreementLegend(
                        "lines", "Skerrick Yard", "the lines plan and what is taken from it"),
                    new AgreementLegend("client", "the client", "the client's name and the price"))
                : List.of(),
            Patterns.NONE,
            Talk.NONE,
            List.of()));
  }

  private void shoot() {
    shoot(
        "hero",
        "T20_0566.jpg",
        0,
        "2026-05-14",
        "rigging",
        "E12",
        "Finished, on her stand: *Merrow* at 1:16.",
        "A finished model of a pilot launch on a wooden stand, white above a red boot-top.");
    shoot(
        "strips",
        "T20_0412.jpg",
        0,
        "2026-03-14",
        "drawings",
        "E01",
        "What the hull will be made of: cedar strip, resin and glass cloth.",
        "Bundles of thin cedar strips beside a tin of resin and folded white cloth.");
    shoot(
        "moulds",
        "T20_0421.jpg",
        0,
        "2026-03-17",
        "moulds",
        "E02",
        "Six of thirteen moulds up, each square to the board.",
        "Plywood moulds standing in a row on a building board, half of the places still empty.");
    shoot(
        "allmoulds",
        "T20_0430.jpg",
        0,
        "2026-03-21",
        "moulds",
        "E03",
        "",
        "Thirteen moulds in a row with a steel rule and a try square beside them.");
    shoot(
        "planking",
        "T20_0447.jpg",
        0,
        "2026-03-28",
        "planking",
        "E04",
        "Half planked. The pegs are ordinary clothes pegs, cut down.",
        "A hull half covered with cedar strips, held by rows of small pegs.");
    shoot(
        "pins",
        "T20_0449.jpg",
        0,
        "2026-03-28",
        "planking",
        "E04",
        "Strips, pins and pegs.",
        "Close view of strip edges pinned to a mould.");
    shoot(
        "bench",
        "T20_0458.jpg",
        0,
        "2026-04-01",
        "planking",
        "E05",
        "The evening before the garboards.",
        "The half-planked hull on the bench under a lamp; one corner of the picture is blank.");
    shoot(
        "planked",
        "T20_0470.jpg",
        0,
        "2026-04-08",
        "planking",
        "E06",
        "Fully planked: 118 strips a side.",
        "A hull of bare cedar strips, fully closed.");
    shoot(
        "cloth",
        "T20_0492.jpg",
        0,
        "2026-04-15",
        "sheathing",
        "E08",
        "Weave of the 160 g/m² cloth, wetted out.",
        "Glass weave under clear resin, very close.");
    shoot(
        "balance",
        "T20_0506.jpg",
        0,
        "2026-04-18",
        "sheathing",
        "E09",
        "The bare shell on the kitchen balance: 412 g.",
        "A bare hull shell resting on a balance that reads 412.");
    shoot(
        "painted",
        "T20_0538.jpg",
        0,
        "2026-05-02",
        "painting",
        "E11",
        "Boot-top on, masking off.",
        "The painted hull, white over grey with a red line between.");
    shoot(
        "bow",
        "T20_0540.jpg",
        1,
        "2026-05-02",
        "painting",
        null,
        "The bow, found on the card without a note.",
        "The painted bow from ahead, upright.");
    shoot(
        "wheelhouse",
        "T20_0568.jpg",
        3,
        "2026-05-14",
        "rigging",
        "E12",
        "Wheelhouse and mast.",
        "The wheelhouse with its mast, upright, against a dark wall.");
    shoot(
        "afloat",
        "T20_0580.jpg",
        0,
        "2026-05-16",
        "trials",
        "E13",
        "Afloat, and on her marks by less than a pencil's breadth.",
        "The model afloat in a tank of still water.");
    if (seesAll) {
      shoot(
          "sheet",
          "T20_0415.jpg",
          0,
          "2026-03-14",
          "drawings",
          "E01",
          "The lines plan, unrolled at last.",
          "A large drawing of a hull's lines on a bench.");
    }
  }

  private void shoot(
      String key,
      String file,
      int turns,
      String date,
      String stage,
      @Nullable String entry,
      String caption,
      String alt) {
    int number = plates.size() + 1;
    plates.put(
        key,
        new Plate(
            number,
            pictures.picture("plate-%03d".formatted(number), file, turns),
            caption.isEmpty() ? List.of() : runs(caption),
            alt,
            LocalDate.parse(date),
            stage,
            entry == null ? null : id(entry),
            key.equals("hero")
                ? List.of(
                    new Plate.Part(0.5, 0.4, "Wheelhouse"), new Plate.Part(0.2, 0.7, "Rudder"))
                : List.of(),
            key.equals("sheet") ? List.of("lines") : NONE));
  }

  private Plate plate(String key) {
    Plate plate = plates.get(key);
    if (plate == null) {
      throw new IllegalArgumentException("no plate " + key);
    }
    return plate;
  }

  private List<Plate> byNumber() {
    return plates.values().stream()
        .sorted(java.util.Comparator.comparingInt(Plate::number))
        .toList();
  }

  private Text.Block here(String key) {
    return new Text.PlateHere(plate(key), plate(key).under());
  }

  /** Ids of entries are made from date and title; the short keys keep this page readable. */
  private static String id(String key) {
    return switch (key) {
      case "E01" -> "2026-03-14-the-drawings-come-out";
      case "E02" -> "2026-03-17-six-moulds";
      case "E03" -> "2026-03-21-all-thirteen";
      case "E04" -> "2026-03-28-half-planked";
      case "E05" -> "2026-04-01-a-late-evening";
      case "E06" -> "2026-04-08-the-last-plank";
      case "E08" -> "2026-04-15-cloth-and-resin";
      case "E09" -> "2026-04-18-off-the-board";
      case "E10" -> "2026-04-25-primer";
      case "E11" -> "2026-05-02-the-boot-top";
      case "E12" -> "2026-05-14-mast-and-stand";
      case "E13" -> "2026-05-16-afloat";
      default -> throw new IllegalArgumentException(key);
    };
  }

  private static List<String> ids(String... keys) {
    return Stream.of(keys).map(SampleEdition::id).toList();
  }

  private List<Text.Block> about() {
    return List.of(
        p(
            "*Merrow* was a harbour pilot launch, 11.20 m long, built to put a pilot aboard in any"
                + " weather that a ship could stand. This is a working model of her at 1:16, strip"
                + " planked in red cedar, sheathed in glass, with room inside for a battery and a"
                + " receiver."),
        new Text.Withheld(),
        p(
            "The posts are written on the day, put in order afterwards, and left with their faults."));
  }

  private List<Stage> stages() {
    return List.of(
        stage("drawings", "Drawings", "14 March 2026", Progress.DONE, ids("E01"), "4 h 45 min"),
        stage("moulds", "Moulds", "17 to 21 March 2026", Progress.DONE, ids("E02", "E03"), "9 h"),
        stage(
            "planking",
            "Planking",
            "28 March to 8 April 2026",
            Progress.DONE,
            ids("E04", "E05", "E06"),
            "21 h 20 min"),
        stage(
            "sheathing",
            "Sheathing",
            "15 to 18 April 2026",
            Progress.DONE,
            ids("E08", "E09"),
            "8 h 30 min"),
        stage(
            "painting",
            "Painting",
            "25 April to 2 May 2026",
            Progress.DONE,
            ids("E10", "E11"),
            "11 h 15 min"),
        stage("rigging", "Rigging and stand", "14 May 2026", Progress.DONE, ids("E12"), "16 h"),
        stage("trials", "Trials", "16 May 2026", Progress.UNDER_WAY, ids("E13"), "2 h 30 min"),
        stage("handover", "Handing over", "", Progress.AHEAD, List.of(), ""));
  }

  private static Stage stage(
      String id,
      String title,
      String dates,
      Progress progress,
      List<String> entries,
      String hours) {
    return new Stage(
        id,
        title,
        id.equals("planking")
            ? List.of(p("Bead and cove strips, edge glued, pinned to the moulds and pegged."))
            : List.of(),
        dates,
        progress,
        entries,
        hours.isEmpty() ? List.of() : List.of(line("Hours", hours, "", "hours.stage." + id)),
        NONE);
  }

  private List<Post> posts() {
    return List.of(
        post(
            1,
            "A launch for a small harbour",
            "What is to be built, from what, and what may be" + " told about it.",
            "strips",
            "2026-03-14",
            3,
            "E01"),
        post(
            2,
            "Thirteen moulds",
            "The shape of the boat stands on the board before a single plank" + " is cut.",
            "moulds",
            "2026-03-21",
            4,
            "E02",
            "E03"),
        post(
            3,
            "One strip at a time",
            "Eleven evenings, 236 strips, and one plank put on twice.",
            "planking",
            "2026-04-08",
            6,
            "E04",
            "E05",
            "E06"),
        post(
            4,
            "Cloth, resin, and the balance",
            "Sheathed, lifted off the moulds, and weighed.",
            "balance",
            "2026-04-18",
            4,
            "E08",
            "E09"),
        post(
            5,
            "Grey, white, and a line of red",
            "Paint hides nothing.",
            "painted",
            "2026-05-02",
            3,
            "E10",
            "E11"),
        post(
            6,
            "She floats",
            "Mast, stand, and a tank of still water.",
            "afloat",
            "2026-05-16",
            5,
            "E12",
            "E13"));
  }

  private Post post(
      int number,
      String title,
      String standfirst,
      String opening,
      String date,
      int minutes,
      String... entries) {
    return new Post(
        "%02d-%s".formatted(number, title.toLowerCase(Locale.ROOT).replaceAll("[^a-z]+", "-")),
        number,
        title,
        standfirst,
        LocalDate.parse(date),
        plate(opening),
        ids(entries),
        minutes * 238,
        minutes,
        NONE);
  }

  private List<Entry> entries() {
    List<Entry> all = new ArrayList<>();
    all.add(
        entry(
            "E01",
            "2026-03-14",
            "drawings",
            "The drawings come out",
            Stream.of(
                    p(
                        "The tube came by carrier, and inside it was one sheet, rolled tight for long"
                            + " enough that it took both arms and four tins of varnish to keep it flat. The"
                            + " yard asks that the lines stay with me; the boat, they say, may be seen by"
                            + " anybody."),
                    seesAll ? here("sheet") : new Text.Withheld(),
                    p(
                        "What can be said is the size of her: [11.20 m](fig:full.loa) over all, which at"
                            + " 1:16 makes a hull of [700 mm](fig:hull.loa). Every figure on the sheet is in"
                            + " feet and inches to the outside of the planking^[The planking of the real"
                            + " boat, of course; mine is thinner by far, and the moulds allow for it.], so"
                            + " the first evening went on turning 2 ft 1 3⁄16 in into something that a steel"
                            + " rule can show."),
                    seesAll
                        ? new Text.Paragraph(
                            Stream.concat(
                                    runs("The yard's own waterline is ").stream(),
                                    Stream.concat(
                                        Stream.of(
                                            new Text.Phrase(
                                                runs("10.47 m at her marks"), List.of("lines"))),
                                        runs(", and that is the one I shall build to.").stream()))
                                .toList(),
                            NONE)
                        : new Text.Paragraph(
                            Stream.concat(
                                    runs("The yard's own waterline is ").stream(),
                                    Stream.concat(
                                        Stream.of(new Text.Gap()),
                                        runs(", and that is the one I shall build to.").stream()))
                                .toList(),
                            NONE),
                    here("strips"))
                .toList(),
            List.of(),
            List.of(
                line("Length over all", "700 mm", "11.20 m full size", "hull.loa"),
                line("Beam", "190 mm", "3.04 m full size", "hull.beam")),
            List.of(),
            List.of(
                line("This day", "4 h 45 min", "", null), line("So far", "4 h 45 min", "", null))));
    all.add(
        entry(
            "E02",
            "2026-03-17",
            "moulds",
            "Six moulds",
            List.of(
                p(
                    "Six moulds cut, faired as a bundle and stood up on the board. I glued the paper"
                        + " patterns straight on to 6 mm birch and sawed to the line, then sanded to half the"
                        + " line, which is where the pencil ends and the boat begins."),
                here("moulds"),
                new Text.Items(
                    1,
                    List.of(
                        List.of(p("Snap the centre line with a thread, not with a rule.")),
                        List.of(
                            p("Square each mould to the thread, and *only then* to the board.")),
                        List.of(p("Sight along the sheer before the glue goes off."))),
                    NONE),
                p("Number four was 1.5 mm proud on one side. It was the mould, not the eye.")),
            List.of(),
            List.of(line("Spacing of moulds", "50 mm", "", null)),
            List.of(line("Birch ply 6 mm", "0.18 m²", "£4.10", null)),
            List.of(line("This day", "4 h", "", null), line("So far", "8 h 45 min", "", null))));
    all.add(
        entry(
            "E03",
            "2026-03-21",
            "moulds",
            "All thirteen",
            List.of(
                p(
                    "All thirteen are up, and a batten laid along them touches every one. For the first"
                        + " time there is a boat in the room, though so far only the air inside her."),
                here("allmoulds"),
                new Text.Quote(
                    List.of(
                        p("A fair batten tells no lies, said whoever taught me, and walked off.")),
                    NONE),
                new Text.Heading(
                    2, "2026-03-21-what-the-batten-said", runs("What the batten said"), NONE),
                p(
                    "Two stations wanted shaving, both aft, neither by more than the thickness of a"
                        + " business card.")),
            List.of(),
            List.of(line("Girth amidships", "212 mm", "± 1 mm", "hull.girth")),
            List.of(),
            List.of(line("This day", "5 h", "", null), line("So far", "13 h 45 min", "", null))));
    all.add(
        entry(
            "E04",
            "2026-03-28",
            "planking",
            "Half planked",
            List.of(
                p(
                    "The strips are 3⁄16 × 1⁄16 in, which is **five millimetres less a hair**, and they"
                        + " bend round the bilge like string once they have sat in the steam of the kettle."
                        + " Glue, two pins, five pegs, and on to the other side before it pulls."),
                here("planking"),
                p(
                    "I lay them in pairs, port and starboard, and write the number of each pair on the"
                        + " mould. It is the only way I know not to build a banana."),
                here("pins"),
                new Text.Grid(
                    List.of(runs("Side"), runs("Strips"), runs("Pins"), runs("Broken")),
                    List.of(
                        List.of(runs("Port"), runs("59"), runs("118"), runs("3")),
                        List.of(runs("Starboard"), runs("59"), runs("121"), runs("1"))),
                    List.of(false, true, true, true),
                    NONE)),
            List.of(),
            List.of(line("Strips laid", "118", "", null)),
            List.of(
                line("Red cedar strip", "30", "£10.80", null),
                line("Wood glue", "40 mL", "", null)),
            List.of(
                line("This day", "7 h 30 min", "", null),
                line("So far", "21 h 15 min", "", null))));
    all.add(
        entry(
            "E05",
            "2026-04-01",
            "planking",
            "A late evening",
            List.of(
                p(
                    "A short one. The garboards want a bevel that changes along their whole length, and"
                        + " after nine in the evening I do not trust my hands with a plane."),
                p(
                    "Compare [the day of the moulds](entry:2026-03-17-six-moulds), when I still believed"
                        + " that everything would be square.")),
            List.of(plate("bench")),
            List.of(),
            List.of(line("Red cedar strip", "8", "£2.88", null)),
            List.of(
                line("This day", "2 h 10 min", "", null),
                line("So far", "23 h 25 min", "", null))));
    all.add(
        entry(
            "E06",
            "2026-04-08",
            "planking",
            "The last plank",
            List.of(
                p(
                    "The last plank went in at ten to seven, the shutter plank of the port side, 611 mm"
                        + " long and nowhere straight. It fitted at the third try. The second try is in the"
                        + " stove."),
                here("planked"),
                new Text.Rule(NONE),
                p("Tomorrow the transom, and the overhanging ends.")),
            List.of(),
            List.of(line("Strips laid", "236", "both sides", null)),
            List.of(line("Red cedar strip", "22", "£7.92", null)),
            List.of(
                line("This day", "11 h 40 min", "", null),
                line("So far", "35 h 5 min", "", null))));
    all.add(
        entry(
            "E08",
            "2026-04-15",
            "sheathing",
            "Cloth and resin",
            List.of(
                p(
                    "One piece of 160 g/m² cloth, draped dry, smoothed with the flat of the hand, and"
                        + " wetted out from the keel down. The whole skin is [1870 cm²](fig:hull.skin), so I"
                        + " mixed 60 g and had nine left in the cup."),
                here("cloth"),
                new Text.Code(
                    "resin : hardener = 100 : 32 by mass\n45 min in the cup at 19 °C", NONE)),
            List.of(),
            List.of(line("Resin laid on", "51 g", "", null)),
            List.of(
                line("Glass cloth 160 g/m²", "0.22 m²", "£2.60", null),
                line("Epoxy resin", "51 g", "£3.95", null)),
            List.of(line("This day", "4 h", "", null), line("So far", "39 h 5 min", "", null))));
    all.add(
        entry(
            "E09",
            "2026-04-18",
            "sheathing",
            "Off the board",
            List.of(
                p(
                    "A knock with the heel of the hand and she let go of the moulds with a sound like a"
                        + " cork. Turned over, she is a boat. On the balance she is [412 g](fig:mass.hull),"
                        + " and the budget had allowed her 450."),
                here("balance")),
            List.of(),
            List.of(line("Hull, bare", "412 g", "38 g below budget", "mass.hull")),
            List.of(),
            List.of(
                line("This day", "4 h 30 min", "", null),
                line("So far", "43 h 35 min", "", null))));
    all.add(
        entry(
            "E10",
            "2026-04-25",
            "painting",
            "Primer",
            List.of(
                p(
                    "Primer: grey below the waterline and white above, so that the first coat of colour"
                        + " will show where it is thin.")),
            List.of(),
            List.of(),
            List.of(line("Primer", "90 mL", "£5.40", null)),
            List.of(line("This day", "5 h", "", null), line("So far", "48 h 35 min", "", null))));
    all.add(
        entry(
            "E11",
            "2026-05-02",
            "painting",
            "The boot-top",
            List.of(
                p(
                    "The boot-top is the only line on the whole boat that everyone will look at, and it is"
                        + " 5 mm wide. Struck with a pencil on a block of wood, hull held level by two"
                        + " cushions and a spirit level."),
                here("painted")),
            List.of(),
            List.of(line("Boot-top", "5 mm", "80 mm full size", null)),
            List.of(line("Enamel, signal red", "12 mL", "£1.70", null)),
            List.of(
                line("This day", "6 h 15 min", "", null),
                line("So far", "54 h 50 min", "", null))));
    all.add(
        entry(
            "E12",
            "2026-05-14",
            "rigging",
            "Mast and stand",
            List.of(
                p(
                    "The mast is a knitting needle with ambitions. It stands 214 mm above the wheelhouse"
                        + " roof and carries a light, a halyard, and a flag that I sewed myself and shall not"
                        + " show from close by."),
                here("hero"),
                here("wheelhouse")),
            List.of(),
            List.of(line("Mast above roof", "214 mm", "3.42 m full size", null)),
            List.of(),
            List.of(line("This day", "16 h", "", null), line("So far", "70 h 50 min", "", null))));
    all.add(
        entry(
            "E13",
            "2026-05-16",
            "trials",
            "Afloat",
            List.of(
                p(
                    "In the tank she sat down to her marks as if she had read them. Draught"
                        + " [52 mm](fig:hull.draught) forward and 53 mm aft; a bolt moved 40 mm made it 52"
                        + " and 52. She rolls quickly and comes back quickly, which is what pilots liked"
                        + " about her."),
                here("afloat")),
            List.of(),
            List.of(
                line("Draught", "52 mm", "832 mm full size", "hull.draught"),
                line("Mass as she floats", "2.24 kg", "9.4 t full size", "mass.total")),
            List.of(),
            List.of(
                line("This day", "2 h 30 min", "", null),
                line("So far", "73 h 20 min", "", null))));
    return List.copyOf(all);
  }

  private static Entry entry(
      String key,
      String date,
      String stage,
      String title,
      List<Text.Block> text,
      List<Plate> more,
      List<Line> facts,
      List<Line> materials,
      List<Line> hours) {
    return new Entry(
        id(key),
        LocalDate.parse(date),
        stage,
        title,
        text,
        more,
        facts,
        materials,
        hours,
        List.of(),
        NONE);
  }

  private List<Figure> figures() {
    List<Figure> all = new ArrayList<>();
    all.add(
        figure(
            "full.loa",
            "Length over all, full size",
            "Full size",
            "",
            "11.20 m",
            "± 5 mm",
            "stated by the yard on 2 April 2026",
            List.of(),
            ids("E01")));
    all.add(
        figure(
            "hull.loa",
            "Length over all",
            "Hull",
            "700 mm",
            "11.20 m",
            "± 0.3 mm",
            "reckoned",
            List.of("hull.loa = full.loa ÷ scale", "= 11.20 m ÷ 16", "= 700 mm"),
            ids("E01")));
    all.add(
        figure(
            "hull.beam",
            "Beam",
            "Hull",
            "190 mm",
            "3.04 m",
            "",
            "reckoned",
            List.of("hull.beam = full.beam ÷ scale", "= 3.04 m ÷ 16", "= 190 mm"),
            ids("E01")));
    all.add(
        figure(
            "hull.draught",
            "Draught",
            "Hull",
            "52 mm",
            "832 mm",
            "± 1 mm",
            "measured on 16 May 2026",
            List.of(),
            ids("E13")));
    all.add(
        figure(
            "hull.girth",
            "Girth amidships",
            "Hull",
            "212 mm",
            "3.39 m",
            "± 1 mm",
            "measured on 21 March 2026",
            List.of(),
            ids("E03")));
    all.add(
        figure(
            "hull.skin",
            "Whole skin, both sides",
            "Hull",
            "1870 cm²",
            "47.9 m²",
            "",
            "reckoned",
            List.of("girths of 13 stations by Simpson's first rule", "= 1870 cm²"),
            ids("E08")));
    if (seesAll) {
      all.add(
          new Figure(
              "hull.lwl",
              "Length on the waterline",
              "Hull",
              "654.5 mm",
              "10.47 m",
              "",
              "taken from the sheet",
              LocalDate.of(2026, 3, 14),
              List.of(),
              ids("E01"),
              null,
              new Figure.Chief(1, "lwl"),
              Figure.About.ANYTHING,
              List.of("lines")));
    }
    all.add(
        figure(
            "mass.hull",
            "Hull, bare",
            "Mass",
            "412 g",
            "",
            "± 1 g",
            "weighed on 18 April 2026",
            List.of(),
            ids("E09")));
    all.add(
        figure(
            "mass.total",
            "Mass as she floats",
            "Mass",
            "2.24 kg",
            "9.4 t",
            "± 10 g",
            "weighed on 16 May 2026",
            List.of(),
            ids("E13")));
    all.add(
        figure(
            "hours.total",
            "Hours so far",
            "Hours",
            "73 h 20 min",
            "",
            "",
            "summed",
            List.of("sum of 12 entries", "= 73 h 20 min"),
            List.of()));
    for (Stage stage : stages()) {
      stage.totals().stream()
          .filter(t -> t.figure() != null)
          .forEach(
              t ->
                  all.add(
                      figure(
                          "hours.stage." + stage.id(),
                          stage.title(),
                          "Hours",
                          t.shown(),
                          "",
                          "",
                          "summed",
                          List.of(),
                          stage.entries())));
    }
    return List.copyOf(all);
  }

  private static final List<String> CHIEF =
      List.of("built", "hull", "rig", "sail", "mass", "power", "trial", "model", "balance");

  private static Figure figure(
      String name,
      String title,
      String group,
      String model,
      String fullSize,
      String tolerance,
      String origin,
      List<String> working,
      List<String> entries) {
    List<WorkedLine> steps = new ArrayList<>();
    for (String line : working) {
      WorkedLine.Kind kind =
          steps.isEmpty()
              ? WorkedLine.Kind.HOW
              : steps.size() == working.size() - 1
                  ? WorkedLine.Kind.RESULT
                  : WorkedLine.Kind.PUT_IN;
      steps.add(WorkedLine.of(kind, Fragment.words(line)));
    }
    int rank = CHIEF.indexOf(name.split("[.]")[0]);
    boolean chief =
        rank >= 0
            && !name.contains("full")
            && (!name.startsWith("trial.") || name.endsWith("speed") || !working.isEmpty());
    return new Figure(
        name,
        title,
        group,
        model,
        fullSize,
        tolerance,
        origin,
        null,
        steps,
        entries,
        null,
        chief ? new Figure.Chief(rank, name.substring(name.indexOf('.') + 1)) : null,
        name.startsWith("mass.") || name.startsWith("balance.")
            ? Figure.About.MASS
            : name.startsWith("box.") ? Figure.About.BOX : Figure.About.ANYTHING,
        NONE);
  }

  private List<LimitLine> limits() {
    return List.of(
        new LimitLine(
            "Length over all", "700 mm", "at most 36 in (914 mm)", "214 mm", "kept", true, NONE),
        new LimitLine(
            "Mass as she floats", "2.24 kg", "at most 2.30 kg", "60 g", "kept", true, NONE),
        new LimitLine(
            "Freeboard aft", "61 mm", "at least 62 mm", "1 mm short", "not kept", false, NONE));
  }

  private List<MaterialLine> materials() {
    return List.of(
        new MaterialLine(
            "Red cedar strip 3⁄16 × 1⁄16 in × 24 in", "120", "96", "24", "£34.56", "", NONE),
        new MaterialLine("Birch ply 6 mm", "0.36 m²", "0.30 m²", "0.06 m²", "£6.80", "", NONE),
        new MaterialLine("Glass cloth 160 g/m²", "1 m²", "0.44 m²", "0.56 m²", "£5.20", "", NONE),
        new MaterialLine("Epoxy resin", "500 g", "180 g", "320 g", "£13.90", "", NONE),
        new MaterialLine("Primer", "250 mL", "90 mL", "160 mL", "£5.40", "", NONE),
        new MaterialLine("Battery, lithium, 2 cells", "1", "1", "0", "", "", NONE));
  }

  private List<HoursLine> hours() {
    return List.of(
        new HoursLine("drawings", "Drawings", "4 h", "4 h 45 min"),
        new HoursLine("moulds", "Moulds", "10 h", "9 h"),
        new HoursLine("planking", "Planking", "18 h", "21 h 20 min"),
        new HoursLine("sheathing", "Sheathing", "10 h", "8 h 30 min"),
        new HoursLine("painting", "Painting", "12 h", "11 h 15 min"),
        new HoursLine("rigging", "Rigging and stand", "24 h", "16 h"),
        new HoursLine("trials", "Trials", "6 h", "2 h 30 min"),
        new HoursLine("handover", "Handing over", "12 h", ""));
  }

  private List<Chart> charts() {
    return List.of(
        new Chart(
            "hours-by-stage",
            Chart.Kind.BARS,
            "Hours by stage",
            "Planking took longest, 21.3 hours against 18 planned.",
            "h",
            List.of(
                "Drawings",
                "Moulds",
                "Planking",
                "Sheathing",
                "Painting",
                "Rigging and stand",
                "Trials"),
            List.of(
                series("Worked", "4.8", "9.0", "21.3", "8.5", "11.3", "16.0", "2.5"),
                series("Planned", "4", "10", "18", "10", "12", "24", "6"))),
        new Chart(
            "growth-of-mass",
            Chart.Kind.STEPS,
            "Growth of mass against budget",
            "The mass grew from 412 g to 2240 g and stayed below the budget of 2300 g.",
            "g",
            List.of("2026-04-18", "2026-04-25", "2026-05-02", "2026-05-14", "2026-05-16"),
            List.of(
                series("Mass", "412", "448", "471", "1186", "2240"),
                series("Budget", "2300", "2300", "2300", "2300", "2300"))),
        new Chart(
            "progress",
            Chart.Kind.STEPS,
            "Progress against plan",
            "Work ran a little ahead of the plan until the rigging.",
            "h",
            List.of(
                "2026-03-14", "2026-03-21", "2026-04-08", "2026-04-18", "2026-05-02", "2026-05-16"),
            List.of(
                series("Worked", "4.8", "13.8", "35.1", "43.6", "54.8", "73.3"),
                series("Planned", "4", "14", "32", "42", "54", "84"))));
  }

  private static Chart.Series series(String name, String... values) {
    return new Chart.Series(name, Stream.of(values).map(BigDecimal::new).toList(), List.of(values));
  }

  private List<Caution> cautions() {
    return List.of(
        new Caution("Epoxy resin", "Gloves, fresh air, and no bare skin: it sensitises for life."),
        new Caution("Cedar dust", "A mask that fits, and the dust taken up wet."),
        new Caution("Lithium cells", "Charge them where you are, in something that cannot burn."));
  }

  private List<HandoverSection> handover() {
    return List.of(
        new HandoverSection("what-it-is", "What she is", about().subList(0, 1), NONE),
        new HandoverSection(
            "setting-up",
            "Setting up",
            List.of(
                p(
                    "Lift her by the hull, one hand under the forefoot and one under the counter;"
                        + " never by the wheelhouse."),
                new Text.Items(
                    1,
                    List.of(
                        List.of(p("WorkedLine the mast and make off the halyard.")),
                        List.of(p("Put the battery in, red to red.")),
                        List.of(p("Switch on the transmitter *first*."))),
                    NONE)),
            NONE),
        new HandoverSection("taking-down", "Taking down", List.of(p("In the other order.")), NONE),
        new HandoverSection("handling", "Handling", List.of(), NONE),
        new HandoverSection(
            "running",
            "Running her",
            List.of(p("Fresh water, less than force 3."), here("afloat")),
            NONE),
        new HandoverSection(
            "care", "Care", List.of(p("Rinse, wipe, and leave the hatch off.")), NONE),
        new HandoverSection(
            "finishes",
            "Finishes",
            List.of(
                new Text.Grid(
                    List.of(runs("Where"), runs("What")),
                    List.of(
                        List.of(runs("Topsides"), runs("white enamel, satin")),
                        List.of(runs("Boot-top"), runs("signal red enamel"))),
                    List.of(false, false),
                    NONE)),
            NONE),
        new HandoverSection("spares", "Spares", List.of(), NONE),
        new HandoverSection(
            "mishaps",
            "If something goes wrong",
            List.of(p("A stove-in strip can be glued from inside with the hatch off.")),
            NONE));
  }
}
