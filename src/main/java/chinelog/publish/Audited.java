package chinelog.publish;

import chinelog.audit.Searched;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Remembers, in the log's private cache, in which files the audit of some readers' edition found
 * nothing, and what it looked for, all of it as digests. Another program, or another Java, counts
 * for nothing.
 */
final class Audited {

  private static final String LOOKED_FOR = "-";
  private static final String ALLOWED = "+";
  private static final String CLEAN = "=";

  private Audited() {}

  private static Path file(Path log, String readers) {
    return log.resolve(".chinelog").resolve("audited").resolve(readers);
  }

  /**
   * What the last audit found.
   *
   * @param program that would audit now
   */
  static Searched read(Path log, String readers, String program) throws IOException {
    List<String> lines = CacheLines.read(file(log, readers));
    if (lines.isEmpty() || !lines.get(0).equals(program)) {
      return Searched.NOTHING;
    }
    Set<String> lookedFor = new HashSet<>();
    Set<String> allowed = new HashSet<>();
    Set<String> clean = new HashSet<>();
    for (String line : lines.subList(1, lines.size())) {
      switch (line.substring(0, 1)) {
        case LOOKED_FOR -> lookedFor.add(line.substring(1));
        case ALLOWED -> allowed.add(line.substring(1));
        default -> clean.add(line.substring(1));
      }
    }
    return new Searched(lookedFor, allowed, clean);
  }

  static void write(Path log, String readers, String program, Searched searched)
      throws IOException {
    List<String> lines = new ArrayList<>();
    searched.lookedFor().forEach(d -> lines.add(LOOKED_FOR + d));
    searched.allowed().forEach(d -> lines.add(ALLOWED + d));
    searched.clean().forEach(d -> lines.add(CLEAN + d));
    lines.sort(null);
    lines.add(0, program);
    CacheLines.write(file(log, readers), lines);
  }
}
