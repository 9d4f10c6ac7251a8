package chinelog.audit;

import chinelog.problem.Sentence;
import java.util.ArrayList;
import java.util.List;

/** Gathers what is found in one file. */
final class Findings {

  private final String file;
  private final List<Finding> found = new ArrayList<>();

  Findings(String file) {
    this.file = file;
  }

  String file() {
    return file;
  }

  void add(Sentence where, Sentence what) {
    Finding finding = new Finding(file, where, what);
    if (!found.contains(finding)) {
      found.add(finding);
    }
  }

  /** As {@link #add}, unless the same was found elsewhere in the file. */
  void addOnce(Sentence where, Sentence what) {
    if (found.stream().noneMatch(f -> f.what().equals(what))) {
      add(where, what);
    }
  }

  List<Finding> list() {
    return List.copyOf(found);
  }
}
