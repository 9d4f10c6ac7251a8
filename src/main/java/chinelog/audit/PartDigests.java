package chinelog.audit;

import chinelog.digest.Sha256;
import java.io.IOException;
import java.io.InputStream;
import java.util.Comparator;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSObject;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.cos.COSString;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.jspecify.annotations.Nullable;

/** Digests of the pages and streams of one document, each of all that it is made of. */
final class PartDigests {

  /** What leads from a page to others, or to its tags, and paints nothing. */
  private static final Set<COSName> ELSEWHERE =
      Set.of(
          COSName.PARENT,
          COSName.ANNOTS,
          COSName.STRUCT_PARENT,
          COSName.STRUCT_PARENTS,
          COSName.DEST);

  private final Before.Same same;
  private final Map<COSBase, String> known = new IdentityHashMap<>();
  private final Map<COSStream, String> bodies = new IdentityHashMap<>();

  /**
   * @param same knows the pictures, so that they need not be digested again
   */
  PartDigests(Before.Same same) {
    this.same = same;
  }

  /** Of everything that a page is painted of: its size, its commands, its fonts and pictures. */
  String page(PDPage page) throws IOException {
    StringBuilder all = new StringBuilder("page ");
    all.append(page.getMediaBox()).append(page.getCropBox()).append(page.getRotation());
    PDResources shared = page.getResources();
    write(shared == null ? null : shared.getCOSObject(), all, new HashSet<>());
    write(page.getCOSObject(), all, new HashSet<>());
    return Sha256.of(all.toString());
  }

  /** Of a stream with what says how to read it. */
  String stream(COSStream stream) throws IOException {
    return digest(stream, new HashSet<>());
  }

  String font(PDFont font) throws IOException {
    return digest(font.getCOSObject(), new HashSet<>());
  }

  /** Of the bytes of a stream as they are packed. */
  String body(COSStream stream) throws IOException {
    String body = bodies.get(stream);
    if (body == null) {
      try (InputStream raw = stream.createRawInputStream()) {
        byte[] bytes = raw.readAllBytes();
        String known = same.sha256(bytes);
        body = known == null ? Sha256.of(bytes) : known;
      }
      bodies.put(stream, body);
    }
    return body;
  }

  private String digest(COSDictionary dictionary, Set<COSBase> around) throws IOException {
    String digest = known.get(dictionary);
    if (digest == null) {
      StringBuilder all = new StringBuilder();
      List<COSName> keys =
          dictionary.keySet().stream().sorted(Comparator.comparing(COSName::getName)).toList();
      for (COSName key : keys) {
        if (!ELSEWHERE.contains(key)) {
          all.append('/').append(text(key.getName())).append(' ');
          write(dictionary.getDictionaryObject(key), all, around);
        }
      }
      if (dictionary instanceof COSStream stream) {
        all.append("stream ").append(body(stream));
      }
      digest = Sha256.of(all.toString());
      known.put(dictionary, digest);
    }
    return digest;
  }

  private void write(@Nullable COSBase found, StringBuilder all, Set<COSBase> around)
      throws IOException {
    COSBase object = found instanceof COSObject reference ? reference.getObject() : found;
    if (object instanceof COSDictionary dictionary) {
      if (around.add(dictionary)) {
        all.append('<').append(digest(dictionary, around)).append('>');
        around.remove(dictionary);
      } else {
        all.append("<around>");
      }
    } else if (object instanceof COSArray array) {
      all.append('[');
      for (COSBase item : array) {
        write(item, all, around);
      }
      all.append(']');
    } else if (object instanceof COSString string) {
      all.append('(').append(string.toHexString()).append(')');
    } else if (object instanceof COSName name) {
      all.append('/').append(text(name.getName())).append(' ');
    } else {
      all.append(object).append(' ');
    }
  }

  /** With its length, so that no name runs into what follows. */
  private static String text(String name) {
    return name.length() + ":" + name;
  }
}
