package chinelog.audit;

import chinelog.problem.Sentence;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSDocument;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSObject;
import org.apache.pdfbox.cos.COSObjectKey;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.cos.COSString;
import org.apache.pdfbox.pdmodel.PDDocument;

/** Opens a PDF: written in one go, every object in use, no key but those of {@link PdfKeys}. */
final class PdfFile {

  private static final Sentence WHERE = Sentence.of("the document");

  private final byte[] bytes;

  /** The same, a letter for a byte. */
  private final String all;

  private final KnownAddresses addresses;
  private final Originals originals;
  private final Search search;
  private final Pictures known;
  private final CleanParts parts;
  private final PartDigests digests;
  private final Findings findings;
  private final Set<COSObjectKey> reached = new HashSet<>();
  private final StringBuilder strings = new StringBuilder();
  private final List<Span> pictureBodies = new ArrayList<>();
  private int pictures;

  /**
   * @param bytes are not the document's any more afterwards
   * @param parts of it that need not be searched again
   * @param same knows the pictures by their bytes
   */
  PdfFile(
      byte[] bytes,
      KnownAddresses addresses,
      Originals originals,
      Search search,
      Pictures known,
      CleanParts parts,
      Before.Same same,
      Findings findings) {
    this.bytes = bytes;
    this.all = new String(bytes, StandardCharsets.ISO_8859_1);
    this.addresses = addresses;
    this.originals = originals;
    this.search = search;
    this.known = known;
    this.parts = parts;
    this.digests = new PartDigests(same);
    this.findings = findings;
  }

  /** Opens and searches the document. */
  void inspect() {
    bookends();
    try (PDDocument pdf = Loader.loadPDF(bytes)) {
      if (pdf.isEncrypted()) {
        findings.add(
            WHERE, Sentence.of("The document is encrypted, so that it cannot be searched."));
        return;
      }
      COSDocument document = pdf.getDocument();
      information(document.getTrailer());
      catalog(pdf.getDocumentCatalog().getCOSObject());
      reach(document.getTrailer());
      unreferenced(document);
      search.text(strings.toString(), findings, Sentence.of("names, titles and descriptions"));
      PdfTexts.inspect(pdf, digests, parts, search, findings);
      PdfPaint.inspect(pdf, digests, parts, search, findings);
    } catch (IOException | RuntimeException | StackOverflowError | NoClassDefFoundError e) {
      findings.add(WHERE, Sentence.of("This document cannot be read to its end."));
    }
    // Pictures are searched by themselves; from here on their bytes are needed no more.
    pictureBodies.forEach(body -> Arrays.fill(bytes, body.from, body.to, (byte) 0));
    search.bytes(bytes, findings, WHERE);
  }

  /** A second revision begins after the first one's end. */
  private void bookends() {
    if (!all.startsWith("%PDF-")) {
      findings.add(WHERE, Sentence.of("Something stands before the document."));
    }
    if (count("%%EOF") != 1 || count("startxref") != 1) {
      findings.add(WHERE, Sentence.of("The document holds an earlier version of itself."));
    }
    if (!all.substring(all.lastIndexOf("%%EOF") + 1).strip().equals("%EOF")) {
      findings.add(WHERE, Sentence.of("Something stands after the document."));
    }
  }

  private int count(String part) {
    int count = 0;
    for (int i = all.indexOf(part); i >= 0; i = all.indexOf(part, i + 1)) {
      count++;
    }
    return count;
  }

  private void information(COSDictionary trailer) {
    COSDictionary info = trailer.getCOSDictionary(COSName.INFO);
    if (info == null) {
      return;
    }
    for (COSName key : info.keySet()) {
      if (!PdfKeys.INFORMATION.contains(key.getName())) {
        findings.add(
            Sentence.of("the document's information"),
            Sentence.of("It tells of {0}.", key.getName()));
      }
    }
  }

  private void catalog(COSDictionary catalog) {
    for (COSName key : catalog.keySet()) {
      if (!PdfKeys.CATALOG.contains(key.getName())) {
        findings.add(
            Sentence.of("the document's catalogue"), Sentence.of("It holds {0}.", key.getName()));
      }
    }
    COSDictionary marks = catalog.getCOSDictionary(COSName.MARK_INFO);
    boolean isTagged = marks != null && marks.getBoolean(COSName.getPDFName("Marked"), false);
    if (!isTagged || catalog.getCOSDictionary(COSName.STRUCT_TREE_ROOT) == null) {
      findings.add(
          WHERE,
          Sentence.of("It is not tagged as every document of ours is; it comes from elsewhere."));
    }
    if (!(catalog.getDictionaryObject(COSName.METADATA) instanceof COSStream)) {
      findings.add(
          WHERE, Sentence.of("It does not say what it is as every document of ours does."));
    }
    COSDictionary names = catalog.getCOSDictionary(COSName.NAMES);
    if (names != null) {
      for (COSName key : names.keySet()) {
        if (!PdfKeys.NAME_TREES.contains(key.getName())) {
          findings.add(
              Sentence.of("the document's catalogue"), Sentence.of("It holds {0}.", key.getName()));
        }
      }
    }
  }

