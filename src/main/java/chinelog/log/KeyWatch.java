package chinelog.log;

import chinelog.log.reading.MarkWatch;
import chinelog.log.reading.Scope;
import chinelog.log.reading.Source;
import chinelog.problem.Suggestion;
import chinelog.wording.Accents;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;

/**
 * Looks in a note for what was most likely meant as a key, such as {@code under: lines}, where none
 * is read: below the closing {@code ---}, in a second head, in a block of code, in a comment.
 *
 * <p>A line is a stray mark if nothing stands on it but the key "under", or a word one edit away
 * from it, and names of agreements, or words one edit away from these. Prose that begins with the
 * word, such as "Under: the keel, a batten", is none. So too {@code (under=lines)} within a line.
 * Other keys are looked for as paragraphs that hold nothing else.
 */
record KeyWatch(Source source, Scope scope) {

  private static final String UNDER = "under";

  /** The same word in the other languages of a log; taken for the key only before an agreement. */
  private static final Set<String> ABROAD = Set.of("unter", "onder", "sous", "bajo", "agreement");

  /** Signs that a line may begin with: of lists, quotes, headings, comments, tables and cells. */
  private static final String OPENING = "[\\s>#|+/;<!%\"'“„({\\[-]*";

  private static final String CLOSING = "[\\s#|/;>!\"'”“)}\\].,-]*";

  private static final Pattern LINE =
      Pattern.compile(
          "(?<open>"
              + OPENING
              + ")(?<key>\\p{L}{3,9})[\"']?(?<sign>\\s*[:=;]+>?\\s*|\\s+-+>?\\s*|\\s+)(?<value>.*?)"
              + CLOSING);
  private static final Pattern BARE =
      Pattern.compile(OPENING + "(?<key>\\p{L}{4,6})[\"']?\\s*[:=]\\s*");
  private static final Pattern INSIDE =
      Pattern.compile(
          "(?<open>[(\\[<{]?)\\s*\\b(?<key>\\p{L}{4,6})[\"']?\\s*(?<sign>[:=])\\s*[\"'(\\[{]*"
              + "(?<value>[\\p{L}\\p{N}][\\p{L}\\p{N}_-]*)[\"']*\\s*(?<close>[)\\]>}]?)");
  private static final Pattern LEFT_OUT =
      Pattern.compile(OPENING + "leave[-_ ]?out\\s*[:=]\\s*(true|yes|on|1)" + CLOSING);

  /** As a key is written, though no agreement of this log has that name. */
  private static final Pattern UNKNOWN =
      Pattern.compile("\\s*#?\\s*under:\\s+[\\p{L}\\p{N}_-]+\\s*");

  private static final Pattern KEY_LINE =
      Pattern.compile("\\s*(title|date|stage|time|used|measured|weighed|under)\\s*:(\\s.*)?");

  private static final Pattern FENCE = Pattern.compile("\\s*([-+]{3,}|[`~]{3,}\\s*\\w*)\\s*");
  private static final Pattern CONTINUED = Pattern.compile("\\s+\\S.*|-\\s.*");
  private static final Pattern COMMENT = Pattern.compile("(?:^|\\s)#(.*)$");

  private static final String IN_NOTE =
      "This looks like a key, but keys are read only at the top of a note.";
  private static final String IN_TABLE =
      "This looks like a key, but nothing is read in the remarks above a table.";
  private static final String REMEDY_OF_TABLE =
      "Write it in log.yaml, such as tables: {offsets: {under: lines}}; or give the table a column"
          + " \"under\"; or word the remark otherwise.";
  private static final String REMEDY =
      "Put the note under its agreement between two lines \"---\" at its very top, or a part of it"
          + " with a mark such as {under=lines}; or word the sentence otherwise.";

  /** Notes an error for each key that stands in the text of a note, where keys are not read. */
  static void refuseInText(Source text, Scope scope) {
    KeyWatch watch = new KeyWatch(text, scope);
    for (int i = 0; i < text.lines(); i++) {
      watch.line(i, text.line(i), true);
    }
    watch.paragraphs();
  }

  /** Notes an error for each key in a comment between the keys of a note. */
  static void refuseInComments(Source keys, Scope scope) {
    KeyWatch watch = new KeyWatch(keys, scope);
    for (int i = 0; i < keys.lines(); i++) {
      Matcher comment = COMMENT.matcher(keys.line(i));
      if (comment.find()) {
        watch.line(i, comment.group(1), false);
      }
    }
  }

  /** Notes an error for each key in the remarks above a table. */
  static void refuseInRemarks(Source table, Scope scope) {
    KeyWatch watch = new KeyWatch(table, scope);
    for (int i = 0; i < table.lines() && table.line(i).startsWith("#"); i++) {
      watch.line(i, table.line(i).replaceFirst("^#+", ""), false, IN_TABLE, REMEDY_OF_TABLE);
    }
  }

  private void line(int number, String written, boolean withNext) {
    line(number, written, withNext, IN_NOTE, REMEDY);
  }

