package chinelog.desk.bench;

import java.util.Locale;

/** What the menu leads to, in its order. Titles are the word {@code menu.notes} and so on. */
public enum DeskSection {
  TODAY("/"),
  NOTES("/notes"),
  PHOTOGRAPHS("/photographs", "chinelog.desk.photographs"),
  SHEETS("/sheets", "chinelog.desk.sheets"),
  FACTS("/facts"),
  AGREEMENTS("/agreements"),
  PUBLISHING("/publishing");

  /** The words that several sections use. */
  static final String SHARED_WORDS = "chinelog.desk.words";

  private final String path;
  private final String words;

  DeskSection(String path) {
    this(path, "chinelog.desk.words");
  }

  DeskSection(String path, String words) {
    this.path = path;
    this.words = words;
  }

  public String path() {
    return path;
  }

  /** Such as {@code notes}. */
  public String id() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** The table of its own words, which are looked for before those that are shared. */
  String words() {
    return words;
  }
}
