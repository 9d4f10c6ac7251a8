package chinelog.log;

import chinelog.log.reading.Fields;
import chinelog.log.reading.Scope;
import chinelog.log.reading.Source;
import chinelog.log.reading.Yaml;
import chinelog.log.reading.YamlParser;
import chinelog.problem.Place;
import java.util.List;
import java.util.regex.Pattern;

/**
 * A note divided into the YAML between its first two lines {@code ---} and its text.
 *
 * @param fields empty where the note has no such lines
 */
record FrontMatter(Yaml.Mapping fields, Source text) {

  private static final Pattern FENCE = Pattern.compile("-{3}[ ]*");
  private static final Pattern ALMOST_FENCE = Pattern.compile("\\s*[-–—_]{2,}\\s*");
  private static final Pattern STRAY_KEY =
      Pattern.compile("\\s*(under|date|stage|time|used|measured|weighed)\\s*:.*");

  static FrontMatter split(Source source, Scope scope) {
    Yaml.Mapping none = new Yaml.Mapping(List.of(), source.at(0));
    if (!FENCE.matcher(source.line(0)).matches()) {
      if (!refuseAlmost(source, scope)) {
        KeyWatch.refuseInText(source, scope);
      }
      return new FrontMatter(none, source);
    }
    int end = 1;
    while (end < source.lines() && !FENCE.matcher(source.line(end)).matches()) {
      end++;
    }
    if (end == source.lines()) {
      scope.error(
          source.at(0),
          "The keys at the top of this note are not closed.",
          "Write a second line \"---\" after them.");
      return new FrontMatter(none, source.fromLine(source.text().length()));
    }
    int from = source.offset(1, 0);
    int to = source.offset(end, 0);
    int rest = source.offset(end, Integer.MAX_VALUE);
    String yaml = source.text().substring(from, to);
    Place start = Place.of(source.file(), 2, 1);
    Source keys = Source.inFile(start, yaml, 1);
    Yaml root = YamlParser.parse(keys, scope.problems());
    KeyWatch.refuseInComments(keys, scope);
    Source text = source.fromLine(Math.min(rest + 1, source.text().length()));
    KeyWatch.refuseInText(text, scope);
    boolean nothing = root == null || root instanceof Yaml.Scalar s && s.isEmpty();
    return new FrontMatter(nothing || root == null ? none : Fields.mapping(root, scope), text);
  }

  /**
   * Keys that are not read would lose their agreements: what looks like them stops. Whether it did.
   */
  private static boolean refuseAlmost(Source source, Scope scope) {
    int first = 0;
    while (first < source.lines() - 1 && source.line(first).isBlank()) {
      first++;
    }
    String line = source.line(first);
    boolean fenced =
        ALMOST_FENCE.matcher(line).matches()
            && first + 1 < source.lines()
            && source.line(first + 1).matches("\\s*\\w+\\s*:.*");
    boolean almost = fenced || STRAY_KEY.matcher(line).matches();
    if (almost) {
      scope.error(
          source.at(source.offset(first, 0)),
          "Keys stand at the top of this note, but not as they can be read.",
          "Write \"---\" on the very first line and again on a line after the keys.");
    }
    return almost;
  }
}
