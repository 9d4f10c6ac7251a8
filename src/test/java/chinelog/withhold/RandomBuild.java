package chinelog.withhold;

import chinelog.label.Agreement;
import chinelog.label.Label;
import chinelog.label.Presence;
import chinelog.log.Block;
import chinelog.log.Entry;
import chinelog.log.HandoverSection;
import chinelog.log.Head;
import chinelog.log.Inline;
import chinelog.log.Limit;
import chinelog.log.Log;
import chinelog.log.Lot;
import chinelog.log.Marked;
import chinelog.log.PhotoFile;
import chinelog.log.PostPlan;
import chinelog.log.Readers;
import chinelog.log.Release;
import chinelog.log.Request;
import chinelog.log.Sheet;
import chinelog.log.Stage;
import chinelog.log.Statement;
import chinelog.log.Table;
import chinelog.log.Valuation;
import chinelog.photo.Album;
import chinelog.photo.Photograph;
import chinelog.photo.Written;
import chinelog.problem.Place;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * Random builds, small and full of marks. Two builds of one seed differ only in things that some
 * readers may not see: what they hold there is drawn from a second seed, and under the agreement
 * {@code client}, of which nothing may show, whole entries, photographs, paragraphs and phrases are
 * there in one and not in the other. What is released to the readers is the same in both.
 */
final class RandomBuild {

  static final LocalDate AS_OF = LocalDate.of(2026, 5, 20);

  private static final String[] SECRETS = {
    "",
    "x",
    "W".repeat(40),
    "unwontedly long ".repeat(250),
    "тайна обводов",
    "秘密の図面",
    "سر الخطوط",
    "🛥️🧭",
    "<b>&\"|`{}[](",
    "12.5 mm",
    "incomprehensibilities",
    "\u202eolleh"
  };

  private static final List<String> STAGES = List.of("moulds", "planking", "rigging");
  private static final List<String> MATERIALS = List.of("strip", "resin", "paint");
  private static final Label CLIENT = Label.of("client");

  private final Random open;
  private final Random secret;
  private final Set<String> cleared;
  private final boolean embargoOver;

  /** Whether nothing may show of what is under {@code client}, not even that it is there. */
  private final boolean quiet;

  private final List<Release> releases = new ArrayList<>();
  private final List<Entry> entries = new ArrayList<>();
  private final List<PhotoFile> photos = new ArrayList<>();
  private final List<Photograph> album = new ArrayList<>();

  /** Ids of the entries that stand in both builds. */
  private final List<String> shared = new ArrayList<>();

  private String firstPhoto = "";
  private int line;

  /**
   * @param seed of everything the readers may see, and of what is marked
   * @param secretSeed of what lies under marks that the readers are not cleared for
   * @param partyTo agreements that the readers are party to
   */
  RandomBuild(long seed, long secretSeed, Set<String> partyTo) {
    this.open = new Random(seed);
    this.secret = new Random(secretSeed);
    this.embargoOver = open.nextBoolean();
    this.quiet = open.nextBoolean();
    this.cleared = new HashSet<>(partyTo);
    if (embargoOver) {
      cleared.add("embargo");
    }
  }

  record Build(Log log, Album album) {}

  Build make() {
    int count = 3 + open.nextInt(4);
    for (int i = 0; i < count; i++) {
      addEntry(i);
    }
    if (addsExtras()) {
      for (int i = secret.nextInt(3); i > 0; i--) {
        addExtraEntry(count + i);
      }
    }
    entries.sort(Comparator.comparing(Entry::date).thenComparing(Entry::id));
    return new Build(log(), new Album(List.copyOf(album), List.of()));
  }

