package chinelog.audit;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Base64;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jsoup.parser.Parser;

/** The texts that a text may stand for: unescaped, decoded, in other encodings. */
final class Disguises {

  private static final Pattern PERCENT = Pattern.compile("(?:%[0-9A-Fa-f]{2})+");
  private static final Pattern ESCAPE =
      Pattern.compile("\\\\u\\{?([0-9A-Fa-f]{4,6})\\}?|\\\\x([0-9A-Fa-f]{2})");
  private static final Pattern HEX = Pattern.compile("(?:[0-9A-Fa-f]{2})+");
  private static final Pattern TAG = Pattern.compile("<[^<>]{0,2000}>");
  private static final Pattern CSS_ESCAPE = Pattern.compile("\\\\([0-9A-Fa-f]{1,6})\\s?");
  private static final String CODE = "(?:0x[0-9A-Fa-f]{2,4}|[0-9]{2,4})";
  private static final Pattern CODES =
      Pattern.compile("[\\[(]\\s*(" + CODE + "(?:\\s*,\\s*" + CODE + "){4,})\\s*[\\])]");
  private static final char RIGHT_TO_LEFT = '\u202e';
  private static final char LEFT_TO_RIGHT = '\u202d';

  /** What is encoded more often than so was not encoded by accident. */
  private static final int MOST_ROUNDS = 3;

  private static final int LEAST_RUN = 6;
  private static final int LEAST_PACKED = 12;

  /** Of letters in UTF-8, by their first byte; 0 for bytes with which none begins. */
  private static final byte[] LENGTHS = lengths();

  private Disguises() {}

  /** {@code text} itself and everything else that it spells. */
  static Set<String> of(String text) {
    Set<String> all = new LinkedHashSet<>();
    all.add(text);
    String plain = text;
    for (int round = 0; round < MOST_ROUNDS; round++) {
      String before = plain;
      plain = plain.indexOf('&') < 0 ? plain : Parser.unescapeEntities(plain, false);
      plain = unescaped(percentDecoded(plain));
      if (plain.equals(before)) {
        break;
      }
    }
    all.add(plain);
    if (text.indexOf('\\') >= 0 && CSS_ESCAPE.matcher(text).find()) {
      all.add(styleUnescaped(text));
    }
    if (plain.indexOf(RIGHT_TO_LEFT) >= 0 || plain.indexOf(LEFT_TO_RIGHT) >= 0) {
      all.add(new StringBuilder(plain).reverse().toString());
    }
    if (hasOtherDigits(plain)) {
      all.add(inOurDigits(plain));
    }
    all.addAll(charCodes(plain));
    for (String packed : hidden(text)) {
      all.add(packed);
      all.addAll(hidden(packed));
    }
    return all;
  }

  /** As a style writes letters: {@code \\53 kerrick}. */
  private static String styleUnescaped(String text) {
    return CSS_ESCAPE
        .matcher(text)
        .replaceAll(
            m -> {
              int c = Integer.parseInt(m.group(1), 16);
              return Character.isValidCodePoint(c)
                  ? Matcher.quoteReplacement(Character.toString(c))
                  : "";
            });
  }

  private static boolean hasOtherDigits(String text) {
    for (char c : text.toCharArray()) {
      if (c > 0x2FF && Character.isDigit(c)) {
        return true;
      }
    }
    return false;
  }

  private static String inOurDigits(String text) {
    StringBuilder ours = new StringBuilder(text.length());
    text.chars()
        .forEach(
            c ->
                ours.append(
                    c > 0x2FF && Character.isDigit(c)
                        ? (char) ('0' + Character.digit(c, 10))
                        : (char) c));
    return ours.toString();
  }

  /** As a script writes letters by their numbers: {@code String.fromCharCode(83, 107, 101)}. */
  private static List<String> charCodes(String text) {
    List<String> found = new ArrayList<>();
    if (text.indexOf(',') >= 0) {
      Matcher m = CODES.matcher(text);
      while (m.find()) {
        StringBuilder letters = new StringBuilder();
        for (String code : m.group(1).split(",")) {
          String digits = code.strip();
          boolean hex = digits.startsWith("0x");
          letters.append(
              (char) Integer.parseInt(hex ? digits.substring(2) : digits, hex ? 16 : 10));
        }
        found.add(letters.toString());
      }
    }
    return found;
  }

  /** {@code text} with its tags taken out, however ill they are formed. */
  static String withoutTags(String text) {
    return text.indexOf('<') < 0 ? text : TAG.matcher(text).replaceAll("");
  }

  private static String percentDecoded(String text) {
    return text.indexOf('%') < 0
        ? text
        : PERCENT
            .matcher(text)
            .replaceAll(m -> Matcher.quoteReplacement(utf8(hex(m.group().replace("%", "")))));
  }

  private static String unescaped(String text) {
    return text.indexOf('\\') < 0
        ? text
        : ESCAPE
            .matcher(text)
            .replaceAll(
                m -> {
                  int c = Integer.parseInt(m.group(1) == null ? m.group(2) : m.group(1), 16);
                  return Character.isValidCodePoint(c)
                      ? Matcher.quoteReplacement(Character.toString(c))
                      : "";
                });
  }

