package chinelog.log;

import chinelog.label.Label;
import chinelog.log.markdown.Targets;
import chinelog.log.reading.Amounts;
import chinelog.log.reading.Fields;
import chinelog.log.reading.Kind;
import chinelog.log.reading.Scope;
import chinelog.log.reading.Yaml;
import chinelog.log.records.FigureGroup;
import chinelog.log.records.HandoverSection;
import chinelog.log.records.Limit;
import chinelog.log.records.Marked;
import chinelog.log.records.PostLength;
import chinelog.log.records.PostPlan;
import chinelog.log.records.Stage;
import chinelog.problem.Sentence;
import chinelog.problem.Suggestion;
import chinelog.quantity.Quantity;
import chinelog.wording.Catalogue;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Reads the lists of log.yaml: stages, limits, posts, the handover booklet. */
record PlanReader(Fields log, Scope scope) {

  /** The known sections of the handover booklet. */
  private static final List<String> HANDOVER =
      List.of(
          "quick-card",
          "what-it-is",
          "box",
          "setting-up",
          "taking-down",
          "handling",
          "running",
          "settings",
          "care",
          "finishes",
          "spares",
          "mishaps");

  private static final Pattern LENGTH =
      Pattern.compile("([0-9]{1,6}(?:[.][0-9]+)?)\\s*(?:words?|min|minutes?)?");

  List<Stage> stages() {
    List<Stage> stages = new ArrayList<>();
    for (Yaml.Pair pair : log.pairs("stages")) {
      String id = pair.key().text();
      if (!id.matches("[\\p{L}\\p{N}][\\p{L}\\p{M}\\p{N}_-]*")) {
        scope.error(
            pair.key().place(),
            Sentence.of("\"{0}\" cannot be the word for a stage.", id),
            "Write one word of letters, digits and hyphens, and put the rest into \"title\".");
        continue;
      }
      stages.add(stage(pair));
    }
    return stages;
  }

  private Stage stage(Yaml.Pair pair) {
    String id = pair.key().text();
    Fields fields =
        Fields.of(
            pair.value(), scope, Label.NONE, "title", "start", "finish", "hours", "about", "under");
    LocalDate start = fields.date("start");
    LocalDate finish = fields.date("finish");
    if (start != null && finish != null && finish.isBefore(start)) {
      scope.error(
          fields.place("finish"),
          Sentence.of("This stage ends before it begins on {0}.", start),
          "Swap the two dates, or correct one.");
      finish = null;
    }
    Marked<Quantity> hours = fields.quantity("hours", Kind.HOURS);
    Yaml about = fields.find("about");
    return new Stage(
        id,
        fields.text("title", LogReader.title(id)),
        about == null ? List.of() : HeadReader.blocks(about, fields.label(), scope),
        start,
        finish,
        hours == null ? null : hours.value(),
        fields.label(),
        pair.key().place());
  }

  List<Limit> limits() {
    List<Limit> limits = new ArrayList<>();
    for (Yaml.Pair pair : log.pairs("limits")) {
      String id = pair.key().text();
      Fields fields = Fields.of(pair.value(), scope, Label.NONE, "rule", "title", "under");
      String rule =
          fields.require("rule", "hull.loa <= 36 in") == null ? null : fields.text("rule");
      if (rule != null) {
        limits.add(
            new Limit(
                id,
                fields.text("title", LogReader.title(id)),
                rule,
                Amounts.own(rule, fields.label()),
                fields.place("rule")));
      }
    }
    return limits;
  }

  List<FigureGroup> figureGroups() {
    List<FigureGroup> groups = new ArrayList<>();
    for (Yaml.Pair pair : log.pairs("figures")) {
      List<FigureGroup.Name> names =
          log.values().words(pair.value()).stream()
              .map(word -> new FigureGroup.Name(word.text(), word.place()))
              .toList();
      groups.add(new FigureGroup(pair.key().text(), names, pair.key().place()));
    }
    return groups;
  }

