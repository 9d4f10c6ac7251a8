package chinelog.desk.files;

import chinelog.problem.Place;
import chinelog.problem.Problem;
import chinelog.problem.ProblemException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.snakeyaml.engine.v2.common.ScalarStyle;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;

/**
 * A YAML file, or the keys at the top of a note, to be changed value by value: {@code
 * YamlText.of(version).with(List.of("T20_0458.jpg", "alt"), YamlValue.text("A hull")).text()}.
 *
 * <p>Every change is a splice at the places that the parser gives; comments, order, style and line
 * ends of all else stay. After each, the text is read again: it must say what it said before, but
 * for the value that was meant to change, or the change is refused. Steps of a path are keys, or in
 * a list the places of items, from 0.
 */
public final class YamlText {

  private static final Pattern FENCED =
      Pattern.compile(
          "\\A\\ufeff?---[ ]*(\\r\\n|\\r|\\n)(?s:(.*?))(?<=[\\r\\n])---[ ]*(?=[\\r\\n]|\\z)");

  private final String path;
  private final String before;
  private final String yaml;
  private final String after;
  private final @Nullable YamlSpot root;
  private final YamlWriting writing;
  private final String lineEnd;
  private final YamlLines lines;

  private YamlText(String path, String before, String yaml, String after) throws ProblemException {
    this.path = path;
    this.before = before;
    this.yaml = yaml;
    this.after = after;
    this.lineEnd = lineEnd(before + yaml + after);
    this.writing = new YamlWriting(lineEnd);
    this.lines = new YamlLines(yaml, lineEnd);
    this.root = read();
  }

  /**
   * A whole file.
   *
   * @throws ProblemException if it cannot be read as YAML
   */
  public static YamlText of(FileVersion file) throws ProblemException {
    return of(file.path(), file.text());
  }

  static YamlText of(String path, String text) throws ProblemException {
    int start = text.startsWith("\ufeff") ? 1 : 0;
    return new YamlText(path, text.substring(0, start), text.substring(start), "");
  }

  /**
   * The keys between the first two lines {@code ---} of a note, which are put there with the first
   * key where they are missing.
   */
  public static YamlText ofHead(FileVersion note) throws ProblemException {
    String text = note.text();
    Matcher fenced = FENCED.matcher(text);
    if (fenced.find()) {
      int from = fenced.start(2);
      return new YamlText(
          note.path(),
          text.substring(0, from),
          text.substring(from, fenced.end(2)),
          text.substring(fenced.end(2)));
    }
    int start = text.startsWith("\ufeff") ? 1 : 0;
    String end = lineEnd(text);
    return new YamlText(
        note.path(),
        text.substring(0, start) + "---" + end,
        "",
        "---" + end + end + text.substring(start));
  }

  /** The whole text of the file. */
  public String text() {
    return before + yaml + after;
  }

  /** The words that stand at a path; empty where nothing or a list or group stands. */
  public Optional<String> find(List<String> at) {
    return spot(at) instanceof YamlSpot.Scalar s && !s.isNothing()
        ? Optional.of(s.text())
        : Optional.empty();
  }

  /** The words of a list, or the one word that stands in its place. */
  public List<String> words(List<String> at) {
    YamlSpot spot = spot(at);
    if (spot instanceof YamlSpot.Sequence list) {
      return list.items().stream()
          .filter(YamlSpot.Scalar.class::isInstance)
          .map(s -> ((YamlSpot.Scalar) s).text())
          .toList();
    }
    return find(at).map(List::of).orElse(List.of());
  }

  public boolean has(List<String> at) {
    return spot(at) != null;
  }

  /** The keys of a group, in the order written; none where no group stands. */
  public List<String> keys(List<String> at) {
    return spot(at) instanceof YamlSpot.Mapping m
        ? m.pairs().stream().map(p -> p.key().text()).toList()
        : List.of();
  }

  /** How many items a list has. */
  public int size(List<String> at) {
    return spot(at) instanceof YamlSpot.Sequence s ? s.items().size() : 0;
  }

