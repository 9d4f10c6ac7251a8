package chinelog.book.page;

import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.contentstream.PDContentStream;
import org.apache.pdfbox.contentstream.operator.Operator;
import org.apache.pdfbox.contentstream.operator.OperatorName;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdfparser.PDFStreamParser;
import org.apache.pdfbox.pdfwriter.ContentStreamWriter;
import org.apache.pdfbox.pdmodel.common.PDStream;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;
import org.jspecify.annotations.Nullable;

/** The marks that join what is painted to the tags of a document. */
final class MarkedContent {

  private MarkedContent() {}

  /** One operator of a content stream, with what it is given. */
  record Operation(List<Object> operands, String name, Operator operator) {

    /** Whether it begins marked content of that tag, such as {@code Artifact}. */
    boolean begins(String tag) {
      return name.equals(OperatorName.BEGIN_MARKED_CONTENT_SEQ)
          && operands.get(0).equals(COSName.getPDFName(tag));
    }

    boolean ends() {
      return name.equals(OperatorName.END_MARKED_CONTENT);
    }

    /** The properties that stand in the mark itself, or null. */
    @Nullable COSDictionary properties() {
      return operands.get(1) instanceof COSDictionary own ? own : null;
    }

    /** The name of the properties that the resources of the page hold, or null. */
    @Nullable COSName propertiesName() {
      return operands.get(1) instanceof COSName name ? name : null;
    }

    /** The same operator, given something else. */
    Operation with(List<Object> others) {
      return new Operation(others, name, operator);
    }
  }

  static List<Operation> read(PDContentStream content) throws IOException {
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

  static void write(List<Operation> operations, PDStream stream) throws IOException {
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
