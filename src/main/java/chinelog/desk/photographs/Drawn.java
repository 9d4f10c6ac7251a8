package chinelog.desk.photographs;

import chinelog.desk.files.YamlText;
import chinelog.desk.files.YamlValue;
import chinelog.label.Label;
import chinelog.log.records.PhotoFile;
import chinelog.problem.Place;
import chinelog.problem.ProblemException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A region as it was drawn, in parts of the upright picture's width and height.
 *
 * @param box left, top, right and bottom, from 0 to 1, rounded outward
 * @param under agreements, at least one
 */
record Drawn(List<BigDecimal> box, List<String> under) {

  /** A ten-thousandth of a side is less than a pixel of most pictures. */
  private static final int DIGITS = 4;

  private static final String REGIONS = "regions";
  private static final String PIN = "sha256";

  Drawn {
    box = List.copyOf(box);
    under = List.copyOf(under);
  }

  /**
   * A region as a browser sends it, such as {@code 0.1,0.2,0.35,1 lines,client}; empty if it is
   * none.
   */
  static Optional<Drawn> parse(String sent) {
    String[] parts = sent.split(" ", 2);
    String[] sides = parts[0].split(",", -1);
    if (sides.length != 4 || parts.length < 2 || !parts[1].matches("[A-Za-z0-9_,-]+")) {
      return Optional.empty();
    }
    List<BigDecimal> box = new ArrayList<>();
    for (int i = 0; i < sides.length; i++) {
      if (!sides[i].matches("[0-9]{1,2}(\\.[0-9]{1,20})?")) {
        return Optional.empty();
      }
      RoundingMode outward = i < 2 ? RoundingMode.FLOOR : RoundingMode.CEILING;
      BigDecimal side = new BigDecimal(sides[i]).setScale(DIGITS, outward);
      box.add(side.min(BigDecimal.ONE).stripTrailingZeros());
    }
    boolean isArea = box.get(0).compareTo(box.get(2)) < 0 && box.get(1).compareTo(box.get(3)) < 0;
    return isArea ? Optional.of(new Drawn(box, List.of(parts[1].split(",")))) : Optional.empty();
  }

  static Drawn of(PhotoFile.Region region) {
    List<BigDecimal> box = new ArrayList<>();
    for (double side : List.of(region.left(), region.top(), region.right(), region.bottom())) {
      box.add(BigDecimal.valueOf(side).stripTrailingZeros());
    }
    return new Drawn(box, List.copyOf(region.label().agreements()));
  }

  PhotoFile.Region region() {
    return new PhotoFile.Region(
        box.get(0).doubleValue(),
        box.get(1).doubleValue(),
        box.get(2).doubleValue(),
        box.get(3).doubleValue(),
        Label.of(under),
        Place.of("photos.yaml"));
  }

  private YamlValue boxValue() {
    return new YamlValue.Items(
        box.stream().map(s -> YamlValue.bare(s.toPlainString())).toList(), true);
  }

  private YamlValue value() {
    Map<String, YamlValue> keys = new LinkedHashMap<>();
    keys.put("box", boxValue());
    keys.put("under", YamlValue.under(under));
    return new YamlValue.Keys(keys, true);
  }

  /**
   * What is said of a photograph with just these regions, pinned to the file they were drawn on.
   *
   * @param sha256 of that file
   */
  static YamlText write(YamlText yaml, String key, List<Drawn> wanted, String sha256)
      throws ProblemException {
    List<String> at = List.of(key, REGIONS);
    if (wanted.isEmpty()) {
      return yaml.without(at).without(List.of(key, PIN));
    }
    YamlText next = yaml;
    int there = yaml.size(at);
    for (int i = there - 1; i >= wanted.size(); i--) {
      next = next.without(List.of(key, REGIONS, Integer.toString(i)));
    }
    for (int i = 0; i < wanted.size(); i++) {
      Drawn region = wanted.get(i);
      List<String> item = List.of(key, REGIONS, Integer.toString(i));
      next = i < there ? region.over(next, item) : next.plus(at, region.value());
    }
    List<String> pin = List.of(key, PIN);
    return next.find(pin).equals(Optional.of(sha256))
        ? next
        : next.with(pin, YamlValue.text(sha256));
  }

  /** Writes over another region only what is different. */
  private YamlText over(YamlText yaml, List<String> item) throws ProblemException {
    List<String> box = List.of(item.get(0), item.get(1), item.get(2), "box");
    List<String> mark = List.of(item.get(0), item.get(1), item.get(2), "under");
    YamlText next = yaml;
    if (!isSame(yaml.words(box))) {
      next = next.with(box, boxValue());
    }
    return next.words(mark).equals(under) ? next : next.with(mark, YamlValue.under(under));
  }

  private boolean isSame(List<String> written) {
    if (written.size() != box.size()) {
      return false;
    }
    for (int i = 0; i < box.size(); i++) {
      String side = written.get(i);
      if (!side.matches("[0-9]*\\.?[0-9]+") || new BigDecimal(side).compareTo(box.get(i)) != 0) {
        return false;
      }
    }
    return true;
  }
}