  private void addEntry(int i) {
    Label label = label(5);
    String freed = freed(8, label);
    Label seen = label.without(freed);
    LocalDate date = LocalDate.of(2026, 3, 1).plusDays(5L * i);
    String shown = "entry-" + i + "-" + open.nextInt(9);
    String id = hides(seen) ? "hidden-" + i + "-" + word() : shown;
    release(Release.Kind.ENTRY, id, freed);
    List<Inline.Image> images = new ArrayList<>();
    if (open.nextInt(3) > 0) {
      Label photoLabel = label(3);
      Label all = label.join(photoLabel);
      String photoFreed = freed(8, all);
      Label photoSeen = all.without(photoFreed);
      boolean hidden = hides(photoSeen);
      String path = "photos/" + (hidden ? word() + i : "photo" + i) + ".jpg";
      release(Release.Kind.PHOTO, path, photoFreed);
      firstPhoto = firstPhoto.isEmpty() ? path : firstPhoto;
      addPhoto(path, photoLabel, photoSeen, i, date, id);
      Label imageLabel = label.join(label(4));
      if (open.nextBoolean()) {
        images.add(
            new Inline.Image(
                path,
                List.of(
                    new Inline.Text(text(imageLabel.join(photoSeen))), phrase(imageLabel, at())),
                imageLabel,
                at()));
      }
    }
    String stage =
        hides(seen)
            ? STAGES.get(secret.nextInt(STAGES.size()))
            : i % 3 == 0 ? "moulds" : i % 3 == 1 ? "planking" : i % 2 == 0 ? "" : "sanding";
    shared.add(id);
    entries.add(
        entry(i, id, hides(seen) ? date.plusDays(secret.nextInt(4)) : date, stage, label, images));
  }

  /** An entry that the twin does not have. */
  private void addExtraEntry(int i) {
    LocalDate date = LocalDate.of(2026, 2, 20).plusDays(secret.nextInt(60));
    String id = "extra-" + i;
    String path = "photos/extra" + i + ".jpg";
    boolean bare = secret.nextInt(9) != 0;
    Quantity weight = Quantity.of(1 + secret.nextInt(900), unit("g"));
    addPhotoOf(
        new PhotoFile(path, List.of(), "", List.of(), false, null, null, null, CLIENT, at()),
        1000,
        700,
        date.atTime(secret.nextInt(24), 0),
        secret.nextBoolean() ? id : null);
    entries.add(
        new Entry(
            id,
            new Marked<>(hidden(), CLIENT, at()),
            date,
            STAGES.get(secret.nextInt(2)),
            List.of(new Block.Paragraph(List.of(new Inline.Text(hidden())), CLIENT, at())),
            bare
                ? List.of()
                : List.of(new Entry.Worked(null, null, Duration.ofMinutes(45), CLIENT, at())),
            bare
                ? List.of()
                : List.of(
                    new Entry.Use(
                        MATERIALS.get(secret.nextInt(2)),
                        Quantity.of(1 + secret.nextInt(9), Unit.ONE),
                        "",
                        CLIENT,
                        at())),
            List.of(),
            bare
                ? List.of()
                : List.of(new Entry.Weighing("extra" + i, weight, "", null, null, CLIENT, at())),
            CLIENT,
            Place.of("entries/" + id + ".md", 1, 1)));
  }

  private void addPhoto(String path, Label label, Label seen, int i, LocalDate date, String entry) {
    List<PhotoFile.Region> regions =
        open.nextInt(3) == 0
            ? List.of(
                new PhotoFile.Region(0.1, 0.1, 0.5, 0.5, Label.of("lines"), at()),
                new PhotoFile.Region(0.6, 0.1, 0.9, 0.5, label(2), at()))
            : List.of();
    boolean hidden = hides(seen);
    int size = hidden ? 100 + secret.nextInt(4000) : open.nextBoolean() ? 2000 : 900;
    addPhotoOf(
        new PhotoFile(
            path,
            List.of(new Inline.Text(text(seen)), phrase(seen, at())),
            text(seen),
            regions,
            false,
            null,
            null,
            null,
            label,
            at()),
        size,
        1500,
        date.atTime(hidden ? secret.nextInt(24) : 12, 0),
        i % 4 == 3 && !hidden ? null : entry);
  }

