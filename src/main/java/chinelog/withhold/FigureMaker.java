package chinelog.withhold;

import chinelog.edition.Edition;
import chinelog.edition.Figure;
import chinelog.label.Label;
import chinelog.log.records.FigureGroup;
import chinelog.log.records.Log;
import chinelog.log.records.Release;
import chinelog.log.text.Inline;
import chinelog.problem.Problem;
import chinelog.problem.Sentence;
import chinelog.quantity.NumberStyle;
import chinelog.quantity.Quantity;
import chinelog.quantity.Unit;
import chinelog.reckon.Explanation;
import chinelog.reckon.Fact;
import chinelog.reckon.FactId;
import chinelog.reckon.Facts;
import chinelog.reckon.Origin;
import chinelog.reckon.Similitude;
import chinelog.withhold.question.Sight;
import chinelog.wording.Catalogue;
import chinelog.wording.Message;
import chinelog.wording.WorkedLine;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * Shows facts to readers who may see them, and keeps account of every one that was shown, so that
 * what can be worked out from them can be told.
 */
final class FigureMaker {

  private final Log log;
  private final Facts facts;
  private final Facts whole;
  private final Account account;
  private final Sight sight;
  private final NumberStyle style;
  private final Catalogue words;
  private final Catalogue factWords;
  private final Map<String, String> entryIds;

  private final Labels labels;
  private final SortedSet<String> shown = new TreeSet<>();
  private final Set<String> inDetail = new HashSet<>();
  private final SortedSet<String> written = new TreeSet<>();
  private final List<Problem> holes = new ArrayList<>();
  private final List<Problem> readings = new ArrayList<>();
  private final Map<List<String>, Quantity> sums = new LinkedHashMap<>();

  /**
   * @param entryIds the edition's id of each entry, by the log's
   */
  FigureMaker(
      VisibleLog visible,
      WholeLog whole,
      Account account,
      Catalogue words,
      Map<String, String> entryIds) {
    this.log = visible.log();
    this.facts = visible.facts();
    this.whole = whole.facts();
    this.account = account;
    this.sight = account.sight();
    this.style = new NumberStyle(log.head().locale(), log.head().inchDenominator());
    this.words = words;
    this.factWords = Catalogue.of(Facts.MESSAGES, log.head().locale());
    this.entryIds = entryIds;
    this.labels = new Labels(visible);
  }

  Label labelOf(Fact fact) {
    return account.afterReleases(Release.Kind.FACT, fact.name(), labels.of(fact));
  }

  /**
   * The label of the fact of that name as it stands for these readers; empty if they may see it, or
   * if there is none such among what they are told.
   */
  Optional<Label> findUnseen(String name) {
    return facts
        .find(name)
        .or(() -> whole.find(name))
        .map(this::labelOf)
        .filter(l -> !sight.allows(l));
  }

  /** What the fact of that name is, told or not. */
  Optional<FactId> findId(String name) {
    return whole.find(name).map(Fact::id);
  }

  /** Notes a figure that a text names and that is not shown there. */
  void missed(Inline.FactLink link) {
    Optional<Fact> fact = whole.find(link.fact());
    if (fact.isPresent() && facts.find(link.fact()).isEmpty()) {
      holes.add(
          Problem.error(
              link.place(),
              Sentence.of(
                  "This text names \u201c{0}\u201d, which there would not be without what"
                      + " nothing may show of ({1}), so that its absence tells of that.",
                  link.fact(), fact.get().label()),
              "Put the phrase under the agreement too, write \u201cpresence: note\u201d for the"
                  + " agreement, or record a release of the figure."));
    }
  }

  /** Why figures that are missing in texts tell what they must not. */
  List<Problem> holes() {
    return holes.stream().distinct().toList();
  }

  /** Notes how a sentence reads in which a sign stands for a figure. */
  void reads(Inline.FactLink link, String sentence) {
    readings.add(
        Problem.reminder(
            link.place(),
            Sentence.of("For {0} this reads: \u201c{1}\u201d", sight.readers(), sentence),
            "Let the sentence do without the figure, or put all of it under the agreement."));
  }

  /** How sentences read in which figures are missing. */
  List<Problem> readings() {
    return readings.stream().distinct().toList();
  }

  boolean sees(Fact fact) {
    return account.sees(labelOf(fact), fact.place(), Register.Kind.FIGURE, fact.name());
  }

  /** The fact of that name, if there is one and the readers may see it. */
  Optional<Fact> find(@Nullable String name) {
    return name == null ? Optional.empty() : facts.find(name).filter(this::sees);
  }

  /** The fact as shown, if there is one and the readers may see it. */
  Optional<String> show(@Nullable String name) {
    return find(name).map(this::show);
  }

