package chinelog.book.page;

import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.contentstream.PDContentStream;
import org.apache.pdfbox.contentstream.operator.Operator;
import org.apache.pdfbox.contentstream.operator.OperatorName;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdfparser.PDFStreamParser;
import org.apache.pdfbox.pdfwriter.ContentStreamWriter;
import org.apache.pdfbox.pdmodel.common.PDStream;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;

/** The marks that join what is painted to the tags of a document. */
final class MarkedContent {

  private MarkedContent() {}

  /** One operator of a content stream, with what it is given. */
  private record Operation(List<Object> operands, String name, Operator operator) {}

  private static List<Operation> read(PDContentStream content) throws IOException {
    List<Operation> operations = new ArrayList<>();
    List<Object> operands = new ArrayList<>();
    for (Object token : new PDFStreamParser(content).parse()) {
      if (token instanceof Operator operator) {
        operations.add(new Operation(operands, operator.getName(), operator));
        operands = new ArrayList<>();
      } else {
        operands.add(token);
      }
    }
    return operations;
  }

  private static void write(List<Operation> operations, PDStream stream) throws IOException {
    try (OutputStream out = stream.createOutputStream(COSName.FLATE_DECODE)) {
      ContentStreamWriter writer = new ContentStreamWriter(out);
      for (Operation operation : operations) {
        writer.writeTokens(operation.operands);
        writer.writeToken(operation.operator);
      }
    }
  }

  /** Takes all marks out of a drawing that came from another document, whose tags it left there. */
  static void strip(PDFormXObject form) throws IOException {
    List<Operation> kept = read(form).stream().filter(o -> !isMark(o)).toList();
    write(kept, form.getContentStream());
  }

  private static boolean isMark(Operation operation) {
    return switch (operation.name) {
      case OperatorName.BEGIN_MARKED_CONTENT,
          OperatorName.BEGIN_MARKED_CONTENT_SEQ,
          OperatorName.END_MARKED_CONTENT ->
          true;
      default -> false;
    };
  }
}
