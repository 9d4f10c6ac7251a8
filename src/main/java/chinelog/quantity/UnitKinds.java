package chinelog.quantity;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The units that may be written, by what they measure. */
public final class UnitKinds {

  /** A unit of each kind, in the order to be shown, with what the kind is called. */
  private static final Map<String, String> CALLED = new LinkedHashMap<>();

  static {
    CALLED.put("m", "length");
    CALLED.put("ha", "area, besides the squares of lengths (mm², ft²)");
    CALLED.put("L", "volume, besides the cubes of lengths (cm³, in³)");
    CALLED.put("kg", "mass");
    CALLED.put("s", "time");
    CALLED.put("kn", "speed, besides m/s, km/h and the like");
    CALLED.put("Hz", "turns and beats");
    CALLED.put("°", "angle");
    CALLED.put("N", "force");
    CALLED.put("Pa", "pressure");
    CALLED.put("J", "energy");
    CALLED.put("W", "power");
    CALLED.put("V", "voltage");
    CALLED.put("A", "current");
    CALLED.put("Ah", "charge");
    CALLED.put("K", "temperature; Δ°C and Δ°F are differences");
    CALLED.put("%", "share");
  }

  private UnitKinds() {}

  /**
   * Units of one kind.
   *
   * @param symbols from the smallest to the largest
   */
  public record Kind(String title, List<String> symbols) {}

  /** All kinds. Units are multiplied, divided and raised besides: {@code g/m²}, {@code N·m}. */
  public static List<Kind> all() {
    List<Kind> kinds = new ArrayList<>();
    CALLED.forEach(
        (symbol, title) -> {
          Unit of = Unit.known(symbol);
          List<String> symbols =
              UnitTable.symbols().stream()
                  .filter(s -> Unit.known(s).isCompatible(of))
                  .sorted(
                      Comparator.comparing((String s) -> Unit.known(s).difference().coherentOfOne())
                          .thenComparing(Comparator.naturalOrder()))
                  .toList();
          kinds.add(new Kind(title, symbols));
        });
    return List.copyOf(kinds);
  }
}