  /** This with a value at a path; the keys on the way are made where they are missing. */
  public YamlText with(List<String> at, YamlValue value) throws ProblemException {
    Object wanted = YamlMeaning.with(meaning(), at, 0, YamlMeaning.of(value));
    int depth = at.size();
    while (depth > 0 && spot(at.subList(0, depth)) == null) {
      depth--;
    }
    YamlValue nested = value;
    for (int i = at.size() - 1; i > depth; i--) {
      nested = new YamlValue.Keys(Map.of(at.get(i), nested), false);
    }
    YamlSpot spot = spot(at.subList(0, depth));
    boolean nothing = spot == null || spot instanceof YamlSpot.Scalar s && s.isNothing();
    if (depth == at.size() && spot != null) {
      return checked(replace(at, spot, nested), wanted);
    }
    if (spot instanceof YamlSpot.Mapping group) {
      return checked(List.of(addPair(group, at.get(depth), nested)), wanted);
    }
    if (!nothing) {
      throw stuck();
    }
    YamlValue.Keys keys = new YamlValue.Keys(Map.of(at.get(depth), nested), false);
    return checked(
        depth == 0 || spot == null
            ? List.of(lines.addLines(yaml.length(), writing.keys(keys, 0)))
            : replace(at.subList(0, depth), spot, keys),
        wanted);
  }

  /** This with one more item at the end of a list, which is made where it is missing. */
  public YamlText plus(List<String> at, YamlValue item) throws ProblemException {
    YamlSpot spot = spot(at);
    if (spot instanceof YamlSpot.Sequence list && !list.items().isEmpty()) {
      Object wanted = YamlMeaning.plus(meaning(), at, 0, YamlMeaning.of(item));
      YamlSpot last = list.items().get(list.items().size() - 1);
      Splice splice =
          list.flow()
              ? lines.addToFlow(last.to(), writing.flow(item))
              : lines.addLines(list.lineAfter(), writing.item(item, lines.column(list.from())));
      return checked(List.of(splice), wanted);
    }
    if (at.isEmpty() && (spot == null || spot instanceof YamlSpot.Scalar s && s.isNothing())) {
      Object wanted = YamlMeaning.of(new YamlValue.Items(List.of(item), false));
      return checked(List.of(lines.addLines(yaml.length(), writing.item(item, 0))), wanted);
    }
    List<YamlValue> items = new ArrayList<>();
    if (spot instanceof YamlSpot.Scalar one && !one.isNothing()) {
      items.add(YamlValue.text(one.text()));
    }
    items.add(item);
    boolean flow = items.size() > 1 || spot instanceof YamlSpot.Sequence;
    return with(at, new YamlValue.Items(items, flow));
  }

  /** This without what stands at a path, and without a group or list that is left empty by that. */
  public YamlText without(List<String> at) throws ProblemException {
    if (spot(at) == null) {
      return this;
    }
    List<String> what = at;
    while (what.size() > 1 && isAlone(what)) {
      what = what.subList(0, what.size() - 1);
    }
    Object wanted = YamlMeaning.without(meaning(), what, 0);
    String key = what.get(what.size() - 1);
    YamlSpot parent = spot(what.subList(0, what.size() - 1));
    Splice splice;
    if (parent instanceof YamlSpot.Mapping group) {
      int index = keys(what.subList(0, what.size() - 1)).indexOf(key);
      List<int[]> spans = new ArrayList<>();
      group.pairs().forEach(p -> spans.add(span(p.key().from(), p.value())));
      splice = group.flow() ? lines.takeFromFlow(spans, index) : lines.takeLines(spans, index);
    } else if (parent instanceof YamlSpot.Sequence list) {
      List<int[]> spans = new ArrayList<>();
      for (YamlSpot item : list.items()) {
        spans.add(span(list.flow() ? item.from() : lines.dash(item.from()), item));
      }
      int index = Integer.parseInt(key);
      splice = list.flow() ? lines.takeFromFlow(spans, index) : lines.takeLines(spans, index);
    } else {
      throw stuck();
    }
    return checked(List.of(splice), wanted);
  }

  private Object meaning() {
    return root == null ? YamlSpot.Nothing.NOTHING : root.meaning();
  }

  private @Nullable YamlSpot spot(List<String> at) {
    YamlSpot spot = root;
    for (String step : at) {
      if (spot instanceof YamlSpot.Mapping group) {
        YamlSpot.Pair pair = group.find(step);
        spot = pair == null ? null : pair.value();
      } else if (spot instanceof YamlSpot.Sequence list && step.matches("[0-9]{1,6}")) {
        int index = Integer.parseInt(step);
        spot = index < list.items().size() ? list.items().get(index) : null;
      } else {
        return null;
      }
    }
    return spot;
  }

