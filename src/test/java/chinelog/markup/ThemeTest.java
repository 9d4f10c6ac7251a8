package chinelog.markup;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ThemeTest {

  @TempDir Path own;

  /** WCAG 2.2, success criterion 1.4.3: at least 4.5 to 1 for text. */
  @ParameterizedTest
  @CsvSource({"slipway,''", "slipway,dark.", "chartroom,''", "chartroom,dark."})
  void inkStandsOutFromPaper(String name, String scheme) throws IOException {
    Theme theme = Theme.load(name, null);
    for (String ground : new String[] {"paper", "panel"}) {
      for (String ink : new String[] {"ink", "soft", "accent"}) {
        assertThat(contrast(theme.value(scheme + ink), theme.value(scheme + ground)))
            .as(ink + " on " + ground)
            .isGreaterThanOrEqualTo(4.5);
      }
    }
    assertThat(contrast(theme.value(scheme + "on-accent"), theme.value(scheme + "accent")))
        .isGreaterThanOrEqualTo(4.5);
  }

  /** WCAG 2.2, "contrast ratio". */
  private static double contrast(String one, String other) {
    double a = luminance(one);
    double b = luminance(other);
    return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
  }

  /** WCAG 2.2, "relative luminance". */
  private static double luminance(String colour) {
    int rgb = Integer.parseInt(colour.substring(1), 16);
    return 0.2126 * linear(rgb >> 16) + 0.7152 * linear(rgb >> 8) + 0.0722 * linear(rgb);
  }

  private static double linear(int channel) {
    double c = (channel & 0xff) / 255.0;
    return c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
  }

  @Test
  void contrastOfBlackOnWhiteIsTwentyOne() {
    assertThat(contrast("#000000", "#ffffff")).isEqualTo(21.0);
  }

  @ParameterizedTest
  @CsvSource({"slipway", "chartroom"})
  void paperKnowsNoCustomProperties(String name) throws IOException {
    assertThat(Theme.load(name, null).bookCss()).doesNotContain("var(");
  }

  @Test
  void theScreenGetsTheDesignValuesForDayAndDark() throws IOException {
    Theme theme = Theme.load("chartroom", null);
    assertThat(theme.siteCss())
        .contains("--accent:" + theme.value("accent") + ";")
        .containsSubsequence(
            "prefers-color-scheme:dark", "--accent:" + theme.value("dark.accent") + ";");
  }

  @Test
  void theStyleSheetIsWrittenCloseAndKeepsWhatStandsInQuotationMarks() throws IOException {
    Path mine = Files.createDirectories(own.resolve("mine"));
    Files.writeString(
        mine.resolve("site.css"),
        "/* a remark */\n.a > .b ,\n.c :is(p) { content: \"; }  {\" ; width: calc(1px + 2px); }\n");
    assertThat(Theme.load("mine", own).siteCss())
        .endsWith(".a > .b,.c :is(p){content:\"; }  {\";width:calc(1px + 2px)}");
  }

  @Test
  void aLogsOwnThemeTakesTheRestFromTheBase() throws IOException {
    Path mine = Files.createDirectories(own.resolve("mine"));
    Files.writeString(mine.resolve("values.properties"), "accent = #123456\n");
    Files.writeString(mine.resolve("book.css"), "h1 { color: var(--accent); }");
    Theme theme = Theme.load("mine", own);
    assertThat(theme.bookCss()).endsWith("h1 { color: #123456; }");
    assertThat(theme.value("paper")).isNotBlank();
  }

  @Test
  void aDesignValueThatIsNotThereIsNamed() throws IOException {
    Path mine = Files.createDirectories(own.resolve("mine"));
    Files.writeString(mine.resolve("book.css"), "h1 { color: var(--acent); }");
    Theme theme = Theme.load("mine", own);
    assertThatThrownBy(theme::bookCss)
        .isInstanceOf(IOException.class)
        .hasMessageContaining("var(--acent)");
  }

  @ParameterizedTest
  @CsvSource({"nowhere", "../slipway", "base"})
  void anUnknownThemeIsRefusedNamingThoseThereAre(String name) {
    assertThatThrownBy(() -> Theme.load(name, own))
        .isInstanceOf(IOException.class)
        .hasMessageContaining("slipway");
  }

  @Test
  void theFontsOfTheBookAreTrueType() throws IOException {
    for (Theme.Font font : Theme.load("", null).bookFonts()) {
      assertThat(font.bytes()).as(font.file()).startsWith(0, 1, 0, 0);
    }
  }
}
