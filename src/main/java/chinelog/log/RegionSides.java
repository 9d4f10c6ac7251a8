package chinelog.log;

import chinelog.label.Label;
import chinelog.log.reading.Fields;
import chinelog.log.reading.Yaml;
import chinelog.log.records.PhotoFile;
import chinelog.problem.Place;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * The sides of a region as they are written: all as parts, all in per cent or all in pixels, such
 * as {@code [0, 37 %, 47 %, 100 %]}; a bare 0 stands for the edge in any of them.
 */
record RegionSides(List<Double> sides, PhotoFile.Measure measure) {

  private static final Pattern SIDE =
      Pattern.compile(
          "(?<part>0|1|[01]?\\.[0-9]{1,12})"
              + "|(?<cent>[0-9]{1,3}(?:\\.[0-9]{1,10})?) ?%"
              + "|(?<px>[0-9]{1,6}) ?px");

  private static final double PER_CENT = 100;

  /** Null if they are no part of any picture, or are not all counted alike. */
  static @Nullable RegionSides find(Fields fields, Yaml box) {
    Written written = Written.of(fields, box);
    if (written == null) {
      return null;
    }
    List<Double> sides = written.numbers;
    boolean pixels = written.counted.contains("px");
    boolean isPart =
        sides.size() == 4
            && written.counted.size() == 1
            && (pixels || sides.stream().allMatch(s -> s <= 1))
            && sides.get(0) < sides.get(2)
            && sides.get(1) < sides.get(3);
    return isPart
        ? new RegionSides(
            List.copyOf(sides), pixels ? PhotoFile.Measure.PIXELS : PhotoFile.Measure.PARTS)
        : null;
  }

  /** A place as parts or in per cent, from the left and from the top; null if it is none. */
  static @Nullable List<Double> point(Fields fields, Yaml at) {
    Written written = Written.of(fields, at);
    if (written == null) {
      return null;
    }
    boolean isPlace =
        written.numbers.size() == 2
            && !written.counted.contains("px")
            && written.numbers.stream().allMatch(n -> n <= 1);
    return isPlace ? written.numbers : null;
  }

  /**
   * Numbers and how they are counted: {@code part}, {@code %} or {@code px}; a bare 0 is counted in
   * any way.
   */
  private record Written(List<Double> numbers, Set<String> counted) {

    static @Nullable Written of(Fields fields, Yaml list) {
      List<Double> numbers = new ArrayList<>();
      Set<String> counted = new HashSet<>();
      for (Yaml item : fields.items(list)) {
        Yaml.Scalar scalar = fields.values().scalar(item);
        Matcher m = SIDE.matcher(scalar == null ? "" : scalar.text());
        if (!m.matches()) {
          return null;
        }
        if (m.group("px") != null) {
          numbers.add(Double.valueOf(m.group("px")));
          counted.add("px");
        } else if (m.group("cent") != null) {
          numbers.add(Double.parseDouble(m.group("cent")) / PER_CENT);
          counted.add("%");
        } else {
          numbers.add(Double.valueOf(m.group("part")));
          counted.add(m.group("part").equals("0") ? "" : "part");
        }
      }
      counted.remove("");
      return new Written(List.copyOf(numbers), counted);
    }
  }

  PhotoFile.Region region(Label label, Place place) {
    return new PhotoFile.Region(
        sides.get(0), sides.get(1), sides.get(2), sides.get(3), measure, label, place);
  }
}
