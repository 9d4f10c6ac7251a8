package chinelog.site;

import chinelog.edition.Edition;
import chinelog.markup.Theme;
import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.jspecify.annotations.Nullable;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

/**
 * A site that has been written, read back with an XML parser that refuses what is not well-formed.
 */
record WrittenSite(Path folder, Map<String, Document> pages) {

  static WrittenSite write(Edition edition, @Nullable Path templates, Path folder)
      throws Exception {
    Theme theme = Theme.load(edition.contents().theme(), null);
    FreshSite.write(edition, theme, templates, folder);
    return read(folder);
  }

  static WrittenSite read(Path folder) throws Exception {
    Map<String, Document> pages = new TreeMap<>();
    for (String file : files(folder)) {
      if (file.endsWith(".html")) {
        pages.put(file, parsed(Files.readString(folder.resolve(file))));
      }
    }
    return new WrittenSite(folder, pages);
  }

  static Document parsed(String xml) throws Exception {
    return DocumentBuilderFactory.newInstance()
        .newDocumentBuilder()
        .parse(new InputSource(new StringReader(xml)));
  }

  static List<String> files(Path folder) throws IOException {
    try (Stream<Path> all = Files.walk(folder)) {
      return all.filter(Files::isRegularFile)
          .map(f -> folder.relativize(f).toString().replace('\\', '/'))
          .sorted()
          .toList();
    }
  }

  /** Every file with its bytes. */
  static Map<String, String> bytes(Path folder) throws IOException {
    Map<String, String> bytes = new TreeMap<>();
    for (String file : files(folder)) {
      byte[] read = Files.readAllBytes(folder.resolve(file));
      bytes.put(file, read.length + ":" + Arrays.hashCode(read));
    }
    return bytes;
  }

  static List<Element> elements(Document page, String name) {
    NodeList found = page.getElementsByTagName(name);
    return IntStream.range(0, found.getLength()).mapToObj(i -> (Element) found.item(i)).toList();
  }

  /** The addresses that a page loads or leads to, but for what tells others of it. */
  static List<String> addresses(Document page) {
    List<String> all = new ArrayList<>();
    for (Element e : elements(page, "*")) {
      boolean isForOthers = e.getAttribute("rel").equals("canonical");
      for (String attribute : List.of("href", "src")) {
        if (e.hasAttribute(attribute) && !isForOthers) {
          all.add(e.getAttribute(attribute));
        }
      }
      for (String size : e.getAttribute("srcset").split(", ")) {
        all.add(size.split(" ")[0]);
      }
    }
    all.removeIf(String::isEmpty);
    return all;
  }

  /** Each link, source or anchor that leads nowhere, as {@code page leads to address}. */
  List<String> brokenAddresses() {
    Map<String, Set<String>> anchors = new TreeMap<>();
    pages.forEach((path, page) -> anchors.put(path, ids(path, page)));
    List<String> broken = new ArrayList<>();
    pages.forEach(
        (path, page) ->
            addresses(page).stream()
                .filter(a -> !leadsSomewhere(path, a, anchors))
                .forEach(a -> broken.add(path + " leads to " + a)));
    return broken;
  }

  private boolean leadsSomewhere(String path, String address, Map<String, Set<String>> anchors) {
    boolean isFromTheTop = path.equals("404.html") && address.startsWith("/");
    String[] parts = (isFromTheTop ? address.substring(1) : address).split("#", 2);
    String target =
        parts[0].isEmpty()
            ? path
            : Path.of(path).resolveSibling(parts[0]).normalize().toString().replace('\\', '/');
    return Files.isRegularFile(folder.resolve(target))
        && (parts.length == 1 || anchors.getOrDefault(target, Set.of()).contains(parts[1]));
  }

  private static Set<String> ids(String path, Document page) {
    Set<String> ids = new HashSet<>();
    for (Element e : elements(page, "*")) {
      if (e.hasAttribute("id") && !ids.add(e.getAttribute("id"))) {
        throw new IllegalStateException(path + " has the id " + e.getAttribute("id") + " twice");
      }
    }
    return ids;
  }

  String text(String file) throws IOException {
    return Files.readString(folder.resolve(file), StandardCharsets.UTF_8);
  }
}
