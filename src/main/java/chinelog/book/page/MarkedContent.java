package chinelog.book.page;

import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.contentstream.operator.Operator;
import org.apache.pdfbox.contentstream.operator.OperatorName;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdfparser.PDFStreamParser;
import org.apache.pdfbox.pdfwriter.ContentStreamWriter;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;

/** The marks that join what is painted to the tags of a document. */
final class MarkedContent {

  private MarkedContent() {}

  /** Takes all marks out of a drawing that came from another document, whose tags it left there. */
  static void strip(PDFormXObject form) throws IOException {
    List<Object> kept = new ArrayList<>();
    List<Object> operands = new ArrayList<>();
    for (Object token : new PDFStreamParser(form).parse()) {
      operands.add(token);
      if (token instanceof Operator operator) {
        if (!isMark(operator)) {
          kept.addAll(operands);
        }
        operands.clear();
      }
    }
    try (OutputStream out = form.getContentStream().createOutputStream(COSName.FLATE_DECODE)) {
      new ContentStreamWriter(out).writeTokens(kept);
    }
  }

  private static boolean isMark(Operator operator) {
    return switch (operator.getName()) {
      case OperatorName.BEGIN_MARKED_CONTENT,
          OperatorName.BEGIN_MARKED_CONTENT_SEQ,
          OperatorName.END_MARKED_CONTENT ->
          true;
      default -> false;
    };
  }
}
