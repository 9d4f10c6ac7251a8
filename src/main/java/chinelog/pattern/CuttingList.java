package chinelog.pattern;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** The cutting list and the shopping list as CSV (RFC 4180), lengths in mm. */
final class CuttingList {

  private CuttingList() {}

  static void write(List<Nest> nests, List<ShoppingLine> shopping, PatternWords words, Path folder)
      throws IOException {
    List<List<String>> cuts = new ArrayList<>();
    cuts.add(
        List.of(
            words.say("cut.part"),
            words.say("cut.from"),
            words.say("cut.sheet"),
            words.say("cut.along") + " [mm]",
            words.say("cut.across") + " [mm]",
            words.say("cut.length") + " [mm]",
            words.say("cut.width") + " [mm]"));
    for (Nest nest : nests) {
      for (Nest.Cut cut : nest.cuts()) {
        cuts.add(
            List.of(
                cut.part().title(),
                nest.stock().title(),
                String.valueOf(cut.sheet()),
                ShoppingLine.millimetres(cut.along()),
                ShoppingLine.millimetres(cut.across()),
                ShoppingLine.millimetres(cut.length()),
                ShoppingLine.millimetres(cut.width())));
      }
    }
    if (cuts.size() > 1) {
      write(cuts, folder.resolve("cutting-list.csv"));
    }
    List<List<String>> bought = new ArrayList<>();
    bought.add(heads(words));
    shopping.forEach(line -> bought.add(cells(line)));
    write(bought, folder.resolve("shopping-list.csv"));
  }

  static List<String> heads(PatternWords words) {
    return List.of(
        words.say("cut.from"),
        words.say("cut.size"),
        words.say("cut.needed"),
        words.say("cut.at.hand"),
        words.say("cut.short"),
        words.say("cut.each"),
        words.say("cut.cost"));
  }

  static List<String> cells(ShoppingLine line) {
    return List.of(
        line.stock().title(),
        line.size(),
        String.valueOf(line.needed()),
        line.atHand(),
        line.isShort(),
        line.each(),
        line.cost());
  }

  private static void write(List<List<String>> rows, Path file) throws IOException {
    String text =
        rows.stream()
            .map(row -> row.stream().map(CuttingList::quoted).collect(Collectors.joining(",")))
            .collect(Collectors.joining("\r\n", "", "\r\n"));
    Files.write(file, text.getBytes(StandardCharsets.UTF_8));
  }

  /** A cell that a program for tables would take for a formula is set off by an apostrophe. */
  private static String quoted(String cell) {
    String safe = cell.matches("(?s)[=+@\\t\\r-].*") ? "'" + cell : cell;
    return safe.matches("(?s).*[\",\\r\\n].*") ? '"' + safe.replace("\"", "\"\"") + '"' : safe;
  }
}
