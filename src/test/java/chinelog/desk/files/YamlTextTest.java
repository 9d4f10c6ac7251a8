package chinelog.desk.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import chinelog.problem.ProblemException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Changes to YAML leave every other byte as it was. */
class YamlTextTest {

  private static final String PHOTOS =
      """
      # What is seen.

      a.jpg:
        alt: A hull  # short
      # The yard's sheet.
      "b (1).jpg":
        caption: 'It''s done'
        regions:
          - {box: [0, 0.35, 0.48, 1], under: lines}   # wide
        sha256: 00

      c.jpg: {alt: "Two", leave-out: true}
      d.jpg:
        caption: >-
          Folded over
          two lines.
        alt: |
          A literal.
      """;

  @Test
  void setsAValueInItsOwnStyle() throws ProblemException {
    assertThat(set(PHOTOS, "A stem", "a.jpg", "alt")).contains("  alt: A stem  # short\n");
    assertThat(set(PHOTOS, "She's off", "b (1).jpg", "caption"))
        .contains("  caption: 'She''s off'\n  regions:");
    assertThat(set(PHOTOS, "Three: four", "c.jpg", "alt"))
        .contains("c.jpg: {alt: \"Three: four\", leave-out: true}\n");
    assertThat(set(PHOTOS, "Other words", "d.jpg", "caption"))
        .contains("  caption: >-\n    Other words\n  alt: |\n");
    assertThat(set(PHOTOS, "New\nlines\n", "d.jpg", "alt"))
        .endsWith("  alt: |\n    New\n    lines\n");
    assertThat(set(PHOTOS, "lines: x", "b (1).jpg", "regions", "0", "under"))
        .contains("- {box: [0, 0.35, 0.48, 1], under: \"lines: x\"}   # wide\n");
  }

  @Test
  void addsKeysWhereTheyBelong() throws ProblemException {
    assertThat(set(PHOTOS, "New", "a.jpg", "caption"))
        .contains("  alt: A hull  # short\n  caption: New\n# The yard's sheet.\n");
    assertThat(set(PHOTOS, "New", "c.jpg", "caption"))
        .contains("c.jpg: {alt: \"Two\", leave-out: true, caption: New}\n");
    assertThat(set(PHOTOS, "E", "e.jpg", "alt")).isEqualTo(PHOTOS + "e.jpg:\n  alt: E\n");
    assertThat(set("", "E", "e.jpg", "alt")).isEqualTo("e.jpg:\n  alt: E\n");
    assertThat(set("# Only a remark", "E", "e.jpg", "alt"))
        .isEqualTo("# Only a remark\ne.jpg:\n  alt: E");
    assertThat(set("e.jpg: # soon\nf.jpg: {}\n", "E", "e.jpg", "alt"))
        .isEqualTo("e.jpg:\n  alt: E # soon\nf.jpg: {}\n");
    assertThat(set("f.jpg: {}\n", "E", "f.jpg", "alt")).isEqualTo("f.jpg: {alt: E}\n");
  }

  @Test
  void addsAndTakesItems() throws ProblemException {
    Map<String, YamlValue> region = new LinkedHashMap<>();
    region.put("box", YamlValue.words(List.of("0", "0.1", "0.2", "1")));
    region.put("under", YamlValue.text("client"));
    YamlText two =
        YamlText.of("p", PHOTOS)
            .plus(List.of("b (1).jpg", "regions"), new YamlValue.Keys(region, true));
    assertThat(two.text())
        .contains("under: lines}   # wide\n    - {box: [0, 0.1, 0.2, 1], under: client}\n  sha256");
    assertThat(two.without(List.of("b (1).jpg", "regions", "1")).text()).isEqualTo(PHOTOS);
    assertThat(two.without(List.of("b (1).jpg", "regions", "0")).text())
        .contains("  regions:\n    - {box: [0, 0.1, 0.2, 1], under: client}\n  sha256");
    YamlText made =
        YamlText.of("p", PHOTOS)
            .plus(List.of("a.jpg", "regions"), new YamlValue.Keys(region, true));
    assertThat(made.text())
        .contains("# short\n  regions:\n    - {box: [0, 0.1, 0.2, 1], under: client}\n# The yard");
    assertThat(made.without(List.of("a.jpg", "regions", "0")).text()).isEqualTo(PHOTOS);
    assertThat(YamlText.of("p", "a: [x, y,]\n").plus(List.of("a"), YamlValue.text("z")).text())
        .isEqualTo("a: [x, y, z]\n");
    assertThat(
            YamlText.of("p", "under: lines\n").plus(List.of("under"), YamlValue.text("b")).text())
        .isEqualTo("under: [lines, b]\n");
    assertThat(YamlText.of("p", "- a: 1\n  b: 2\n- c\n").without(List.of("0", "a")).text())
        .isEqualTo("- b: 2\n- c\n");
    assertThat(
            YamlText.of("p", "a:\n- x\n- y\nb: 1\n").plus(List.of("a"), YamlValue.text("z")).text())
        .isEqualTo("a:\n- x\n- y\n- z\nb: 1\n");
  }

