package chinelog;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** What the program does hangs on no English sentence and on no dotted name of a fact. */
class MatchedWordsTest {

  private static final Pattern SENTENCE = Pattern.compile("(?i)[a-z]{2,}(?: |\\\\s\\+?)[a-z]{2,}");

  /** A name, the beginning of one, or a pattern of names. */
  private static final Pattern NAME =
      Pattern.compile("[a-z-]{2,}\\\\?\\.[a-z*(-].*|[a-z-]{3,}\\\\?\\.");

  private static final Pattern FILE =
      Pattern.compile(".*\\.(ya?ml|csv|html|ftlh|css|svg|ini|db|index|imageio\\.)");

  /** Whose words they are, by source file. */
  private static final Map<String, String> OF_OTHERS =
      Map.ofEntries(
          Map.entry("audit/HtmlFile.java", "the elements and attributes of HTML"),
          Map.entry("audit/JpegFile.java", "the reader of photographs' metadata"),
          Map.entry("audit/PlainFile.java", "a script of the site"),
          Map.entry("book/setting/Hyphens.java", "licences"),
          Map.entry("cli/Main.java", "operating systems"),
          Map.entry("log/reading/FolderWalk.java", "what file managers call copies"),
          Map.entry("markup/SiteFonts.java", "fonts"),
          Map.entry("markup/Theme.java", "fonts, and a theme's values"),
          Map.entry("quantity/NumberWords.java", "authors"),
          Map.entry("photo/pixels/Decoder.java", "the JDK's reader of JPEG"),
          Map.entry("photo/album/PhotoIndex.java", "the first line of its own file"));

  @Test
  void nothingIsDecidedByAnEnglishSentenceOrByTheNameOfAFact() throws IOException {
    Set<String> found =
        MatchedWords.in(Path.of("src/main/java")).stream()
            .filter(f -> SENTENCE.matcher(f.text()).find() || isName(f.text()))
            .map(f -> f.file().replaceFirst("^chinelog/", "") + ": " + f.text())
            .filter(f -> !OF_OTHERS.containsKey(f.substring(0, f.indexOf(':'))))
            .collect(Collectors.toCollection(TreeSet::new));
    assertThat(found).isEmpty();
  }

  private static boolean isName(String text) {
    return NAME.matcher(text).matches() && !FILE.matcher(text).matches();
  }
}
