package chinelog.site;

import chinelog.markup.Templating;
import chinelog.problem.Place;
import chinelog.problem.ProblemException;
import chinelog.problem.Sentence;
import freemarker.cache.ClassTemplateLoader;
import freemarker.cache.FileTemplateLoader;
import freemarker.cache.MultiTemplateLoader;
import freemarker.cache.TemplateLoader;
import freemarker.core.ParseException;
import freemarker.template.Configuration;
import freemarker.template.TemplateException;
import freemarker.template.TemplateModel;
import freemarker.template.TemplateModelException;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The templates of the pages: a log's own where it has them, else those of chinelog. */
final class Templates {

  private static final String BUILT_IN = "/site-template";

  private static final TemplateLoader LOADER = new ClassTemplateLoader(Templates.class, BUILT_IN);

  /** Read once, however many sites are written. */
  private static final Configuration OURS = Templating.from(LOADER);

  private final Configuration configuration;
  private final @Nullable Path own;

  /**
   * @param own a log's own {@code site-template} folder; null if it has none
   */
  Templates(@Nullable Path own) throws IOException {
    this.own = own;
    this.configuration =
        own == null
            ? OURS
            : Templating.from(
                new MultiTemplateLoader(
                    new TemplateLoader[] {new FileTemplateLoader(own.toFile()), LOADER}));
  }

  /** The edition as templates get it, with what they take of it noted. */
  TemplateModel watched(Uses uses) throws IOException {
    try {
      return uses.edition(configuration.getObjectWrapper());
    } catch (TemplateModelException e) {
      throw new IOException("an edition cannot be shown to templates", e);
    }
  }

  /**
   * Fills a template.
   *
   * @throws ProblemException naming template and line if the template is wrong
   */
  String fill(String template, Map<String, Object> values) throws IOException {
    requireText(template);
    StringWriter out = new StringWriter();
    try {
      configuration.getTemplate(template).process(values, out);
    } catch (ParseException e) {
      throw wrong(
          e.getTemplateName(), e.getLineNumber(), e.getColumnNumber(), e.getEditorMessage(), e);
    } catch (TemplateException e) {
      throw wrong(
          e.getTemplateSourceName(),
          e.getLineNumber(),
          e.getColumnNumber(),
          e.getMessageWithoutStackTop(),
          e);
    }
    return out.toString();
  }

  /** FreeMarker itself would put signs of its own in the place of what it cannot read. */
  private void requireText(String template) throws IOException {
    Path file = own == null ? null : own.resolve(template);
    if (file == null || !Files.isRegularFile(file)) {
      return;
    }
    try {
      Files.readString(file, StandardCharsets.UTF_8);
    } catch (CharacterCodingException e) {
      throw new ProblemException(
          Place.of("site-template/" + template),
          "This is not UTF-8 text.",
          "Save the file as UTF-8 in your editor.",
          e);
    }
  }

  private static ProblemException wrong(
      @Nullable String template,
      @Nullable Integer line,
      @Nullable Integer column,
      @Nullable String message,
      Exception cause) {
    String file = "site-template/" + template;
    return new ProblemException(
        line == null || line < 1
            ? Place.of(file)
            : Place.of(file, line, column == null ? 0 : Math.max(0, column)),
        firstWords(message),
        "Mend the template, or delete it to use the one that comes with chinelog.",
        cause);
  }

  /** What FreeMarker says before it begins to give advice, on one line and with its stop. */
  private static Sentence firstWords(@Nullable String message) {
    String first = message == null ? "" : message.replaceFirst("(?s)\\n\\s*----.*", "");
    String line = first.replaceAll("\\s+", " ").strip();
    return line.isEmpty()
        ? Sentence.of("The template is wrong.")
        : Sentence.of("The template is wrong: {0}", line.endsWith(".") ? line : line + ".");
  }

  /** A file that is taken as it stands, such as {@code search.js}. */
  byte[] file(String name) throws IOException {
    Path of = own == null ? null : own.resolve(name);
    if (of != null && Files.isRegularFile(of)) {
      return Files.readAllBytes(of);
    }
    try (var in = Templates.class.getResourceAsStream(BUILT_IN + "/" + name)) {
      if (in == null) {
        throw new IOException("chinelog comes without site-template/" + name + "; build it anew.");
      }
      return in.readAllBytes();
    }
  }
}
