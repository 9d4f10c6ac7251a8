package chinelog.audit;

import chinelog.problem.Sentence;
import java.nio.charset.StandardCharsets;
import java.util.Set;
import org.w3c.dom.Document;
import org.w3c.dom.NamedNodeMap;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;

/**
 * The maker's credit that a log may ask to be written into its pictures: nothing else may stand
 * there.
 *
 * @param texts maker, licence and the like as the readers may see them; empty if no credit is asked
 *     for
 */
record CreditLine(Set<String> texts) {

  private static final Set<String> NAMESPACES =
      Set.of(
          "adobe:ns:meta/",
          "http://www.w3.org/1999/02/22-rdf-syntax-ns#",
          "http://www.w3.org/XML/1998/namespace",
          "http://www.w3.org/2000/xmlns/",
          "http://purl.org/dc/elements/1.1/",
          "http://ns.adobe.com/xap/1.0/rights/",
          "http://ns.adobe.com/photoshop/1.0/");

  void inspect(byte[] xmp, Findings findings, Sentence where) {
    String text = new String(xmp, StandardCharsets.UTF_8);
    XmlFile.parse(text)
        .ifPresentOrElse(
            document -> walk(document, findings, where),
            () -> findings.add(where, Sentence.of("The picture's credit cannot be read.")));
  }

  private void walk(Document document, Findings findings, Sentence where) {
    NodeList all = document.getElementsByTagName("*");
    for (int i = 0; i < all.getLength(); i++) {
      Node element = all.item(i);
      check(element, findings, where);
      NamedNodeMap attributes = element.getAttributes();
      for (int k = 0; k < attributes.getLength(); k++) {
        Node attribute = attributes.item(k);
        check(attribute, findings, where);
        if (!"http://www.w3.org/2000/xmlns/".equals(attribute.getNamespaceURI())) {
          value(attribute.getNodeValue(), findings, where);
        }
      }
      for (Node child = element.getFirstChild(); child != null; child = child.getNextSibling()) {
        if (child.getNodeType() == Node.TEXT_NODE) {
          value(child.getNodeValue(), findings, where);
        } else if (child.getNodeType() == Node.COMMENT_NODE) {
          findings.add(where, Sentence.of("The picture's credit holds a comment."));
        }
      }
    }
  }

  private static void check(Node node, Findings findings, Sentence where) {
    String namespace = node.getNamespaceURI();
    if (namespace != null && !NAMESPACES.contains(namespace)) {
      findings.add(
          where,
          Sentence.of("The picture's credit holds something else: {0}.", node.getNodeName()));
    }
  }

  private void value(String value, Findings findings, Sentence where) {
    String plain = value.strip();
    boolean isTheirs =
        plain.isEmpty()
            || plain.equals("x-default")
            || plain.equals("True")
            || texts.stream().anyMatch(t -> plain.contains(t) && plain.length() < t.length() + 12);
    if (!isTheirs) {
      findings.add(
          where, Sentence.of("The picture's credit says more than the log's maker and licence."));
    }
  }
}
