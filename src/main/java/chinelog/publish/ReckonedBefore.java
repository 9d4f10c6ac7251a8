package chinelog.publish;

import chinelog.reckon.trade.KeptResults;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Base64;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;

/**
 * Keeps in a log's private cache what its reckonings of the trade came to, for as long as the
 * program stays the same.
 *
 * @param cache the private folder
 * @param results as they were the last time
 */
record ReckonedBefore(Path cache, KeptResults results) {

  private static final String FILE = "reckoned";
  private static final String SEPARATOR = "\t";

  static ReckonedBefore of(Path log) throws IOException {
    Path cache = log.resolve(".chinelog");
    List<String> lines = CacheLines.read(cache.resolve(FILE));
    Map<String, byte[]> kept = new HashMap<>();
    if (!lines.isEmpty() && lines.get(0).equals(Program.stamp())) {
      for (String line : lines.subList(1, lines.size())) {
        String[] cells = line.split(SEPARATOR);
        kept.put(cells[0], Base64.getDecoder().decode(cells[1]));
      }
    }
    return new ReckonedBefore(cache, KeptResults.of(kept));
  }

  /** Keeps the results for the next time, where anything may be written for this log. */
  void keep() throws IOException {
    SortedMap<String, byte[]> fresh = results.fresh().orElse(null);
    if (fresh == null || !Files.isDirectory(cache) || !Files.isWritable(cache)) {
      return;
    }
    List<String> lines = new ArrayList<>();
    lines.add(Program.stamp());
    fresh.forEach(
        (digest, result) ->
            lines.add(digest + SEPARATOR + Base64.getEncoder().encodeToString(result)));
    CacheLines.write(cache.resolve(FILE), lines);
  }
}
