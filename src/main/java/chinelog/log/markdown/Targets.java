package chinelog.log.markdown;

import chinelog.log.reading.FolderWalk;
import chinelog.log.reading.Scope;
import chinelog.log.reading.Yaml;
import chinelog.problem.Place;
import chinelog.problem.Sentence;
import chinelog.problem.Suggestion;
import com.vladsch.flexmark.util.sequence.Escaping;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Deque;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** What links and pictures lead to. */
public final class Targets {

  private static final Pattern SCHEME =
      Pattern.compile("[A-Za-z][A-Za-z0-9+.-]*:.*", Pattern.DOTALL);
  private static final Pattern ALLOWED = Pattern.compile("(?i)(https?://|mailto:)[^\\s].*");

  private static final String NO_SHEET = "Photograph what may be seen of it, or leave it out.";

  private final Scope scope;
  private final String base;

  /**
   * @param base folder of the note below the log's, without a '/' at its end; may be empty
   */
  public Targets(Scope scope, String base) {
    this.scope = scope;
    this.base = base;
  }

  /**
   * The path of the photograph that {@code written} leads to, or null after a problem was noted.
   */
  public @Nullable String photo(String written, Place place) {
    String url = Escaping.unescapeString(written);
    if (SCHEME.matcher(url).matches() && url.indexOf(':') > 1 || url.startsWith("//")) {
      scope.complain(
          place,
          "This picture is somewhere else, not in the log.",
          "Put the file into the folder photos and write its path, such as ../photos/x.jpg.");
      return null;
    }
    if (!mayStand(url, place)) {
      return null;
    }
    for (String candidate : List.of(percentDecoded(url), url)) {
      String path = resolve(base, candidate);
      if (path == null) {
        scope.complain(
            place,
            Sentence.of("\"{0}\" leads out of the log.", url),
            "Put the file into the folder photos and write its path, such as ../photos/x.jpg.");
        return null;
      }
      String found = find(path);
      if (found != null) {
        return found;
      }
    }
    reportMissing(percentDecoded(url), place);
    return null;
  }

  /** A photograph named in YAML, by its path below the log's folder. */
  public static @Nullable String photo(Yaml.Scalar written, Scope scope) {
    Targets targets = new Targets(scope, "");
    String path = written.text();
    String found = targets.find(path);
    if (found == null && targets.mayStand(path, written.place())) {
      targets.reportMissing(path, written.place());
    }
    return found;
  }

  private boolean mayStand(String path, Place place) {
    if (path.indexOf('\\') >= 0) {
      scope.complain(
          place, "A \\ stands in this path.", "Write / between folders, such as ../photos/x.jpg.");
      return false;
    }
    if (path.startsWith("/") || path.startsWith("~") || path.matches("[A-Za-z]:.*")) {
      scope.complain(
          place,
          "This path begins at the top of one computer.",
          "Write the path from this note, such as ../photos/x.jpg.");
      return false;
    }
    return true;
  }

  private @Nullable String find(String path) {
    return FolderWalk.findSame(scope.inventory().photos().keySet(), path);
  }

  private void reportMissing(String path, Place place) {
    String resolved = resolve(base, path);
    if (resolved != null && scope.inventory().sheets().containsKey(resolved)) {
      scope.complain(place, "This is a sheet; a sheet is not shown in a note.", NO_SHEET);
      return;
    }
    if (resolved != null && resolved.startsWith("sheets/")) {
      scope.complain(
          place,
          Sentence.of("There is no sheet \"{0}\", and none is shown in a note.", path),
          NO_SHEET);
      return;
    }
    String name = path.substring(path.lastIndexOf('/') + 1);
    List<String> names = new ArrayList<>();
    for (String photo : scope.inventory().photos().keySet()) {
      names.add(photo.substring(photo.lastIndexOf('/') + 1));
    }
    CharSequence remedy =
        names.contains(name)
            ? Sentence.of("It lies in another folder; write {0}.", pathsOf(name))
            : Suggestion.findNearest(name, names)
                .<CharSequence>map(near -> Sentence.of("Did you mean {0}?", pathsOf(near)))
                .orElse("Put the file into the folder photos, or correct its name.");
    scope.complain(place, Sentence.of("There is no photograph \"{0}\".", path), remedy);
  }

