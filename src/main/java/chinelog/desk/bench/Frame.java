package chinelog.desk.bench;

import chinelog.desk.web.Reply;
import chinelog.desk.web.WebRequest;
import chinelog.markup.Templating;
import freemarker.cache.ClassTemplateLoader;
import freemarker.template.Configuration;
import freemarker.template.TemplateException;
import java.io.IOException;
import java.io.StringWriter;
import java.security.SecureRandom;
import java.util.ArrayList;
import java.util.Base64;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Fills the templates of {@code chinelog/desk}, whole pages and parts of pages, in the language of
 * the browser.
 *
 * <p>Templates get their own values and: {@code say(key, …)}, {@code count(key, number)}, {@code
 * date(day)}, {@code here} (the section's id), {@code own} (where style and scripts are), {@code
 * menu}, {@code language}, {@code nonce} (which a script or style written into the page must bear).
 */
public final class Frame {

  private static final int NONCE_BYTES = 16;

  private final SecureRandom random = new SecureRandom();
  private final Configuration configuration;

  private final String own;

  /**
   * @param own the path of the desk's own files, such as {@code /own/5f3a/}
   */
  public Frame(String own) {
    this.own = own;
    this.configuration = Templating.from(new ClassTemplateLoader(Frame.class, "/chinelog/desk"));
  }

  /**
   * A whole page.
   *
   * @param template such as {@code notes.ftlh}, which calls the macro {@code frame} of {@code
   *     frame.ftlh}
   */
  public Reply page(WebRequest request, DeskSection here, String template, Map<String, ?> values)
      throws IOException {
    String nonce = nonce();
    String html = filled(request, here, template, values, nonce);
    return Reply.html(html).under(policy(nonce));
  }

  /** A part of a page, which a script puts in its place. */
  public Reply part(WebRequest request, DeskSection here, String template, Map<String, ?> values)
      throws IOException {
    return Reply.html(filled(request, here, template, values, ""));
  }

  /** The words of a section in the browser's language. */
  public DeskWords words(WebRequest request, DeskSection here) {
    return DeskWords.of(here, request);
  }

  private String filled(
      WebRequest request, DeskSection here, String template, Map<String, ?> values, String nonce)
      throws IOException {
    DeskWords words = words(request, here);
    Map<String, Object> all = new HashMap<>(values);
    words.putInto(all);
    all.put("here", here.id());
    all.put("nonce", nonce);
    all.put("own", own);
    all.put("importMap", Library.importMap(own));
    List<Map<String, String>> menu = new ArrayList<>();
    for (DeskSection section : DeskSection.values()) {
      menu.add(
          Map.of(
              "id", section.id(),
              "path", section.path(),
              "title", words.text("menu." + section.id())));
    }
    all.put("menu", menu);
    StringWriter out = new StringWriter();
    try {
      configuration.getTemplate(template).process(all, out);
    } catch (TemplateException e) {
      throw new IllegalStateException(
          "the desk's template "
              + template
              + " is wrong: "
              + String.valueOf(e.getMessageWithoutStackTop()).lines().findFirst().orElse(""),
          e);
    }
    return out.toString();
  }

  private String nonce() {
    byte[] bytes = new byte[NONCE_BYTES];
    random.nextBytes(bytes);
    return Base64.getEncoder().encodeToString(bytes);
  }

  /** Content Security Policy Level 3: nothing but what the desk itself sends. */
  private static String policy(String nonce) {
    return "default-src 'none'; script-src 'self' 'nonce-"
        + nonce
        + "'; style-src 'self' 'nonce-"
        + nonce
        + "'; img-src 'self' blob:; font-src 'self'; connect-src 'self'; frame-src 'self';"
        + " form-action 'self'; base-uri 'none'; frame-ancestors 'none'";
  }
}
