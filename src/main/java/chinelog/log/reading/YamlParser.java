package chinelog.log.reading;

import chinelog.problem.Place;
import chinelog.problem.Problems;
import chinelog.problem.Sentence;
import chinelog.problem.Suggestion;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Parse;
import org.snakeyaml.engine.v2.events.AliasEvent;
import org.snakeyaml.engine.v2.events.CollectionEndEvent;
import org.snakeyaml.engine.v2.events.CollectionStartEvent;
import org.snakeyaml.engine.v2.events.DocumentStartEvent;
import org.snakeyaml.engine.v2.events.Event;
import org.snakeyaml.engine.v2.events.MappingStartEvent;
import org.snakeyaml.engine.v2.events.NodeEvent;
import org.snakeyaml.engine.v2.events.ScalarEvent;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;

/**
 * Reads YAML 1.2 strictly: what could be misread by a person or another program is an error.
 *
 * <p>The tree is built from the parser's events, so that nothing is resolved behind our back and
 * every value keeps its place.
 */
public final class YamlParser {

  private static final LoadSettings SETTINGS =
      LoadSettings.builder().setCodePointLimit(SourceFile.MOST_BYTES).build();
  private static final int MOST_DEPTH = 30;
  private static final Set<String> LOOSE_TRUTHS = Set.of("yes", "no", "on", "off", "y", "n");

  private static final Pattern LOST_UNDER = Pattern.compile("(?m)^[ -]*#(?=([A-Za-z]+)\\s*:)");

  private final Source source;
  private final Problems problems;
  private final Iterator<Event> events;

  private YamlParser(Source source, Problems problems) {
    this.source = source;
    this.problems = problems;
    this.events = new Parse(SETTINGS).parseString(source.text()).iterator();
  }

  /** The document's value; null if there is none or, after a problem was noted, it is no YAML. */
  public static @Nullable Yaml parse(Source source, Problems problems) {
    int tab = source.text().indexOf('\t');
    if (tab >= 0) {
      problems.error(source.at(tab), "A tab stands here.", "Write spaces instead of tabs.");
      return null;
    }
    refuseLostUnder(source, problems);
    try {
      return new YamlParser(source, problems).document();
    } catch (MarkedYamlEngineException e) {
      Optional<Mark> mark = e.getProblemMark().or(e::getContextMark);
      int line = mark.map(Mark::getLine).orElse(0);
      YamlMistake.report(e, place(source, mark), source, line, problems);
    } catch (YamlEngineException e) {
      problems.error(
          source.at(0),
          "This cannot be read as YAML.",
          "Look for odd characters, and save the file as plain UTF-8 text.");
    }
    return null;
  }

  /** A # straight before a key that is "under", or nearly, is a slip that would publish. */
  private static void refuseLostUnder(Source source, Problems problems) {
    Matcher lost = LOST_UNDER.matcher(source.text());
    while (lost.find()) {
      if (Suggestion.findNearest(lost.group(1), List.of("under")).isPresent()) {
        problems.error(
            source.at(lost.end() - 1),
            Sentence.of(
                "\"{0}\" is a remark here, so that nothing is under its agreement.", lost.group(1)),
            "Remove the #; or write a space after it if you mean a remark.");
      }
    }
  }

  private @Nullable Yaml document() {
    Yaml root = null;
    boolean seen = false;
    while (events.hasNext()) {
      Event event = events.next();
      if (event instanceof DocumentStartEvent start) {
        if (seen) {
          error(event, "A second document begins here.", "Remove the line \"---\".");
          return root;
        }
        if (start.getSpecVersion().isPresent() || !start.getTags().isEmpty()) {
          error(event, "A directive (a line that begins with %) stands here.", "Remove it.");
        }
        seen = true;
      } else if (event instanceof NodeEvent) {
        root = value(event, 0);
      }
    }
    return root;
  }

  private Yaml value(Event event, int depth) {
    refuseCleverness(event);
    if (event instanceof ScalarEvent scalar) {
      return scalar(scalar);
    }
    if (event instanceof CollectionStartEvent && depth == MOST_DEPTH) {
      error(event, "Lists stand in lists more than 30 deep here.", "Write it flatter.");
      skip();
      return new Yaml.Sequence(List.of(), place(event.getStartMark()));
    }
    if (event instanceof MappingStartEvent) {
      return mapping(event, depth);
    }
    if (event instanceof CollectionStartEvent) {
      List<Yaml> items = new ArrayList<>();
      for (Event e = events.next(); !(e instanceof CollectionEndEvent); e = events.next()) {
        items.add(value(e, depth + 1));
      }
      return new Yaml.Sequence(List.copyOf(items), place(event.getStartMark()));
    }
    Place place = place(event.getStartMark());
    return new Yaml.Scalar("", true, Source.near(place, ""));
  }

