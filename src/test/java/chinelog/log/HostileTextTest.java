package chinelog.log;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import chinelog.label.Label;
import chinelog.log.markdown.MarkdownReader;
import chinelog.log.reading.Inventory;
import chinelog.log.reading.Scope;
import chinelog.log.reading.Source;
import chinelog.log.reading.YamlParser;
import chinelog.log.text.Block;
import chinelog.problem.Problems;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.TreeMap;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Text made to keep a reader busy, or to break it. */
class HostileTextTest {

  private static final Duration LIMIT = Duration.ofSeconds(20);

  @ParameterizedTest
  @ValueSource(
      strings = {
        "[",
        "]",
        "![",
        "[a](",
        "[a](b",
        "*a ",
        "_a",
        "**a ",
        "> ",
        "- ",
        "1. ",
        "`",
        "`a``",
        "{",
        "}",
        "{under=lines}",
        "[a]{under=lines}",
        "{under=lines",
        "[a]{under=",
        "<",
        "<a ",
        "&",
        "&#",
        "\\",
        "| a ",
        "#",
        "# a\n",
        "- a\n",
        "[^a]",
        "[^a]: b\n\n",
        "[a]: b\n",
        "~",
        "~~~\n",
        "a\n",
        "a  \n",
        "\n",
        "{\n",
        "]{under=lines}",
        "((",
        "![a](x.jpg)"
      })
  void aShortTextRepeatedManyTimesIsReadInTime(String part) {
    assertTimeoutPreemptively(
        LIMIT,
        () -> {
          Problems problems = new Problems();
          List<Block> blocks = reader(part.repeat(600), problems).blocks(Label.NONE);
          assertThat(PublicWords.blocks(blocks)).as(part).doesNotContain("{under=lines}");
        });
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "[", "{", "- ", "? ", "a: ", "[a, ", "{a: ", "\"", "&a ", "*a ", "!a ", "|", "a\n", "- a\n"
      })
  void yamlRepeatedManyTimesIsReadInTime(String part) {
    assertTimeoutPreemptively(
        LIMIT,
        () -> {
          Problems problems = new Problems();
          YamlParser.parse(Source.ofFile("log.yaml", part.repeat(5000)), problems);
          assertThat(problems.hasErrors() || part.matches("(- )?a\n")).as(part).isTrue();
        });
  }

  private static MarkdownReader reader(String text, Problems problems) {
    TreeMap<String, Path> none = new TreeMap<>();
    Inventory inventory =
        new Inventory(
            Path.of("x"), none, none, none, none, none, none, none, new java.util.TreeMap<>());
    Scope scope =
        new Scope(
            inventory,
            LocalDate.of(2026, 6, 1),
            ZoneOffset.UTC,
            "GBP",
            List.of("lines"),
            false,
            problems);
    return new MarkdownReader(Source.ofFile("entries/a.md", text), "entries", scope);
  }
}
