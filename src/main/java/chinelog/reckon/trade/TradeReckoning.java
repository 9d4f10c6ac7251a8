package chinelog.reckon.trade;

import chinelog.problem.Sentence;
import chinelog.problem.Suggestion;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** One of the trade's reckonings, such as {@code hull-form}: what it takes and what it yields. */
public final class TradeReckoning {

  private final String name;
  private final String title;
  private final List<Parameter> parameters;
  private final Computation computation;
  private final List<Offer> offers;
  private final Drawing drawing;
  private final Sketching sketching;
  private final LatestResults<List<Yield>> reckoned = new LatestResults<>();
  private final LatestResults<List<Part>> drawn = new LatestResults<>();
  private final LatestResults<List<Sketch>> sketched = new LatestResults<>();

  /**
   * A figure that a reckoning may yield, such as {@code volume}.
   *
   * @param name the end of it {@code …} where there is one for each row of a table
   * @param title key of its title in {@code chinelog.reckon.messages}
   */
  public record Offer(String name, String title) {}

  /** The computation itself; its inputs have passed {@link #reckon}'s checks. */
  interface Computation {
    List<Yield> apply(Inputs inputs) throws TradeException, QuantityException;
  }

  /** What it draws of the same inputs, where it draws. */
  interface Drawing {
    List<Part> draw(Inputs inputs) throws TradeException, QuantityException;
  }

  /** What it shows of the same inputs in drawings to look at, where it does. */
  interface Sketching {
    List<Sketch> sketch(Inputs inputs) throws TradeException, QuantityException;
  }

  TradeReckoning(String name, String title, List<Parameter> parameters, Computation computation) {
    this(name, title, parameters, computation, List.of(), inputs -> List.of(), inputs -> List.of());
  }

  private TradeReckoning(
      String name,
      String title,
      List<Parameter> parameters,
      Computation computation,
      List<Offer> offers,
      Drawing drawing,
      Sketching sketching) {
    this.name = name;
    this.title = title;
    this.parameters = List.copyOf(parameters);
    this.computation = computation;
    this.offers = List.copyOf(offers);
    this.drawing = drawing;
    this.sketching = sketching;
  }

  /** This with what it yields: a name and the key of its title by turns. */
  TradeReckoning yielding(String... namesAndTitles) {
    List<Offer> all = new ArrayList<>(offers);
    for (int i = 0; i < namesAndTitles.length; i += 2) {
      all.add(new Offer(namesAndTitles[i], namesAndTitles[i + 1]));
    }
    return new TradeReckoning(name, title, parameters, computation, all, drawing, sketching);
  }

  /** This with what it draws. */
  TradeReckoning drawing(Drawing parts) {
    return new TradeReckoning(name, title, parameters, computation, offers, parts, sketching);
  }

  /** This with the drawings in which it shows what it reckons. */
  TradeReckoning sketching(Sketching sketches) {
    return new TradeReckoning(name, title, parameters, computation, offers, drawing, sketches);
  }

  /** What it may yield, in the order to be shown. */
  public List<Offer> offers() {
    return offers;
  }

  /** A log's files that have it reckoned. */
  public Example example() {
    return Example.of(name);
  }

  /** As facts.yaml asks for it, such as {@code hull-form}. */
  public String name() {
    return name;
  }

  /** In words, such as "The form of a hull from its table of offsets". */
  public String title() {
    return title;
  }

  /** What it takes, in the order to be shown. */
  public List<Parameter> parameters() {
    return parameters;
  }

  public Optional<Parameter> findParameter(String parameter) {
    return parameters.stream().filter(p -> p.name().equals(parameter)).findFirst();
  }

  /**
   * Reckons. The tolerance of each quantity given is carried through: the reckoning is done again
   * with the quantity at either end of its tolerance, and the larger changes are added up (worst
   * case).
   *
   * @throws TradeException saying which input stands in the way and what to do about it
   */
  public List<Yield> reckon(Inputs inputs) throws TradeException {
    Object given = inputs.key();
    List<Yield> known = reckoned.get(given);
    return known == null ? reckoned.keep(given, reckonAnew(inputs)) : known;
  }

  private List<Yield> reckonAnew(Inputs inputs) throws TradeException {
    check(inputs);
    List<Yield> nominal = compute(inputs);
    Map<String, BigDecimal> spread = new TreeMap<>();
    for (Map.Entry<String, Quantity> given : inputs.quantities().entrySet()) {
      BigDecimal tolerance = given.getValue().tolerance();
      if (tolerance != null && tolerance.signum() > 0) {
        widen(spread, nominal, inputs, given.getKey(), given.getValue(), tolerance);
      }
    }
    List<Yield> result = new ArrayList<>();
    for (Yield yield : nominal) {
      result.add(withSpread(yield, spread.get(yield.name())));
    }
    return List.copyOf(result);
  }

  /**
   * Draws the parts that can be cut from what is given; none where the reckoning draws nothing.
   *
   * @throws TradeException saying which input stands in the way and what to do about it
   */
  public List<Part> draw(Inputs inputs) throws TradeException {
    Object given = inputs.key();
    List<Part> known = drawn.get(given);
    if (known != null) {
      return known;
    }
    check(inputs);
    try {
      return drawn.keep(given, List.copyOf(drawing.draw(inputs)));
    } catch (QuantityException e) {
      throw new TradeException("", e.what(), e.remedy());
    }
  }

