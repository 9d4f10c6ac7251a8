package chinelog.site;

import chinelog.digest.ContentHash;
import chinelog.edition.Edition.AgreementLegend;
import chinelog.edition.Edition.Contents;
import chinelog.edition.Edition.Entry;
import chinelog.edition.Edition.Stage;
import chinelog.edition.Figure;
import freemarker.template.AdapterTemplateModel;
import freemarker.template.ObjectWrapper;
import freemarker.template.TemplateCollectionModel;
import freemarker.template.TemplateHashModelEx;
import freemarker.template.TemplateModel;
import freemarker.template.TemplateModelException;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Watches what one page takes from its edition while its template is filled, so that the page need
 * be filled again only when some of that has changed.
 *
 * <p>Everything that a template can reach passes through here: a part of the edition, an entry or a
 * stage by its id, the address of an entry or a figure, a figure's part. What was taken is noted
 * with a digest of it, such as {@code PART posts}.
 */
final class Uses {

  private static final String SEPARATOR = "\t";

  /** Something that a template can take. */
  private enum Kind {
    /** A part of the edition, such as {@code posts}. */
    PART,
    ENTRY,
    STAGE,
    ENTRY_ADDRESS,
    FIGURE_ADDRESS,
    FIGURE_CELL,
    ALL
  }

  /** What was taken; written such as {@code PART posts}. */
  private record Use(Kind kind, String name) implements Comparable<Use> {

    static Optional<Use> parse(String text) {
      int space = text.indexOf(' ');
      return Stream.of(Kind.values())
          .filter(k -> space > 0 && k.name().equals(text.substring(0, space)))
          .findFirst()
          .map(k -> new Use(k, text.substring(space + 1)));
    }

    String text() {
      return kind + " " + name;
    }

    @Override
    public int compareTo(Use other) {
      return text().compareTo(other.text());
    }
  }

  /** What all pages of a site share. */
  static final class Source {
    private final Contents contents;
    private final Addresses addresses;
    private final ContentHash hashes;
    private final Map<String, Entry> entries = new HashMap<>();
    private final Map<String, Stage> stages = new HashMap<>();
    private final Map<String, Figure.Cell> cells = new HashMap<>();
    private final Map<Use, String> digests = new HashMap<>();
    private final Map<String, java.lang.reflect.RecordComponent> parts = new HashMap<>();

    Source(Contents contents, Addresses addresses, ContentHash hashes) {
      this.contents = contents;
      this.addresses = addresses;
      this.hashes = hashes;
      contents.entries().forEach(e -> entries.put(e.id(), e));
      contents.stages().forEach(s -> stages.put(s.id(), s));
      for (Figure figure : contents.figures()) {
        if (figure.cell() != null) {
          cells.put(figure.name(), figure.cell());
        }
      }
      for (var part : Contents.class.getRecordComponents()) {
        parts.put(part.getName(), part);
      }
    }

    /** The digest of what a use gives in this edition. */
    private String digest(Use use) {
      return digests.computeIfAbsent(use, u -> hashes.of(value(u)));
    }

    private @Nullable Object value(Use use) {
      return switch (use.kind) {
        case PART -> part(use.name);
        case ENTRY -> entries.get(use.name);
        case STAGE -> stages.get(use.name);
        case ENTRY_ADDRESS -> addresses.entry(use.name);
        case FIGURE_ADDRESS -> addresses.figure(use.name);
        case FIGURE_CELL -> cells.get(use.name);
        case ALL -> contents;
      };
    }

    private @Nullable Object part(String name) {
      var component = parts.get(name);
      if (component == null) {
        // Whatever else a template may ask of a record is told by all of it.
        return contents;
      }
      try {
        return component.getAccessor().invoke(contents);
      } catch (ReflectiveOperationException e) {
        throw new IllegalStateException("a public record keeps its components to itself", e);
      }
    }
  }

  private final Source source;
  private final SortedMap<Use, String> taken = new TreeMap<>();

  Uses(Source source) {
    this.source = source;
  }

  @Nullable Entry entry(String id) {
    take(Kind.ENTRY, id);
    return source.entries.get(id);
  }

  @Nullable Stage stage(String id) {
    take(Kind.STAGE, id);
    return source.stages.get(id);
  }

  @Nullable String entryAddress(String id) {
    take(Kind.ENTRY_ADDRESS, id);
    return source.addresses.entry(id);
  }

  @Nullable String figureAddress(String name) {
    take(Kind.FIGURE_ADDRESS, name);
    return source.addresses.figure(name);
  }

  /** The place of a figure in a table of parts; null if it has none. */
  Figure.@Nullable Cell figureCell(String name) {
    take(Kind.FIGURE_CELL, name);
    return source.cells.get(name);
  }

  /** The number of an agreement in the key at the foot of the page; 0 for one that is not there. */
  int agreementNumber(String id) {
    take(Kind.PART, "agreements");
    return 1
        + source.contents.agreements().stream()
            .filter(a -> !a.with().isEmpty())
            .map(AgreementLegend::id)
            .toList()
            .indexOf(id);
  }

  private void take(Kind kind, String name) {
    Use use = new Use(kind, name);
    if (!taken.containsKey(use)) {
      taken.put(use, source.digest(use));
    }
  }

  /** The edition as templates get it. */
  TemplateModel edition(ObjectWrapper wrapper) throws TemplateModelException {
    return new Watched((TemplateHashModelEx) wrapper.wrap(source.contents));
  }

  /**
   * What was taken, on one line, beside a digest of all else that the page was made of; null where
   * that cannot be told on a line.
   */
  @Nullable String told(String page) {
    StringBuilder line = new StringBuilder(page);
    for (Map.Entry<Use, String> use : taken.entrySet()) {
      if (use.getKey().name.chars().anyMatch(Character::isISOControl)) {
        return null;
      }
      line.append(SEPARATOR).append(use.getKey().text()).append(SEPARATOR).append(use.getValue());
    }
    return line.toString();
  }

  /** Whether a page of which this was told would be filled with the very same again. */
  static boolean areSame(String told, String page, Source source) {
    String[] cells = told.split(SEPARATOR, -1);
    if (cells.length % 2 == 0 || !cells[0].equals(page)) {
      return false;
    }
    for (int i = 1; i < cells.length; i += 2) {
      String digest = Use.parse(cells[i]).map(source::digest).orElse("");
      if (!digest.equals(cells[i + 1])) {
        return false;
      }
    }
    return true;
  }

  /** Passes on what a template asks of the edition, and notes it. */
  private final class Watched implements TemplateHashModelEx, AdapterTemplateModel {
    private final TemplateHashModelEx whole;

    Watched(TemplateHashModelEx whole) {
      this.whole = whole;
    }

    @Override
    public @Nullable TemplateModel get(String key) throws TemplateModelException {
      take(Kind.PART, key);
      return whole.get(key);
    }

    @Override
    public boolean isEmpty() throws TemplateModelException {
      take(Kind.ALL, "");
      return whole.isEmpty();
    }

    @Override
    public int size() throws TemplateModelException {
      take(Kind.ALL, "");
      return whole.size();
    }

    @Override
    public TemplateCollectionModel keys() throws TemplateModelException {
      take(Kind.ALL, "");
      return whole.keys();
    }

    @Override
    public TemplateCollectionModel values() throws TemplateModelException {
      take(Kind.ALL, "");
      return whole.values();
    }

    @Override
    public Object getAdaptedObject(Class<?> hint) {
      take(Kind.ALL, "");
      return source.contents;
    }
  }
}
