package chinelog.log.reading;

import chinelog.problem.Place;
import chinelog.problem.Problems;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;

/** Says in a maker's words what the YAML parser stumbled over. */
record YamlMistake(String sign, String what, String remedy) {

  private static final List<YamlMistake> KNOWN =
      List.of(
          new YamlMistake(
              "mapping values are not allowed",
              "A second \": \" stands in this value, or the line is indented too far.",
              "Put the value in quotes, or line the key up with its neighbours."),
          new YamlMistake(
              "cannot start any token",
              "A value may not begin with this character.",
              "Put the value in quotes."),
          new YamlMistake(
              "could not find expected ':'",
              "A key without a colon stands before here.",
              "Write \"key: value\", with a space after the colon."),
          new YamlMistake(
              "unexpected end of stream",
              "A quotation mark is not closed.",
              "Write the closing quotation mark."),
          new YamlMistake(
              "but got",
              "A [ or { is not closed, or a comma is missing.",
              "Close the bracket, or put the value in quotes."),
          new YamlMistake(
              "expected <block end>",
              "This line is not lined up with those it belongs to.",
              "Give lines of one group the same number of spaces in front; put a value that begins with a quotation mark wholly in quotes."),
          new YamlMistake(
              "undefined alias",
              "\"*\" stands for a value from elsewhere.",
              "Write the value out, or put it in quotes."));

  /** A key whose colon no space follows; the line after it is where the parser stumbles. */
  private static final Pattern CROWDED = Pattern.compile("([ -]*\\p{L}[\\w-]*:)(?![/\\s]).+");

  /**
   * @param place where the parser stumbled
   * @param line counted from 0, of that place in {@code source}
   */
  static void report(
      MarkedYamlEngineException e, Place place, Source source, int line, Problems problems) {
    for (int i = Math.max(0, line - 1); i <= line; i++) {
      Matcher crowded = CROWDED.matcher(source.line(i));
      if (crowded.matches()) {
        problems.error(
            source.at(source.offset(i, 0) + crowded.end(1)),
            "A space is missing after this colon.",
            "Write \"key: value\", with a space after the colon.");
        return;
      }
    }
    String said = e.getContext() + " " + e.getProblem();
    for (YamlMistake mistake : KNOWN) {
      if (said.contains(mistake.sign)) {
        problems.error(place, mistake.what, mistake.remedy);
        return;
      }
    }
    problems.error(
        place,
        "This is not written as YAML can be read.",
        "Look at this line and the one before: brackets, quotation marks, colons, indentation.");
  }
}