  /** What runs of base 64 or hexadecimal digits decode to, where that is text. */
  private static List<String> hidden(String text) {
    List<String> found = new ArrayList<>();
    char[] letters = text.toCharArray();
    int start = 0;
    for (int i = 0; i <= letters.length; i++) {
      if (i < letters.length && isBase64(letters[i])) {
        continue;
      }
      if (i - start >= LEAST_PACKED) {
        addPacked(text.substring(start, i).replace('-', '+').replace('_', '/'), found);
      }
      start = i + 1;
    }
    return found;
  }

  private static boolean isBase64(char c) {
    return c >= 'a' && c <= 'z'
        || c >= 'A' && c <= 'Z'
        || c >= '0' && c <= '9'
        || c == '+'
        || c == '/'
        || c == '-'
        || c == '_';
  }

  private static void addPacked(String run, List<String> found) {
    // A run may begin in the middle of a longer word: all four alignments are tried.
    for (int skip = 0; skip < 4; skip++) {
      int length = run.length() - skip;
      int whole = length % 4 == 1 ? length - 1 : length;
      found.addAll(strings(Base64.getDecoder().decode(run.substring(skip, skip + whole))));
    }
    if (HEX.matcher(run).matches()) {
      found.addAll(strings(hex(run)));
    }
  }

  private static byte[] hex(String digits) {
    byte[] bytes = new byte[digits.length() / 2];
    for (int i = 0; i < bytes.length; i++) {
      bytes[i] = (byte) Integer.parseInt(digits.substring(2 * i, 2 * i + 2), 16);
    }
    return bytes;
  }

  private static String utf8(byte[] bytes) {
    return new String(bytes, StandardCharsets.UTF_8);
  }

  /** Runs of text in any bytes: one byte to a letter, or two with the high one zero. */
  static List<String> strings(byte[] bytes) {
    List<String> found = new ArrayList<>();
    int start = 0;
    while (start + LEAST_RUN <= bytes.length) {
      // Looked at from behind, most stretches that are no text are told by one of their bytes.
      int at = start + LEAST_RUN - 1;
      while (at >= start && mayBeText(bytes, at)) {
        at--;
      }
      if (at < start) {
        at = start;
        for (int letter = letterAt(bytes, at); letter > 0; letter = letterAt(bytes, at)) {
          at += letter;
        }
        if (at - start >= LEAST_RUN) {
          found.add(new String(bytes, start, at - start, StandardCharsets.UTF_8));
        }
      }
      start = at + 1;
    }
    wide(bytes, 0, found);
    wide(bytes, 1, found);
    return found;
  }

  private static void wide(byte[] bytes, int first, List<String> found) {
    int start = first;
    while (start + 2 * LEAST_RUN <= bytes.length) {
      int at = start + 2 * (LEAST_RUN - 1);
      while (at >= start && isWide(bytes, at)) {
        at -= 2;
      }
      if (at < start) {
        at = start + 2 * LEAST_RUN;
        while (at + 1 < bytes.length && isWide(bytes, at)) {
          at += 2;
        }
        found.add(new String(bytes, start, at - start, StandardCharsets.UTF_16BE));
      }
      start = at + 2;
    }
  }

  private static boolean isWide(byte[] bytes, int at) {
    int c = (bytes[at] & 0xFF) << 8 | (bytes[at + 1] & 0xFF);
    return c >= 0x20 && c < 0x180 && c != 0x7F;
  }

  /** False only if this byte is part of no letter in UTF-8. */
  private static boolean mayBeText(byte[] bytes, int at) {
    int length = LENGTHS[bytes[at] & 0xFF];
    if (length == 1) {
      return true;
    }
    return length > 1
        ? at + 1 < bytes.length && continues(bytes[at + 1])
        : continues(bytes[at])
            && at > 0
            && (continues(bytes[at - 1]) || LENGTHS[bytes[at - 1] & 0xFF] > 1);
  }

  private static boolean continues(byte b) {
    return (b & 0xC0) == 0x80;
  }

  /** How many bytes the letter takes that begins here in UTF-8; 0 if none does. */
  private static int letterAt(byte[] bytes, int at) {
    if (at >= bytes.length) {
      return 0;
    }
    int length = LENGTHS[bytes[at] & 0xFF];
    if (length < 2) {
      return length;
    }
    if (at + length > bytes.length) {
      return 0;
    }
    for (int i = 1; i < length; i++) {
      if (!continues(bytes[at + i])) {
        return 0;
      }
    }
    return length;
  }

  private static byte[] lengths() {
    byte[] lengths = new byte[256];
    for (int first = 0; first < 256; first++) {
      boolean drawn = first >= 0x20 && first != 0x7F;
      boolean plain = drawn || first == '\t' || first == '\n' || first == '\r';
      lengths[first] =
          (byte)
              (first < 0x80
                  ? plain ? 1 : 0
                  : first < 0xC2 ? 0 : first < 0xE0 ? 2 : first < 0xF0 ? 3 : first < 0xF5 ? 4 : 0);
    }
    return lengths;
  }
}
