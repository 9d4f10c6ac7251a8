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
    List<Double> sides = new ArrayList<>();
    Set<String> counted = new HashSet<>();
    for (Yaml side : fields.items(box)) {
      Yaml.Scalar scalar = fields.values().scalar(side);
      Matcher m = SIDE.matcher(scalar == null ? "" : scalar.text());
      if (!m.matches()) {
        return null;
      }
      if (m.group("px") != null) {
        sides.add(Double.valueOf(m.group("px")));
        counted.add("px");
      } else if (m.group("cent") != null) {
        sides.add(Double.parseDouble(m.group("cent")) / PER_CENT);
        counted.add("%");
      } else {
        sides.add(Double.valueOf(m.group("part")));
        counted.add(m.group("part").equals("0") ? "" : "part");
      }
    }
    counted.remove("");
    boolean pixels = counted.contains("px");
    boolean isPart =
        sides.size() == 4
            && counted.size() == 1
            && (pixels || sides.stream().allMatch(s -> s <= 1))
            && sides.get(0) < sides.get(2)
            && sides.get(1) < sides.get(3);
    return isPart
        ? new RegionSides(
            List.copyOf(sides), pixels ? PhotoFile.Measure.PIXELS : PhotoFile.Measure.PARTS)
        : null;
  }

  PhotoFile.Region region(Label label, Place place) {
    return new PhotoFile.Region(
        sides.get(0), sides.get(1), sides.get(2), sides.get(3), measure, label, place);
  }
}
