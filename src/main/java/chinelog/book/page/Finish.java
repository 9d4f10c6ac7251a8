package chinelog.book.page;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.Calendar;
import java.util.GregorianCalendar;
import java.util.Locale;
import java.util.zip.CRC32;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.common.PDMetadata;
import org.apache.pdfbox.pdmodel.font.PDFont;

/**
 * Sets the dates and the identity of a finished PDF from the edition alone, so that the same
 * edition gives the same bytes, and draws crop marks where there is a bleed.
 */
final class Finish {

  private Finish() {}

  /** Draws crop marks where there is a bleed. */
  static void apply(PDDocument document, Manuscript manuscript, double bleedMm, PDFont font)
      throws IOException {
    date(document, manuscript.date());
    CRC32 identity = new CRC32();
    identity.update(manuscript.html().getBytes(StandardCharsets.UTF_8));
    document.setDocumentId(identity.getValue());
    if (bleedMm > 0) {
      CropMarks.draw(document, bleedMm, manuscript.slug(), font);
    }
  }

  private static void date(PDDocument document, LocalDate date) throws IOException {
    Calendar noon = GregorianCalendar.from(date.atTime(LocalTime.NOON).atZone(ZoneOffset.UTC));
    PDDocumentInformation information = document.getDocumentInformation();
    information.setCreationDate(noon);
    information.setModificationDate(null);
    PDMetadata metadata = document.getDocumentCatalog().getMetadata();
    String xmp = new String(metadata.toByteArray(), StandardCharsets.UTF_8);
    String dated =
        xmp.replaceAll(
            "(<xmp:(?:Create|Modify|Metadata)Date>)[^<]*",
            String.format(Locale.ROOT, "$1%sT12:00:00+00:00", date));
    metadata.importXMPMetadata(dated.getBytes(StandardCharsets.UTF_8));
  }
}
