package chinelog.audit;

import chinelog.problem.Sentence;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;
import org.jsoup.nodes.Attribute;
import org.jsoup.nodes.Comment;
import org.jsoup.nodes.DataNode;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.jsoup.nodes.Node;
import org.jsoup.nodes.TextNode;
import org.jsoup.nodes.XmlDeclaration;
import org.jsoup.parser.Parser;

/** Opens a page with a parser of its own: only known elements, attributes and addresses. */
final class HtmlFile {

  private static final Set<String> ELEMENTS =
      words(
          "html head title meta link script style body header footer nav main article section aside"
              + " h1 h2 h3 h4 h5 h6 hgroup p a em strong b i small sub sup code pre kbd samp var q cite"
              + " dfn mark s del ins blockquote ul ol li dl dt dd figure figcaption picture source img"
              + " table caption thead tbody tfoot tr th td colgroup col hr br wbr time abbr data span"
              + " div button dialog form search label input output details summary bdi ruby rt rp"
              + " address noscript fieldset legend select option progress meter menu"
              + " svg g path rect line polyline polygon circle ellipse text tspan desc defs use symbol"
              + " clippath lineargradient radialgradient stop marker pattern mask");

  private static final Set<String> INLINE =
      words(
          "a em strong b i small sub sup code kbd samp var q cite dfn mark s del ins time abbr data"
              + " span bdi wbr tspan");

  private static final Set<String> ATTRIBUTES =
      words(
          "id class lang dir title href src srcset sizes alt width height loading decoding"
              + " fetchpriority rel type media name content charset property http-equiv role tabindex"
              + " hidden datetime scope colspan rowspan headers start value for open placeholder"
              + " autocomplete spellcheck inputmode enterkeyhint aria-hidden style defer async color"
              + " method action autofocus cite span reversed hreflang min max step checked disabled"
              + " selected multiple size translate itemprop itemscope itemtype as download popover"
              + " popovertarget popovertargetaction accesskey high low optimum is integrity crossorigin"
              + " xmlns xmlns:xlink viewbox preserveaspectratio focusable d x y x1 y1 x2 y2 cx cy r rx"
              + " ry points transform fill stroke opacity dx dy rotate textlength lengthadjust pathlength"
              + " gradientunits gradienttransform offset stop-color stop-opacity marker-start marker-mid"
              + " marker-end markerwidth markerheight markerunits refx refy orient clip-path clippathunits"
              + " patternunits patterntransform mask text-anchor dominant-baseline alignment-baseline"
              + " shape-rendering vector-effect paint-order xlink:href xml:lang version");

  /** Whose values are the templates' own words. */
  private static final Set<String> OF_TEMPLATES =
      words("class role scope type rel loading decoding tabindex media");

  /** Whose values may be names of places that the templates count. */
  private static final Set<String> OF_PLACES =
      words("id href for headers aria-labelledby aria-describedby aria-controls");

  private static final Set<String> META_NAMES =
      words(
          "viewport description author color-scheme theme-color robots referrer generator"
              + " twitter:card subject keywords format-detection date");

  private static final Set<String> LINK_RELATIONS =
      words(
          "stylesheet icon canonical alternate prev next preload license author apple-touch-icon"
              + " mask-icon manifest search start up contents index modulepreload");

  private static final Pattern KNOWN_FAMILIES =
      Pattern.compile("(aria|data|stroke|font|fill|letter|text|stop)-[a-z][a-z-]{0,30}");
  private static final Pattern FETCHING_STYLE =
      Pattern.compile("(?is).*(url\\(|expression|@import|content\\s*:|\\\\).*");
  private static final Pattern RUNNING =
      Pattern.compile("(?is)\\s*(javascript|data|vbscript|file):.*");
  private static final Pattern PLACE = Pattern.compile("#?[a-z]+-\\d+");
  private static final Pattern SCHEME = Pattern.compile("(?i)[a-z][a-z0-9+.-]*:.*");

  /** Looked at by themselves. */
  private static final Pattern STYLES = Pattern.compile("(?is)<style[^>]*>.*?</style>");

  private static final Sentence SOURCE = Sentence.of("the page's source");

  private final KnownAddresses addresses;
  private final Findings findings;
  private final Search search;
  private final boolean isFragment;
  private final StringBuilder text = new StringBuilder();
  private final StringBuilder attributes = new StringBuilder();

