package chinelog.desk.settings;

import chinelog.desk.files.YamlText;
import chinelog.reckon.trade.Parameter;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * The keys of one group of a YAML file as fields, each with where it stands: {@code
 * limits/length/rule}.
 */
final class KeyForm {

  /** How a key is chosen or typed. */
  public enum Kind {
    TEXT,
    DATE,
    CHOICE
  }

  /**
   * One key.
   *
   * @param at where it stands, its steps joined by slashes
   * @param title key of its title in the words of the desk; empty where the key names itself
   * @param hint in words of the program, which are English; may be empty
   */
  public record Field(
      String at,
      String name,
      String title,
      String value,
      Kind kind,
      List<String> choices,
      String hint) {}

  private final YamlText yaml;
  private final List<String> group;
  private final List<Field> fields = new ArrayList<>();

  KeyForm(YamlText yaml, List<String> group) {
    this.yaml = yaml;
    this.group = List.copyOf(group);
  }

  private List<String> at(String key) {
    List<String> at = new ArrayList<>(group);
    at.add(key);
    List<String> within = new ArrayList<>(at);
    within.add("value");
    // A value that bears a mark of its own stands a step deeper.
    return yaml.has(within) ? within : at;
  }

  KeyForm add(String key, String title, Kind kind) {
    List<String> at = at(key);
    String value = yaml.find(at).orElse("");
    fields.add(new Field(String.join("/", at), key, title, value, kind, List.of(), ""));
    return this;
  }

  /** The figure or formula of a fact, which may stand by itself without a group. */
  KeyForm addFigure(String title) {
    List<String> at = yaml.find(group).isPresent() ? group : at("is");
    String value = yaml.find(at).orElse("");
    fields.add(new Field(String.join("/", at), "is", title, value, Kind.TEXT, List.of(), ""));
    return this;
  }

  /**
   * What a reckoning takes.
   *
   * @param tables of the log
   */
  KeyForm add(Parameter parameter, List<String> tables) {
    List<String> at = at(parameter.name());
    List<String> choices =
        parameter.kind() == Parameter.Kind.TABLE
            ? tables
            : parameter.kind() == Parameter.Kind.WORD ? parameter.choices() : List.of();
    fields.add(
        new Field(
            String.join("/", at),
            parameter.name(),
            "",
            yaml.find(at).orElse(""),
            choices.isEmpty() ? Kind.TEXT : Kind.CHOICE,
            choices,
            parameter.line().substring(parameter.name().length() + 2)));
    return this;
  }

  /** What a template needs to show it. */
  Map<String, Object> values(String file) {
    List<String> under = new ArrayList<>(group);
    under.add("under");
    return Map.of(
        "file",
        file,
        "group",
        String.join("/", group),
        "fields",
        fields.stream()
            .map(
                f ->
                    Map.of(
                        "at", f.at(),
                        "name", f.name(),
                        "title", f.title(),
                        "value", f.value(),
                        "kind", f.kind().name(),
                        "choices", f.choices(),
                        "hint", f.hint()))
            .toList(),
        "under",
        yaml.words(under));
  }
}