  @Test
  void takesKeysAndWhatIsLeftEmpty() throws ProblemException {
    assertThat(YamlText.of("p", PHOTOS).without(List.of("c.jpg", "leave-out")).text())
        .contains("c.jpg: {alt: \"Two\"}\n");
    assertThat(YamlText.of("p", PHOTOS).without(List.of("c.jpg", "alt")).text())
        .contains("c.jpg: {leave-out: true}\n");
    assertThat(YamlText.of("p", PHOTOS).without(List.of("a.jpg", "alt")).text())
        .startsWith("# What is seen.\n\n# The yard's sheet.\n");
    assertThat(YamlText.of("p", PHOTOS).without(List.of("d.jpg", "caption")).text())
        .endsWith("d.jpg:\n  alt: |\n    A literal.\n");
  }

  @Test
  void keepsTheLineEndsTheMarkAndOtherAlphabets() throws ProblemException {
    String text = "\ufeff# 😀 first\r\na.jpg:\r\n  alt: 😀 hull # 😀\r\nb.jpg: {alt: é}\r\n";
    assertThat(set(text, "stem", "a.jpg", "alt"))
        .isEqualTo("\ufeff# 😀 first\r\na.jpg:\r\n  alt: stem # 😀\r\nb.jpg: {alt: é}\r\n");
    assertThat(set(text, "two\nlines", "a.jpg", "caption"))
        .contains("# 😀\r\n  caption: |-\r\n    two\r\n    lines\r\nb.jpg:");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "no",
        "Null",
        "~",
        "a: b",
        "a #b",
        "#a",
        "- a",
        "[a",
        "{a}",
        "a, b",
        "it's",
        "\"q\"",
        "a\\b",
        "*x",
        "&x",
        "!x",
        "%x",
        "@x",
        "`x",
        "| x",
        "> x",
        "? x",
        ": x",
        "x:",
        " x ",
        "1:16",
        "two\nlines",
        "two\n\nlines\n",
        "\n first",
        "  indented\nless",
        "trail \nspace",
        "tab\there",
        "a\u0085b",
        "a\u2028b",
        "\ufeff",
        "😀",
        "e\u0301",
        "---",
        "...",
        "[phrase]{under=lines}",
        "end\n\n\n",
        "\r"
      })
  void quotesWhatCouldBeMisread(String words) throws ProblemException {
    for (String at : List.of("a", "b", "c", "d", "e", "f", "g")) {
      YamlText yaml =
          YamlText.of(
              "p", "a: x\nb: 'x'\nc: \"x\"\nd: |\n  x\ne: >\n  x\n  y\nf: {k: v}\ng: [1,\n  2]\n");
      List<String> path =
          at.equals("f") ? List.of("f", "k") : at.equals("g") ? List.of("g", "1") : List.of(at);
      YamlText next = yaml.with(path, YamlValue.text(words));
      assertThat(next.find(path).orElse("")).isEqualTo(words);
      assertThat(yaml.with(List.of(words, "k"), YamlValue.text("v")).keys(List.of()))
          .contains(words);
    }
  }

  @Test
  void changesTheKeysOfANote() throws ProblemException {
    FileVersion note =
        new FileVersion("entries/a.md", "---\ndate: 2026-03-14\n---\nText.\n", "x", true);
    assertThat(YamlText.ofHead(note).with(List.of("under"), YamlValue.text("lines")).text())
        .isEqualTo("---\ndate: 2026-03-14\nunder: lines\n---\nText.\n");
    FileVersion bare = new FileVersion("entries/a.md", "\ufeffText.\r\n", "x", true);
    YamlText with = YamlText.ofHead(bare).with(List.of("stage"), YamlValue.text("moulds"));
    assertThat(with.text()).isEqualTo("\ufeff---\r\nstage: moulds\r\n---\r\n\r\nText.\r\n");
    FileVersion empty = new FileVersion("entries/a.md", "---\n---\nText.\n", "x", true);
    assertThat(YamlText.ofHead(empty).with(List.of("stage"), YamlValue.text("moulds")).text())
        .isEqualTo("---\nstage: moulds\n---\nText.\n");
  }

  @Test
  void refusesWhatIsNoYaml() {
    assertThatThrownBy(() -> YamlText.of("p", "a: b: c\n"))
        .isInstanceOf(ProblemException.class)
        .hasMessageContaining("not written as YAML");
  }

  private static String set(String yaml, String words, String... at) throws ProblemException {
    return YamlText.of("p", yaml).with(List.of(at), YamlValue.text(words)).text();
  }
}
