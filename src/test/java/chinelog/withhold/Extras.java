package chinelog.withhold;

import chinelog.label.Agreement;
import chinelog.label.Label;
import chinelog.label.Presence;
import chinelog.log.records.Entry;
import chinelog.log.records.HandoverSection;
import chinelog.log.records.Limit;
import chinelog.log.records.Lot;
import chinelog.log.records.Marked;
import chinelog.log.records.PhotoFile;
import chinelog.log.records.PostPlan;
import chinelog.log.records.Release;
import chinelog.log.records.Request;
import chinelog.log.records.Stage;
import chinelog.log.records.Statement;
import chinelog.log.records.Table;
import chinelog.log.text.Block;
import chinelog.log.text.Inline;
import chinelog.problem.Place;
import chinelog.quantity.Quantity;
import chinelog.quantity.Unit;
import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Supplier;

/**
 * Things under {@code client}, of which nothing may show, that a build has and its twin has not, or
 * has otherwise.
 */
final class Extras {

  static final Label CLIENT = Label.of("client");

  private final Random secret;
  private final boolean adds;
  private final Supplier<String> hidden;
  private final Coverage coverage;
  private int line = 100_000;

  /**
   * @param adds whether there are any
   * @param hidden makes a text that is not to be seen
   */
  Extras(Random secret, boolean adds, Supplier<String> hidden, Coverage coverage) {
    this.secret = secret;
    this.adds = adds;
    this.hidden = hidden;
    this.coverage = coverage;
  }

  boolean adds() {
    return adds;
  }

  /** Whether this build has an extra thing of a kind. */
  boolean has(String kind, int oneIn) {
    boolean has = adds && secret.nextInt(oneIn) == 0;
    if (has) {
      coverage.added(kind);
    }
    return has;
  }

  private Place at() {
    return Place.of("log", ++line, 1);
  }

  private Quantity quantity(String unit, int most) {
    return Quantity.of(1 + secret.nextInt(most), RandomBuild.unit(unit));
  }

  private LocalDate day() {
    return LocalDate.of(2026, 2, 1).plusDays(secret.nextInt(100));
  }

  Inline phrase(Label around) {
    return new Inline.Phrase(List.of(new Inline.Text(hidden.get())), around.join(CLIENT), at());
  }

  Block paragraph(Label around) {
    return new Block.Paragraph(
        List.of(
            new Inline.Text(hidden.get()),
            new Inline.FactLink("full.beam", "", at()),
            new Inline.FactLink("hull.draught", "", at())),
        around.join(CLIENT),
        at());
  }

  Entry entry(int i) {
    String id = (secret.nextBoolean() ? "extra-" : "a-") + i;
    return new Entry(
        id,
        new Marked<>(hidden.get(), CLIENT, at()),
        day(),
        List.of("moulds", "planking", "rigging", "sanding", "").get(secret.nextInt(5)),
        List.of(paragraph(CLIENT)),
        secret.nextBoolean() ? List.of() : List.of(worked(Label.NONE)),
        secret.nextBoolean() ? List.of() : List.of(use(Label.NONE)),
        secret.nextBoolean() ? List.of() : List.of(measured("hull.draught", Label.NONE)),
        secret.nextBoolean() ? List.of() : List.of(weighed("p0", Label.NONE)),
        CLIENT,
        Place.of("entries/" + id + ".md", 1, 1));
  }

  Entry.Worked worked(Label label) {
    return new Entry.Worked(
        null, null, Duration.ofMinutes(15 * (1 + secret.nextInt(30))), label, at());
  }

  Entry.Use use(Label label) {
    String material = RandomBuild.MATERIALS.get(secret.nextInt(3));
    return new Entry.Use(
        material,
        Quantity.of(1 + secret.nextInt(9), Unit.ONE),
        secret.nextInt(4) == 0 ? "waste" : "",
        label,
        at());
  }

  Entry.Measurement measured(String fact, Label label) {
    return new Entry.Measurement(fact, quantity("mm", 700), hidden.get(), label, at());
  }

  Entry.Weighing weighed(String part, Label label) {
    return new Entry.Weighing(part, quantity("g", 900), "", quantity("mm", 9), null, label, at());
  }

