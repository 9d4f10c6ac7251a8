package chinelog.withhold.question;

import chinelog.log.records.Log;
import chinelog.log.records.Release;
import chinelog.problem.Sentence;
import chinelog.quantity.Quantity;
import chinelog.reckon.Fact;
import chinelog.reckon.Facts;
import chinelog.reckon.Origin;
import chinelog.reckon.Similitude;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Looks for facts that equal a withheld one under another name, at the model's size or at full
 * size: what the maker measured anew, or typed twice.
 */
final class AliasWatch {

  /**
   * Two figures this near were most likely taken off the same thing, whatever their names. Of those
   * worked out there are so many that they must be nearer still; chosen by trial, no source.
   */
  private static final double TWINS = 0.002;

  private final Log log;
  private final Facts facts;
  private final Sight sight;

  /** The sizes of facts that were asked for, by name. */
  private final Map<String, List<Quantity>> sizes = new HashMap<>();

  AliasWatch(Log log, Facts facts, Sight sight) {
    this.log = log;
    this.facts = facts;
    this.sight = sight;
  }

  List<Question> find() {
    List<Fact> open = new ArrayList<>();
    List<Fact> hidden = new ArrayList<>();
    List<Fact> released = new ArrayList<>();
    for (Fact fact : facts.byName().values()) {
      if (!Kinds.isOfTheVessel(fact)) {
        continue;
      }
      if (!sight.allows(Release.Kind.FACT, fact.name(), fact.label())) {
        hidden.add(fact);
      } else if (sight.allows(fact.label())) {
        open.add(fact);
      } else {
        released.add(fact);
      }
    }
    // What equals a released figure tells no more than that does.
    open.removeIf(o -> released.stream().anyMatch(r -> isWithin(o, r, TWINS)));
    List<Pair> pairs = new ArrayList<>();
    for (Fact secret : hidden) {
      for (Fact fact : open) {
        if (!rests(fact, secret) && !rests(secret, fact) && areAlike(fact, secret)) {
          pairs.add(new Pair(fact, secret));
        }
      }
    }
    return pairs.stream()
        .filter(p -> pairs.stream().noneMatch(other -> isBehind(other, p)))
        .map(p -> question(p.open, p.secret))
        .toList();
  }

  private record Pair(Fact open, Fact secret) {}

  /** Whether a pair is alike only because another is, from which its facts are worked out. */
  private boolean isBehind(Pair other, Pair pair) {
    boolean open = other.open.equals(pair.open) || rests(pair.open, other.open);
    boolean secret = other.secret.equals(pair.secret) || rests(pair.secret, other.secret);
    return open && secret && !other.equals(pair);
  }

  private Question question(Fact fact, Fact secret) {
    String found = fact.name() + ", " + Kinds.show(log, fact.value());
    return Question.of(
        Question.Kind.ALIAS,
        log,
        fact.place(),
        found,
        found,
        Sentence.of("the figure {0}, {1}", secret.name(), Kinds.show(log, secret.value())),
        secret.label());
  }

  /** Whether a fact is worked out from another, so that the derivability check has its say. */
  private boolean rests(Fact fact, Fact on) {
    Set<String> seen = new HashSet<>();
    List<String> open = new ArrayList<>(fact.inputs());
    while (!open.isEmpty()) {
      String name = open.remove(open.size() - 1);
      if (name.equals(on.name())) {
        return true;
      }
      if (seen.add(name)) {
        facts.find(name).ifPresent(f -> open.addAll(f.inputs()));
      }
    }
    return false;
  }

  private boolean areAlike(Fact fact, Fact secret) {
    boolean firm = secret.origin() != Origin.RECKONED;
    return isWithin(fact, secret, firm ? TWINS : TWINS / 4)
        || isWithin(fact, secret, log.head().closeness().doubleValue())
            && (firm || Kinds.isOfTheWholeBoat(secret) || Similitude.hasCounterpart(secret, log))
            && isRelated(fact, secret);
  }

  private boolean isWithin(Fact fact, Fact other, double reach) {
    for (Quantity value : sizes.computeIfAbsent(other.name(), name -> sizes(other))) {
      if (value.unit().isCompatible(fact.value().unit())
          && Math.abs(Math.abs(fact.value().coherent() / value.coherent()) - 1) <= reach) {
        return true;
      }
    }
    return false;
  }

  /** As it is, and as it would be at the other size. */
  private List<Quantity> sizes(Fact fact) {
    List<Quantity> sizes = new ArrayList<>(List.of(fact.value()));
    facts
        .find("scale")
        .map(Fact::value)
        .filter(s -> s.value().signum() > 0)
        .flatMap(
            s ->
                Kinds.isFullSize(fact)
                    ? Similitude.findModel(fact.value(), s)
                    : Similitude.findFullSize(fact.value(), s))
        .ifPresent(sizes::add);
    return sizes;
  }

  /** Whether the names or titles of two facts speak of the same thing. */
  private static boolean isRelated(Fact a, Fact b) {
    Set<String> words = TradeWords.near(Kinds.called(a));
    words.retainAll(TradeWords.near(Kinds.called(b)));
    return !words.isEmpty() || Kinds.isOfTheWholeBoat(a) && Kinds.isOfTheWholeBoat(b);
  }
}
