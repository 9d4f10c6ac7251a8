package chinelog.audit;

import chinelog.problem.Sentence;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NamedNodeMap;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;

/** Opens files that are text: styles, scripts, feeds, drawings, notes. */
final class PlainFile {

  private static final Pattern URL = Pattern.compile("(?i)url\\(\\s*['\"]?([^'\")]*)['\"]?\\s*\\)");
  private static final Pattern WEB = Pattern.compile("(?i)https?://[^\\s\"'`<>)\\\\]+");
  private static final Pattern REACHES_OUT =
      Pattern.compile(
          "\\b(XMLHttpRequest|sendBeacon|WebSocket|EventSource|importScripts|eval|Function|Worker"
              + "|RTCPeerConnection|document\\.cookie|localStorage\\.getItem\\(.{0,40}http)\\b"
              + "|sourceMappingURL|\\bfetch\\s*\\(|(?i:javascript:)"
              + "|\\blocation\\s*(\\.\\s*href\\s*)?=(?!=)|\\blocation\\s*\\.\\s*replace\\b");

  /**
   * What is left of the search index without its words. Under another name it might be an order to
   * the browser, such as {@code window.location}.
   */
  private static final Pattern WORDS_ALONE =
      Pattern.compile("window\\.pagesToSearch ?= ?\\[[\\[\\]{},:\\s]*\\];?\\s*");

  /** Letters are shown in another order than they are written (CSS Writing Modes 3, 2.2). */
  private static final Pattern TURNS_LETTERS =
      Pattern.compile("(?i)unicode-bidi\\s*:[^;}]*override");

  private static final String SVG = "http://www.w3.org/2000/svg";

  private PlainFile() {}

  /** The text of UTF-8 bytes; what is not UTF-8, or holds control characters, is a finding. */
  static Optional<String> decode(byte[] bytes, Findings findings) {
    try {
      String text =
          StandardCharsets.UTF_8
              .newDecoder()
              .onMalformedInput(CodingErrorAction.REPORT)
              .decode(ByteBuffer.wrap(bytes))
              .toString();
      if (text.chars().anyMatch(c -> c < 0x20 && c != '\n' && c != '\r' && c != '\t')) {
        findings.add(
            Sentence.of("the file"),
            Sentence.of("This is not plain text: it holds control characters."));
      }
      return Optional.of(text);
    } catch (CharacterCodingException e) {
      findings.add(Sentence.of("the file"), Sentence.of("This is not text in UTF-8."));
      return Optional.empty();
    }
  }

  static void inspectStyle(
      String css, String file, KnownAddresses addresses, Search search, Findings findings) {
    if (css.matches("(?is).*@import.*")) {
      findings.add(Sentence.of("the style"), Sentence.of("A style fetches another."));
    }
    Matcher m = URL.matcher(css);
    while (m.find()) {
      String address = m.group(1).strip();
      boolean drawn = address.startsWith("data:image/svg+xml");
      boolean part = address.startsWith("#");
      if (!drawn && !part && addresses.resolve(file, address) == null) {
        findings.add(
            Sentence.of("the style"),
            Sentence.of("A style fetches what the edition does not have: {0}.", address));
      }
    }
    if (css.contains("/*")) {
      findings.add(Sentence.of("the style"), Sentence.of("The style holds a remark."));
    }
    order(css, findings, Sentence.of("the style"));
    web(css, addresses, findings, Sentence.of("the style"));
    Said said = Said.inStyle(css);
    search.text(said.words(), findings, Sentence.of("the style"));
    search.code(said.code(), findings, Sentence.of("the style"));
  }

  /** Looks whether a style shows letters in another order than they are written. */
  static void order(String css, Findings findings, Sentence where) {
    if (TURNS_LETTERS.matcher(css).find()) {
      findings.add(where, Sentence.of("The style turns the order of letters round."));
    }
  }

  static void inspectScript(String js, KnownAddresses addresses, Search search, Findings findings) {
    // Of a list of words nothing is run or fetched, whatever the words are.
    if (!WORDS_ALONE.matcher(withoutStrings(js)).matches()) {
      Matcher m = REACHES_OUT.matcher(js);
      while (m.find()) {
        findings.add(
            Sentence.of("the script"),
            Sentence.of("The script could send or fetch something: {0}.", m.group()));
      }
      web(js, addresses, findings, Sentence.of("the script"));
    }
    Said said = Said.inScript(js);
    search.text(said.words(), findings, Sentence.of("the script"));
    search.text(Disguises.withoutTags(said.words()), findings, Sentence.of("the script"));
    search.code(said.code(), findings, Sentence.of("the script"));
  }

