package chinelog.publish;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.edition.Edition;
import chinelog.edition.Edition.Contents;
import chinelog.markup.Theme;
import chinelog.problem.Problem;
import chinelog.site.FreshSite;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.stream.Stream;
import org.jsoup.Jsoup;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Three notes in each language, as somebody who writes it would keep them. */
class LanguageSamplesTest {

  private static final Path SAMPLES = Path.of("src/test/resources/languages");

  @TempDir Path folder;

  /** Dates, quotation marks and money as each language writes them: common practice, no source. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "de|1. April 2026|„Vor dem Sommer wird das nichts“|10,75 €",
        "fr|1er avril 2026|«\u00a0On ne la verra pas avant l’été\u00a0»|10,75 €",
        "nl|1 april 2026|“Voor de zomer wordt dat niets”|€ 10,75",
        "es|1 de abril de 2026|«Antes del verano, imposible»|10,75 €",
      })
  void aLogIsToldInItsLanguage(String language, String day, String quoted, String price)
      throws IOException {
    Workshop.Opened opened =
        Workshop.open(
            SAMPLES.resolve(language),
            DemoPrints.DAY,
            DemoPrints.DAY,
            ZoneOffset.UTC,
            Progress.SILENT);
    assertThat(opened.problems()).noneMatch(Problem::isError);
    Edition edition = DemoPrints.edition(opened, opened.log().readers().get(0));
    Contents contents = edition.contents();
    assertThat(contents.entries()).hasSize(3);
    FreshSite.write(edition, Theme.load(contents.theme(), null), null, folder);
    String said = said();
    assertThat(said).contains(day, quoted.replace('\u00a0', ' '));
    assertThat(contents.materialsCost().replaceAll("[\u00a0\u202f]", " ")).isEqualTo(price);
    assertThat(EnglishLeft.besides(own(language)).in(said)).isEmpty();
  }

  /** The words of all pages. */
  private String said() throws IOException {
    StringBuilder said = new StringBuilder();
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path page : files.filter(f -> f.toString().endsWith(".html")).sorted().toList()) {
        said.append(Jsoup.parse(Files.readString(page)).text()).append('\n');
      }
    }
    return said.toString().replace('\u00a0', ' ');
  }

  private static String own(String language) throws IOException {
    StringBuilder own = new StringBuilder();
    try (Stream<Path> files = Files.walk(SAMPLES.resolve(language))) {
      for (Path file : files.filter(Files::isRegularFile).sorted().toList()) {
        own.append(Files.readString(file)).append('\n');
      }
    }
    return own.toString();
  }
}
