package chinelog.log.reading;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.problem.Problem;
import chinelog.problem.Problems;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class StrictYamlTest {

  @ParameterizedTest
  @CsvSource(
      delimiter = '@',
      value = {
        "a: 1|b: 2|a: 3 @ 3:1 @ \"a\" stands here a second time.",
        "a: &x 1 @ 1:4 @ \"&\" gives this value a name.",
        "a: &x 1|b: *x @ 2:4 @ \"*\" stands for a value from elsewhere.",
        "a: *x @ 1:4 @ \"*\" stands for a value from elsewhere.",
        "a: {<<: {b: 1}} @ 1:5 @ \"<<\" would copy keys from elsewhere.",
        "a: !!str 1 @ 1:4 @ \"!\" gives this value a type.",
        "a: !x {b: 1} @ 1:4 @ \"!\" gives this value a type.",
        "a: 1|\tb: 2 @ 2:1 @ A tab stands here.",
        "a: 1|---|b: 2 @ 2:1 @ A second document begins here.",
        "%YAML 1.2|---|a: 1 @ 1:1 @ A directive (a line that begins with %) stands here.",
        "a: yes @ 1:4 @ Programs disagree on what a bare \"yes\" means.",
        "a: Off @ 1:4 @ Programs disagree on what a bare \"Off\" means.",
        "[a, b]: 1 @ 1:1 @ A key must be a single word.",
        "a: b: c @ 1:5 @ A second \": \" stands in this value, or the line is indented too far.",
        "a: `b @ 1:4 @ A value may not begin with this character.",
        "a: [b|c: d @ 2:2 @ A [ or { is not closed, or a comma is missing.",
        "a: 1|b|c: 2 @ 3:1 @ A key without a colon stands before here.",
        "a: \"b @ 1:6 @ A quotation mark is not closed.",
        "a: \"b\" c @ 1:8 @ This line is not lined up with those it belongs to.",
        "#under: lines|a: 1 @ 1:1 @ \"under\" is a remark here, so that nothing is under its agreement."
      })
  void whatCouldBeMisreadIsAnErrorAtItsPlace(String text, String place, String what) {
    Problems problems = new Problems();
    YamlParser.parse(Source.ofFile("log.yaml", text.replace('|', '\n')), problems);
    assertThat(problems.list())
        .extracting(p -> p.place() + " " + p.what())
        .contains("log.yaml:" + place + " " + what);
    assertThat(problems.list()).allMatch(Problem::isError);
  }

  @Test
  void valuesKeepTheirPlacesInUnitsThatAnEditorCounts() {
    Yaml.Mapping root = parse("a: {\"\ud83d\ude80\": x, c: 'y z'}\nd: |\n  one\n\n    two\n");
    Yaml.Mapping inner = (Yaml.Mapping) root.pairs().get(0).value();
    Yaml.Scalar quoted = (Yaml.Scalar) inner.pairs().get(1).value();
    assertThat(quoted.source().at(2)).hasToString("log.yaml:1:20");
    Yaml.Scalar block = (Yaml.Scalar) root.pairs().get(1).value();
    assertThat(block.text()).isEqualTo("one\n\n  two\n");
    assertThat(block.source().at(block.text().indexOf("two"))).hasToString("log.yaml:5:5");
  }

  @Test
  void wordsInQuotesAndScalesAreLeftAlone() {
    Problems problems = new Problems();
    YamlParser.parse(
        Source.ofFile("log.yaml", "a: \"yes\"\nscale: 1:16\non: 2026-04-02\nb: true\n"), problems);
    assertThat(problems.list()).isEmpty();
  }

  @Test
  void aRemarkGluedToAValueIsAskedAbout() {
    Problems problems = new Problems();
    YamlParser.parse(Source.ofFile("log.yaml", "a: Mould #1\nb: Mould # one\n"), problems);
    assertThat(problems.list())
        .extracting(p -> p.place().toString())
        .containsExactly("log.yaml:1:9");
    assertThat(problems.hasErrors()).isFalse();
  }

  private static Yaml.Mapping parse(String text) {
    Problems problems = new Problems();
    Yaml root = YamlParser.parse(Source.ofFile("log.yaml", text), problems);
    assertThat(problems.list()).isEqualTo(List.of());
    return (Yaml.Mapping) root;
  }
}