  private Yaml.Mapping mapping(Event start, int depth) {
    List<Yaml.Pair> pairs = new ArrayList<>();
    Set<String> keys = new HashSet<>();
    for (Event e = events.next(); !(e instanceof CollectionEndEvent); e = events.next()) {
      Yaml key = value(e, depth + 1);
      Yaml value = value(events.next(), depth + 1);
      if (!(key instanceof Yaml.Scalar name)) {
        problems.error(
            key.place(),
            "A key must be a single word.",
            "Put a value that begins with [ or { in quotes.");
      } else if (name.text().equals("<<") && name.plain()) {
        problems.error(
            key.place(), "\"<<\" would copy keys from elsewhere.", "Write the keys out here.");
      } else if (!keys.add(name.text())) {
        problems.error(
            key.place(),
            Sentence.of("\"{0}\" stands here a second time.", name.text()),
            "Keep one of the two.");
      } else {
        checkTruth(value);
        pairs.add(new Yaml.Pair(name, value));
      }
    }
    return new Yaml.Mapping(List.copyOf(pairs), place(start.getStartMark()));
  }

  private void checkTruth(Yaml value) {
    if (value instanceof Yaml.Scalar s && isLooseTruth(s)) {
      problems.error(
          s.place(),
          Sentence.of("Programs disagree on what a bare \"{0}\" means.", s.text()),
          "Write true or false; if you mean the word, put it in quotes.");
    }
  }

  /** Whether this is a word that YAML 1.1 took for true or false, and YAML 1.2 does not. */
  static boolean isLooseTruth(Yaml.Scalar scalar) {
    return scalar.plain() && LOOSE_TRUTHS.contains(scalar.text().toLowerCase(Locale.ROOT));
  }

  private void refuseCleverness(Event event) {
    if (event instanceof AliasEvent) {
      error(
          event,
          "\"*\" stands for a value from elsewhere.",
          "Write the value out, or put it in quotes.");
    } else if (event instanceof NodeEvent node && node.getAnchor().isPresent()) {
      error(event, "\"&\" gives this value a name.", "Remove it, or put the value in quotes.");
    }
    Optional<String> tag =
        event instanceof ScalarEvent s
            ? s.getTag()
            : event instanceof CollectionStartEvent c ? c.getTag() : Optional.empty();
    if (tag.isPresent()) {
      error(event, "\"!\" gives this value a type.", "Remove it, or put the value in quotes.");
    }
  }

  private void skip() {
    int open = 1;
    while (open > 0) {
      Event e = events.next();
      open += e instanceof CollectionStartEvent ? 1 : e instanceof CollectionEndEvent ? -1 : 0;
    }
  }

  private Yaml.Scalar scalar(ScalarEvent event) {
    String text = event.getValue();
    Place start = place(event.getStartMark());
    int startLine = event.getStartMark().map(Mark::getLine).orElse(0);
    int endLine = event.getEndMark().map(Mark::getLine).orElse(0);
    if (text.codePoints().anyMatch(SourceFile::isControl)) {
      error(event, "A control character is written in this value.", "Delete it.");
    }
    if (event.isPlain()) {
      remindOfLostComment(event, endLine);
    }
    if (event.isLiteral()) {
      return new Yaml.Scalar(text, false, literal(start, startLine, text));
    }
    int from = start.column() - 1 + (event.isPlain() ? 0 : 1);
    Source where =
        startLine == endLine && source.line(startLine).startsWith(text, from)
            ? Source.inFile(Place.of(start.file(), start.line(), from + 1), text, 1)
            : Source.near(start, text);
    return new Yaml.Scalar(text, event.isPlain(), where);
  }

  /** A block of text after {@code |}: its first line that is not blank gives the indentation. */
  private Source literal(Place start, int startLine, String text) {
    int blank = 0;
    while (blank < text.length() && text.charAt(blank) == '\n') {
      blank++;
    }
    String written = source.line(startLine + 1 + blank);
    String first = text.substring(blank).split("\n", 2)[0];
    if (!written.endsWith(first)) {
      return Source.near(start, text);
    }
    int column = written.length() - first.length() + 1;
    return Source.inFile(Place.of(start.file(), start.line() + 1, column), text, column);
  }

  /** YAML drops " #1" from {@code title: Mould #1}: hardly what was meant. */
  private void remindOfLostComment(ScalarEvent event, int endLine) {
    Place end = place(event.getEndMark());
    String line = source.line(endLine);
    String rest = line.substring(Math.min(line.length(), end.column() - 1));
    if (!event.getValue().isEmpty() && rest.matches(" +#[^\\s#].*")) {
      problems.reminder(
          end,
          "What follows \" #\" on this line is a remark, and no part of the value.",
          "Put the value in quotes if it belongs to it, else write a space after the #.");
    }
  }

  private void error(Event event, CharSequence what, CharSequence remedy) {
    problems.error(place(event.getStartMark()), what, remedy);
  }

  private Place place(Optional<Mark> mark) {
    return place(source, mark);
  }

  private static Place place(Source source, Optional<Mark> mark) {
    return source.at(mark.map(m -> source.offset(m.getLine(), m.getColumn())).orElse(0));
  }
}