  /** What attributes say in the templates' own words, such as {@code group-3}. */
  private final StringBuilder classes = new StringBuilder();

  private final List<List<double[]>> lines = new ArrayList<>();
  private final Set<String> ids = new HashSet<>();
  private final Set<String> anchors = new LinkedHashSet<>();

  private HtmlFile(KnownAddresses addresses, Search search, Findings findings, boolean isFragment) {
    this.addresses = addresses;
    this.search = search;
    this.findings = findings;
    this.isFragment = isFragment;
  }

  static void inspect(String html, KnownAddresses addresses, Search search, Findings findings) {
    if (html.contains("<!--") || html.contains("<![") || html.contains("<?")) {
      findings.add(SOURCE, Sentence.of("The page holds a comment."));
    }
    if (!html.stripLeading().toLowerCase(Locale.ROOT).startsWith("<!doctype html>")) {
      findings.add(SOURCE, Sentence.of("This does not begin as a page does."));
    }
    new HtmlFile(addresses, search, findings, false).run(Parser.htmlParser().parseInput(html, ""));
    search.text(Disguises.withoutTags(STYLES.matcher(html).replaceAll("\f")), findings, SOURCE);
  }

  /** Inspects the body of a feed's entry. */
  static void inspectFragment(
      String html, KnownAddresses addresses, Search search, Findings findings) {
    Document page = Parser.parseBodyFragment(html, "");
    new HtmlFile(addresses, search, findings, true).run(page);
  }

  private void run(Document page) {
    walk(page);
    for (String anchor : anchors) {
      if (!isFragment && !ids.contains(anchor)) {
        findings.add(
            Sentence.of("a link to #{0}", anchor), Sentence.of("The page has no such place."));
      }
    }
    search.text(text.toString(), findings, Sentence.of("the page's text"));
    search.text(attributes.toString(), findings, Sentence.of("the page's attributes"));
    search.code(classes.toString(), findings, Sentence.of("the page's attributes"));
    search.lines(lines, findings, Sentence.of("the page's drawings"));
  }

  private void walk(Node node) {
    if (node instanceof Comment || node instanceof XmlDeclaration) {
      findings.add(SOURCE, Sentence.of("The page holds a comment."));
    } else if (node instanceof TextNode t) {
      text.append(t.getWholeText());
    } else if (node instanceof DataNode d) {
      data(d.parentNode() instanceof Element parent ? parent.normalName() : "", d);
    } else if (node instanceof Element e) {
      element(e);
    } else {
      node.childNodes().forEach(this::walk);
    }
  }

  private void element(Element element) {
    String name = element.normalName();
    if (!(element instanceof Document) && !ELEMENTS.contains(name)) {
      findings.add(
          Sentence.of("the page"),
          Sentence.of("It holds an element that no page of ours has: <{0}>.", name));
    }
    boolean apart = !INLINE.contains(name);
    if (apart) {
      text.append('\f');
    }
    for (Attribute attribute : element.attributes()) {
      attribute(element, name, attribute.getKey().toLowerCase(Locale.ROOT), attribute.getValue());
    }
    if (element.hasAttr("hidden") && !element.text().isBlank() && !isControl(element)) {
      findings.add(Sentence.of("<" + name + ">"), Sentence.of("It holds text that is hidden."));
    }
    element.childNodes().forEach(this::walk);
    if (apart) {
      text.append('\f');
    }
  }

  /** What scripts may show later: search boxes, buttons, dialogs. */
  private static boolean isControl(Element element) {
    return Set.of("form", "button", "dialog", "search", "nav").contains(element.normalName())
        || !element.select("button, input, form").isEmpty();
  }

  private void data(String parent, DataNode node) {
    String data = node.getWholeData();
    switch (parent) {
      case "script" -> {
        if (!(node.parentNode() instanceof Element script)
            || !script.attr("type").equals("application/ld+json")) {
          findings.add(Sentence.of("<script>"), Sentence.of("A script stands in the page."));
        }
        search.text(data, findings, Sentence.of("<script>"));
      }
      case "style" -> PlainFile.inspectStyle(data, findings.file(), addresses, search, findings);
      default -> search.text(data, findings, Sentence.of("<" + parent + ">"));
    }
  }

