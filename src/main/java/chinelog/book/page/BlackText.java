package chinelog.book.page;

import chinelog.book.page.MarkedContent.Operation;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.contentstream.operator.Operator;
import org.apache.pdfbox.contentstream.operator.OperatorName;
import org.apache.pdfbox.cos.COSNumber;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDStream;

/**
 * Sets grey and black as grey, so that a printing house prints them with black ink alone: of three
 * equal parts of red, green and blue it would mix them from four inks, and small type would have
 * coloured edges.
 */
final class BlackText {

  private BlackText() {}

  static void set(PDDocument document) throws IOException {
    for (PDPage page : document.getPages()) {
      List<Operation> operations = new ArrayList<>();
      for (Operation operation : MarkedContent.read(page)) {
        operations.add(grey(operation));
      }
      PDStream stream = new PDStream(document);
      MarkedContent.write(operations, stream);
      page.setContents(stream);
    }
  }

  private static Operation grey(Operation operation) {
    boolean isFill = operation.name().equals(OperatorName.NON_STROKING_RGB);
    boolean isStroke = operation.name().equals(OperatorName.STROKING_COLOR_RGB);
    if (!isFill && !isStroke || !isGrey(operation.operands())) {
      return operation;
    }
    String name = isFill ? OperatorName.NON_STROKING_GRAY : OperatorName.STROKING_COLOR_GRAY;
    return new Operation(operation.operands().subList(0, 1), name, Operator.getOperator(name));
  }

  private static boolean isGrey(List<Object> operands) {
    return operands.size() == 3
        && operands.stream()
                .map(o -> o instanceof COSNumber number ? number.floatValue() : -1)
                .distinct()
                .count()
            == 1;
  }
}