  private void addPhotoOf(
      PhotoFile file, int width, int height, LocalDateTime taken, @Nullable String entry) {
    photos.add(file);
    album.add(
        new Photograph(
            file,
            String.format(Locale.ROOT, "%064x", album.size() + 1),
            width,
            height,
            1,
            taken,
            "T-20",
            entry,
            entry == null ? Photograph.Link.UNPLACED : Photograph.Link.BY_TIME,
            Written.NONE));
  }

  private boolean addsExtras() {
    return quiet && hides(CLIENT);
  }

  /** The label of something that is counted into sums, whose gaps would tell of it. */
  private Label counted(Label around, int oneIn) {
    Label label = around.join(label(oneIn));
    boolean rarely = open.nextInt(12) == 0;
    return quiet && !rarely && !around.agreements().contains("client")
        ? label.without("client")
        : label;
  }

  private boolean hides(Label label) {
    return !cleared.containsAll(label.agreements());
  }

  /** The agreement from which a thing is released to the readers; empty if it is not. */
  private String freed(int oneIn, Label label) {
    if (label.isNone()) {
      return "";
    }
    List<String> all = List.copyOf(label.agreements());
    String one = all.get(open.nextInt(all.size()));
    return open.nextInt(oneIn) == 0 ? one : "";
  }

  private void release(Release.Kind kind, String name, String agreement) {
    if (!agreement.isEmpty()) {
      String by = text(Label.of(agreement));
      releases.add(
          new Release(
              kind,
              name,
              agreement,
              by,
              LocalDate.of(2026, 4, 2),
              hidden(),
              Set.of("public", "client"),
              at()));
    }
  }

  private Label label(int oneIn) {
    if (open.nextInt(oneIn) != 0) {
      return Label.NONE;
    }
    return switch (open.nextInt(7)) {
      case 0, 1 -> CLIENT;
      case 2 -> Label.of("client", "lines");
      case 3 -> Label.of("embargo");
      case 4 -> Label.of("embargo", "lines");
      default -> Label.of("lines");
    };
  }

  private String hidden() {
    return SECRETS[secret.nextInt(SECRETS.length)] + secret.nextInt(1000);
  }

  /** Letters of a hidden name. */
  private String word() {
    String letters = SECRETS[secret.nextInt(SECRETS.length)].replaceAll("[^\\p{L}]", "");
    return letters.substring(0, Math.min(60, letters.length())) + secret.nextInt(1000);
  }

  /** A text: the same in both builds if the readers may see it. */
  private String text(Label label) {
    String shown = "some words number " + open.nextInt(1000);
    return hides(label) ? hidden() : shown;
  }

  private Quantity quantity(Label label, String unit, int most) {
    int shown = 1 + open.nextInt(most);
    if (!hides(label)) {
      return Quantity.of(shown, unit(unit));
    }
    BigDecimal value =
        BigDecimal.valueOf(1 + secret.nextInt(most), secret.nextInt(4))
            .scaleByPowerOfTen(secret.nextInt(5));
    return Quantity.of(value, unit(unit));
  }

  private static final Map<String, Unit> UNITS = new TreeMap<>();

  static {
    for (String symbol : List.of("mm", "m", "g", "kg", "h", "GBP", "GBP/h", "m\u00b2")) {
      try {
        UNITS.put(symbol, Unit.parse(symbol));
      } catch (QuantityException e) {
        throw new IllegalArgumentException(e);
      }
    }
  }

  private static Unit unit(String symbol) {
    return java.util.Objects.requireNonNull(UNITS.get(symbol));
  }

  private Place at() {
    return Place.of("log", ++line, 1);
  }

