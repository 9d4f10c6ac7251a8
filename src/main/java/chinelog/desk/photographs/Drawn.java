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
import java.util.Set;
import java.util.TreeSet;

/**
 * A region as it was drawn, in parts of the upright picture's width and height.
 *
 * @param box left, top, right and bottom, from 0 to 1, rounded outward
 * @param under agreements, at least one
 * @param origin which of the photograph's regions it was, from 0; {@link #NEW} for a new one
 * @param touched whether it was altered since
 */
record Drawn(List<BigDecimal> box, List<String> under, int origin, boolean touched) {

  static final int NEW = -1;

  /** A ten-thousandth of a side is less than a pixel of most pictures. */
  private static final int DIGITS = 4;

  private static final String REGIONS = "regions";
  private static final String PIN = "sha256";

  Drawn {
    box = List.copyOf(box);
    under = List.copyOf(under);
  }

  /**
   * A region as a browser sends it, such as {@code 0.1,0.2,0.35,1 lines,client 2}: its box, its
   * agreements, and which it was, with a {@code =} before it if it is as it was, or {@code -} if it
   * is new; empty if it is none.
   *
   * @param before the regions that the photograph has
   */
  static Optional<Drawn> parse(String sent, List<PhotoFile.Region> before) {
    String[] parts = sent.split(" ");
    String[] sides = parts[0].split(",", -1);
    if (sides.length != 4
        || parts.length != 3
        || !parts[1].matches("[A-Za-z0-9_,-]+")
        || !parts[2].matches("-|=?[0-9]{1,4}")) {
      return Optional.empty();
    }
    int origin = parts[2].equals("-") ? NEW : Integer.parseInt(parts[2].replace("=", ""));
    if (origin >= before.size()) {
      return Optional.empty();
    }
    if (parts[2].startsWith("=")) {
      return Optional.of(of(before.get(origin), origin));
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
    return isArea
        ? Optional.of(new Drawn(box, List.of(parts[1].split(",")), origin, true))
        : Optional.empty();
  }

  /** One that a photograph has, as it is. */
  static Drawn of(PhotoFile.Region region, int origin) {
    List<BigDecimal> box = new ArrayList<>();
    for (double side : List.of(region.left(), region.top(), region.right(), region.bottom())) {
      box.add(BigDecimal.valueOf(side).stripTrailingZeros());
    }
    return new Drawn(box, List.copyOf(region.label().agreements()), origin, false);
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

  /** The same as a region of another photograph. */
  Drawn asNew() {
    return new Drawn(box, under, NEW, true);
  }

  boolean isSame(Drawn other) {
    return box.equals(other.box) && under.equals(other.under);
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
    Set<Integer> kept = new TreeSet<>();
    wanted.forEach(w -> kept.add(w.origin));
    for (int i = yaml.size(at) - 1; i >= 0; i--) {
      if (!kept.contains(i)) {
        next = next.without(List.of(key, REGIONS, Integer.toString(i)));
      }
    }
    for (Drawn region : wanted) {
      if (region.origin == NEW) {
        next = next.plus(at, region.value());
      } else if (region.touched) {
        long place = kept.stream().filter(k -> k >= 0 && k < region.origin).count();
        next = region.over(next, List.of(key, REGIONS, Long.toString(place)));
      }
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
