package chinelog.desk.bench;

import chinelog.desk.web.WebRequest;
import chinelog.wording.Catalogue;
import freemarker.template.TemplateMethodModelEx;
import freemarker.template.TemplateModel;
import freemarker.template.utility.DeepUnwrap;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** The words of one section of the desk and those that all share, in one language. */
public record DeskWords(Catalogue own, Catalogue shared, Locale locale) {

  static DeskWords of(DeskSection section, WebRequest request) {
    Locale locale = request.locale();
    return new DeskWords(
        Catalogue.of(section.words(), locale),
        Catalogue.of(DeskSection.SHARED_WORDS, locale),
        locale);
  }

  /** A text with its places filled in. */
  public String text(String key, Object... parts) {
    return own.find(key).isPresent() ? own.text(key, parts) : shared.text(key, parts);
  }

  /** A counted thing: {@code count("notes", 6)} is the text of {@code notes.other}. */
  public String count(String key, int number) {
    return text(key + (number == 1 ? ".one" : ".other"), String.valueOf(number));
  }

  public String date(LocalDate day) {
    return shared.date(day);
  }

  void putInto(Map<String, Object> values) {
    values.put("language", locale.getLanguage());
    put(
        values,
        "say",
        given -> text(String.valueOf(given.get(0)), given.subList(1, given.size()).toArray()));
    put(
        values,
        "count",
        given -> count(String.valueOf(given.get(0)), ((Number) given.get(1)).intValue()));
    put(values, "date", given -> date(LocalDate.parse(String.valueOf(given.get(0)))));
  }

  /** What a template may call. */
  private interface Function {
    Object of(List<Object> given);
  }

  private static void put(Map<String, Object> values, String name, Function function) {
    TemplateMethodModelEx method =
        arguments -> {
          List<Object> given = new ArrayList<>();
          for (Object argument : arguments) {
            given.add(DeepUnwrap.unwrap((TemplateModel) argument));
          }
          return function.of(given);
        };
    values.put(name, method);
  }
}
