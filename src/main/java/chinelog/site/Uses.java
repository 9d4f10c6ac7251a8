package chinelog.site;

import chinelog.digest.ContentHash;
import chinelog.edition.Edition.AgreementLegend;
import chinelog.edition.Edition.Contents;
import chinelog.edition.Edition.Entry;
import chinelog.edition.Edition.Stage;
import freemarker.template.AdapterTemplateModel;
import freemarker.template.ObjectWrapper;
import freemarker.template.TemplateCollectionModel;
import freemarker.template.TemplateHashModelEx;
import freemarker.template.TemplateModel;
import freemarker.template.TemplateModelException;
import java.util.HashMap;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * Watches what one page takes from its edition while its template is filled, so that the page need
 * be filled again only when some of that has changed.
 *
 * <p>Everything that a template can reach passes through here: a part of the edition, an entry or a
 * stage by its id, the address of an entry or a figure. What was taken is noted with a digest of
 * it, such as {@code part posts=3f0c…}.
 */
final class Uses {

  private static final String SEPARATOR = "\t";
  private static final String PART = "part ";
  private static final String ENTRY = "entry ";
  private static final String STAGE = "stage ";
  private static final String TO_ENTRY = "to entry ";
  private static final String TO_FIGURE = "to figure ";
  private static final String ALL = "all";

  /** What all pages of a site share. */
  static final class Source {
    private final Contents contents;
    private final Addresses addresses;
    private final ContentHash hashes;
    private final Map<String, Entry> entries = new HashMap<>();
    private final Map<String, Stage> stages = new HashMap<>();
    private final Map<String, String> digests = new HashMap<>();
    private final Map<String, java.lang.reflect.RecordComponent> parts = new HashMap<>();

    Source(Contents contents, Addresses addresses, ContentHash hashes) {
      this.contents = contents;
      this.addresses = addresses;
      this.hashes = hashes;
      contents.entries().forEach(e -> entries.put(e.id(), e));
      contents.stages().forEach(s -> stages.put(s.id(), s));
      for (var part : Contents.class.getRecordComponents()) {
        parts.put(part.getName(), part);
      }
    }

    /** The digest of what a use gives in this edition. */
    private String digest(String use) {
      return digests.computeIfAbsent(use, u -> hashes.of(value(u)));
    }

    private @Nullable Object value(String use) {
      if (use.startsWith(PART)) {
        return part(use.substring(PART.length()));
      }
      if (use.startsWith(ENTRY)) {
        return entries.get(use.substring(ENTRY.length()));
      }
      if (use.startsWith(STAGE)) {
        return stages.get(use.substring(STAGE.length()));
      }
      if (use.startsWith(TO_ENTRY)) {
        return addresses.entry(use.substring(TO_ENTRY.length()));
      }
      if (use.startsWith(TO_FIGURE)) {
        return addresses.figure(use.substring(TO_FIGURE.length()));
      }
      return contents;
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
  private final SortedMap<String, String> taken = new TreeMap<>();

  Uses(Source source) {
    this.source = source;
  }

  @Nullable Entry entry(String id) {
    take(ENTRY + id);
    return source.entries.get(id);
  }

  @Nullable Stage stage(String id) {
    take(STAGE + id);
    return source.stages.get(id);
  }

  @Nullable String entryAddress(String id) {
    take(TO_ENTRY + id);
    return source.addresses.entry(id);
  }

  @Nullable String figureAddress(String name) {
    take(TO_FIGURE + name);
    return source.addresses.figure(name);
  }

  /** The number of an agreement in the key at the foot of the page; 0 for one that is not there. */
  int agreementNumber(String id) {
    take(PART + "agreements");
    return 1
        + source.contents.agreements().stream()
            .filter(a -> !a.with().isEmpty())
            .map(AgreementLegend::id)
            .toList()
            .indexOf(id);
  }

  private void take(String use) {
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
    for (Map.Entry<String, String> use : taken.entrySet()) {
      if (use.getKey().chars().anyMatch(Character::isISOControl)) {
        return null;
      }
      line.append(SEPARATOR).append(use.getKey()).append(SEPARATOR).append(use.getValue());
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
      if (!source.digest(cells[i]).equals(cells[i + 1])) {
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
      take(PART + key);
      return whole.get(key);
    }

    @Override
    public boolean isEmpty() throws TemplateModelException {
      take(ALL);
      return whole.isEmpty();
    }

    @Override
    public int size() throws TemplateModelException {
      take(ALL);
      return whole.size();
    }

    @Override
    public TemplateCollectionModel keys() throws TemplateModelException {
      take(ALL);
      return whole.keys();
    }

    @Override
    public TemplateCollectionModel values() throws TemplateModelException {
      take(ALL);
      return whole.values();
    }

    @Override
    public Object getAdaptedObject(Class<?> hint) {
      take(ALL);
      return source.contents;
    }
  }
}
