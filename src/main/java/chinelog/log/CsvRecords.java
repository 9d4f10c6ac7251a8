package chinelog.log;

import chinelog.log.reading.Source;
import chinelog.problem.Place;
import chinelog.problem.Problems;
import java.util.ArrayList;
import java.util.List;

/**
 * Splits comma-separated values (RFC 4180), keeping the place of each field; or values separated by
 * semicolons, where more of these than of commas stand in the first line.
 */
final class CsvRecords {

  record Field(String text, Place place) {}

  private final Source source;
  private final String text;
  private final Problems problems;
  private final char divider;
  private int at;
  private boolean unclosed;

  private CsvRecords(Source source, Problems problems) {
    this.source = source;
    this.text = source.text();
    this.problems = problems;
    this.divider = divider(source);
  }

  /** A file from the line that names the columns on: lines above it may be remarks. */
  static Source withoutRemarks(Source source) {
    int line = 0;
    while (line < source.lines() - 1 && source.line(line).matches("#(?:[ \t].*)?")) {
      line++;
    }
    return line == 0 ? source : source.fromLine(source.offset(line, 0));
  }

  /** What stands between two cells: a comma, or a semicolon. */
  static char divider(Source source) {
    String head = source.text().lines().findFirst().orElse("");
    long commas = head.chars().filter(c -> c == ',').count();
    return head.chars().filter(c -> c == ';').count() > commas ? ';' : ',';
  }

  /** All records that are not blank lines; none after a quotation mark that is not closed. */
  static List<List<Field>> read(Source source, Problems problems) {
    CsvRecords csv = new CsvRecords(source, problems);
    List<List<Field>> records = new ArrayList<>();
    while (csv.at < csv.text.length()) {
      List<Field> record = csv.record();
      if (csv.unclosed) {
        return records;
      }
      if (record.size() > 1 || !record.get(0).text().isBlank()) {
        records.add(record);
      }
    }
    return records;
  }

  private List<Field> record() {
    List<Field> fields = new ArrayList<>();
    while (true) {
      fields.add(field());
      if (at >= text.length()) {
        return fields;
      }
      if (text.charAt(at++) == '\n') {
        return fields;
      }
    }
  }

  private Field field() {
    int start = at;
    Place place = source.at(start);
    if (at < text.length() && text.charAt(at) == '"') {
      return new Field(quoted(place), place);
    }
    while (at < text.length() && text.charAt(at) != divider && text.charAt(at) != '\n') {
      at++;
    }
    return new Field(text.substring(start, at), place);
  }

  private String quoted(Place start) {
    StringBuilder value = new StringBuilder();
    at++;
    while (at < text.length()) {
      char c = text.charAt(at++);
      if (c != '"') {
        value.append(c);
      } else if (at < text.length() && text.charAt(at) == '"') {
        value.append('"');
        at++;
      } else {
        int end = at;
        while (at < text.length() && text.charAt(at) != divider && text.charAt(at) != '\n') {
          at++;
        }
        if (!text.substring(end, at).isBlank()) {
          problems.error(
              source.at(end),
              "Something follows the closing quotation mark of this cell.",
              "Double each quotation mark inside a quoted cell.");
        }
        return value.toString();
      }
    }
    unclosed = true;
    problems.error(
        start,
        "The quotation mark of this cell is not closed.",
        "Write the closing quotation mark.");
    return value.toString();
  }
}
