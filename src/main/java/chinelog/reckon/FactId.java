package chinelog.reckon;

import java.util.List;
import java.util.Locale;
import java.util.Set;

/**
 * What a fact is, such as the hours of a stage. Its dotted name, by which formulas and texts call
 * it, follows from that: {@code hours.stage.planking}.
 *
 * <p>In a name, every other character of an id than a letter, a digit and {@code _} is {@code _}.
 */
public sealed interface FactId {

  FactId SCALE = new Named("scale");
  FactId RATE = new Named("rate");
  FactId LABOUR = new Named("labour.total");
  FactId HOURS = new Hours(Span.TOTAL, "");
  FactId PLANNED_HOURS = new PlannedHours(Span.TOTAL, "");
  FactId COST = new Cost(Span.TOTAL, "");
  FactId MASS = new Mass("total");
  FactId MASS_BUDGET = new Budget("mass");
  FactId COST_BUDGET = new Budget("cost");
  FactId FORECAST_DAYS = new Plan(Standing.FORECAST_DAYS);

  /** Such as {@code hull.loa}. */
  String name();

  /** The part of the name before its first dot, such as {@code hull}; all of it if it has none. */
  default String group() {
    return group(name());
  }

  /** The part of the name after its first dot, such as {@code loa}; empty if it has none. */
  default String rest() {
    return name().substring(Math.min(name().length(), group().length() + 1));
  }

  /**
   * Whether it is a figure of a trade reckoning, or stated by the name of one and in its place.
   *
   * @param request what the names of its facts begin with
   */
  default boolean isOf(String request) {
    return name().startsWith(request + ".");
  }

  /** Whether it is a figure of the subject at full size, as authors name such. */
  default boolean isFullSize() {
    return group().equals(SUBJECT) && !rest().isEmpty();
  }

  /** Whether a word of its name says so, as in {@code trial.full_speed}. */
  default boolean isAboutFullSize() {
    return List.of(name().split("[._]")).contains(SUBJECT);
  }

  /** The name of a figure of the subject at full size: {@code full.beam} for {@code beam}. */
  static String ofSubject(String rest) {
    return SUBJECT + "." + rest;
  }

  /** Groups of the figures that say what a model is, in the order in which they are told. */
  List<String> CHIEF =
      List.of("built", "hull", "rig", "sail", "mass", "power", "trial", "model", "balance");

  /** Whether it is a mass, where one lies, or what the masses come to together. */
  default boolean isOfMass() {
    return List.of("mass", "balance").contains(group());
  }

  /** Whether it is of the box that the model travels in. */
  default boolean isOfBox() {
    return group().equals("box") && !rest().isEmpty();
  }

  /** Whether it stands among the figures, and not beside an entry, a stage or a material. */
  default boolean isListed() {
    return !KEPT.contains(group());
  }

  /** Whether it is a line of the log's own books of hours, mass and material. */
  default boolean isOfTheBooks() {
    return List.of("hours", "plan", "growth", "stock").contains(group());
  }

  /** Whether no agreement is about it: it is never shown, and tells of the work as a whole. */
  default boolean isBookkeeping() {
    return false;
  }

  /** What decides it besides the facts that it rests on. */
  default Set<Influence> influences() {
    return Set.of();
  }

  /** Which it is of the figures written in one place of the log; empty for the only one. */
  default String aspect() {
    return "";
  }

  /** The group of the subject's own figures. */
  String SUBJECT = "full";

  /**
   * Groups of figures in the order in which the trade tells them: sizes, the hull, what it weighs,
   * what drives it, how she ran, what it took; others stand at the empty name.
   */
  List<String> GROUPS =
      List.of(
          SUBJECT, "scale", "built", "hull", "model", "", "mass", "balance", "rig", "sail", "power",
          "trial", "hours", "labour", "cost", "price", "rate");

  /** The group of what was found on trial. */
  String TRIAL = "trial";

  /** Groups of what is counted from the log and its entries. */
  Set<String> KEPT = Set.of("hours", "plan", "stock", "cost", "growth", "budget", "limit");