  private String pathsOf(String name) {
    return scope.inventory().photos().keySet().stream()
        .filter(p -> p.equals(name) || p.endsWith("/" + name))
        .map(p -> "../".repeat(base.isEmpty() ? 0 : base.split("/").length) + p)
        .map(p -> p.matches("[^\\s()]+") ? p : base.isEmpty() ? "\"" + p + "\"" : "<" + p + ">")
        .collect(Collectors.joining(", or "));
  }

  /** Whether a link may stand; notes a problem if not. */
  public boolean mayLink(String written, Place place) {
    String url = Escaping.unescapeString(written);
    if (ALLOWED.matcher(url).matches() || url.startsWith("#") && url.length() > 1) {
      return true;
    }
    if (SCHEME.matcher(url).matches() || url.startsWith("//") || url.isBlank()) {
      scope.complain(
          place,
          url.isBlank()
              ? "This link leads nowhere."
              : Sentence.of("A link to \"{0}\" is not allowed.", url),
          "Link to an address that begins with https://, or to another entry.");
      return false;
    }
    if (!mayStand(url, place)) {
      return false;
    }
    if (findEntry(scope.inventory().entries().keySet(), base, url) != null) {
      return true;
    }
    reportBadLink(url, place);
    return false;
  }

  private void reportBadLink(String url, Place place) {
    String path = resolve(base, percentDecoded(withoutFragment(url)));
    if (path != null && scope.inventory().sheets().containsKey(path)) {
      scope.complain(
          place,
          "This links to a sheet, and a sheet never leaves the log.",
          "Name it without a link.");
    } else if (path != null && path.startsWith("sheets/")) {
      scope.complain(
          place,
          Sentence.of("There is no sheet \"{0}\", and a sheet never leaves the log.", path),
          "Name it without a link.");
    } else if (path != null && find(path) != null) {
      scope.complain(
          place, "This links to a photograph.", "Write ! before it to show the photograph.");
    } else {
      String name = url.substring(url.lastIndexOf('/') + 1);
      if (url.matches("fact[^A-Za-z].+")) {
        scope.complain(
            place,
            Sentence.of("This links to \"{0}\", which is no entry of the log.", url),
            "If a fact is meant, write a colon after \"fact\": (fact:hull.loa).");
        return;
      }
      List<String> names =
          scope.inventory().entries().keySet().stream()
              .map(p -> p.substring(p.lastIndexOf('/') + 1))
              .toList();
      scope.complain(
          place,
          Sentence.of("This links to \"{0}\", which is no entry of the log.", url),
          Suggestion.findNearest(name, names)
              .<CharSequence>map(Suggestion::of)
              .orElse("Link to another entry's file, such as 2026-03-14-drawings.md."));
    }
  }

  /** The path of the entry's file that a link leads to, or null. */
  static @Nullable String findEntry(Collection<String> entries, String base, String url) {
    String path = resolve(base, percentDecoded(withoutFragment(url)));
    return path != null && entries.contains(path) ? path : null;
  }

  private static String withoutFragment(String url) {
    int hash = url.indexOf('#');
    return hash < 0 ? url : url.substring(0, hash);
  }

  /** The path below the log's folder, or null if it leads out of it. */
  private static @Nullable String resolve(String base, String path) {
    Deque<String> parts = new ArrayDeque<>();
    for (String part : (base + "/" + path).split("/")) {
      if (part.equals("..")) {
        if (parts.pollLast() == null) {
          return null;
        }
      } else if (!part.isEmpty() && !part.equals(".")) {
        parts.addLast(part);
      }
    }
    return String.join("/", parts);
  }

  /** RFC 3986, section 2.1; a % that begins no such code stands for itself. */
  static String percentDecoded(String text) {
    if (text.indexOf('%') < 0) {
      return text;
    }
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    byte[] in = text.getBytes(StandardCharsets.UTF_8);
    for (int i = 0; i < in.length; i++) {
      int high = i + 2 < in.length && in[i] == '%' ? Character.digit(in[i + 1], 16) : -1;
      int low = high >= 0 ? Character.digit(in[i + 2], 16) : -1;
      if (low >= 0) {
        out.write(high * 16 + low);
        i += 2;
      } else {
        out.write(in[i]);
      }
    }
    return out.toString(StandardCharsets.UTF_8);
  }
}