  private Entry entry(
      int i, String id, LocalDate date, String stage, Label label, List<Inline.Image> images) {
    Label hoursLabel = counted(label, 6);
    int minutes = 15 * (1 + open.nextInt(20));
    List<Entry.Worked> worked =
        List.of(
            new Entry.Worked(
                null,
                null,
                Duration.ofMinutes(hides(hoursLabel) ? 15L * (1 + secret.nextInt(60)) : minutes),
                hoursLabel,
                at()));
    List<Entry.Use> used = new ArrayList<>();
    for (String material : MATERIALS) {
      if (open.nextInt(3) == 0) {
        Label useLabel = counted(label, 6);
        int shown = 1 + open.nextInt(9);
        int amount = hides(useLabel) ? 1 + secret.nextInt(9) : shown;
        used.add(
            new Entry.Use(material, Quantity.of(amount, Unit.ONE), text(useLabel), useLabel, at()));
      }
    }
    boolean bare = addsExtras() && label.agreements().contains("client");
    Label measureLabel = label.join(label(3));
    Quantity measured = quantity(measureLabel, "mm", 700);
    Label weighLabel = counted(label, 3);
    return new Entry(
        id,
        new Marked<>(text(label), label, at()),
        date,
        stage,
        blocks(label, images),
        bare ? List.of() : worked,
        bare ? List.of() : used,
        List.of(
            new Entry.Measurement(
                "hull.m" + i,
                hides(measureLabel) && secret.nextInt(4) == 0 ? measured.negated() : measured,
                hides(measureLabel) ? hidden() : "",
                measureLabel,
                at())),
        bare
            ? List.of()
            : List.of(
                new Entry.Weighing(
                    "p" + i, quantity(weighLabel, "g", 500), "", null, null, weighLabel, at())),
        label,
        Place.of("entries/" + id + ".md", 1, 1));
  }

  private List<Block> blocks(Label around, List<Inline.Image> images) {
    List<Block> blocks = new ArrayList<>();
    images.forEach(i -> blocks.add(new Block.Picture(i, around.join(i.label()), at())));
    for (int b = 2 + open.nextInt(4); b > 0; b--) {
      Label label = around.join(label(3));
      Place place = at();
      switch (open.nextInt(8)) {
        case 0 ->
            blocks.add(new Block.Heading(2, List.of(new Inline.Text(text(label))), label, place));
        case 1 ->
            blocks.add(
                new Block.Items(
                    0,
                    List.of(
                        List.of(paragraph(label)),
                        List.of(),
                        List.of(paragraph(label.join(label(2))))),
                    label,
                    place));
        case 2 -> blocks.add(new Block.Quote(List.of(paragraph(label)), label, place));
        case 3 -> blocks.add(new Block.Code(text(label), label, place));
        case 4 -> blocks.add(new Block.Rule(label, place));
        case 5 ->
            blocks.add(
                new Block.Grid(
                    List.of(List.of(new Inline.Text(text(label))), List.of(phrase(label, place))),
                    List.of(
                        List.of(
                            List.of(phrase(label, place)), List.of(new Inline.Text(text(label)))),
                        List.of(List.of(), List.of(phrase(label, place)))),
                    List.of(false, true),
                    label,
                    place));
        default -> blocks.add(paragraph(label));
      }
      if (addsExtras() && secret.nextInt(4) == 0) {
        blocks.add(
            new Block.Paragraph(List.of(new Inline.Text(hidden())), around.join(CLIENT), place));
      }
    }
    return blocks;
  }

  private Inline phrase(Label around, Place place) {
    Label phrase = around.join(label(2));
    return new Inline.Phrase(List.of(new Inline.Text(text(phrase))), phrase, place);
  }