  private boolean isAlone(List<String> at) {
    YamlSpot parent = spot(at.subList(0, at.size() - 1));
    return parent instanceof YamlSpot.Mapping m && m.pairs().size() == 1
        || parent instanceof YamlSpot.Sequence s && s.items().size() == 1;
  }

  private List<Splice> replace(List<String> at, YamlSpot old, YamlValue value) {
    YamlSpot parent = spot(at.subList(0, at.size() - 1));
    boolean inFlow = isInFlow(at);
    ScalarStyle like = old instanceof YamlSpot.Scalar s ? s.style() : null;
    if (inFlow) {
      return List.of(new Splice(old.from(), old.to(), room(old) + writing.flow(value)));
    }
    boolean isBlock =
        old instanceof YamlSpot.Mapping m && !m.flow()
            || old instanceof YamlSpot.Sequence s && !s.flow();
    if (parent instanceof YamlSpot.Mapping group) {
      YamlSpot.Scalar key = pair(group, at.get(at.size() - 1)).key();
      int colon = yaml.indexOf(':', key.to());
      String written = writing.after(value, lines.column(key.from()), like);
      boolean onLines = written.startsWith(lineEnd);
      boolean empty = old instanceof YamlSpot.Scalar s && s.isNothing() && s.text().isEmpty();
      return isBlock || empty || onLines
          ? List.of(
              new Splice(colon + 1, empty ? colon + 1 : old.to(), (onLines ? "" : " ") + written))
          : List.of(new Splice(old.from(), old.to(), written));
    }
    // An item: a group of keys may begin on the line of its dash.
    int dash = lines.dash(old.from());
    String written = writing.item(value, lines.column(dash)).stripLeading().substring(1);
    return List.of(new Splice(dash + 1, old.to(), written));
  }

  private boolean isInFlow(List<String> at) {
    for (int i = 0; i < at.size(); i++) {
      YamlSpot around = spot(at.subList(0, i));
      if (around instanceof YamlSpot.Mapping m && m.flow()
          || around instanceof YamlSpot.Sequence s && s.flow()) {
        return true;
      }
    }
    return false;
  }

  /** A space where a value is put straight after a colon. */
  private String room(YamlSpot old) {
    return old.from() > 0 && yaml.charAt(old.from() - 1) == ':' ? " " : "";
  }

  private static YamlSpot.Pair pair(YamlSpot.Mapping group, String key) {
    YamlSpot.Pair pair = group.find(key);
    if (pair == null) {
      throw new IllegalArgumentException(key);
    }
    return pair;
  }

  private Splice addPair(YamlSpot.Mapping group, String key, YamlValue value) {
    if (!group.flow()) {
      return lines.addLines(
          group.lineAfter(),
          writing.pair(key, value, lines.column(group.pairs().get(0).key().from())));
    }
    String written = writing.key(key) + ": " + writing.flow(value);
    return group.pairs().isEmpty()
        ? Splice.insert(group.from() + 1, written)
        : lines.addToFlow(group.pairs().get(group.pairs().size() - 1).value().to(), written);
  }

  private static int[] span(int from, YamlSpot value) {
    return new int[] {from, value.to(), value.lineAfter()};
  }

  private YamlText checked(List<Splice> splices, Object wanted) throws ProblemException {
    YamlText next = new YamlText(path, before, Splice.apply(yaml, splices), after);
    if (!next.meaning().equals(wanted)) {
      throw stuck();
    }
    return next;
  }

  private @Nullable YamlSpot read() throws ProblemException {
    try {
      return YamlSpot.read(yaml);
    } catch (MarkedYamlEngineException e) {
      Optional<Mark> mark = e.getProblemMark().or(e::getContextMark);
      int above = (int) before.lines().count();
      throw new ProblemException(
          Problem.error(
              Place.of(
                  path,
                  mark.map(Mark::getLine).orElse(0) + 1 + (before.length() > 1 ? above : 0),
                  mark.map(Mark::getColumn).orElse(0) + 1),
              "This is not written as YAML can be read.",
              "Open the file as text and put this line right."));
    } catch (YamlEngineException e) {
      throw stuck();
    }
  }

  private ProblemException stuck() {
    return new ProblemException(
        Problem.error(
            Place.of(path),
            "This is written in a way that can only be changed by hand.",
            "Open the file as text and change it there."));
  }

  private static String lineEnd(String text) {
    int lf = text.indexOf('\n');
    int cr = text.indexOf('\r');
    return cr >= 0 && lf == cr + 1 ? "\r\n" : cr >= 0 && lf < 0 ? "\r" : "\n";
  }
}
