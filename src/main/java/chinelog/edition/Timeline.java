package chinelog.edition;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The build by day: what was worked at in each stage beside when it was to be, and what was
 * photographed.
 *
 * @param from the first day on it
 * @param to the last, inclusive
 * @param rows a row for each stage that is told, in the order of the plan
 * @param plates how many plates each day has; days without are left out
 * @param photographs what these are called
 */
public record Timeline(
    String id,
    String title,
    String description,
    LocalDate from,
    LocalDate to,
    List<Row> rows,
    List<Count> plates,
    String photographs,
    Table table,
    List<String> under)
    implements Drawing {

  public Timeline {
    rows = List.copyOf(rows);
    plates = List.copyOf(plates);
    under = List.copyOf(under);
  }

  /**
   * One stage.
   *
   * @param start planned first day; null if none is told
   * @param finish planned last day, inclusive; null if none is told
   * @param days on which something was done
   * @param done the day it was done; null while it is not
   */
  public record Row(
      String title,
      @Nullable LocalDate start,
      @Nullable LocalDate finish,
      List<Day> days,
      @Nullable LocalDate done) {
    public Row {
      days = List.copyOf(days);
    }
  }

  /**
   * A day's work.
   *
   * @param hours as far as they are told; 0 where an entry tells none
   */
  public record Day(LocalDate date, BigDecimal hours) {}

  public record Count(LocalDate date, int number) {}
}
