package chinelog.withhold;

import chinelog.edition.Drawing;
import chinelog.edition.Edition;
import chinelog.edition.Figure;
import chinelog.edition.Letter;
import chinelog.edition.Patterns;
import chinelog.edition.Plate;
import chinelog.edition.Text;
import chinelog.label.Label;
import chinelog.label.Presence;
import chinelog.log.records.Entry;
import chinelog.log.records.HandoverSection;
import chinelog.log.records.Head;
import chinelog.log.records.Log;
import chinelog.log.records.Marked;
import chinelog.log.records.Readers;
import chinelog.log.records.Release;
import chinelog.log.records.Stage;
import chinelog.log.text.Block;
import chinelog.photo.album.Album;
import chinelog.problem.Problem;
import chinelog.quantity.NumberStyle;
import chinelog.reckon.FactId;
import chinelog.reckon.Facts;
import chinelog.reckon.PlanBook;
import chinelog.withhold.Register.Kind;
import chinelog.withhold.question.Sight;
import chinelog.wording.Catalogue;
import java.io.IOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * Puts one edition together. Everything counted or ordered is counted and ordered over what is
 * seen.
 */
final class EditionMaker {

  private final WholeLog whole;
  private final VisibleLog visible;
  private final Log log;
  private final Head head;
  private final Facts facts;
  private final Readers readers;
  private final Account account;
  private final Sight sight;
  private final Catalogue words;
  private final FigureMaker figures;
  private final DiagramMaker diagrams;
  private final PlateMaker plates;
  private final TextCopier copier;
  private final Slugs slugs = new Slugs();
  private final Quotes quotes;
  private final Map<String, String> entryIds = new LinkedHashMap<>();
  private final List<Entry> counted;
  private final List<Entry> entries;
  private final HoursTold hours;
  private final MaterialsTold materials;
  private final Correspondence correspondence;
  private final LetterMaker letters;
  private final PictureSource pictures;
  private final List<Problem> drawing = new ArrayList<>();

  EditionMaker(
      WholeLog whole,
      Album album,
      PictureSource pictures,
      Readers readers,
      LocalDate asOf,
      Set<String> mayShow,
      Correspondence correspondence) {
    this.readers = readers;
    this.correspondence = correspondence;
    this.pictures = pictures;
    this.sight = new Sight(whole.log(), readers, asOf);
    this.account = new Account(sight);
    this.whole = whole;
    this.visible = VisibleLog.of(whole, account);
    this.log = visible.log();
    this.head = log.head();
    this.facts = visible.facts();
    this.words = Catalogue.of("chinelog.withhold.messages", head.locale());
    this.figures = new FigureMaker(visible, whole, account, words, entryIds);
    this.diagrams = new DiagramMaker(visible, whole, account, figures, words);
    this.plates =
        new PlateMaker(
            new PhotoPlaces(whole.log(), album, readers, asOf, mayShow),
            pictures,
            account,
            words,
            new PhotoUses(whole));
    Set<String> unnamed =
        log.stages().stream()
            .filter(s -> !sight.allows(s.label()))
            .map(Stage::id)
            .collect(Collectors.toSet());
    this.counted =
        log.entries().stream()
            .filter(e -> !e.date().isAfter(asOf))
            .filter(
                e ->
                    account.sees(
                        account.afterReleases(Release.Kind.ENTRY, e.id(), e.label()),
                        e.place(),
                        Kind.ENTRY,
                        e.id()))
            .map(e -> unnamed.contains(e.stage()) ? e.withStage("") : e)
            .toList();
    this.entries = counted.stream().filter(Entry::isTold).toList();
    this.quotes = new Quotes(head.locale());
    this.hours = new HoursTold(visible, counted, figures, account, words);
    this.copier = new TextCopier(account, figures, hours, plates.byPath(), entryIds, slugs, quotes);
    this.materials = new MaterialsTold(visible, entries, figures, sight, words);
    this.letters = new LetterMaker(sight, words, figures.style(), log, readers);
  }

  /** The edition's ids of the entries that it tells, by the log's. */
  Map<String, String> entryIds() {
    return Collections.unmodifiableMap(entryIds);
  }