  String show(Fact fact) {
    shown.add(fact.name());
    return style.show(value(fact));
  }

  /**
   * A fact's value as these readers may see it. The tolerance of one that is worked out from what
   * is withheld, and that a release alone shows, goes with what it is worked out from: with those
   * of two factors it would give the factors.
   */
  Quantity value(Fact fact) {
    return fact.origin() == Origin.RECKONED && !sight.allows(labels.of(fact))
        ? fact.value().withoutTolerance()
        : fact.value();
  }

  /**
   * Notes a figure that the maker wrote out in the text.
   *
   * @param text as written, such as {@code 1.19 m}
   */
  String written(Fact fact, String text) {
    shown.add(fact.name());
    written.add(text);
    return text;
  }

  /** Figures written out in the texts that the readers see. */
  SortedSet<String> written() {
    return written;
  }

  /** A sum over parts that are all seen, and taken as shown, since they stand by themselves. */
  Optional<Quantity> sum(List<String> names) {
    List<Fact> parts = names.stream().flatMap(n -> find(n).stream()).toList();
    if (parts.isEmpty()) {
      return Optional.empty();
    }
    Quantity sum = Quantities.sum(parts);
    addedUp(parts.stream().map(Fact::name).toList(), sum);
    return Optional.of(sum);
  }

  /** Notes a sum that is shown and that no fact is. */
  void addedUp(List<String> parts, Quantity sum) {
    shown.addAll(parts);
    if (parts.size() > 1) {
      sums.putIfAbsent(parts, sum);
    }
  }

  /** Sums that were shown and that no facts are, by the names of their parts. */
  Map<List<String>, Quantity> sums() {
    return sums;
  }

  /** The value of the last digit to which a fact is told, be it in how another was worked out. */
  Quantity step(Fact fact) {
    Quantity value = value(fact);
    return inDetail.contains(fact.name()) && seesInFull(fact)
        ? style.stepToDigits(value, Explanation.DIGITS)
        : style.step(value);
  }

  NumberStyle style() {
    return style;
  }

  /** Names of the facts that were shown so far. */
  SortedSet<String> shown() {
    return shown;
  }

  /** Names of the whole log's facts that rest on something that the readers may not see. */
  SortedSet<String> hidden() {
    SortedSet<String> hidden = new TreeSet<>();
    whole.byName().values().stream()
        .filter(f -> !sight.allows(account.afterReleases(Release.Kind.FACT, f.name(), f.label())))
        .forEach(f -> hidden.add(f.name()));
    return hidden;
  }

  /**
   * Name of the figure in the list of figures, or null if this fact does not stand there. An
   * earlier reading is named by the edition's id of its entry: the log's is the name of a file.
   */
  @Nullable String listed(Fact fact) {
    return fact.id().isListed() ? told(fact.id()) : null;
  }

  private @Nullable String told(FactId id) {
    if (id instanceof FactId.Reading reading) {
      String entry = entryIds.get(reading.entry());
      return entry == null ? null : reading.nameIn(entry);
    }
    if (id instanceof FactId.Centre centre) {
      String mass = told(centre.mass());
      return mass == null ? null : mass + "." + centre.aspect();
    }
    return id.name();
  }

  /** Lines of those that are listed and seen, with a part's name at its first figure alone. */
  List<Edition.Line> lines(List<Fact> of) {
    List<Edition.Line> lines = new ArrayList<>();
    String before = "";
    for (Fact fact : of) {
      if (listed(fact) != null && sees(fact)) {
        Figure.Cell cell = cell(fact);
        lines.add(
            line(
                fact,
                cell != null && cell.part().equals(before)
                    ? cell.aspect()
                    : factWords.text(fact.title())));
        before = cell == null ? "" : cell.part();
      }
    }
    return lines;
  }

  private Edition.Line line(Fact fact, String title) {
    String full = fullSize(fact);
    return new Edition.Line(
        title, show(fact), full.isEmpty() ? "" : words.text("fullsize", full), listed(fact));
  }

  /**
   * All figures: as the maker has grouped them, then by the groups of the trade and by titles of
   * groups; in each as the names run, numbers in them as numbers, those of the full size first.
   */
  List<Figure> figures() {
    record Ranked(int rank, boolean isModels, Figure figure) {}
    Comparator<Ranked> order =
        Comparator.comparingInt(Ranked::rank)
            .thenComparing(r -> r.figure.group())
            .thenComparing(Ranked::isModels)
            .thenComparing(r -> r.figure.name(), Facts.NAMES_IN_ORDER);
    return facts.byName().values().stream()
        .filter(f -> listed(f) != null)
        .filter(this::sees)
        .map(f -> new Ranked(rank(f.id().group()), !f.id().isFullSize(), figure(f)))
        .sorted(order)
        .map(Ranked::figure)
        .toList();
  }