  private Block paragraph(Label around) {
    Place place = Place.of("entries/e.md", ++line, 1);
    Label note = around.join(label(3));
    List<Inline> runs = new ArrayList<>();
    runs.add(new Inline.Text(text(around)));
    runs.add(phrase(around, place));
    runs.add(new Inline.Emphasis(List.of(new Inline.Strong(List.of(phrase(around, place))))));
    for (String fact :
        List.of("hull.m0", "full.beam", "hull.beam", "double.beam", "wl.area", "hull.m1")) {
      if (open.nextInt(3) == 0) {
        runs.add(new Inline.FactLink(fact, "", place));
      }
    }
    if (!shared.isEmpty()) {
      String target = shared.get(open.nextInt(shared.size())) + ".md";
      runs.add(new Inline.Link(target, List.of(new Inline.Text(text(around))), place));
    }
    if (addsExtras() && secret.nextInt(3) == 0) {
      runs.add(new Inline.Phrase(List.of(new Inline.Text(hidden())), around.join(CLIENT), place));
    }
    runs.add(new Inline.Footnote(List.of(new Inline.Text(text(note))), note, place));
    return new Block.Paragraph(runs, around, place);
  }

  private Marked<String> marked(int oneIn) {
    Label label = label(oneIn);
    return new Marked<>(text(label), label, at());
  }

  private Head head() {
    Label rate = label(2);
    SortedMap<String, Marked<Quantity>> budgets = new TreeMap<>();
    Label mass = label(3);
    budgets.put("mass", new Marked<>(quantity(mass, "kg", 5), mass, at()));
    Label hours = label(3);
    budgets.put("hours", new Marked<>(quantity(hours, "h", 90), hours, at()));
    Label scale = label(8);
    int denominator = hides(scale) ? 8 + secret.nextInt(80) : 16;
    return new Head(
        marked(6),
        marked(6),
        marked(6),
        List.of(paragraph(Label.NONE)),
        new Marked<>(BigDecimal.valueOf(denominator), scale, at()),
        Locale.UK,
        ZoneOffset.UTC,
        marked(4),
        new Marked<>(text(CLIENT), CLIENT, at()),
        "GBP",
        64,
        new BigDecimal("0.05"),
        new Marked<>(quantity(rate, "GBP/h", 60), rate, at()),
        budgets,
        null,
        marked(4),
        "plain",
        "lines",
        new TreeMap<>(),
        new Marked<>(firstPhoto, label(3), at()),
        open.nextBoolean(),
        Valuation.FIFO);
  }

  private Log log() {
    TreeMap<String, Agreement> agreements = new TreeMap<>();
    agreements.put("lines", agreement("lines", Presence.NOTE, null, false));
    agreements.put(
        "client", agreement("client", quiet ? Presence.NOTHING : Presence.NOTE, null, false));
    agreements.put(
        "embargo",
        agreement("embargo", Presence.NOTE, embargoOver ? AS_OF.minusDays(1) : AS_OF, true));
    Label beam = label(2);
    String beamFreed = freed(2, beam);
    Label beamSeen = beam.without(beamFreed);
    release(Release.Kind.FACT, "full.beam", beamFreed);
    String full = quantity(beamSeen, "m", 5).toString();
    List<PostPlan> posts = new ArrayList<>();
    for (int i = 0; i < 2; i++) {
      Label post = label(4);
      posts.add(
          new PostPlan(
              text(post),
              text(post),
              shared.stream().skip(2L * i).limit(2).toList(),
              firstPhoto.isEmpty() ? null : firstPhoto,
              post,
              at()));
    }
    Label care = label(2);
    Label doubled = label(3);
    return new Log(
        Path.of("log"),
        head(),
        List.of(
            stage("moulds", Label.NONE), stage("planking", Label.NONE), stage("rigging", label(2))),
        agreements,
        List.of(
            readers("public", Set.of()),
            readers("client", Set.of("lines")),
            readers("workshop", Set.of("lines", "client", "embargo"))),
        releases,
        List.of(
            new Limit("length", "Length", "full.beam <= 900 m", label(4), at()),
            new Limit("area", "Area", "wl.area <= 3 m\u00b2", label(4), at()),
            new Limit("model", "Model", "hull.beam >= 2 mm", label(4), at())),
        posts,
        List.of(new HandoverSection("care", "Care", List.of(paragraph(care)), care, at())),
        List.of(
            new Statement("full.beam", "Beam", full, null, null, beam, at(), at()),
            new Statement(
                "hull.beam", "Beam", "full.beam / scale", null, null, Label.NONE, at(), at()),
            new Statement(
                "double.beam", "Twice", "2 * hull.beam", null, null, doubled, at(), at())),
        List.of(
            new Request(
                "wl",
                new Marked<>("curve", Label.NONE, at()),
                new TreeMap<>(Map.of("ordinates", new Marked<>("ordinates", Label.NONE, at()))),
                Label.NONE,
                at())),
        lots(),
        List.of(table()),
        List.copyOf(entries),
        photos.stream().sorted(Comparator.comparing(PhotoFile::path)).toList(),
        List.of(new Sheet("sheets/" + hiddenName() + ".pdf", hidden(), Label.of("lines"), at())));
  }