  Map<String, Plate> plates() {
    return Collections.unmodifiableMap(plates.byPath());
  }

  Register register() {
    return account.register();
  }

  /** The figures of the edition that was made, as printed. */
  List<PrintedFigure> printed() {
    return disclosure(List.of()).printed();
  }

  private Disclosure disclosure(List<PrintedFigure> known) {
    return new Disclosure(whole, visible, figures, sight, readers, known);
  }

  /**
   * The edition that was made with its account.
   *
   * @param known figures that readers were given before
   */
  Withholder.Withheld account(Edition edition, List<PrintedFigure> known) {
    Disclosure disclosure = disclosure(known);
    List<Problem> problems = problems(disclosure);
    return new Withholder.Withheld(
        edition,
        sight.clearance(),
        account.register(),
        figures.hidden(),
        figures.written(),
        disclosure.printed(),
        plates.keptBack(),
        plates.printedRegions(),
        problems,
        disclosure.waysOut());
  }

  /** The edition by itself, whatever speaks against publishing it. */
  Edition edition() throws IOException {
    for (Entry entry : entries) {
      entryIds.put(entry.id(), slugs.make(entry.date() + " " + title(entry)));
    }
    plates.make(entries, entryIds, copier::runs);
    List<Plate> sheets = plates.sheets(log.sheets());
    List<Edition.Entry> told = entries.stream().map(this::entry).toList();
    List<ChartMaker.StageHours> stageHours = hours.byStage();
    ScanMaker scans = new ScanMaker(visible, account, pictures);
    Patterns patterns =
        scans.addTo(new PatternMaker(visible, whole, account, figures).make(readers), readers);
    drawing.addAll(scans.problems());
    List<Edition.Stage> stages =
        new StageMaker(account, words, copier, hours, materials, entries, entryIds)
            .make(log.stages());
    List<Figure> list = figures.figures();
    return Edition.seal(
        new Edition.Contents(
            readers.id(),
            readers.title(),
            sight.asOf(),
            head.locale(),
            head.address(),
            head.theme(),
            Edition.Paper.valueOf(head.paper().name()),
            head.leafMm(),
            Edition.Chapters.valueOf(head.chapters().name()),
            seen(head.title(), Kind.TITLE, "")
                .map(quotes::set)
                .orElseGet(() -> words.text("title.untitled")),
            seen(head.subject(), Kind.SUBJECT, "").map(quotes::set).orElse(""),
            seen(head.kind(), Kind.KIND, "").map(quotes::set).orElse(""),
            seen(head.maker(), Kind.MAKER, "").map(quotes::set).orElse(""),
            seen(head.client(), Kind.CLIENT, "").map(quotes::set).orElse(""),
            seen(head.licence(), Kind.LICENCE, "").map(quotes::set).orElse(""),
            figures.show(FactId.SCALE.name()).map(s -> "1:" + s).orElse(""),
            copier.blocks(head.about()),
            hero(),
            plates.sameView(),
            stages,
            new PostMaker(account, entries, told, plates, quotes).make(log),
            told,
            plates.all(),
            unplaced(sheets),
            list,
            limits(),
            materials.table(),
            materials.totalCost(),
            stageHours.stream().map(ChartMaker.StageHours::line).toList(),
            totals(told),
            new ChartMaker(visible, figures, words, entries).charts(stageHours),
            drawings(stages, told),
            materials.cautions(),
            log.handover().stream().flatMap(h -> handover(h).stream()).toList(),
            account.noteDue(),
            legends(),
            patterns,
            TalkMaker.make(head, readers),
            letters(told, stages, stageHours, list)));
  }

  private List<Letter> letters(
      List<Edition.Entry> told,
      List<Edition.Stage> stages,
      List<ChartMaker.StageHours> stageHours,
      List<Figure> list) {
    String subject =
        seen(head.subject(), Kind.SUBJECT, "")
            .or(() -> seen(head.title(), Kind.TITLE, ""))
            .orElseGet(() -> words.text("title.untitled"));
    Correspondence.Form form = correspondence.form();
    if (form != null) {
      return List.of(
          new FormMaker(words, whole.log(), told, list, plates.byPath(), entryIds)
              .make(form, seen(head.maker(), Kind.MAKER, "").orElse(""), subject));
    }
    if (!readers.outputs().contains(Readers.Output.LETTER)) {
      return letters.make(
          new LetterMaker.Told(subject, List.of(), told, stages, List.of(), plates.all()),
          correspondence.quotation());
    }
    return letters.make(
        new LetterMaker.Told(
            subject,
            copier.blocks(head.letter().text()),
            told,
            stages,
            stageHours.stream().map(ChartMaker.StageHours::line).toList(),
            plates.all()),
        correspondence.quotation());
  }

