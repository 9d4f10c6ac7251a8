package chinelog.pattern;

import chinelog.drawn.LineUse;
import chinelog.edition.Edition;
import chinelog.edition.Pattern;
import chinelog.markup.Theme;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/**
 * Writes the patterns of an edition at full size: the same edition and theme give the same bytes.
 */
public final class PatternWriter {

  private PatternWriter() {}

  /**
   * Writes {@code patterns.pdf} for the maker's own printer, and below {@code patterns} a drawing
   * for a cutter for each part; nothing if the edition has no patterns.
   *
   * @param folder of the edition
   * @throws IOException if a file cannot be written
   */
  public static void write(Edition edition, Theme theme, Path folder) throws IOException {
    Edition.Contents contents = edition.contents();
    if (contents.patterns().parts().isEmpty()) {
      return;
    }
    PatternBook.write(contents, theme, folder.resolve("patterns.pdf"));
    List<Pattern> cut =
        contents.patterns().parts().stream()
            .filter(p -> p.strokes().stream().anyMatch(s -> s.line() == LineUse.CUT))
            .toList();
    if (cut.isEmpty()) {
      return;
    }
    Path drawings = Files.createDirectory(folder.resolve("patterns"));
    PatternWords words = PatternWords.of(contents.locale());
    String about = words.say("cutter");
    if (!contents.patterns().stock().isEmpty()) {
      List<Nest> nests = Nest.of(contents.patterns());
      List<ShoppingLine> shopping = ShoppingLine.of(contents.patterns(), nests, contents.locale());
      CuttingList.write(nests, shopping, words, drawings);
    }
    for (Pattern part : cut) {
      CutterFile.write(
          part, contents.patterns().kerfMm(), about, drawings.resolve(part.id() + ".svg"));
    }
  }
}