  /**
   * Shows what it reckons in drawings to look at; none where it shows nothing.
   *
   * @throws TradeException saying which input stands in the way and what to do about it
   */
  public List<Sketch> sketch(Inputs inputs) throws TradeException {
    Object given = inputs.key();
    List<Sketch> known = sketched.get(given);
    if (known != null) {
      return known;
    }
    check(inputs);
    try {
      return sketched.keep(given, List.copyOf(sketching.sketch(inputs)));
    } catch (QuantityException e) {
      throw new TradeException("", e.what(), e.remedy());
    }
  }

  /** All that it comes to. */
  record Result(List<Yield> yields, List<Part> parts, List<Sketch> sketches) {}

  /** Whether it is known at once what comes of these inputs. */
  boolean remembers(Inputs inputs) {
    Object given = inputs.key();
    return reckoned.get(given) != null && drawn.get(given) != null && sketched.get(given) != null;
  }

  /** Takes over what came of these inputs before. */
  void remember(Inputs inputs, Result result) {
    Object given = inputs.key();
    reckoned.keep(given, result.yields);
    drawn.keep(given, result.parts);
    sketched.keep(given, result.sketches);
  }

  private static Yield withSpread(Yield yield, @Nullable BigDecimal spread) {
    if (spread == null || spread.signum() == 0) {
      return yield;
    }
    BigDecimal own = yield.value().tolerance();
    BigDecimal whole = own == null ? spread : spread.add(own);
    try {
      return yield.with(yield.value().withTolerance(Quantity.of(whole, yield.value().unit())));
    } catch (QuantityException e) {
      throw new IllegalStateException("a unit did not agree with itself", e);
    }
  }

  private void widen(
      Map<String, BigDecimal> spread,
      List<Yield> nominal,
      Inputs inputs,
      String input,
      Quantity value,
      BigDecimal tolerance)
      throws TradeException {
    Map<String, Quantity> centre =
        nominal.stream().collect(Collectors.toMap(Yield::name, Yield::value));
    Map<String, BigDecimal> change = new TreeMap<>();
    for (BigDecimal step : List.of(tolerance, tolerance.negate())) {
      Quantity end = Quantity.of(value.value().add(step), value.unit());
      for (Yield yield : atTheEnd(inputs.with(input, end), input, value)) {
        Quantity middle = centre.get(yield.name());
        if (middle != null && middle.unit().equals(yield.value().unit())) {
          BigDecimal moved = yield.value().value().subtract(middle.value()).abs();
          change.merge(yield.name(), moved, BigDecimal::max);
        }
      }
    }
    change.forEach((yield, moved) -> spread.merge(yield, moved, BigDecimal::add));
  }

  private List<Yield> atTheEnd(Inputs inputs, String input, Quantity value) throws TradeException {
    try {
      return compute(inputs);
    } catch (TradeException e) {
      throw new TradeException(
          input,
          Sentence.of(
              "The tolerance of \"{0}\", {1}, reaches too far: {2}", input, value, e.what()),
          "Give a smaller tolerance, or measure it again.",
          e.place());
    }
  }

  private List<Yield> compute(Inputs inputs) throws TradeException {
    try {
      return computation.apply(inputs);
    } catch (QuantityException e) {
      throw new TradeException("", e.what(), e.remedy());
    }
  }

  private void check(Inputs inputs) throws TradeException {
    for (String given : inputs.names()) {
      if (findParameter(given).isEmpty() && !isOfSolid(given)) {
        throw new TradeException(
            given,
            Sentence.of("The reckoning \"{0}\" takes no \"{1}\".", name, given),
            Sentence.of(
                "{0} {1}",
                Suggestion.findNearest(given, parameters.stream().map(Parameter::name).toList())
                    .map(Suggestion::of)
                    .orElseGet(() -> Sentence.of("It takes:{0}", "\n" + page() + "\n")),
                more()));
      }
    }
    for (Parameter parameter : parameters) {
      check(parameter, inputs);
    }
  }

  private void check(Parameter parameter, Inputs inputs) throws TradeException {
    String key = parameter.name();
    if (parameter.required() && !inputs.names().contains(key)) {
      throw new TradeException(
          key,
          Sentence.of("The reckoning \"{0}\" needs \"{1}\".", name, key),
          Sentence.of("Write \"{0}\". {1}", parameter.line(), more()));
    }
    Quantity quantity = inputs.quantities().get(key);
    if (quantity != null && !quantity.unit().isCompatible(parameter.unit())) {
      String wanted = parameter.unit().symbol();
      throw new TradeException(
          key,
          Sentence.of("\"{0}\" is {1}, which is not of the right kind.", key, quantity),
          Sentence.of(
              wanted.isEmpty()
                  ? "Give a plain number: {1}. {2}"
                  : "Give a quantity such as 1 {0}: {1}. {2}",
              wanted,
              Sentence.of(parameter.title()),
              more()));
    }
    String word = inputs.words().get(key);
    if (word != null
        && parameter.kind() == Parameter.Kind.WORD
        && !parameter.choices().isEmpty()
        && !parameter.choices().contains(word)) {
      throw new TradeException(
          key,
          Sentence.of("\"{0}\" is no word for \"{1}\".", word, key),
          Sentence.of("Write one of {0}.", String.join(", ", parameter.choices())));
    }
  }

  /** Whether an input is a figure of one of the solids, such as {@code appendages.fin.volume}. */
  private boolean isOfSolid(String given) {
    int dot = given.indexOf('.');
    return dot > 0
        && findParameter(given.substring(0, dot))
            .filter(p -> p.kind() == Parameter.Kind.SOLIDS)
            .isPresent();
  }

  /** What it takes, a line each. */
  private String page() {
    return parameters.stream().map(p -> "  " + p.line()).collect(Collectors.joining("\n"));
  }

  private Sentence more() {
    return Sentence.of("\"reckon --list {0}\" tells all of it, with an example.", name);
  }
}