  private List<Drawing> drawings(List<Edition.Stage> stages, List<Edition.Entry> told) {
    List<Drawing> drawings = new ArrayList<>(diagrams.make());
    new TimelineMaker(visible, figures, words, sight.asOf(), entryIds)
        .make(stages, told, plates.all())
        .ifPresent(drawings::add);
    return List.copyOf(drawings);
  }

  private List<Problem> problems(Disclosure disclosure) {
    List<Problem> problems = new ArrayList<>(plates.problems());
    problems.addAll(holes());
    problems.addAll(figures.readings());
    problems.addAll(letters.problems());
    problems.addAll(drawing);
    problems.addAll(visible.reminders(whole));
    problems.addAll(disclosure.problems());
    return problems;
  }

  /** Why figures that are missing in the texts of the edition tell what they must not. */
  List<Problem> holes() {
    return figures.holes();
  }

  private Optional<String> seen(@Nullable Marked<String> value, Kind kind, String name) {
    return value != null && account.sees(value.label(), value.place(), kind, name)
        ? Optional.of(value.value())
        : Optional.empty();
  }

  private String title(Entry entry) {
    return seen(entry.title(), Kind.TITLE_OF_ENTRY, entry.id())
        .map(t -> t.equals(entry.date().toString()) ? words.weekday(entry.date()) : quotes.set(t))
        .orElseGet(() -> words.text("entry.untitled"));
  }

  private @Nullable Plate hero() {
    Plate chosen =
        seen(head.hero(), Kind.HERO, "").map(path -> plates.byPath().get(path)).orElse(null);
    if (chosen != null && plates.isFitForHead(chosen)) {
      return chosen;
    }
    // The youngest landscape picture shows the most of the build.
    return plates.all().stream()
        .filter(p -> !p.picture().isPortrait())
        .sorted(
            Comparator.comparing((Plate p) -> Objects.requireNonNullElse(p.date(), LocalDate.MIN))
                .thenComparing(Plate::number)
                .reversed())
        .filter(plates::isFitForHead)
        .findFirst()
        .orElse(null);
  }

  private Edition.Entry entry(Entry entry) {
    List<Block> text = entry.text();
    String title = title(entry);
    if (!text.isEmpty()
        && text.get(0) instanceof Block.Heading heading
        && sight.allows(heading.label())
        && Text.plainText(copier.runs(heading.text()), "").strip().equals(title.strip())) {
      text = text.subList(1, text.size());
    }
    String id = Objects.requireNonNull(entryIds.get(entry.id()));
    List<Text.Block> copied = copier.blocks(text);
    Set<Plate> inText = PlatesIn.blocks(copied);
    return new Edition.Entry(
        id,
        entry.date(),
        entry.stage(),
        title,
        copied,
        plates.all().stream().filter(p -> id.equals(p.entry()) && !inText.contains(p)).toList(),
        factLines(entry),
        materials.lines(entry),
        hours.lines(entry),
        diagrams.of(entry),
        sight.under(entry.label()));
  }

  private List<Edition.Line> factLines(Entry entry) {
    List<Edition.Line> lines = new ArrayList<>();
    lines.addAll(
        figures.lines(
            facts.byName().values().stream().filter(f -> entry.id().equals(f.entry())).toList()));
    facts.massGrowth().stream()
        .filter(p -> p.entry().equals(entry.id()))
        .reduce((a, b) -> b)
        .flatMap(p -> figures.show(p.fact()))
        .ifPresent(mass -> lines.add(line("line.mass", mass)));
    return lines;
  }