  PhotoFile photo(String path) {
    return new PhotoFile(
        path, List.of(), "", List.of(), List.of(), false, null, null, null, CLIENT, at());
  }

  List<Lot> lots(String material) {
    return has("lot", 2)
        ? List.of(
            new Lot(
                material,
                hidden.get(),
                Quantity.of(1 + secret.nextInt(90), Unit.ONE),
                secret.nextInt(3) == 0 ? null : new Marked<>(quantity("GBP", 99), CLIENT, at()),
                null,
                secret.nextInt(4) == 0 ? null : day(),
                List.of("solvent"),
                "a dull patch",
                CLIENT,
                at()))
        : List.of();
  }

  List<Statement> statements() {
    List<Statement> extra = new ArrayList<>();
    for (String name : List.of("hull.draught", "hull.m0", "mass.p9", "secret.length")) {
      if (has("statement", 3)) {
        String is = name.startsWith("mass.") ? quantity("g", 900) + "" : quantity("mm", 900) + "";
        extra.add(new Statement(name, hidden.get(), is, null, day(), CLIENT, at(), at()));
      }
    }
    return extra;
  }

  List<Request> requests() {
    return has("request", 3)
        ? List.of(
            new Request(
                "own",
                new Marked<>("curve", Label.NONE, at()),
                new TreeMap<>(Map.of("ordinates", new Marked<>("ordinates", Label.NONE, at()))),
                CLIENT,
                at()))
        : List.of();
  }

  List<Limit> limits() {
    return has("limit", 2)
        ? List.of(new Limit("extra", hidden.get(), "hull.draught <= 1 mm", CLIENT, at()))
        : List.of();
  }

  /** A post that tells entries which are seen. */
  List<PostPlan> posts(List<String> entries) {
    return has("post", 2)
        ? List.of(new PostPlan(hidden.get(), hidden.get(), entries, null, CLIENT, at()))
        : List.of();
  }

  List<HandoverSection> handover() {
    return has("handover section", 2)
        ? List.of(
            new HandoverSection("spares", hidden.get(), List.of(paragraph(CLIENT)), CLIENT, at()))
        : List.of();
  }

  List<Stage> stages() {
    return has("stage", 2)
        ? List.of(
            new Stage(
                "extra",
                hidden.get(),
                List.of(paragraph(CLIENT)),
                day(),
                day(),
                quantity("h", 30),
                CLIENT,
                at()))
        : List.of();
  }

  void budgets(SortedMap<String, Marked<Quantity>> budgets) {
    if (has("budget", 2)) {
      budgets.put("mass", new Marked<>(quantity("kg", 5), CLIENT, at()));
    }
  }

  List<Table> tables() {
    return has("table", 3)
        ? List.of(
            new Table(
                "extra",
                List.of(new Table.Column("y", RandomBuild.unit("mm"), Label.NONE, at())),
                List.of(new Table.Row(List.of(cell()), Label.NONE, at())),
                CLIENT,
                at()))
        : List.of();
  }

  Table.Cell cell() {
    Quantity quantity = quantity("mm", 90);
    return new Table.Cell(quantity.toString(), quantity, at());
  }

  Table.Row row(int cells) {
    List<Table.Cell> row = new ArrayList<>();
    row.add(new Table.Cell("9000", Quantity.of(9000, RandomBuild.unit("mm")), at()));
    while (row.size() < cells) {
      row.add(cell());
    }
    return new Table.Row(row, CLIENT, at());
  }

  /** An agreement that nothing else is under. */
  void agreements(Map<String, Agreement> agreements) {
    if (has("agreement", 3)) {
      agreements.put(
          "another",
          new Agreement(
              "another", hidden.get(), hidden.get(), null, null, false, Presence.NOTHING));
    }
  }

  /** Releases to others than these readers. */
  List<Release> releases() {
    return has("release", 2)
        ? List.of(
            new Release(
                Release.Kind.FACT,
                "hull.draught",
                "client",
                hidden.get(),
                day(),
                hidden.get(),
                Set.of("workshop"),
                at()))
        : List.of();
  }
}
