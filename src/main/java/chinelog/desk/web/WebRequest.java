package chinelog.desk.web;

import com.sun.net.httpserver.Headers;
import com.sun.net.httpserver.HttpExchange;
import java.io.IOException;
import java.io.InputStream;
import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Locale.LanguageRange;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * What a browser asks.
 *
 * @param path decoded, such as {@code /notes}
 * @param rest of the path below what its handler stands for; empty if that is all of it
 * @param fields of the address and of a form, by name, in the order sent
 * @param locale of the language that the browser asks for, English where it is none of ours
 * @param body what was sent that is no form; empty for a form
 */
public record WebRequest(
    String path, String rest, Map<String, List<String>> fields, Locale locale, InputStream body) {

  private static final List<Locale> LANGUAGES =
      List.of(
          Locale.US,
          Locale.ENGLISH,
          Locale.GERMAN,
          Locale.forLanguageTag("nl"),
          Locale.FRENCH,
          Locale.forLanguageTag("es"));

  /** The most that a form may hold: a note with all its keys fits many times. */
  static final int MOST_FORM_BYTES = 8 << 20;

  private static final String FORM = "application/x-www-form-urlencoded";

  static WebRequest of(HttpExchange exchange, String path, String rest)
      throws IOException, RefusedException {
    Map<String, List<String>> fields = new TreeMap<>();
    addAll(exchange.getRequestURI().getRawQuery(), fields);
    InputStream body = exchange.getRequestBody();
    String type = exchange.getRequestHeaders().getFirst("Content-Type");
    if (type != null && type.startsWith(FORM)) {
      byte[] form = body.readNBytes(MOST_FORM_BYTES + 1);
      if (form.length > MOST_FORM_BYTES) {
        throw new RefusedException(413, "This form holds more than 8 MB.");
      }
      addAll(new String(form, StandardCharsets.UTF_8), fields);
      body = InputStream.nullInputStream();
    }
    fields.replaceAll((name, values) -> List.copyOf(values));
    return new WebRequest(
        path,
        rest,
        Collections.unmodifiableMap(fields),
        locale(exchange.getRequestHeaders()),
        body);
  }

  /** The language that a browser asks for; English where it is none of ours. */
  static Locale locale(Headers headers) {
    String languages = headers.getFirst("Accept-Language");
    try {
      Locale found =
          languages == null || languages.isBlank()
              ? null
              : Locale.lookup(LanguageRange.parse(languages), LANGUAGES);
      return found == null || found.equals(Locale.ENGLISH) ? Locale.UK : found;
    } catch (IllegalArgumentException e) {
      // What is sent is no list of languages: as good as none.
      return Locale.UK;
    }
  }

  private static void addAll(
      @org.jspecify.annotations.Nullable String encoded, Map<String, List<String>> fields)
      throws RefusedException {
    if (encoded == null || encoded.isEmpty()) {
      return;
    }
    for (String pair : encoded.split("&")) {
      int equals = pair.indexOf('=');
      String name = decoded(equals < 0 ? pair : pair.substring(0, equals));
      String value = equals < 0 ? "" : decoded(pair.substring(equals + 1));
      fields.computeIfAbsent(name, n -> new ArrayList<>()).add(value);
    }
  }

  private static String decoded(String text) throws RefusedException {
    try {
      return URLDecoder.decode(text, StandardCharsets.UTF_8);
    } catch (IllegalArgumentException e) {
      throw new RefusedException(400, "This address is not written as addresses are.");
    }
  }

  /** A field's value, the first if there are several; empty if it was not sent. */
  public String text(String name) {
    return find(name).orElse("");
  }

  public Optional<String> find(String name) {
    return fields.getOrDefault(name, List.of()).stream().findFirst();
  }

  /** All values of a field, in the order sent. */
  public List<String> all(String name) {
    return fields.getOrDefault(name, List.of());
  }

  /** A whole number, or what stands for one that was not sent or is none. */
  public int number(String name, int otherwise) {
    String text = text(name);
    return text.matches("-?[0-9]{1,9}") ? Integer.parseInt(text) : otherwise;
  }
}
