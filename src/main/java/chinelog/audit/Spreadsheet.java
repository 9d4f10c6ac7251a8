package chinelog.audit;

/** A table of a pattern, which people open in a spreadsheet. */
final class Spreadsheet {

  /** What begins a formula (OWASP, CSV Injection). */
  private static final String FORMULA = "=+-@\t\r";

  private Spreadsheet() {}

  /** Whether a cell would be reckoned and not read. */
  static boolean hasFormula(String csv) {
    boolean isQuoted = false;
    boolean begins = true;
    for (int i = 0; i < csv.length(); i++) {
      char c = csv.charAt(i);
      if (begins && FORMULA.indexOf(c) >= 0 && !csv.startsWith("\r\n", i)) {
        return true;
      }
      boolean opens = c == '"' && begins && !isQuoted;
      if (c == '"') {
        isQuoted = !isQuoted;
      }
      begins = opens || !isQuoted && (c == ',' || c == ';' || c == '\n');
    }
    return false;
  }
}