  private void attribute(Element element, String tag, String key, String value) {
    Sentence where = Sentence.of("<" + tag + " " + key + ">");
    (isOfTemplates(key, value) ? classes : attributes).append(value).append('\f');
    if (key.startsWith("on")) {
      findings.add(where, Sentence.of("A script stands in an attribute."));
      return;
    }
    boolean known = ATTRIBUTES.contains(key) || KNOWN_FAMILIES.matcher(key).matches();
    if (!known) {
      findings.add(where, Sentence.of("The page holds an attribute that no page of ours has."));
    }
    switch (key) {
      case "id" -> ids.add(value);
      case "d", "points" -> lines.addAll(Stretches.lines(key, value));
      case "data-of" -> search.drawing(value, findings, where);
      case "href", "xlink:href" -> link(tag, where, value, element.attr("rel"));
      case "src", "action", "poster" -> file(where, value);
      case "srcset" -> {
        for (String candidate : value.split(",")) {
          file(where, candidate.strip().split("\\s+")[0]);
        }
      }
      case "style" -> {
        if (FETCHING_STYLE.matcher(value).matches()) {
          findings.add(where, Sentence.of("A style fetches or says something."));
        }
        PlainFile.order(value, findings, where);
      }
      case "http-equiv" -> {
        if (!value.equalsIgnoreCase("content-security-policy")) {
          findings.add(
              where, Sentence.of("The page gives the browser an order of its own: {0}.", value));
        }
      }
      case "content" -> meta(element, where, value);
      case "rel" -> {
        if (tag.equals("link") && !LINK_RELATIONS.contains(value.split(" ")[0])) {
          findings.add(where, Sentence.of("The page is linked to something as \"{0}\".", value));
        }
      }
      case "name" -> {
        if (tag.equals("meta") && !META_NAMES.contains(value.toLowerCase(Locale.ROOT))) {
          findings.add(where, Sentence.of("The page's head tells of \"{0}\".", value));
        }
      }
      // Words to be read or searched, never an address.
      case "alt", "title", "data-find", "aria-label" -> {}
      default -> {
        if (RUNNING.matcher(value).matches()) {
          findings.add(
              where, Sentence.of("The page holds an address that runs or hides something."));
        }
      }
    }
  }

  private static boolean isOfTemplates(String key, String value) {
    return OF_TEMPLATES.contains(key) || OF_PLACES.contains(key) && PLACE.matcher(value).matches();
  }

  private void meta(Element element, Sentence where, String value) {
    boolean isPolicy = element.attr("http-equiv").equalsIgnoreCase("content-security-policy");
    if (isPolicy && value.matches("(?is).*(https?:|\\*|unsafe-eval).*")) {
      findings.add(where, Sentence.of("The page allows requests to other places."));
    }
    // A sentence may begin like an address; whoever follows one from here follows all of it.
    boolean isAddress = addresses.isWeb(value) && value.chars().noneMatch(Character::isWhitespace);
    if (isAddress && !addresses.allowsLink(value)) {
      findings.add(
          where, Sentence.of("The page names an address that is not the edition's: {0}.", value));
    }
  }

  private void link(String tag, Sentence where, String address, String relation) {
    if (address.startsWith("#")) {
      if (address.length() > 1 && !address.equals("#top")) {
        anchors.add(address.substring(1));
      }
      return;
    }
    boolean follows =
        tag.equals("a")
            || relation.equals("canonical")
            || relation.equals("license")
            || relation.equals("alternate");
    if (follows && (addresses.isWeb(address) || address.startsWith("mailto:"))) {
      if (!addresses.allowsLink(address)) {
        findings.add(
            where, Sentence.of("It links to an address that no text here shows: {0}.", address));
      }
      return;
    }
    file(where, address);
  }

  private void file(Sentence where, String address) {
    if (address.equals("data:,") || address.isEmpty()) {
      return;
    }
    if (SCHEME.matcher(address).matches() || address.startsWith("//")) {
      findings.add(
          where, Sentence.of("It fetches from outside the edition: {0}.", shortened(address)));
    } else if (!isFragment && addresses.resolve(findings.file(), address) == null) {
      findings.add(
          where,
          Sentence.of(
              "It leads to a file that the edition does not have: {0}.", shortened(address)));
    }
  }

  private static String shortened(String text) {
    return text.length() <= 80 ? text : text.substring(0, 80) + "…";
  }

  private static Set<String> words(String list) {
    return Set.of(list.split(" "));
  }
}