  private List<Edition.Day> unplaced(List<Plate> sheets) {
    Map<LocalDate, List<Plate>> byDay = new TreeMap<>();
    List<Plate> undated = new ArrayList<>(sheets);
    for (Plate plate : plates.all()) {
      if (plate.entry() != null || sheets.contains(plate)) {
        continue;
      }
      LocalDate day = plate.date();
      if (day == null) {
        undated.add(plate);
      } else {
        byDay.computeIfAbsent(day, d -> new ArrayList<>()).add(plate);
      }
    }
    List<Edition.Day> days = new ArrayList<>();
    byDay.forEach((day, own) -> days.add(new Edition.Day(day, List.copyOf(own))));
    if (!undated.isEmpty()) {
      days.add(new Edition.Day(null, List.copyOf(undated)));
    }
    return days;
  }

  private List<Edition.LimitLine> limits() {
    List<Edition.LimitLine> lines = new ArrayList<>();
    for (Facts.LimitCheck check : facts.limits()) {
      // The bound is told too, and so is the room that is left: a release of the fact frees
      // neither.
      Label label = check.limit().label();
      for (String name : check.names()) {
        label = label.join(figures.labelOf(facts.find(name).orElseThrow()));
      }
      if (!account.sees(label, check.limit().place(), Kind.LIMIT, check.limit().id())) {
        continue;
      }
      NumberStyle style = figures.style();
      check.names().forEach(figures::show);
      lines.add(
          new Edition.LimitLine(
              check.limit().title(),
              style.show(check.value()),
              sign(check.comparison()) + " " + style.show(check.bound()),
              style.show(check.margin()),
              words.text("verdict." + check.verdict().name()),
              check.verdict() != Facts.Verdict.BROKEN,
              sight.under(check.label())));
    }
    return lines;
  }

  private static String sign(String comparison) {
    return comparison.replace("<=", "\u2264").replace(">=", "\u2265");
  }

  private List<Edition.Line> totals(List<Edition.Entry> told) {
    List<Edition.Line> lines = new ArrayList<>();
    if (!told.isEmpty()) {
      lines.add(line("line.first", words.date(told.get(0).date())));
      if (told.size() > 1) {
        lines.add(line("line.last", words.date(told.get(told.size() - 1).date())));
      }
      lines.add(line("line.entries", String.valueOf(told.size())));
    }
    if (!plates.all().isEmpty()) {
      lines.add(line("line.plates", String.valueOf(plates.all().size())));
    }
    hours.totalLine().map(l -> asTold(l, FactId.HOURS)).ifPresent(lines::add);
    // How the build goes is told by every entry. For readers who may not see all that the log could
    // hold, the line is never there, so that its absence tells of nothing.
    if (sight.allows(Label.of(log.promises()))) {
      PlanBook.findForecastFinish(log, facts)
          .filter(
              finish -> figures.find(FactId.FORECAST_DAYS.name()).map(figures::show).isPresent())
          .ifPresent(finish -> lines.add(line("line.finish", words.date(finish))));
    }
    materials.costLine(entry -> true).map(l -> asTold(l, FactId.COST)).ifPresent(lines::add);
    return lines;
  }

  /** A sum over what is told, which says so where the sum over all is withheld. */
  private Edition.Line asTold(Edition.Line line, FactId all) {
    return figures
        .findUnseen(all.name())
        .filter(label -> sight.presence(label) == Presence.NOTE)
        .map(l -> new Edition.Line(line.title(), line.shown(), words.text("told.here"), null))
        .orElse(line);
  }

  private Edition.Line line(String key, String shown) {
    return new Edition.Line(words.text(key), shown, "", null);
  }

  private Optional<Edition.HandoverSection> handover(HandoverSection section) {
    return account.sees(section.label(), section.place(), Kind.HANDOVER_SECTION, section.id())
        ? Optional.of(
            new Edition.HandoverSection(
                section.id(),
                quotes.set(section.title()),
                copier.blocks(section.text()),
                sight.under(section.label())))
        : Optional.empty();
  }

  private List<Edition.AgreementLegend> legends() {
    return log.agreements().values().stream()
        .filter(a -> !sight.under(Label.of(a.id())).isEmpty())
        .map(a -> new Edition.AgreementLegend(a.id(), a.with(), a.covers()))
        .toList();
  }
}
