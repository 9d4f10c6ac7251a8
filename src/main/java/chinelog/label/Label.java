package chinelog.label;

import chinelog.problem.Sentence;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.List;
import java.util.SortedSet;
import java.util.TreeSet;

/**
 * The agreements that a thing is under, such as {@code {client, lines}}; the empty label is public.
 *
 * <p>Labels form a lattice under {@link #join} (Denning, "A lattice model of secure information
 * flow", CACM 1976); there is no order among readers.
 *
 * @param agreements ids, sorted; an immutable copy is kept
 */
public record Label(SortedSet<String> agreements) {

  public static final Label NONE = new Label(new TreeSet<>());

  public Label {
    agreements = Collections.unmodifiableSortedSet(new TreeSet<>(agreements));
  }

  public static Label of(String... agreements) {
    return of(List.of(agreements));
  }

  public static Label of(Collection<String> agreements) {
    return agreements.isEmpty() ? NONE : new Label(new TreeSet<>(agreements));
  }

  /** The label of anything made from something under this and something under {@code other}. */
  public Label join(Label other) {
    if (other.isNone() || equals(other)) {
      return this;
    }
    if (isNone()) {
      return other;
    }
    SortedSet<String> all = new TreeSet<>(agreements);
    all.addAll(other.agreements);
    return new Label(all);
  }

  /** This label less one agreement: what a release of that agreement leaves. */
  public Label without(String agreement) {
    SortedSet<String> rest = new TreeSet<>(agreements);
    rest.remove(agreement);
    return of(rest);
  }

  public boolean isNone() {
    return agreements.isEmpty();
  }

  /** For the maker, after "under": "lines", or "the agreements client and lines". */
  public CharSequence inWords() {
    List<CharSequence> named = new ArrayList<>();
    agreements.stream().filter(id -> !Agreement.isOwn(id)).forEach(named::add);
    List<CharSequence> all = new ArrayList<>(named);
    if (named.size() < agreements.size()) {
      all.add(Sentence.of("your own affairs"));
    }
    CharSequence listed = all.isEmpty() ? "" : all.get(0);
    for (int i = 1; i < all.size(); i++) {
      boolean last = i == all.size() - 1;
      listed = Sentence.of(last ? "{0} and {1}" : "{0}, {1}", listed, all.get(i));
    }
    return isNone()
        ? Sentence.of("no agreement")
        : named.size() > 1 ? Sentence.of("the agreements {0}", listed) : listed;
  }

  @Override
  public String toString() {
    return isNone() ? "public" : String.join(" + ", agreements);
  }
}
