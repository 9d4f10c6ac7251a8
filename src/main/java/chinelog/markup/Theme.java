package chinelog.markup;

import chinelog.digest.Sha256;
import chinelog.problem.Place;
import chinelog.problem.ProblemException;
import chinelog.problem.Sentence;
import chinelog.problem.Suggestion;
import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * A theme: its design values and style sheets, for site and book alike.
 *
 * <p>A theme is a folder with {@code values.properties}, {@code site.css} and {@code book.css}, any
 * of which may be absent; they add to those of {@code themes/base}.
 */
public final class Theme {

  /** The theme of a log that names none. */
  public static final String USUAL = "slipway";

  private static final List<String> BUILT_IN = List.of(USUAL, "chartroom");
  private static final String LAST_RESORT = "DejaVu Sans";
  private static final String FALLBACK = "fallback ";
  private static final String DARK = "dark.";
  private static final Pattern VAR = Pattern.compile("var\\(--([a-z-]+)\\)");

  private final String name;
  private final Map<String, String> values;
  private static final Pattern STRING_OR_REMARK =
      Pattern.compile("(?s)\"(?:[^\"\\\\]|\\\\.)*+\"|'(?:[^'\\\\]|\\\\.)*+'|/\\*.*?\\*/\\n?");

  /** A string, room around what parts rules and values, or other room. */
  private static final Pattern STRING_OR_ROOM =
      Pattern.compile(
          "(?s)\"(?:[^\"\\\\]|\\\\.)*+\"|'(?:[^'\\\\]|\\\\.)*+'|\\s*;?\\s*}\\s*|\\s*[{;,]\\s*|:\\s+|\\s+");

  private final String siteCss;
  private final String bookCss;
  private final List<Font> ownFonts;

  private Theme(
      String name,
      Map<String, String> values,
      String siteCss,
      String bookCss,
      List<Font> ownFonts) {
    this.name = name;
    this.values = values;
    this.siteCss = withoutRemarks(siteCss);
    this.bookCss = bookCss;
    this.ownFonts = ownFonts;
  }

  /**
   * The theme of that name: from the folder {@code themes} of the log if it is there, else one of
   * those that come with chinelog.
   *
   * @param own the log's own themes folder; null if it has none
   * @throws ProblemException if there is no such theme, naming those there are, or if one of the
   *     log's own cannot be read as text
   * @throws IOException if a file of it cannot be read
   */
  public static Theme load(String name, @Nullable Path own) throws IOException {
    String wanted = name.isEmpty() ? USUAL : name;
    boolean isPlainName = wanted.matches("[A-Za-z0-9][A-Za-z0-9_-]*");
    Path folder = own == null || !isPlainName ? null : own.resolve(wanted);
    if (folder != null && !Files.isDirectory(folder)) {
      folder = null;
    }
    if (folder == null && !BUILT_IN.contains(wanted)) {
      throw new ProblemException(
          Place.of("log.yaml"),
          Sentence.of("There is no theme \"{0}\".", wanted),
          Suggestion.remedy(wanted, names(own)));
    }
    Map<String, String> values =
        Resources.properties(Resources.text("/themes/base/values.properties"));
    try {
      values.putAll(Resources.properties(part(folder, wanted, "values.properties")));
    } catch (IllegalArgumentException e) {
      throw new ProblemException(
          Place.of("themes/" + wanted + "/values.properties"),
          "A \\u in this file is not followed by four hexadecimal digits.",
          "Write the character itself, or \\\\ for a backslash.",
          e);
    }
    return new Theme(
        wanted,
        values,
        Resources.text("/themes/base/site.css") + part(folder, wanted, "site.css"),
        Resources.text("/themes/base/book.css") + part(folder, wanted, "book.css"),
        fonts(own));
  }

  /** The log's own TrueType fonts, by name; the book falls back on them. */
  private static List<Font> fonts(@Nullable Path own) throws IOException {
    Path folder = own == null ? null : own.resolve("fonts");
    if (folder == null || !Files.isDirectory(folder)) {
      return List.of();
    }
    List<Font> fonts = new ArrayList<>();
    try (Stream<Path> files = Files.list(folder)) {
      for (Path file : files.sorted().toList()) {
        String name = file.getFileName().toString();
        if (name.toLowerCase(Locale.ROOT).endsWith(".ttf")) {
          fonts.add(new Font(FALLBACK + (fonts.size() + 2), 400, false, name, file));
        }
      }
    }
    return fonts;
  }

  private static String part(@Nullable Path folder, String name, String file) throws IOException {
    if (folder == null) {
      byte[] found = Resources.find("/themes/" + name + "/" + file);
      return found == null ? "" : new String(found, StandardCharsets.UTF_8);
    }
    Path own = folder.resolve(file);
    try {
      return Files.isRegularFile(own) ? Files.readString(own, StandardCharsets.UTF_8) : "";
    } catch (CharacterCodingException e) {
      throw new ProblemException(
          Place.of("themes/" + name + "/" + file),
          "This is not UTF-8 text.",
          "Save the file as UTF-8 in your editor.",
          e);
    }
  }

  private static List<String> names(@Nullable Path own) throws IOException {
    List<String> names = new ArrayList<>(BUILT_IN);
    if (own != null) {
      try (Stream<Path> folders = Files.list(own)) {
        folders.filter(Files::isDirectory).forEach(f -> names.add(f.getFileName().toString()));
      }
    }
    return names;
  }

  public String name() {
    return name;
  }