  /** {@code js} with every string in double quotes taken out, its quotes too. */
  private static String withoutStrings(String js) {
    StringBuilder rest = new StringBuilder();
    boolean within = false;
    for (int i = 0; i < js.length(); i++) {
      char c = js.charAt(i);
      if (c == '"') {
        within = !within;
      } else if (within && c == '\\') {
        i++;
      } else if (!within) {
        rest.append(c);
      }
    }
    return rest.toString();
  }

  static void inspectText(String text, KnownAddresses addresses, Search search, Findings findings) {
    web(text, addresses, findings, Sentence.of("the text"));
    search.text(text, findings, Sentence.of("the text"));
  }

  private static void web(
      String text, KnownAddresses addresses, Findings findings, Sentence where) {
    Matcher m = WEB.matcher(text);
    while (m.find()) {
      String address = m.group();
      if (!addresses.isVocabulary(address) && !addresses.allowsLink(address)) {
        findings.add(
            where, Sentence.of("It names an address that is not the edition's: {0}.", address));
      }
    }
  }

  /** A feed, a site map or a drawing. */
  static void inspectXml(String text, KnownAddresses addresses, Search search, Findings findings) {
    Optional<Document> document =
        XmlFile.parse(text.startsWith("\uFEFF") ? text.substring(1) : text);
    search.text(Disguises.withoutTags(text), findings, Sentence.of("the text"));
    if (document.isEmpty()) {
      findings.add(
          Sentence.of("the file"),
          Sentence.of("This XML cannot be read, or it brings declarations of its own."));
      return;
    }
    StringBuilder all = new StringBuilder();
    walk(document.get(), addresses, search, findings, all);
    search.text(all.toString(), findings, Sentence.of("the text"));
    search.lines(lines(document.get()), findings, Sentence.of("the drawing"));
  }

  private static List<List<double[]>> lines(Document document) {
    List<List<double[]>> lines = new ArrayList<>();
    NodeList drawn = document.getElementsByTagName("*");
    for (int i = 0; i < drawn.getLength(); i++) {
      Element element = (Element) drawn.item(i);
      for (String attribute : List.of("d", "points")) {
        lines.addAll(Stretches.lines(attribute, element.getAttribute(attribute)));
      }
    }
    return lines;
  }

  private static void walk(
      Node node, KnownAddresses addresses, Search search, Findings findings, StringBuilder all) {
    switch (node.getNodeType()) {
      case Node.COMMENT_NODE, Node.PROCESSING_INSTRUCTION_NODE ->
          findings.add(Sentence.of("the file"), Sentence.of("The file holds a comment."));
      case Node.ELEMENT_NODE -> element((Element) node, addresses, search, findings, all);
      case Node.TEXT_NODE, Node.CDATA_SECTION_NODE -> all.append(node.getNodeValue());
      default -> {
        // The document itself.
      }
    }
    for (Node child = node.getFirstChild(); child != null; child = child.getNextSibling()) {
      walk(child, addresses, search, findings, all);
    }
  }

  private static void element(
      Element element,
      KnownAddresses addresses,
      Search search,
      Findings findings,
      StringBuilder all) {
    String name = element.getLocalName();
    String namespace = String.valueOf(element.getNamespaceURI());
    if (!addresses.isVocabulary(namespace)) {
      findings.add(
          Sentence.of("<" + name + ">"),
          Sentence.of("The file holds an element that no file of ours has."));
    }
    boolean draws = namespace.equals(SVG);
    if (draws && (name.equals("script") || name.equals("foreignObject") || name.equals("image"))) {
      findings.add(
          Sentence.of("<" + name + ">"),
          Sentence.of("The drawing holds something that is not drawn."));
    }
    all.append('\f');
    NamedNodeMap attributes = element.getAttributes();
    for (int i = 0; i < attributes.getLength(); i++) {
      Node attribute = attributes.item(i);
      String key = attribute.getNodeName();
      String value = attribute.getNodeValue();
      all.append(value).append('\f');
      if (key.startsWith("on")) {
        findings.add(
            Sentence.of("<" + name + " " + key + ">"),
            Sentence.of("A script stands in an attribute."));
      }
      boolean link = key.equals("href") || key.equals("src") || key.endsWith(":href");
      boolean own = value.startsWith("#") || addresses.allowsLink(value);
      if (link && !own && (draws || addresses.resolve(findings.file(), value) == null)) {
        findings.add(
            Sentence.of("<" + name + " " + key + ">"),
            Sentence.of("It leads out of the edition: {0}.", value));
      }
    }
    String content = element.getTextContent();
    if (name.equals("loc") && !addresses.allowsLink(content.strip())) {
      findings.add(
          Sentence.of("<loc>"), Sentence.of("It leads out of the edition: {0}.", content.strip()));
    }
    if ("html".equals(element.getAttribute("type"))) {
      HtmlFile.inspectFragment(content, addresses, search, findings);
    }
  }
}
