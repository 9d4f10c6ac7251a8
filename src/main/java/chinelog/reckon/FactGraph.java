package chinelog.reckon;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/** Reckons nodes in an order in which each finds what it needs; walks without recursion. */
final class FactGraph {

  private static final int DEEPEST = 5000;

  private enum State {
    OPEN,
    DONE,
    FAILED
  }

  /** A node on the way down, with how many of its needs have been seen to. */
  private static final class Step {
    final Node node;
    int seen;
    boolean failed;

    Step(Node node) {
      this.node = node;
    }
  }

  private final Ledger ledger;
  private final SortedMap<String, Node> byFact = new TreeMap<>();
  private final SortedMap<String, Node> byPrefix = new TreeMap<>();
  private final Map<Node, State> states = new HashMap<>();
  private final Map<Node, Integer> depths = new HashMap<>();

  FactGraph(Ledger ledger) {
    this.ledger = ledger;
  }

  /** Adds a node that yields one fact of its own name; false if there is one already. */
  boolean add(Node node) {
    return byFact.putIfAbsent(node.name(), node) == null;
  }

  /** Adds a node that yields facts whose names begin with its own and a dot. */
  void addPrefix(Node node) {
    byPrefix.putIfAbsent(node.name(), node);
  }

  /** Every name that a formula may use. */
  SortedSet<String> names() {
    SortedSet<String> names = new TreeSet<>(ledger.facts().keySet());
    names.addAll(byFact.keySet());
    return names;
  }

  void reckonAll() {
    byFact.values().forEach(this::reckon);
    byPrefix.values().forEach(this::reckon);
  }

  private void reckon(Node start) {
    if (states.containsKey(start)) {
      return;
    }
    Deque<Step> path = new ArrayDeque<>();
    path.push(new Step(start));
    states.put(start, State.OPEN);
    while (!path.isEmpty()) {
      Step step = path.element();
      if (step.seen == step.node.needs().size()) {
        boolean done =
            !step.failed
                && areNeedsMet(step.node)
                && isWithinReach(step.node)
                && step.node.yield(ledger);
        states.put(step.node, done ? State.DONE : State.FAILED);
        path.pop();
        if (!path.isEmpty()) {
          path.element().failed |= !done;
        }
        continue;
      }
      String need = step.node.needs().get(step.seen++);
      Node source = find(need).orElse(null);
      if (source != null) {
        visit(path, step, source);
      } else if (ledger.find(need).isEmpty()) {
        tellUnknown(step.node, need);
        step.failed = true;
      }
    }
  }

  /** Whatever walks down the facts later need not fear for its stack. */
  private boolean isWithinReach(Node node) {
    int below = 0;
    for (String need : node.needs()) {
      below = Math.max(below, find(need).map(n -> depths.getOrDefault(n, 0)).orElse(0));
    }
    depths.put(node, below + 1);
    if (below == DEEPEST) {
      node.tooDeep(ledger, DEEPEST);
    }
    return below < DEEPEST;
  }

  /** What could not be had has been told where it failed. */
  private void tellUnknown(Node node, String need) {
    if (!ledger.isBroken(need)) {
      node.unknown(ledger, need, this);
    }
  }

  private void visit(Deque<Step> path, Step step, Node source) {
    State state = states.get(source);
    if (state == null) {
      states.put(source, State.OPEN);
      path.push(new Step(source));
    } else if (state == State.OPEN) {
      step.failed = true;
      source.circular(ledger, circle(path, source));
    } else {
      step.failed |= state == State.FAILED;
    }
  }

  /** A request may have been reckoned without yielding the very fact that is needed. */
  private boolean areNeedsMet(Node node) {
    boolean met = true;
    for (String need : node.needs()) {
      if (ledger.find(need).isEmpty()) {
        tellUnknown(node, need);
        met = false;
      }
    }
    return met;
  }

  private static List<String> circle(Deque<Step> path, Node source) {
    List<String> names = new ArrayList<>();
    Set<String> seen = new HashSet<>();
    for (Step step : path) {
      if (seen.add(step.node.name())) {
        names.add(0, step.node.name());
      }
      if (step.node == source) {
        break;
      }
    }
    names.add(source.name());
    return names;
  }

  private Optional<Node> find(String need) {
    Node own = byFact.get(need);
    return own != null
        ? Optional.of(own)
        : ledger.find(need).isPresent() ? Optional.empty() : Optional.ofNullable(byPrefix(need));
  }

  /** The request with the longest prefix of the name. */
  private @Nullable Node byPrefix(String need) {
    for (int dot = need.lastIndexOf('.'); dot > 0; dot = need.lastIndexOf('.', dot - 1)) {
      Node node = byPrefix.get(need.substring(0, dot));
      if (node != null) {
        return node;
      }
    }
    return null;
  }
}