  List<PostPlan> posts() {
    List<PostPlan> posts = new ArrayList<>();
    Map<String, String> told = new HashMap<>();
    SortedSet<String> entries = scope.inventory().entryIds();
    if (log.find("posts") instanceof Yaml.Mapping) {
      return posts;
    }
    for (Yaml item : log.items("posts")) {
      Fields fields =
          Fields.of(item, scope, Label.NONE, "title", "standfirst", "entries", "opening", "under");
      String title = fields.require("title", "The drawings") == null ? null : fields.text("title");
      fields.require("entries", "[2026-03-14-drawings]");
      List<String> own = new ArrayList<>();
      for (Yaml.Scalar word : fields.words("entries")) {
        String id = fields.values().known(word, entries, "an entry of this log");
        String before = id == null ? null : told.putIfAbsent(id, title == null ? "" : title);
        if (before != null) {
          scope.error(
              word.place(),
              Sentence.of("\"{0}\" is told already in the post \"{1}\".", word.text(), before),
              "Keep it in one of the two.");
        } else if (id != null) {
          own.add(id);
        }
      }
      posts.add(
          new PostPlan(
              title == null ? "" : title,
              fields.text("standfirst", ""),
              List.copyOf(own),
              opening(fields),
              fields.label(),
              fields.place()));
    }
    return posts;
  }

  /** Wanted of every post; null where the log has a list of them, or does not say. */
  @Nullable PostLength postLength() {
    if (!(log.find("posts") instanceof Yaml.Mapping mapping)) {
      return null;
    }
    Fields fields = new Fields(mapping, scope, Label.NONE, "words", "minutes");
    if (fields.has("words") == fields.has("minutes")) {
      scope.error(
          mapping.place(),
          "Here belongs either a list of posts, or one length that each of them should have.",
          "Write such as \"posts: {words: 900}\" or \"posts: {minutes: 4}\".");
      return null;
    }
    boolean inWords = fields.has("words");
    Yaml.Scalar scalar = fields.scalar(inWords ? "words" : "minutes");
    Matcher length = scalar == null ? null : LENGTH.matcher(scalar.text());
    if (length != null && length.matches() && new BigDecimal(length.group(1)).signum() > 0) {
      return new PostLength(
          new BigDecimal(length.group(1)),
          inWords ? PostLength.Measure.WORDS : PostLength.Measure.MINUTES);
    }
    if (scalar != null) {
      scope.error(
          scalar.place(),
          Sentence.of("\"{0}\" is not the length of a post.", scalar.text()),
          Sentence.of("Write a number above 0, such as {0}.", inWords ? 900 : 4));
    }
    return null;
  }

  private @Nullable String opening(Fields fields) {
    Yaml.Scalar scalar = fields.scalar("opening");
    return scalar == null ? null : Targets.photo(scalar, scope);
  }

  List<HandoverSection> handover() {
    List<HandoverSection> sections = new ArrayList<>();
    Catalogue titles = GivenTitles.of(log);
    for (Yaml.Pair pair : log.pairs("handover")) {
      String id = pair.key().text();
      if (!HANDOVER.contains(id)) {
        unknownSection(pair.key(), HANDOVER);
        continue;
      }
      String title = titles.text("handover." + id);
      Yaml text = pair.value();
      Label label = Label.NONE;
      if (text instanceof Yaml.Mapping mapping) {
        Fields fields = new Fields(mapping, scope, label, "title", "text", "under");
        title = fields.text("title", title);
        label = fields.label();
        text = fields.require("text", "…");
      }
      sections.add(
          new HandoverSection(
              id,
              title,
              text == null ? List.of() : HeadReader.blocks(text, label, scope),
              label,
              pair.key().place()));
    }
    return sections;
  }

  private void unknownSection(Yaml.Scalar key, Collection<String> known) {
    scope.error(
        key.place(),
        Sentence.of("\"{0}\" is not a section of the handover booklet.", key.text()),
        Suggestion.remedy(key.text(), known));
  }
}