  /** Whether a name is kept for what is counted from the log, so that no author may use it. */
  static boolean isKept(String name) {
    return name.contains(".") && KEPT.contains(group(name));
  }

  private static String group(String name) {
    int dot = name.indexOf('.');
    return dot < 0 ? name : name.substring(0, dot);
  }

  /** An id or a word as part of a name: {@code 2026-03-14-drawings} with {@code _}. */
  static String part(String id) {
    String part = id.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}0-9_]", "_");
    return part.isEmpty() ? "_" : part;
  }

  private static String word(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT);
  }

  /** Over what something is added up. */
  enum Span {
    ENTRY,
    STAGE,
    WEEK,
    TOTAL;

    private String named(String prefix, String of) {
      return prefix + "." + word(this) + (this == TOTAL ? "" : "." + part(of));
    }
  }

  /** What an author names: stated, measured, or reckoned by a formula. */
  record Named(String name) implements FactId {}

  /** What log.yaml allows, such as {@code budget.mass}. */
  record Budget(String of) implements FactId {
    @Override
    public String name() {
      return "budget." + part(of);
    }
  }

  /** Time at work, such as {@code hours.stage.planking}. */
  record Hours(Span span, String of) implements FactId {
    @Override
    public String name() {
      return span.named("hours", of);
    }

    @Override
    public boolean isListed() {
      return span == Span.TOTAL;
    }

    @Override
    public Set<Influence> influences() {
      return span == Span.STAGE || span == Span.WEEK ? Set.of(Influence.ENTRIES) : Set.of();
    }
  }

  /** Time planned for a stage or for all. */
  record PlannedHours(Span span, String of) implements FactId {
    @Override
    public String name() {
      return span.named("plan.hours", of);
    }
  }

  /** A measure of the build against its plan. */
  enum Standing {
    DUE,
    EARNED,
    SCHEDULE_INDEX,
    COST_INDEX,
    FORECAST,
    DAYS,
    FORECAST_DAYS
  }

  /** How the build stands against its plan, such as {@code plan.forecast_days}. */
  record Plan(Standing standing) implements FactId {
    @Override
    public String name() {
      return "plan." + word(standing);
    }

    /** Under every agreement of every entry, so as to be on the safe side. */
    @Override
    public boolean isBookkeeping() {
      return true;
    }
  }

  /** The mass of a part, such as {@code mass.hull}, or of all parts. */
  record Mass(String part) implements FactId {
    @Override
    public String name() {
      return "mass." + FactId.part(part);
    }
  }

  /** Where the centre of what was weighed lies, such as {@code mass.hull.x}. */
  record Centre(FactId mass, Axis axis) implements FactId {
    @Override
    public String name() {
      return mass.name() + "." + aspect();
    }

    @Override
    public String aspect() {
      return word(axis);
    }
  }

  /** Forward of station 0, and above the keel. */
  enum Axis {
    X,
    Z
  }

  /** The mass of all that was weighed up to a part in an entry. */
  record Growth(String entry, String part) implements FactId {
    @Override
    public String name() {
      return "growth." + FactId.part(entry) + "." + FactId.part(part);
    }

    @Override
    public Set<Influence> influences() {
      return Set.of(Influence.ENTRIES, Influence.WEIGHINGS);
    }
  }

  /** What the growth of mass lets expect, such as {@code growth.forecast}. */
  record Expected(Expectation what) implements FactId {
    @Override
    public String name() {
      return "growth." + word(what);
    }

    @Override
    public Set<Influence> influences() {
      return Set.of(Influence.ENTRIES, Influence.WEIGHINGS);
    }
  }

  enum Expectation {
    HOURS,
    PACE,
    FORECAST,
    MARGIN
  }

  /** What one purchase brought or cost, such as {@code stock.strip.lot_1.bought}. */
  record Lot(String material, int number, boolean price) implements FactId {
    @Override
    public String name() {
      return "stock." + part(material) + ".lot_" + number + "." + aspect();
    }

    @Override
    public Set<Influence> influences() {
      return Set.of(Influence.lots(material));
    }

    @Override
    public String aspect() {
      return price ? "price" : "bought";
    }
  }

  /**
   * What an entry used of a material, such as {@code stock.strip.used.2026_03_20}.
   *
   * @param count 2 for the second use in one entry
   */
  record Use(String material, String entry, int count) implements FactId {
    @Override
    public String name() {
      return "stock." + part(material) + ".used." + part(entry) + (count == 1 ? "" : "." + count);
    }
  }

  /** What became of a material, such as {@code stock.strip.left}. */
  record Stock(String material, Balance balance) implements FactId {
    @Override
    public String name() {
      return "stock." + part(material) + "." + word(balance);
    }

    /** What is left of the price paid is nothing for every lot used up. */
    @Override
    public boolean isBookkeeping() {
      return balance == Balance.WORTH;
    }

    @Override
    public Set<Influence> influences() {
      return balance == Balance.BOUGHT ? Set.of(Influence.lots(material)) : ofUsing(material);
    }
  }

  /** A sum over the lots or the uses of a material. */
  enum Balance {
    BOUGHT,
    USED,
    WASTED,
    WASTAGE,
    LEFT,
    PAID,
    COST,
    WORTH
  }

  /** A material at its average price, such as {@code stock.strip.held_1}. */
  record Pool(String material, PoolFigure figure, int number) implements FactId {
    @Override
    public String name() {
      return "stock." + part(material) + "." + word(figure) + "_" + number;
    }

    @Override
    public Set<Influence> influences() {
      return ofUsing(material);
    }
  }

  /** What is held from then on, at which price, and what is left of what was held before. */
  enum PoolFigure {
    HELD,
    AVERAGE,
    REST
  }

  private static Set<Influence> ofUsing(String material) {
    return Set.of(Influence.lots(material), Influence.ENTRIES, Influence.uses(material));
  }

  /** What it cost that an entry used, such as {@code cost.use.strip.2026_03_20}. */
  record UseCost(String material, String entry, int count) implements FactId {
    @Override
    public String name() {
      return "cost.use." + part(material) + "." + part(entry) + (count == 1 ? "" : "." + count);
    }

    @Override
    public boolean isOfTheBooks() {
      return true;
    }

    @Override
    public Set<Influence> influences() {
      return Set.of(Influence.lotsInTurn(material));
    }
  }

  /** What material used cost, such as {@code cost.stage.planking}. */
  record Cost(Span span, String of) implements FactId {
    @Override
    public String name() {
      return span.named("cost", of);
    }

    @Override
    public boolean isListed() {
      return span == Span.TOTAL;
    }

    @Override
    public boolean isOfTheBooks() {
      return !isListed();
    }

    /** Whether a use has a price at all may hang on the lot that it is taken from. */
    @Override
    public Set<Influence> influences() {
      return span == Span.STAGE
          ? Set.of(Influence.ENTRIES, Influence.ALL_LOTS_IN_TURN)
          : Set.of(Influence.ALL_LOTS_IN_TURN);
    }
  }

  /** The left side of a limit that is more than one name, such as {@code limit.afloat}. */
  record LimitSide(String limit) implements FactId {
    @Override
    public String name() {
      return "limit." + part(limit);
    }

    @Override
    public boolean isListed() {
      return true;
    }
  }

  /** An earlier measurement or weighing, such as {@code hull.loa.at_2026_03_20}. */
  record Reading(FactId of, String entry) implements FactId {
    @Override
    public String name() {
      return nameIn(part(entry));
    }

    /** Its name where the entry is called otherwise. */
    public String nameIn(String called) {
      return of.name() + ".at_" + called;
    }
  }

  /** What facts.yaml says of something that was then measured, such as {@code hull.loa.planned}. */
  record Planned(FactId of) implements FactId {
    @Override
    public String name() {
      return of.name() + ".planned";
    }
  }

  /** A figure of a trade reckoning that facts.yaml asks for, such as {@code form.displacement}. */
  record Yielded(String prefix, String reckoning, String yield) implements FactId {
    @Override
    public String name() {
      return prefix + "." + yield;
    }

    @Override
    public boolean isListed() {
      return true;
    }

    @Override
    public boolean isOfMass() {
      return reckoning.equals("balance") || FactId.super.isOfMass();
    }
  }
}
