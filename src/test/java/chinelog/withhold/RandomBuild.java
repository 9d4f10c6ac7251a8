package chinelog.withhold;

import chinelog.label.Agreement;
import chinelog.label.Label;
import chinelog.label.Presence;
import chinelog.log.records.BookChapters;
import chinelog.log.records.Entry;
import chinelog.log.records.HandoverSection;
import chinelog.log.records.Head;
import chinelog.log.records.LetterPlan;
import chinelog.log.records.Limit;
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
import chinelog.photo.album.Album;
import chinelog.photo.album.Photograph;
import chinelog.photo.album.Written;
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
import java.util.Collections;
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
 * {@code client}, of which nothing may show, whole things of every kind are there in one and not in
 * the other. What is released to the readers is the same in both.
 */
final class RandomBuild {

  static final LocalDate AS_OF = LocalDate.of(2026, 5, 20);

  /** A day by which half of the build is done; the embargo is in force yet. */
  static final LocalDate EARLY = LocalDate.of(2026, 3, 12);

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

  private static final Set<Readers.Output> OUTPUTS =
      Set.of(Readers.Output.SITE, Readers.Output.PATTERNS);

  private static final List<String> STAGES = List.of("moulds", "planking", "rigging");
  static final List<String> MATERIALS = List.of("strip", "resin", "paint");

  /** Facts that texts name: in each build a third of them, or too few would be sound. */
  private static final List<String> LINKED =
      List.of(
          "hull.m0",
          "hull.m1",
          "hull.draught",
          "full.beam",
          "hull.beam",
          "double.beam",
          "draughts",
          "wl.area",
          "mass.total",
          "mass.hull",
          "hours.total",
          "hours.stage.moulds",
          "cost.total",
          "cost.stage.planking",
          "growth.hours",
          "growth.pace",
          "plan.forecast",
          "stock.strip.left",
          "stock.strip.lot_1.price",
          "labour.total");

  private static final Label CLIENT = Extras.CLIENT;

  private final Random open;
  private final Random secret;
  private final Extras extras;
  private final RandomHull hull;
  private final Coverage coverage;
  private final Set<String> cleared;
  private final boolean embargoOver;

  /** Whether nothing may show of what is under {@code client}, not even that it is there. */
  private final boolean quiet;

  private final List<String> linked;
  private final List<Release> releases = new ArrayList<>();
  private final Set<String> mayShow = new HashSet<>();
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
   * @param coverage is told where the secrets lie
   */
  RandomBuild(long seed, long secretSeed, Set<String> partyTo, Coverage coverage) {
    this.coverage = coverage;
    this.open = new Random(seed);
    this.secret = new Random(secretSeed);
    this.embargoOver = open.nextBoolean();
    this.quiet = open.nextBoolean();
    this.linked = LINKED.stream().filter(n -> open.nextInt(3) == 0).toList();
    this.cleared = new HashSet<>(partyTo);
    if (embargoOver) {
      cleared.add("embargo");
    }
    this.hull = new RandomHull(seed, secretSeed, this::hides, coverage);
    this.extras = new Extras(secret, quiet && hides(CLIENT), this::hidden, coverage);
  }

  /**
   * A build.
   *
   * @param linked facts that its texts name
   * @param mayShow paths of the photographs of which the maker has said that they may be shown: all
   *     that these readers may see
   */
  record Build(Log log, Album album, List<String> linked, Set<String> mayShow) {}

