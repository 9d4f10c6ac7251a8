package chinelog.pattern;

import chinelog.edition.Edition;
import chinelog.markup.HtmlWriter;
import java.awt.color.ColorSpace;
import java.awt.color.ICC_Profile;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.GregorianCalendar;
import java.util.zip.CRC32;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentCatalog;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.common.PDMetadata;
import org.apache.pdfbox.pdmodel.graphics.color.PDOutputIntent;
import org.apache.pdfbox.pdmodel.interactive.viewerpreferences.PDViewerPreferences;

/** What a document says of itself, for PDF/UA-1 and PDF/A-2a: from the edition alone. */
final class Imprint {

  private static final String PROGRAM = "chinelog";
  private static final String SRGB = "sRGB IEC61966-2.1";

  private Imprint() {}

  static void stamp(PDDocument pdf, Edition.Contents contents, String title) throws IOException {
    PDDocumentCatalog catalog = pdf.getDocumentCatalog();
    catalog.setLanguage(contents.locale().toLanguageTag());
    PDViewerPreferences preferences = new PDViewerPreferences(new COSDictionary());
    preferences.setDisplayDocTitle(true);
    // Fitted to the paper, no measure would be kept.
    preferences.setPrintScaling(PDViewerPreferences.PRINT_SCALING.None);
    catalog.setViewerPreferences(preferences);
    PDDocumentInformation information = pdf.getDocumentInformation();
    information.setTitle(title);
    information.setProducer(PROGRAM);
    information.setCreationDate(
        GregorianCalendar.from(contents.asOf().atTime(LocalTime.NOON).atZone(ZoneOffset.UTC)));
    PDMetadata metadata = new PDMetadata(pdf);
    metadata.importXMPMetadata(
        xmp(title, contents.asOf() + "T12:00:00+00:00").getBytes(StandardCharsets.UTF_8));
    catalog.setMetadata(metadata);
    colours(pdf);
    CRC32 identity = new CRC32();
    identity.update(
        (title + contents.asOf() + contents.patterns()).getBytes(StandardCharsets.UTF_8));
    pdf.setDocumentId(identity.getValue());
  }

  private static void colours(PDDocument pdf) throws IOException {
    byte[] profile = ICC_Profile.getInstance(ColorSpace.CS_sRGB).getData();
    PDOutputIntent intent = new PDOutputIntent(pdf, new ByteArrayInputStream(profile));
    intent.setInfo(SRGB);
    intent.setOutputCondition(SRGB);
    intent.setOutputConditionIdentifier(SRGB);
    intent.setRegistryName("http://www.color.org");
    pdf.getDocumentCatalog().addOutputIntent(intent);
  }

  private static String xmp(String title, String date) {
    return """
        <?xpacket begin="\uFEFF" id="W5M0MpCehiHzreSzNTczkc9d"?>
        <x:xmpmeta xmlns:x="adobe:ns:meta/">
        <rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
        <rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/"
         xmlns:pdf="http://ns.adobe.com/pdf/1.3/" xmlns:xmp="http://ns.adobe.com/xap/1.0/"
         xmlns:pdfaid="http://www.aiim.org/pdfa/ns/id/" xmlns:pdfuaid="http://www.aiim.org/pdfua/ns/id/">
        <dc:format>application/pdf</dc:format>
        <dc:title><rdf:Alt><rdf:li xml:lang="x-default">%s</rdf:li></rdf:Alt></dc:title>
        <pdf:Producer>%s</pdf:Producer>
        <xmp:CreateDate>%s</xmp:CreateDate>
        <pdfaid:part>2</pdfaid:part>
        <pdfaid:conformance>A</pdfaid:conformance>
        <pdfuaid:part>1</pdfuaid:part>
        </rdf:Description>
        <rdf:Description rdf:about="" xmlns:pdfaExtension="http://www.aiim.org/pdfa/ns/extension/"
         xmlns:pdfaSchema="http://www.aiim.org/pdfa/ns/schema#"
         xmlns:pdfaProperty="http://www.aiim.org/pdfa/ns/property#">
        <pdfaExtension:schemas><rdf:Bag><rdf:li rdf:parseType="Resource">
        <pdfaSchema:schema>PDF/UA Universal Accessibility Schema</pdfaSchema:schema>
        <pdfaSchema:namespaceURI>http://www.aiim.org/pdfua/ns/id/</pdfaSchema:namespaceURI>
        <pdfaSchema:prefix>pdfuaid</pdfaSchema:prefix>
        <pdfaSchema:property><rdf:Seq><rdf:li rdf:parseType="Resource">
        <pdfaProperty:name>part</pdfaProperty:name>
        <pdfaProperty:valueType>Integer</pdfaProperty:valueType>
        <pdfaProperty:category>internal</pdfaProperty:category>
        <pdfaProperty:description>Part of ISO 14289 that the file meets</pdfaProperty:description>
        </rdf:li></rdf:Seq></pdfaSchema:property>
        </rdf:li></rdf:Bag></pdfaExtension:schemas>
        </rdf:Description>
        </rdf:RDF>
        </x:xmpmeta>
        <?xpacket end="r"?>"""
        .formatted(HtmlWriter.escaped(title), PROGRAM, date);
  }
}
