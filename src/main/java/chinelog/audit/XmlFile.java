package chinelog.audit;

import java.io.IOException;
import java.io.StringReader;
import java.util.Optional;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilder;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.w3c.dom.Document;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;
import org.xml.sax.helpers.DefaultHandler;

/** Parses XML without fetching or expanding anything. */
final class XmlFile {

  private XmlFile() {}

  static Optional<Document> parse(String text) {
    try {
      DocumentBuilderFactory factory = DocumentBuilderFactory.newDefaultNSInstance();
      factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
      factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
      DocumentBuilder builder = factory.newDocumentBuilder();
      builder.setErrorHandler(new DefaultHandler());
      return Optional.of(builder.parse(new InputSource(new StringReader(text))));
    } catch (SAXException e) {
      return Optional.empty();
    } catch (ParserConfigurationException | IOException e) {
      throw new IllegalStateException("the JDK's own parser of XML", e);
    }
  }
}