  private int rank(String group) {
    List<FigureGroup> own = log.head().figureGroups();
    for (int i = 0; i < own.size(); i++) {
      if (own.get(i).holds(group)) {
        return i;
      }
    }
    int known = FactId.GROUPS.indexOf(group);
    int unknown = FactId.GROUPS.indexOf("");
    return own.size() + (known < 0 ? unknown : known);
  }

  private Figure figure(Fact fact) {
    boolean full = fact.id().isFullSize();
    shown.add(fact.name());
    String value = style.showValue(value(fact));
    List<WorkedLine> working =
        fact.formula() == null && fact.method().isEmpty()
            ? List.of()
            : Explanation.working(
                fact,
                facts,
                style,
                name -> facts.find(name).filter(this::seesQuietly).isPresent(),
                this::seesInFull);
    if (!working.isEmpty() && seesInFull(fact)) {
      inDetail.add(fact.name());
      inDetail.addAll(fact.inputs());
    }
    String entry = fact.entry() == null ? null : entryIds.get(fact.entry());
    String name = Objects.requireNonNull(listed(fact));
    return new Figure(
        name,
        factWords.text(fact.title()),
        group(fact.id().group()),
        full ? "" : value,
        full ? value : fullSize(fact),
        style.showTolerance(value(fact)),
        origin(fact, entry != null),
        date(fact, entry != null),
        working,
        entry == null ? List.of() : List.of(entry),
        cell(fact),
        chief(fact, name),
        about(fact.id()),
        sight.under(fact.label()));
  }

  private static Figure.About about(FactId id) {
    return id.isOfMass()
        ? Figure.About.MASS
        : id.isOfBox() ? Figure.About.BOX : Figure.About.ANYTHING;
  }

  /** What the program says of many parts has a text for the part and one for what is said of it. */
  private Figure.@Nullable Cell cell(Fact fact) {
    return fact.title() instanceof Message title
            && factWords.find(title.key() + ".part").isPresent()
        ? new Figure.Cell(
            factWords.text(new Message(title.key() + ".part", title.arguments())),
            factWords.text(new Message(title.key() + ".aspect", title.arguments())))
        : null;
  }

  /** What went into a trial is not among the chief figures, what came of it is. */
  private static Figure.@Nullable Chief chief(Fact fact, String name) {
    FactId id = fact.id();
    int rank = FactId.CHIEF.indexOf(id.group());
    boolean isCause =
        id.group().equals(FactId.TRIAL)
            && fact.origin() != Origin.RECKONED
            && !fact.value().unit().isCompatible(Unit.KNOT);
    return rank < 0 || id.rest().isEmpty() || id.isAboutFullSize() || isCause
        ? null
        : new Figure.Chief(rank, name.substring(id.group().length() + 1));
  }

  private boolean seesQuietly(Fact fact) {
    boolean sees = sight.allows(labelOf(fact));
    if (sees) {
      shown.add(fact.name());
    }
    return sees;
  }

  /** Whether the readers may see a fact, and all that decides it, without any release. */
  private boolean seesInFull(Fact fact) {
    return sight.allows(labels.of(fact));
  }

  private String origin(Fact fact, boolean entryTold) {
    String how = words.text("origin." + fact.origin().name());
    LocalDate date = date(fact, entryTold);
    return date == null || fact.origin() == Origin.RECKONED
        ? how
        : words.text("origin.dated", how, words.date(date));
  }

  /** The day of a fact; none of one that is told by a release alone, unless its entry tells it. */
  private @Nullable LocalDate date(Fact fact, boolean entryTold) {
    return entryTold || sight.allows(labels.of(fact)) ? fact.date() : null;
  }

  private String group(String first) {
    for (FigureGroup own : log.head().figureGroups()) {
      if (own.holds(first)) {
        return own.title();
      }
    }
    return words
        .find("group." + first)
        .orElseGet(
            () ->
                first.substring(0, 1).toUpperCase(Locale.ROOT)
                    + first.substring(1).replace('_', ' '));
  }

  /**
   * The full-size counterpart of a model's figure; empty if it has none, or if the scale is not to
   * be seen. Whether the log holds that counterpart as a fact that is not to be seen makes no
   * difference, or the empty place would tell of it: the derivability check stops one that agrees.
   */
  private String fullSize(Fact fact) {
    if (!Similitude.hasCounterpart(fact, log)) {
      return "";
    }
    Optional<Fact> scale = facts.find(FactId.SCALE).filter(this::seesQuietly);
    if (scale.isEmpty()) {
      return "";
    }
    return Similitude.findFullSize(value(fact), scale.get().value())
        .map(style::showFullSize)
        .orElse("");
  }
}