  private record Span(int from, int to) {}

  /** One object on the way, with the key it was found under. */
  private record Step(COSBase object, String key, boolean hasOwnNames) {}

  private void reach(COSDictionary trailer) throws IOException {
    Deque<Step> open = new ArrayDeque<>();
    Map<COSBase, Boolean> seen = new IdentityHashMap<>();
    open.add(new Step(trailer, "Trailer", true));
    while (!open.isEmpty()) {
      Step step = open.pop();
      COSBase object = step.object;
      if (object instanceof COSObject reference) {
        if (reference.getKey() != null) {
          reached.add(reference.getKey());
        }
        object = reference.getObject();
      }
      if (object == null || seen.put(object, true) != null) {
        continue;
      }
      if (object instanceof COSString s) {
        strings.append(s.getString()).append('\f');
      } else if (object instanceof COSArray array) {
        array.forEach(
            item -> {
              if (item != null) {
                open.push(new Step(item, step.key, false));
              }
            });
      } else if (object instanceof COSDictionary dictionary) {
        dictionary(dictionary, step, open);
        if (object instanceof COSStream stream) {
          stream(stream, step.key);
        }
      }
    }
  }

  private void dictionary(COSDictionary dictionary, Step step, Deque<Step> open) {
    if (dictionary.getDictionaryObject(COSName.S) instanceof COSName action
        && dictionary.containsKey(COSName.URI)) {
      link(dictionary, action);
    }
    if (COSName.ANNOT.equals(dictionary.getCOSName(COSName.TYPE))
        && !"Link".equals(dictionary.getNameAsString(COSName.SUBTYPE))) {
      findings.add(
          Sentence.of("a page's notes"),
          Sentence.of("A page carries something besides its links."));
    }
    for (Map.Entry<COSName, COSBase> entry : dictionary.entrySet()) {
      String key = entry.getKey().getName();
      if (!step.hasOwnNames && !PdfKeys.ANYWHERE.contains(key)) {
        findings.add(
            Sentence.of("an object under {0}", step.key),
            Sentence.of("It holds something that no document of ours has: {0}.", key));
      }
      if (step.hasOwnNames) {
        strings.append(key).append('\f');
      }
      if (entry.getValue() instanceof COSName name) {
        strings.append(name.getName()).append('\f');
      }
      // An annotation's or an action's keys are never a resource's.
      boolean named = PdfKeys.NAMED.contains(key) && !step.hasOwnNames;
      open.push(new Step(entry.getValue(), key, named));
    }
  }

  private void link(COSDictionary action, COSName kind) {
    String address = action.getString(COSName.URI, "");
    if (!kind.getName().equals("URI") || !addresses.allowsLink(address)) {
      findings.add(
          Sentence.of("a link"),
          Sentence.of("It leads to an address that no text here shows: {0}.", address));
    }
  }

  private void stream(COSStream stream, String key) throws IOException {
    filters(stream, key);
    if (key.equals("Metadata")) {
      metadata(decoded(stream));
      return;
    }
    if (isJpeg(stream)) {
      byte[] jpeg;
      try (InputStream raw = stream.createRawInputStream()) {
        jpeg = raw.readAllBytes();
      }
      known.jpeg(
          jpeg, digests.body(stream), parts, findings, Sentence.of("picture {0}", ++pictures));
      return;
    }
    if ("Image".equals(stream.getNameAsString(COSName.SUBTYPE))) {
      findings.add(
          Sentence.of("what stands under {0}", key),
          Sentence.of("It is a picture, but none as the edition's are: not JPEG."));
    }
    boolean isClean = parts.has(digests.stream(stream));
    if (isClean && !parts.hasFresh()) {
      return;
    }
    byte[] content = decoded(stream);
    Sentence where = Sentence.of("what stands under {0}", key);
    if (isClean) {
      parts.findFresh(content, findings, where);
      return;
    }
    originals.find(content, findings, where);
    search.bytes(content, findings, where);
  }

  private static boolean isJpeg(COSStream stream) {
    return COSName.DCT_DECODE.equals(stream.getFilters());
  }

