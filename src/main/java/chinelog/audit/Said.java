package chinelog.audit;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What a style or a script says, apart from the words of the language it is written in: {@code
 * white-space: nowrap} names nobody, {@code content: "White"} does.
 *
 * @param words strings, remarks and addresses, with a form feed between them
 * @param code what is left
 */
record Said(String words, String code) {

  private static final String STRINGS = "\"(?:[^\"\\\\\\n]|\\\\.)*+\"|'(?:[^'\\\\\\n]|\\\\.)*+'";
  private static final String REMARK = "/\\*.*?\\*/";

  private static final Pattern IN_STYLE =
      Pattern.compile(
          "(?is)" + STRINGS + "|" + REMARK + "|url\\((?![\\s]*[\"'])[^)]*\\)|--[\\w-]+\\s*:[^;}]*");

  /**
   * Of a script a quotation mark in a pattern may open a string that is none: then it is longer.
   */
  private static final Pattern IN_SCRIPT =
      Pattern.compile(
          "(?s)"
              + STRINGS
              + "|`(?:[^`\\\\]|\\\\.)*+`|[(\\[][0-9xA-Fa-f,\\s]{10,}[)\\]]|"
              + REMARK
              + "|//[^\\n]*");

  static Said inStyle(String css) {
    return of(css, IN_STYLE);
  }

  static Said inScript(String js) {
    return of(js, IN_SCRIPT);
  }

  private static Said of(String text, Pattern said) {
    StringBuilder words = new StringBuilder();
    StringBuilder code = new StringBuilder();
    Matcher m = said.matcher(text);
    int from = 0;
    while (m.find()) {
      code.append(text, from, m.start()).append('\f');
      words.append(m.group()).append('\f');
      from = m.end();
    }
    return new Said(words.toString(), code.append(text, from, text.length()).toString());
  }
}