  /** A digest of all that it consists of, the log's own fonts too. */
  public String digest() throws IOException {
    MessageDigest digest = Sha256.digest();
    for (String part : List.of(name, values.toString(), siteCss, bookCss)) {
      digest.update(Sha256.of(part).getBytes(StandardCharsets.UTF_8));
    }
    for (Font font : ownFonts) {
      digest.update(Sha256.of(font.file()).getBytes(StandardCharsets.UTF_8));
      digest.update(Sha256.of(font.bytes()).getBytes(StandardCharsets.UTF_8));
    }
    return Sha256.hex(digest.digest());
  }

  /**
   * A design value, such as {@code value("accent")}: {@code #8f361b}.
   *
   * @throws IllegalArgumentException if there is no value of that name
   */
  public String value(String key) {
    String found = values.get(key);
    if (found == null) {
      throw new IllegalArgumentException("no design value \"" + key + "\"");
    }
    return found;
  }

  /** What remarks say is for those who write themes, not for those who read the site. */
  private static String withoutRemarks(String css) {
    return STRING_OR_REMARK
        .matcher(css)
        .replaceAll(m -> m.group().startsWith("/") ? "" : Matcher.quoteReplacement(m.group()));
  }

  /** The style sheet of the site, with the design values as custom properties. */
  public String siteCss() {
    return close(SiteFonts.css()) + plainCss();
  }

  /** Its typefaces and design values alone, for pages that are not the site's. */
  public String foundationCss() {
    return SiteFonts.css() + valuesCss();
  }

  /** The same without font files, for a page that has none beside it. */
  public String plainCss() {
    return close(valuesCss() + siteCss);
  }

  /**
   * The style sheet without the room that is there to be read by people: about a fifth of it. What
   * stands in quotation marks is kept as it is, and so is the blank between two selectors.
   */
  private static String close(String css) {
    return STRING_OR_ROOM
        .matcher(css)
        .replaceAll(
            m -> {
              String found = m.group();
              String sign = found.strip();
              boolean isString = found.startsWith("\"") || found.startsWith("'");
              String kept = isString ? found : sign.isEmpty() ? " " : sign;
              return Matcher.quoteReplacement(!isString && sign.endsWith("}") ? "}" : kept);
            })
        .strip();
  }

  private String valuesCss() {
    StringBuilder css = new StringBuilder(":root {\n");
    StringBuilder dark = new StringBuilder();
    values.forEach(
        (key, value) -> {
          boolean isDark = key.startsWith(DARK);
          String property = isDark ? key.substring(DARK.length()) : key;
          (isDark ? dark : css)
              .append("  --")
              .append(property)
              .append(": ")
              .append(SiteFonts.withStandIns(value))
              .append(";\n");
        });
    return css.append("}\n@media screen and (prefers-color-scheme: dark) {\n:root {\n")
        .append(dark)
        .append("}\n}\n")
        .toString();
  }

  /**
   * The style sheet of the book, with the design values put in.
   *
   * @throws ProblemException if it names a value that the theme does not have
   */
  public String bookCss() throws ProblemException {
    Matcher named = VAR.matcher(bookCss);
    StringBuilder css = new StringBuilder();
    while (named.find()) {
      String value = values.get(named.group(1));
      if (value == null) {
        throw new ProblemException(
            Place.of("themes/" + name + "/book.css"),
            Sentence.of("It names var(--{0}), which is no design value.", named.group(1)),
            Sentence.of("Add \"{0}\" to the theme's values.properties.", named.group(1)));
      }
      named.appendReplacement(css, Matcher.quoteReplacement(value));
    }
    return named.appendTail(css).toString();
  }

  /** The fonts of the book, as TrueType, the log's own last. */
  public List<Font> bookFonts() {
    List<Font> fonts = new ArrayList<>(builtIn());
    fonts.addAll(ownFonts);
    return fonts;
  }

  private static List<Font> builtIn() {
    return List.of(
        new Font("Source Serif 4", 400, false, "SourceSerif4-Regular.ttf"),
        new Font("Source Serif 4", 400, true, "SourceSerif4-Regular_Italic.ttf"),
        new Font("Source Serif 4", 600, false, "SourceSerif4-SemiBold.ttf"),
        new Font("Source Serif 4", 600, true, "SourceSerif4-SemiBold_Italic.ttf"),
        new Font("Source Sans 3", 400, false, "SourceSans3-Regular.ttf"),
        new Font("Source Sans 3", 400, true, "SourceSans3-Regular_Italic.ttf"),
        new Font("Source Sans 3", 600, false, "SourceSans3-SemiBold.ttf"),
        new Font("Source Sans 3", 600, true, "SourceSans3-SemiBold_Italic.ttf"),
        // For the few signs that the others lack, such as U+2011 and U+2300.
        new Font(LAST_RESORT, 400, false, "DejaVuSans.ttf"));
  }

  /** The font files of the site, as woff2. */
  public List<Font> siteFonts() {
    return SiteFonts.all();
  }

  /**
   * A font file.
   *
   * @param family such as {@code Source Serif 4}
   * @param weight of CSS, from 100 to 900
   * @param file its name below {@code themes/fonts}
   * @param own where it is, for one of the log's own; null for one that comes with chinelog
   */
  public record Font(String family, int weight, boolean italic, String file, @Nullable Path own) {

    Font(String family, int weight, boolean italic, String file) {
      this(family, weight, italic, file, null);
    }

    /** Whether it is there for what the typefaces of a theme lack. */
    public boolean isFallback() {
      return own != null || family.equals(LAST_RESORT);
    }

    public byte[] bytes() throws IOException {
      return own != null ? Files.readAllBytes(own) : Resources.bytes("/themes/fonts/" + file);
    }
  }
}