  private void filters(COSStream stream, String key) {
    COSBase filters = stream.getFilters();
    if (filters instanceof COSArray array) {
      if (array.size() > 1) {
        findings.add(
            Sentence.of("what stands under {0}", key), Sentence.of("It is packed more than once."));
      }
      array.forEach(f -> filter(f, key));
    } else if (filters != null) {
      filter(filters, key);
    }
  }

  private void filter(COSBase filter, String key) {
    if (!(filter instanceof COSName name) || !PdfKeys.FILTERS.contains(name.getName())) {
      findings.add(
          Sentence.of("what stands under {0}", key),
          Sentence.of("It is packed in a way that no document of ours is."));
    }
  }

  private static byte[] decoded(COSStream stream) throws IOException {
    try (InputStream in = stream.createInputStream();
        ByteArrayOutputStream out = new ByteArrayOutputStream()) {
      in.transferTo(out);
      return out.toByteArray();
    }
  }

  private void metadata(byte[] xmp) {
    String text = new String(xmp, StandardCharsets.UTF_8);
    if (XmlFile.parse(text).isEmpty()) {
      findings.add(Sentence.of("the document's metadata"), Sentence.of("They cannot be read."));
    }
    if (!text.contains("http://www.aiim.org/pdfa/ns/id/")
        || !text.contains("http://www.aiim.org/pdfua/ns/id/")) {
      findings.add(
          Sentence.of("the document's metadata"),
          Sentence.of("They do not say what it is as those of every document of ours do."));
    }
    if (text.contains("<!--")
        || text.contains("xmpMM:History")
        || text.contains("stRef:")
        || text.contains("Thumb")) {
      findings.add(
          Sentence.of("the document's metadata"),
          Sentence.of("They hold more than the document's title and date."));
    }
    search.text(Disguises.withoutTags(text), findings, Sentence.of("the document's metadata"));
    search.text(text, findings, Sentence.of("the document's metadata"));
  }

  /** Every object must be in use, and nothing may stand between them. */
  private void unreferenced(COSDocument document) {
    Map<Long, COSObjectKey> places = new TreeMap<>();
    for (Map.Entry<COSObjectKey, Long> entry : document.getXrefTable().entrySet()) {
      COSObjectKey key = entry.getKey();
      COSBase object = document.getObjectFromPool(key).getObject();
      boolean isFrame =
          object instanceof COSDictionary d
              && (COSName.XREF.equals(d.getCOSName(COSName.TYPE))
                  || COSName.OBJ_STM.equals(d.getCOSName(COSName.TYPE)));
      if (!isFrame && !reached.contains(key)) {
        findings.add(
            Sentence.of("object {0}", key.getNumber()),
            Sentence.of("It is not in use, so that no reader shows it."));
      }
      if (entry.getValue() > 0) {
        places.put(entry.getValue(), key);
      }
    }
    between(document, places);
  }

  private void between(COSDocument document, Map<Long, COSObjectKey> places) {
    int end = all.indexOf('\n') + 1;
    if (all.startsWith("%", end)) {
      int line = all.indexOf('\n', end) + 1;
      if (line - end > 12) {
        findings.add(WHERE, Sentence.of("A comment stands at the document's head."));
      }
      end = line;
    }
    for (Map.Entry<Long, COSObjectKey> place : places.entrySet()) {
      int start = place.getKey().intValue();
      if (start < end || start > all.length()) {
        findings.add(WHERE, Sentence.of("Its objects overlap."));
        return;
      }
      if (!all.substring(end, start).isBlank()) {
        findings.add(WHERE, Sentence.of("Something stands between its objects."));
      }
      int from = start;
      COSBase object = document.getObjectFromPool(place.getValue()).getObject();
      if (object instanceof COSStream stream) {
        int body = all.indexOf("stream", start);
        long length = stream.getLong(COSName.LENGTH, -1);
        if (body < 0 || length < 0 || body + length > all.length()) {
          findings.add(WHERE, Sentence.of("A stream is longer than the document."));
          return;
        }
        from = (int) (body + 6 + length);
        if (isJpeg(stream)) {
          pictureBodies.add(new Span(body + 6, from));
        }
        int close = all.indexOf("endstream", from);
        if (close < 0 || close - from > 4) {
          findings.add(WHERE, Sentence.of("A stream is longer than it says."));
        }
      }
      int close = all.indexOf("endobj", from);
      if (close < 0) {
        findings.add(WHERE, Sentence.of("An object has no end."));
        return;
      }
      end = close + 6;
    }
    String tail = all.substring(end).strip();
    if (!tail.startsWith("xref") && !tail.startsWith("startxref")) {
      findings.add(
          WHERE, Sentence.of("Something stands between its objects and its table of contents."));
    }
  }
}
