package chinelog.desk.files;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Compose;
import org.snakeyaml.engine.v2.common.FlowStyle;
import org.snakeyaml.engine.v2.common.ScalarStyle;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;

/** Where a value stands in a YAML text: from its first code unit to after its last. */
sealed interface YamlSpot {

  int from();

  /** After the last code unit that is part of the value, without what ends its line. */
  int to();

  /**
   * Where a line may be put in after it at the earliest; later than {@code to} after a {@code |+}.
   */
  int lineAfter();

  /** What it says, apart from how it is written. */
  Object meaning();

  /** Stands for a value that is not there. */
  enum Nothing {
    NOTHING
  }

  record Scalar(int from, int to, int lineAfter, String text, ScalarStyle style)
      implements YamlSpot {

    boolean isNothing() {
      return style == ScalarStyle.PLAIN
          && (text.isEmpty() || text.equals("~") || text.equals("null"));
    }

    @Override
    public Object meaning() {
      return isNothing() ? Nothing.NOTHING : text;
    }
  }

  record Sequence(int from, int to, int lineAfter, boolean flow, List<YamlSpot> items)
      implements YamlSpot {
    @Override
    public Object meaning() {
      return items.stream().map(YamlSpot::meaning).toList();
    }
  }

  record Mapping(int from, int to, int lineAfter, boolean flow, List<Pair> pairs)
      implements YamlSpot {

    @Nullable Pair find(String key) {
      return pairs.stream().filter(p -> p.key.text.equals(key)).findFirst().orElse(null);
    }

    @Override
    public Object meaning() {
      Map<String, Object> meaning = new LinkedHashMap<>();
      pairs.forEach(p -> meaning.put(p.key.text, p.value.meaning()));
      return meaning;
    }
  }

  record Pair(Scalar key, YamlSpot value) {}

  /**
   * The value of a whole text without byte order mark; null if there is none.
   *
   * @throws YamlEngineException if it is no YAML, or more than is known here
   */
  static @Nullable YamlSpot read(String text) {
    Optional<Node> root =
        new Compose(LoadSettings.builder().setAllowDuplicateKeys(false).build())
            .composeString(text);
    return root.map(n -> new Positions(text).spot(n)).orElse(null);
  }

  /** Turns the parser's places, counted in code points, into offsets. */
  final class Positions {

    private final String text;
    private final boolean plain;

    Positions(String text) {
      this.text = text;
      this.plain = text.chars().noneMatch(c -> Character.isSurrogate((char) c));
    }

    private int offset(Optional<Mark> mark) {
      int codePoints = mark.orElseThrow().getIndex();
      return plain ? codePoints : text.offsetByCodePoints(0, codePoints);
    }

    YamlSpot spot(Node node) {
      int from = offset(node.getStartMark());
      int end = offset(node.getEndMark());
      if (node instanceof ScalarNode scalar) {
        return scalar(scalar, from, end);
      }
      if (node instanceof SequenceNode sequence) {
        boolean flow = sequence.getFlowStyle() == FlowStyle.FLOW;
        List<YamlSpot> items = sequence.getValue().stream().map(this::spot).toList();
        YamlSpot last = items.isEmpty() ? null : items.get(items.size() - 1);
        return new Sequence(
            from,
            flow || last == null ? end : last.to(),
            flow || last == null ? end : last.lineAfter(),
            flow,
            items);
      }
      if (node instanceof MappingNode mapping) {
        boolean flow = mapping.getFlowStyle() == FlowStyle.FLOW;
        List<Pair> pairs = new ArrayList<>();
        for (NodeTuple tuple : mapping.getValue()) {
          if (!(spot(tuple.getKeyNode()) instanceof Scalar key)) {
            throw new YamlEngineException("a key is no single word");
          }
          pairs.add(new Pair(key, spot(tuple.getValueNode())));
        }
        YamlSpot last = pairs.isEmpty() ? null : pairs.get(pairs.size() - 1).value;
        return new Mapping(
            from,
            flow || last == null ? end : last.to(),
            flow || last == null ? end : last.lineAfter(),
            flow,
            pairs);
      }
      throw new YamlEngineException("unknown kind of value");
    }

    private Scalar scalar(ScalarNode scalar, int from, int end) {
      int to = end;
      ScalarStyle style = scalar.getScalarStyle();
      if (style == ScalarStyle.LITERAL || style == ScalarStyle.FOLDED) {
        while (to > from && Character.isWhitespace(text.charAt(to - 1))) {
          to--;
        }
      }
      boolean keeps = to < end && text.substring(from, to).matches("(?s)[|>][0-9]?\\+.*");
      return new Scalar(from, to, keeps ? end : to, scalar.getValue(), style);
    }
  }
}