  Build make() {
    int count = 3 + open.nextInt(3);
    for (int i = 0; i < count; i++) {
      addEntry(i);
    }
    for (int i = count; i < count + 3; i++) {
      if (extras.has("entry", 2)) {
        entries.add(extras.entry(i));
        addExtraPhoto(i, entries.get(entries.size() - 1).id());
      }
    }
    if (extras.has("photograph", 3)) {
      addExtraPhoto(count + 3, null);
    }
    entries.sort(Comparator.comparing(Entry::date).thenComparing(Entry::id));
    return new Build(log(), new Album(List.copyOf(album), List.of()), linked, Set.copyOf(mayShow));
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
                runs(imageLabel.join(photoSeen), "caption in the text"),
                imageLabel,
                Inline.Image.Layout.BY_SHAPE,
                at()));
      }
    }
    String stage =
        hides(seen)
            ? STAGES.get(secret.nextInt(STAGES.size()))
            : i % 3 == 0 ? "moulds" : i % 3 == 1 ? "planking" : i % 2 == 0 ? "" : "sanding";
    shared.add(id);
    // A hidden entry may be of any day, before or after those that are seen.
    LocalDate day = differs(seen, "entry") ? date.plusDays(secret.nextInt(80) - 40) : date;
    // Whether there is one by a day is told where it leaves a note.
    boolean asEarly = day.isAfter(EARLY) == date.isAfter(EARLY);
    entries.add(entry(i, id, asEarly || leavesNothing(seen) ? day : date, stage, label, images));
  }

  /** A photograph that the twin does not have. */
  private void addExtraPhoto(int i, @Nullable String entry) {
    addPhotoOf(
        extras.photo("photos/" + (secret.nextBoolean() ? "a" : "z") + i + ".jpg"),
        1000,
        700,
        LocalDate.of(2026, 2, 20).plusDays(secret.nextInt(60)).atTime(secret.nextInt(24), 0),
        entry);
  }

  private void addPhoto(String path, Label label, Label seen, int i, LocalDate date, String entry) {
    List<PhotoFile.Region> regions =
        open.nextInt(3) == 0
            ? List.of(
                new PhotoFile.Region(0.1, 0.1, 0.5, 0.5, Label.of("lines"), at()),
                new PhotoFile.Region(0.6, 0.1, 0.9, 0.5, label(2), at()))
            : List.of();
    boolean hidden = differs(seen, "photograph");
    if (!hidden) {
      mayShow.add(path);
    }
    regions.forEach(r -> differs(r.label(), "region"));
    int size = hidden ? 100 + secret.nextInt(4000) : open.nextBoolean() ? 2000 : 900;
    addPhotoOf(
        new PhotoFile(
            path,
            runs(seen, "caption"),
            text(seen, "alt text"),
            List.of(
                new PhotoFile.Part(0.3, 0.3, text(seen, "part of a photograph"), at()),
                new PhotoFile.Part(0.95, 0.9, text(seen, "part of a photograph"), at())),
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

  private boolean hides(Label label) {
    return !cleared.containsAll(label.agreements());
  }

  /** Whether nothing may show of a thing that the readers may not see. */
  private boolean leavesNothing(Label label) {
    return quiet && label.agreements().contains("client") && !cleared.contains("client");
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
      String by = text(Label.of(agreement), "release");
      releases.add(
          new Release(
              kind,
              name,
              agreement,
              by,
              open.nextBoolean() ? LocalDate.of(2026, 4, 2) : EARLY.minusDays(1),
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
  private String text(Label label, String place) {
    String shown = "some words number " + open.nextInt(1000);
    return differs(label, place) ? hidden() : shown;
  }

  /** Whether the twins may differ in a thing, which counts for its place. */
  private boolean differs(Label label, String place) {
    if (!hides(label)) {
      return false;
    }
    if (!leavesNothing(label)) {
      coverage.changed(place);
    }
    return true;
  }

  private Quantity quantity(Label label, String unit, int most, String place) {
    int shown = 1 + open.nextInt(most);
    if (!differs(label, place)) {
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

  static Unit unit(String symbol) {
    return java.util.Objects.requireNonNull(UNITS.get(symbol));
  }

  private Place at() {
    return Place.of("log", ++line, 1);
  }

  private Entry entry(
      int i, String id, LocalDate date, String stage, Label label, List<Inline.Image> images) {
    List<Entry.Worked> worked = new ArrayList<>();
    for (int n = 1 + open.nextInt(2); n > 0; n--) {
      Label hoursLabel = label.join(label(6));
      int minutes = 15 * (1 + open.nextInt(20));
      worked.add(
          new Entry.Worked(
              null,
              null,
              Duration.ofMinutes(
                  differs(hoursLabel, "hours") ? 15L * (1 + secret.nextInt(60)) : minutes),
              hoursLabel,
              at()));
    }
    if (extras.has("hours", 6)) {
      worked.add(secret.nextInt(worked.size() + 1), extras.worked(CLIENT));
    }
    List<Entry.Use> used = new ArrayList<>();
    for (String material : MATERIALS) {
      if (open.nextInt(3) == 0) {
        Label useLabel = label.join(label(6));
        int shown = 1 + open.nextInt(9);
        int amount = differs(useLabel, "material used") ? 1 + secret.nextInt(9) : shown;
        used.add(
            new Entry.Use(
                material,
                Quantity.of(amount, Unit.ONE),
                text(useLabel, "material used"),
                useLabel,
                at()));
      }
    }
    if (extras.has("material used", 6)) {
      used.add(secret.nextInt(used.size() + 1), extras.use(CLIENT));
    }
    Label titleLabel = label.join(label(6));
    return new Entry(
        id,
        new Marked<>(text(titleLabel, "title of an entry"), titleLabel, at()),
        date,
        stage,
        blocks(label, images),
        worked,
        used,
        measured(i, label),
        weighed(i, label),
        label,
        Place.of("entries/" + id + ".md", 1, 1));
  }

  /** One fact of the entry's own, and perhaps one that other entries measure too. */
  private List<Entry.Measurement> measured(int i, Label label) {
    List<Entry.Measurement> measured = new ArrayList<>();
    for (String fact : List.of("hull.m" + i, "hull.draught")) {
      Label own = label.join(label(3));
      boolean first = fact.equals("hull.m" + i);
      // Of a name that is stated too, the release might free what is stated.
      String freed = first && i > 1 ? freed(4, own) : "";
      Label seen = own.without(freed);
      release(Release.Kind.FACT, fact, freed);
      String place = first ? "measured" : "measured more than once";
      Quantity value = quantity(seen, "mm", 700, place);
      if (first || open.nextInt(3) > 0) {
        measured.add(
            new Entry.Measurement(
                fact,
                hides(seen) && secret.nextInt(4) == 0 ? value.negated() : value,
                first || open.nextBoolean() ? text(seen, place) : "",
                own,
                at()));
      }
    }
    if (measured.size() == 1 && extras.has("measured", 4)) {
      measured.add(extras.measured("hull.draught", CLIENT));
    }
    measured.addAll(hull.counted(label));
    return measured;
  }

  private List<Entry.Weighing> weighed(int i, Label label) {
    List<Entry.Weighing> weighed = new ArrayList<>();
    for (String part : List.of("p" + i, "hull")) {
      Label own = label.join(label(4));
      boolean once = !part.equals("hull");
      Quantity mass = quantity(own, "g", 500, once ? "weighed" : "weighed more than once");
      Quantity x = once ? null : quantity(own, "mm", 90, "centre of mass");
      if (once || open.nextInt(3) > 0) {
        weighed.add(new Entry.Weighing(part, mass, "", x, null, own, at()));
      }
    }
    if (weighed.size() == 1 && extras.has("weighed", 4)) {
      weighed.add(extras.weighed(secret.nextBoolean() ? "hull" : "own", CLIENT));
    }
    return weighed;
  }

  private List<Block> blocks(Label around, List<Inline.Image> images) {
    List<Block> blocks = new ArrayList<>();
    images.forEach(i -> blocks.add(new Block.Picture(i, around.join(i.label()), at())));
    for (int b = 1 + open.nextInt(3); b > 0; b--) {
      Label label = around.join(label(3));
      Place place = at();
      switch (open.nextInt(8)) {
        case 0 -> blocks.add(new Block.Heading(2, runs(label, "heading"), label, place));
        case 1 -> blocks.add(new Block.Items(0, items(label), label, place));
        case 2 -> {
          List<Block> quoted = new ArrayList<>(List.of(paragraph(label)));
          if (extras.has("paragraph in a quote", 4)) {
            quoted.add(secret.nextInt(2), extras.paragraph(label));
          }
          blocks.add(new Block.Quote(quoted, label, place));
        }
        case 3 -> blocks.add(new Block.Code(text(label, "code"), label, place));
        case 4 -> blocks.add(new Block.Rule(label, place));
        case 5 ->
            blocks.add(
                new Block.Grid(
                    List.of(runs(label, "cell"), runs(label, "cell")),
                    List.of(
                        List.of(runs(label, "cell"), runs(label, "cell")),
                        List.of(List.of(), runs(label, "cell"))),
                    List.of(false, true),
                    label,
                    place));
        default -> blocks.add(paragraph(label));
      }
      if (extras.has("paragraph", 4)) {
        blocks.add(extras.paragraph(around));
      }
    }
    return blocks;
  }

  private List<List<Block>> items(Label label) {
    List<List<Block>> items =
        new ArrayList<>(
            List.of(
                List.of(paragraph(label)), List.of(), List.of(paragraph(label.join(label(2))))));
    if (extras.has("item", 3)) {
      items.add(secret.nextInt(4), List.of(extras.paragraph(label)));
    }
    return items;
  }

  /** A text, a phrase that may be marked, and perhaps one that the twin does not have. */
  private List<Inline> runs(Label around, String place) {
    List<Inline> runs = new ArrayList<>();
    runs.add(new Inline.Text(text(around, place)));
    runs.add(phrase(around, place));
    if (extras.has("phrase in " + place, 4)) {
      runs.add(secret.nextInt(3), extras.phrase(around));
    }
    return runs;
  }

  private Inline phrase(Label around, String place) {
    Label phrase = around.join(label(2));
    return new Inline.Phrase(
        List.of(new Inline.Text(text(phrase, "phrase in " + place))), phrase, at());
  }

  private Block paragraph(Label around) {
    Place place = Place.of("entries/e.md", ++line, 1);
    Label note = around.join(label(3));
    List<Inline> runs = new ArrayList<>(runs(around, "paragraph"));
    runs.add(new Inline.Emphasis(List.of(new Inline.Strong(List.of(phrase(around, "emphasis"))))));
    for (String fact : linked) {
      if (open.nextInt(3) == 0) {
        runs.add(new Inline.FactLink(fact, "", place));
      }
    }
    if (!shared.isEmpty()) {
      String target = shared.get(open.nextInt(shared.size())) + ".md";
      runs.add(new Inline.Link(target, List.of(phrase(around, "link")), place));
    }
    runs.add(new Inline.Footnote(runs(note, "footnote"), note, place));
    return new Block.Paragraph(runs, around, place);
  }

  private Marked<String> marked(int oneIn, String place) {
    Label label = label(oneIn);
    return new Marked<>(text(label, place), label, at());
  }

  /** Like {@link #marked}, or something that the twin may not have at all. */
  private @Nullable Marked<String> some(int oneIn, String place) {
    Marked<String> value = marked(oneIn, place);
    boolean gone = value.label().equals(CLIENT) && extras.has(place, 2);
    return gone ? null : value;
  }

  private Head head() {
    Label rate = label(2);
    SortedMap<String, Marked<Quantity>> budgets = new TreeMap<>();
    Label mass = label(3);
    budgets.put("mass", new Marked<>(quantity(mass, "kg", 5, "budget"), mass, at()));
    if (mass.equals(CLIENT) && extras.has("budget", 2)) {
      budgets.clear();
    }
    Label hours = label(3);
    budgets.put("hours", new Marked<>(quantity(hours, "h", 90, "budget"), hours, at()));
    Label scale = label(8);
    int denominator = differs(scale, "scale") ? 8 + secret.nextInt(80) : 16;
    boolean scaled = !scale.equals(CLIENT) || !extras.has("scale", 2);
    boolean rated = !rate.equals(CLIENT) || !extras.has("rate", 2);
    Label hero = label(3);
    boolean heroic = !hero.equals(CLIENT) || !extras.has("hero", 2);
    differs(hero, "hero");
    Marked<String> client = new Marked<>(text(CLIENT, "client"), CLIENT, at());
    Quantity money = quantity(rate, "GBP/h", 60, "rate");
    return new Head(
        marked(6, "title of the log"),
        some(6, "subject"),
        some(6, "kind"),
        List.of(paragraph(Label.NONE)),
        scaled ? new Marked<>(BigDecimal.valueOf(denominator), scale, at()) : null,
        Locale.UK,
        ZoneOffset.UTC,
        some(4, "maker"),
        extras.has("client", 2) ? null : client,
        "GBP",
        64,
        new BigDecimal("0.05"),
        rated ? new Marked<>(money, rate, at()) : null,
        budgets,
        null,
        some(4, "licence"),
        "plain",
        Paper.A4,
        0.12,
        BookChapters.STAGES,
        new TreeMap<>(),
        heroic ? new Marked<>(firstPhoto, hero, at()) : null,
        open.nextBoolean(),
        open.nextBoolean() ? Valuation.FIFO : Valuation.AVERAGE,
        PatternSheets.USUAL,
        TalkPlan.USUAL,
        null,
        LetterPlan.NONE,
        List.of());
  }

  private Log log() {
    TreeMap<String, Agreement> agreements = new TreeMap<>();
    agreements.put("lines", agreement("lines", Presence.NOTE, null, false));
    agreements.put(
        "client", agreement("client", quiet ? Presence.NOTHING : Presence.NOTE, null, false));
    agreements.put(
        "embargo",
        agreement("embargo", Presence.NOTE, embargoOver ? AS_OF.minusDays(1) : AS_OF, true));
    extras.agreements(agreements);
    Label beam = label(2);
    String beamFreed = freed(2, beam);
    Label beamSeen = beam.without(beamFreed);
    release(Release.Kind.FACT, "full.beam", beamFreed);
    releases.addAll(extras.releases());
    String full = quantity(beamSeen, "m", 5, "statement").toString();
    List<PostPlan> posts = new ArrayList<>();
    for (int i = open.nextInt(3); i > 0; i--) {
      Label post = label(4);
      posts.add(
          new PostPlan(
              text(post, "post"),
              text(post, "post"),
              hides(post) ? some(shared) : shared.stream().skip(2L * i - 1).limit(2).toList(),
              firstPhoto.isEmpty() || hides(post) && secret.nextBoolean() ? null : firstPhoto,
              post,
              at()));
    }
    posts.addAll(secret.nextInt(posts.size() + 1), extras.posts(shared));
    Label care = label(2);
    List<HandoverSection> handover =
        new ArrayList<>(
            List.of(new HandoverSection("care", "Care", List.of(paragraph(care)), care, at())));
    differs(care, "handover section");
    handover.addAll(secret.nextInt(2), extras.handover());
    Label rigging = label(2);
    List<Stage> stages =
        new ArrayList<>(List.of(stage("moulds", Label.NONE), stage("planking", Label.NONE)));
    stages.add(hides(rigging) ? secret.nextInt(3) : 2, stage("rigging", rigging));
    stages.addAll(secret.nextInt(4), extras.stages());
    List<Limit> limits =
        new ArrayList<>(
            List.of(
                limit("length", "full.beam <= 900 m"),
                limit("area", "wl.area <= 3 m\u00b2"),
                limit("draught", "hull.draught <= 300 mm"),
                limit("weight", "mass.total <= 2 kg"),
                limit("model", "hull.beam >= 2 mm"),
                limit("bound", "hull.m0 <= 2 * full.beam"),
                new Limit("ratio", "Ratio", "full.beam / hull.m2 >= 3", Label.NONE, at()),
                limit("effort", "hours.stage.planking <= 900 h")));
    limits.addAll(secret.nextInt(limits.size() + 1), extras.limits());
    List<Request> requests =
        new ArrayList<>(
            List.of(
                new Request(
                    "wl",
                    new Marked<>("curve", Label.NONE, at()),
                    new TreeMap<>(Map.of("ordinates", new Marked<>("ordinates", Label.NONE, at()))),
                    Label.NONE,
                    at())));
    requests.addAll(secret.nextInt(2), extras.requests());
    requests.addAll(hull.requests());
    List<Table> tables = new ArrayList<>(List.of(table()));
    tables.addAll(secret.nextInt(2), extras.tables());
    tables.addAll(hull.tables());
    return new Log(
        Path.of("log"),
        head(),
        stages,
        agreements,
        List.of(
            readers("public", Set.of()),
            readers("client", Set.of("lines")),
            readers("workshop", Set.of("lines", "client", "embargo"))),
        releases,
        limits,
        posts,
        handover,
        statements(beam, full),
        requests,
        lots(),
        tables,
        List.copyOf(entries),
        photos.stream().sorted(Comparator.comparing(PhotoFile::path)).toList(),
        List.of(
            new Sheet(
                "sheets/" + hiddenName() + ".pdf", hidden(), Label.of("lines"), List.of(), at())));
  }

  private Limit limit(String id, String rule) {
    Label label = label(4);
    differs(label, "limit");
    return new Limit(id, "Limit of " + id, rule, label, at());
  }

  private List<Statement> statements(Label beam, String full) {
    Label doubled = label(3);
    List<Statement> statements =
        new ArrayList<>(
            List.of(
                statement("full.beam", full, beam),
                statement("hull.beam", "full.beam / scale", Label.NONE),
                statement("double.beam", "2 * hull.beam", doubled),
                statement("draughts", "3 * hull.draught", Label.NONE)));
    if (open.nextInt(3) == 0) {
      Label planned = label(2);
      statements.add(
          statement(
              "hull.m1", quantity(planned, "mm", 900, "stated and measured").toString(), planned));
    }
    statements.addAll(secret.nextInt(4), extras.statements());
    return statements;
  }

  private Statement statement(String name, String is, Label label) {
    LocalDate day = LocalDate.of(2026, 2, 3).plusDays(hides(label) ? secret.nextInt(9) : 0);
    return new Statement(name, "Of " + name, is, null, day, label, at(), at());
  }

  private String hiddenName() {
    return differs(Label.of("lines"), "sheet") ? word() : "lines";
  }

  private Table table() {
    Label whole = label(5);
    Label column = label(4);
    List<Table.Row> rows = new ArrayList<>();
    for (int i = 0; i < 4; i++) {
      Label row = label(6);
      Quantity y = quantity(whole.join(column).join(row), "mm", 90, "table");
      rows.add(
          new Table.Row(
              List.of(
                  new Table.Cell("" + 100 * i, Quantity.of(100 * i, unit("mm")), at()),
                  new Table.Cell(y.toString(), y, at())),
              row,
              at()));
    }
    List<Table.Column> columns =
        new ArrayList<>(
            List.of(
                new Table.Column("x", unit("mm"), Label.NONE, at()),
                new Table.Column("y", unit("mm"), column, at())));
    if (extras.has("column", 3)) {
      columns.add(new Table.Column("z", unit("mm"), CLIENT, at()));
      rows.replaceAll(
          r -> {
            List<Table.Cell> cells = new ArrayList<>(r.cells());
            cells.add(extras.cell());
            return new Table.Row(cells, r.label(), r.place());
          });
    }
    if (extras.has("row", 3)) {
      rows.add(extras.row(columns.size()));
    }
    return new Table("ordinates", columns, rows, whole, at());
  }

  private List<Lot> lots() {
    List<Lot> lots = new ArrayList<>();
    for (String material : MATERIALS) {
      for (int n = 1 + open.nextInt(2); n > 0; n--) {
        Label label = label(6);
        Label price = label.join(label(4));
        Label supplier = label.join(label(2));
        boolean hidden = differs(label, "lot");
        Quantity paid = quantity(price, "GBP", 90, "price");
        boolean priced = !price.equals(CLIENT) || !extras.has("price", 2);
        lots.add(
            new Lot(
                material,
                hidden ? hidden() : material + " from the yard",
                Quantity.of(90 + (hidden ? secret.nextInt(50) : 0), Unit.ONE),
                priced ? new Marked<>(paid, price, at()) : null,
                new Marked<>(text(supplier, "supplier"), supplier, at()),
                LocalDate.of(2026, 2, n).plusDays(hidden ? secret.nextInt(90) : 20L * n),
                List.of(hidden && secret.nextBoolean() ? "resin" : "dust"),
                hidden ? hidden() : "",
                label,
                at()));
      }
      lots.addAll(secret.nextInt(lots.size() + 1), extras.lots(material));
    }
    return lots;
  }

  private Agreement agreement(
      String id, Presence presence, @Nullable LocalDate until, boolean freeAfterwards) {
    Label own = Label.of(id);
    return new Agreement(
        id, text(own, "agreement"), text(own, "agreement"), null, until, freeAfterwards, presence);
  }

  private Stage stage(String id, Label label) {
    return new Stage(
        id,
        differs(label, "stage") ? hidden() : id,
        List.of(paragraph(label)),
        LocalDate.of(2026, 3, 1).plusDays(hides(label) ? secret.nextInt(40) : 3),
        LocalDate.of(2026, 4, 9).plusDays(hides(label) ? secret.nextInt(40) : 3),
        quantity(label, "h", 30, "stage"),
        label,
        at());
  }

  /** Any of the entries, in any order: what a withheld post would tell. */
  private List<String> some(List<String> entries) {
    List<String> some = new ArrayList<>(entries);
    Collections.shuffle(some, secret);
    return some.subList(0, secret.nextInt(some.size() + 1));
  }

  private static Readers readers(String id, Set<String> partyTo) {
    return new Readers(id, id, partyTo, OUTPUTS, Place.of("log.yaml", 1, 1));
  }
}