  private void line(int number, String written, boolean withNext, String what, String remedy) {
    String line = fold(written);
    if (line.indexOf(':') < 0 && line.indexOf('=') < 0 && !line.contains(UNDER)) {
      // Every key has a sign, but "under" alone.
      return;
    }
    if (!MarkWatch.suspects(written).isEmpty()) {
      // Whoever reads marks says what is wrong with this one.
      return;
    }
    if (isKeyAlone(line)
        || isInside(line)
        || LEFT_OUT.matcher(line).matches()
        || UNKNOWN.matcher(written).matches()) {
      report(number, what, remedy);
    } else if (withNext && number + 1 < source.lines()) {
      Matcher bare = BARE.matcher(line);
      String next =
          fold(source.line(number + 1)).replaceAll("^" + OPENING + "|" + CLOSING + "$", "");
      if (bare.matches() && isUnder(bare.group("key")) && areAgreements(next)) {
        report(number, what, remedy);
      }
    }
  }

  private boolean isKeyAlone(String line) {
    Matcher m = LINE.matcher(line);
    if (!m.matches()) {
      return false;
    }
    String key = m.group("key");
    String value = m.group("value");
    boolean signed = m.group("sign").matches("\\s*[:=].*");
    if (!signed) {
      // "under lines", without its colon; a heading may well say so.
      return m.group("open").isBlank() && key.equals(UNDER) && areExactly(value);
    }
    return (isUnder(key) || ABROAD.contains(key)) && areAgreements(value);
  }

  private boolean isInside(String line) {
    Matcher m = INSIDE.matcher(line);
    while (m.find()) {
      boolean bracketed = !m.group("open").isEmpty() && !m.group("close").isEmpty();
      boolean meant = bracketed || m.group("sign").equals("=");
      if (meant && isUnder(m.group("key")) && areAgreements(m.group("value"))) {
        return true;
      }
    }
    return false;
  }

  /** A paragraph of lines that are keys and nothing else. */
  private void paragraphs() {
    int from = 0;
    while (from < source.lines()) {
      int to = from;
      boolean keys = true;
      while (to < source.lines() && !source.line(to).isBlank()) {
        String line = source.line(to);
        keys =
            keys
                && (KEY_LINE.matcher(line).matches()
                    || isContinued(line, from, to)
                    || isFence(line));
        to++;
      }
      if (keys) {
        IntStream.range(from, to)
            .filter(i -> KEY_LINE.matcher(source.line(i)).matches())
            .findFirst()
            .ifPresent(first -> report(first, IN_NOTE, REMEDY));
      }
      from = to + 1;
    }
  }

  private static boolean isFence(String line) {
    return FENCE.matcher(line).matches();
  }

  /** Whether a line goes on with the key above it, such as an item of its list. */
  private static boolean isContinued(String line, int first, int number) {
    return number > first && CONTINUED.matcher(line).matches();
  }

  private static boolean isUnder(String word) {
    return distance(word, UNDER) <= 1;
  }

  private boolean areAgreements(String value) {
    return are(value, true);
  }

  private boolean areExactly(String value) {
    return are(value, false);
  }

  /** Whether the value names agreements and says nothing else. */
  private boolean are(String value, boolean nearly) {
    List<String> words = new ArrayList<>();
    for (String word : value.split("[\\s,;&+\"'\\[\\](){}]+")) {
      if (!word.isEmpty() && !Set.of("and", "und", "en", "et", "y").contains(word)) {
        words.add(word);
      }
    }
    return !words.isEmpty() && words.stream().allMatch(w -> isAgreement(w, nearly));
  }

  private boolean isAgreement(String word, boolean nearly) {
    if (scope.agreements() == null) {
      return true;
    }
    Set<String> known = new TreeSet<>(scope.agreementsOrNone());
    known.add(AgreementReader.SHEETS);
    return known.stream()
        .map(k -> k.toLowerCase(Locale.ROOT).replace("_", ""))
        .anyMatch(k -> k.equals(word) || nearly && k.length() > 3 && distance(k, word) <= 1);
  }

  private static int distance(String a, String b) {
    return Math.abs(a.length() - b.length()) > 1 ? 2 : Suggestion.distance(a, b);
  }

  private void report(int line, String what, String remedy) {
    int indent = 0;
    String text = source.line(line);
    while (indent < text.length() && Character.isWhitespace(text.charAt(indent))) {
      indent++;
    }
    scope.error(source.at(source.offset(line, 0) + indent), what, remedy);
  }

  /** In small letters without accents, emphasis and invisible characters. */
  private static String fold(String line) {
    StringBuilder folded = new StringBuilder();
    String plain = Accents.off(line);
    for (int i = 0, c; i < plain.length(); i += Character.charCount(c)) {
      c = plain.codePointAt(i);
      if ("*_`~".indexOf(c) < 0 && (c < 128 || Character.getType(c) != Character.FORMAT)) {
        folded.appendCodePoint(c);
      }
    }
    return folded.toString().toLowerCase(Locale.ROOT);
  }
}