  private String hiddenName() {
    return hides(Label.of("lines")) ? word() : "lines";
  }

  private Table table() {
    Label whole = label(5);
    Label column = label(4);
    List<Table.Row> rows = new ArrayList<>();
    for (int i = 0; i < 4; i++) {
      Label row = label(6);
      Quantity y = quantity(whole.join(column).join(row), "mm", 90);
      rows.add(
          new Table.Row(
              List.of(
                  new Table.Cell("" + 100 * i, Quantity.of(100 * i, unit("mm")), at()),
                  new Table.Cell(y.toString(), y, at())),
              row,
              at()));
    }
    return new Table(
        "ordinates",
        List.of(
            new Table.Column("x", unit("mm"), Label.NONE, at()),
            new Table.Column("y", unit("mm"), column, at())),
        rows,
        whole,
        at());
  }

  private List<Lot> lots() {
    List<Lot> lots = new ArrayList<>();
    for (String material : MATERIALS) {
      Label label = label(6);
      for (int n = 1 + open.nextInt(2); n > 0; n--) {
        Label price = label.join(label(3));
        Label supplier = label.join(label(2));
        lots.add(
            new Lot(
                material,
                hides(label) ? hidden() : material + " from the yard",
                Quantity.of(90 + (hides(label) ? secret.nextInt(50) : 0), Unit.ONE),
                new Marked<>(quantity(price, "GBP", 90), price, at()),
                new Marked<>(text(supplier), supplier, at()),
                LocalDate.of(2026, 2, n),
                List.of(hides(label) && secret.nextBoolean() ? "resin" : "dust"),
                label,
                at()));
      }
    }
    if (addsExtras() && secret.nextBoolean()) {
      lots.add(
          new Lot(
              "gilding",
              hidden(),
              Quantity.of(5, Unit.ONE),
              new Marked<>(Quantity.of(80, unit("GBP")), CLIENT, at()),
              null,
              LocalDate.of(2026, 2, 9),
              List.of("solvent"),
              CLIENT,
              at()));
    }
    return lots;
  }

  private Agreement agreement(
      String id, Presence presence, @Nullable LocalDate until, boolean freeAfterwards) {
    Label own = Label.of(id);
    return new Agreement(id, text(own), text(own), null, until, freeAfterwards, presence);
  }

  private Stage stage(String id, Label label) {
    return new Stage(
        id,
        hides(label) ? hidden() : id,
        List.of(paragraph(label)),
        LocalDate.of(2026, 3, 1).plusDays(hides(label) ? secret.nextInt(40) : 3),
        LocalDate.of(2026, 4, 9).plusDays(hides(label) ? secret.nextInt(40) : 3),
        quantity(label, "h", 30),
        label,
        at());
  }

  private static Readers readers(String id, Set<String> partyTo) {
    return new Readers(id, id, partyTo, Set.of(Readers.Output.SITE), Place.of("log.yaml", 1, 1));
  }
}
