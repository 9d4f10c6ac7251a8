package chinelog.edition;

import static chinelog.edition.SampleText.p;
import static chinelog.edition.SampleText.runs;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * An edition of one entry with tables of all shapes: one column to sixteen, one row to twenty, with
 * short numbers, long ones and words.
 *
 * @param words one of each cell, unlike those of all others
 */
public record TableEdition(Edition edition, List<String> words) {

  private static final List<String> NONE = List.of();
  private static final int MOST_COLUMNS = 16;
  private static final int MOST_ROWS = 20;

  /** So many tables; always the same. */
  public static TableEdition of(int tables) {
    Random random = new Random(tables);
    List<String> words = new ArrayList<>();
    List<Text.Block> text = new ArrayList<>();
    for (int i = 0; i < tables; i++) {
      text.add(p("Table " + (i + 1) + " of them."));
      text.add(table(random, words));
    }
    return new TableEdition(LongEdition.ofBlocks(text), List.copyOf(words));
  }

  private static Text.Block table(Random random, List<String> words) {
    int columns = 1 + random.nextInt(MOST_COLUMNS);
    int rows = 1 + random.nextInt(MOST_ROWS);
    List<List<Text.Run>> head = new ArrayList<>();
    List<Boolean> isRight = new ArrayList<>();
    List<Integer> lengths = new ArrayList<>();
    for (int c = 0; c < columns; c++) {
      head.add(runs((random.nextBoolean() ? "At height " : "Mould ") + word(words)));
      isRight.add(c > 0 && random.nextInt(4) > 0);
      lengths.add(random.nextInt(5) == 0 ? 8 : random.nextInt(2));
    }
    List<List<List<Text.Run>>> cells = new ArrayList<>();
    for (int r = 0; r < rows; r++) {
      List<List<Text.Run>> row = new ArrayList<>();
      for (int c = 0; c < columns; c++) {
        row.add(runs(word(words) + " mm".repeat(lengths.get(c))));
      }
      cells.add(row);
    }
    return new Text.Grid(head, cells, isRight, NONE);
  }

  private static String word(List<String> words) {
    String word = String.valueOf(100_000 + words.size());
    words.add(word);
    return word;
  }
}
