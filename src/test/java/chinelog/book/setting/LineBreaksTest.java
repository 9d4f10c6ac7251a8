package chinelog.book.setting;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LineBreaksTest {

  @ParameterizedTest
  @CsvSource({
    "'tip her \u22120.97\u00a0mm from', 'tip |her |\u22120.97\u00a0mm |from'",
    "'a \u221212,5 b', 'a |\u221212,5 |b'",
    "'one, two. Three', 'one, |two. |Three'",
    "'a boat\u2019s mass', 'a |boat\u2019s |mass'",
    "'a \u201chalf mil\u201d gap', 'a |\u201chalf |mil\u201d |gap'",
    "'left: 3/64 of', 'left: |3/64 |of'",
    "'cloth, 160\u00a0g/m\u00b2, plain', 'cloth, |160\u00a0g/m\u00b2, |plain'",
    "'ran 1.163 m/s', 'ran |1.163 |m/s'",
    "'strip-planked', 'strip-|planked'",
    "'', ''",
  })
  void aLineNeverEndsWithinAFigure(String text, String parts) {
    LineBreaks breaks = new LineBreaks();
    breaks.setText(text);
    StringBuilder found = new StringBuilder();
    int start = 0;
    for (int end = breaks.next(); end >= 0; end = breaks.next()) {
      found.append(start > 0 ? "|" : "").append(text, start, end);
      start = end;
    }
    assertThat(found.append(text.isEmpty() || start == text.length() ? "" : "?"))
        .hasToString(parts);
  }
}
