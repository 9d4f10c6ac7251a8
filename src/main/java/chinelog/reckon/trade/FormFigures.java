package chinelog.reckon.trade;

import chinelog.quantity.Quantity;
import chinelog.wording.Message;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;

/** The figures of a hull at one waterline, each with what it is made of and its doubt. */
final class FormFigures {

  private static final Message SOURCE = Message.of("source.derrett.10");

  private final Offsets offsets;
  private final ShopUnits units;
  private final Afloat hull;
  private final Solids solids;
  private final Doubt doubt;
  private final double draught;
  private final YieldList yields = new YieldList();

  FormFigures(Offsets offsets, Afloat hull, Solids solids, Doubt doubt, double draught) {
    this.offsets = offsets;
    this.units = offsets.units();
    this.hull = hull;
    this.solids = solids;
    this.doubt = doubt;
    this.draught = draught;
  }

  List<Yield> list() {
    return yields.list();
  }

  private void add(String name, Message title, Quantity value, Message... method) {
    yields.add(name, title, value, method);
  }

  private Quantity doubted(ToDoubleFunction<Afloat> figure, Doubt.Shown shown)
      throws TradeException {
    return Doubt.doubted(figure.applyAsDouble(hull), doubt.of(figure), shown);
  }

  /** Whether what follows rests on the water besides the hull. */
  void floatingBy(boolean water) {
    List<String> inputs =
        new ArrayList<>(
            List.of("offsets", "origin", "breadths", "draught", "mass", "siding", "appendages"));
    if (water) {
      inputs.addAll(List.of("water", "temperature", "density"));
    }
    yields.from(inputs.toArray(String[]::new));
  }

  /** Where she floats with a mass in kg, in water of a density in kg/m³. */
  void draught(double mass, double density) throws TradeException {
    floatingBy(true);
    add(
        "draught",
        Message.of("form.draught"),
        units.length(draught),
        Message.of("form.draught.how"),
        YieldList.worked("V = {0} ÷ {1}", units.mass(mass), units.density(density)));
  }

  private double whole(Afloat afloat) {
    return afloat.volume() + solids.volume();
  }

  private double lcb(Afloat afloat) {
    return (afloat.volume() * afloat.lcb() + solids.xMoment()) / whole(afloat);
  }

  private double vcb(Afloat afloat) {
    return (afloat.volume() * afloat.vcb() + solids.zMoment()) / whole(afloat);
  }

  void afloat(double density, Message water) throws TradeException {
    Message along = Message.of("form.doubt");
    Message volumes = Message.of("form.volume.how", hull.along().said(), SOURCE);
    Message sum = sums().area("Σ m A = ", hull.areas(), hull.nodeAreas(), 2);
    if (!solids.isEmpty()) {
      add(
          "hull_volume",
          Message.of("form.hull"),
          doubted(Afloat::volume, units::volume),
          volumes,
          areas(),
          sum,
          along);
    }
    add(
        "volume",
        Message.of("form.volume"),
        doubted(this::whole, units::volume),
        solids.isEmpty()
            ? new Message[] {volumes, areas(), sum, along}
            : new Message[] {
              Message.of("form.with.appendages"), with(Solids.Solid::volume, units::volume), along
            });
    floatingBy(true);
    add(
        "displacement",
        Message.of("form.displacement"),
        doubted(h -> whole(h) * density, units::mass),
        Message.of("form.displacement.how"),
        YieldList.worked("{0} × {1}", units.volume(whole(hull)), units.density(density)),
        water,
        volumes,
        along);
    floatingBy(false);
    centres(along);
    waterplane(density, water, along);
    metacentres(along);
    wettedSkin();
  }

  private Sums sums() {
    return new Sums(units);
  }

  /** The hull's volume and those of what is fixed to her, or another figure of theirs. */
  private Message with(ToDoubleFunction<Solids.Solid> figure, Doubt.Shown shown)
      throws TradeException {
    List<Object> parts = new ArrayList<>(List.of(shown.of(hull.volume())));
    for (Solids.Solid solid : solids.all()) {
      parts.add(" + ");
      parts.add(shown.of(figure.applyAsDouble(solid)));
    }
    return YieldList.joined(parts.toArray());
  }

  /** Moments of the volumes over their sum. */
  private Message weighed(double own, ToDoubleFunction<Solids.Solid> centre) throws TradeException {
    List<Object> parts = new ArrayList<>(List.of("(", units.volume(hull.volume()), " × "));
    parts.add(units.length(own));
    for (Solids.Solid solid : solids.all()) {
      parts.addAll(List.of(" + ", units.volume(solid.volume()), " × "));
      parts.add(units.length(centre.applyAsDouble(solid)));
    }
    parts.addAll(List.of(") ÷ ", units.volume(whole(hull))));
    return YieldList.joined(parts.toArray());
  }

  private void centres(Message doubts) throws TradeException {
    Quantity volume = units.volume(hull.volume());
    Message x = sums().centre("Σ m A ÷ V = ", hull.areas(), hull.nodeAreas(), 2, volume);
    Message z = sums().mean("Σ m M ÷ V = ", hull.moments(), hull.nodeMoments(), 3, volume);
    Message xHow = Message.of("form.lcb.how", hull.along().said(), SOURCE);
    Message zHow = Message.of("form.vcb.how", hull.along().said(), SOURCE);
    add(
        "lcb",
        Message.of("form.lcb"),
        doubted(this::lcb, units::length),
        solids.isEmpty()
            ? new Message[] {xHow, x, doubts}
            : new Message[] {
              xHow, x, Message.of("form.with.centres"), weighed(hull.lcb(), Solids.Solid::x), doubts
            });
    add(
        "vcb",
        Message.of("form.vcb"),
        doubted(this::vcb, units::length),
        solids.isEmpty()
            ? new Message[] {zHow, z, doubts}
            : new Message[] {
              zHow, z, Message.of("form.with.centres"), weighed(hull.vcb(), Solids.Solid::z), doubts
            });
  }

  private void waterplane(double density, Message water, Message doubts) throws TradeException {
    add(
        "waterplane",
        Message.of("form.waterplane"),
        doubted(Afloat::waterplane, units::area),
        Message.of("form.waterplane.how", hull.along().said(), SOURCE),
        sums().area("2 Σ m y = 2 × ", hull.halves(), hull.nodeHalves(), 1),
        doubts);
    add(
        "lcf",
        Message.of("form.lcf"),
        doubted(Afloat::lcf, units::length),
        Message.of("form.lcf.how", hull.along().said(), SOURCE),
        sums()
            .centre(
                "2 Σ m y ÷ A = 2 × ",
                hull.halves(),
                hull.nodeHalves(),
                1,
                units.area(hull.waterplane())),
        doubts);
    floatingBy(true);
    add(
        "immersion",
        Message.of("form.sinks"),
        doubted(h -> h.waterplane() * density, units::immersion),
        Message.of("form.sinks.how"),
        YieldList.worked("{0} × {1}", units.area(hull.waterplane()), units.density(density)),
        water);
    floatingBy(false);
  }

  private void metacentres(Message doubts) throws TradeException {
    double centre = hull.lcf();
    Quantity volume = units.volume(whole(hull));
    add(
        "bm",
        Message.of("form.bm"),
        doubted(h -> h.acrossMoment() / whole(h), units::length),
        Message.of("form.bm.how", hull.along().said(), SOURCE),
        sums().of("I = ⅔ ∫ y³ dx = ⅔ × ", hull.halves().pieces((at, y) -> y * y * y), 4),
        YieldList.worked("I ÷ V = {0} ÷ {1}", units.second(hull.acrossMoment()), volume),
        doubts);
    add(
        "bml",
        Message.of("form.bml"),
        doubted(h -> h.lengthMoment() / whole(h), units::length),
        Message.of("form.bml.how", hull.along().said(), SOURCE),
        sums().second("I = 2 Σ m y = 2 × ", hull.halves(), centre, hull.nodeHalves(), 1),
        YieldList.worked("I ÷ V = {0} ÷ {1}", units.second(hull.lengthMoment()), volume),
        doubts);
  }

  private void wettedSkin() throws TradeException {
    double[] pieces = hull.wettedSkins();
    double[] all = Arrays.copyOf(pieces, pieces.length + solids.all().size());
    for (int i = 0; i < solids.all().size(); i++) {
      all[pieces.length + i] = solids.all().get(i).skin();
    }
    add(
        "wetted_skin",
        Message.of("form.wetted"),
        Doubt.doubted(
            hull.wettedSkin() + solids.skin(), doubt.ofSkin(Afloat::wettedSkin), units::area),
        Message.of(solids.isEmpty() ? "form.wetted.how" : "form.wetted.with"),
        sums().of("", all, 2),
        Message.of("form.skin.doubt"));
  }

  void form() throws TradeException {
    double depth = draught - offsets.lowest();
    double block = hull.volume() / (hull.length() * hull.breadth() * depth);
    double midship = hull.greatestArea() / (hull.breadth() * depth);
    double[] ends = hull.nodes();
    Quantity volume = units.volume(hull.volume());
    Quantity fullest = units.area(hull.greatestArea());
    Quantity length = units.length(hull.length());
    Quantity breadth = units.length(hull.breadth());
    Quantity deep = units.length(depth);
    add(
        "lwl",
        Message.of("form.lwl"),
        length,
        Message.of("form.lwl.how"),
        YieldList.worked("{0} − {1}", units.length(ends[ends.length - 1]), units.length(ends[0])));
    add(
        "bwl",
        Message.of("form.bwl"),
        breadth,
        Message.of("form.bwl.how"),
        YieldList.worked("2 × {0}", units.length(hull.breadth() / 2)));
    add(
        "cb",
        Message.of("form.cb"),
        Si.number(block),
        Message.of("form.cb.how", SOURCE),
        YieldList.worked("{0} ÷ ({1} × {2} × {3})", volume, length, breadth, deep));
    add(
        "cm",
        Message.of("form.cm"),
        Si.number(midship),
        Message.of("form.cm.how", SOURCE),
        YieldList.worked("{0} ÷ ({1} × {2})", fullest, breadth, deep));
    add(
        "cp",
        Message.of("form.cp"),
        Si.number(block / midship),
        Message.of("form.cp.how", SOURCE),
        YieldList.worked("{0} ÷ ({1} × {2})", volume, length, fullest));
    add(
        "cw",
        Message.of("form.cw"),
        Si.number(hull.waterplane() / (hull.length() * hull.breadth())),
        Message.of("form.cw.how", SOURCE),
        YieldList.worked("{0} ÷ ({1} × {2})", units.area(hull.waterplane()), length, breadth));
  }

  void stations() throws TradeException {
    double[] skins = Skin.areas(offsets.stations());
    add(
        "skin",
        Message.of("form.skin"),
        Doubt.doubted(Skin.area(offsets.stations()), doubt.ofWholeSkin(Skin::area), units::area),
        Message.of("form.skin.how"),
        sums().of("", skins, 2),
        Message.of("form.skin.doubt"));
    Map<HullSection, List<HullSection>> coarser = new IdentityHashMap<>();
    offsets.stations().forEach(station -> coarser.put(station, Doubt.coarser(station)));
    for (HullSection wet : hull.wet()) {
      station(wet, Math.min(draught, wet.top()), coarser.getOrDefault(wet, List.of()));
    }
    for (HullSection whole : offsets.stations()) {
      double doubted =
          Doubt.ofGirth(whole, coarser.getOrDefault(whole, List.of()), s -> 2 * s.girth());
      add(
          "girth_" + Offsets.factPart(whole.name()),
          Message.of("form.station.girth", whole.name()),
          Doubt.doubted(2 * whole.girth(), doubted, units::length),
          Message.of("form.station.girth.how"),
          chords(whole.chords(whole.top())),
          Message.of("form.girth.doubt"));
    }
  }

  private void station(HullSection wet, double height, List<HullSection> coarser)
      throws TradeException {
    String part = Offsets.factPart(wet.name());
    add(
        "area_" + part,
        Message.of("form.station.area", wet.name()),
        Doubt.doubted(
            wet.area(height), Doubt.ofArea(wet, coarser, s -> s.area(height)), units::area),
        Message.of("form.station.area.how", wet.outline().said(), SOURCE),
        sums().between("2 Σ m y = 2 × ", wet.outline(), wet.keel(), height, wet.y()),
        Message.of("form.area.doubt"));
    add(
        "wet_girth_" + part,
        Message.of("form.station.wetted", wet.name()),
        Doubt.doubted(
            2 * wet.girth(height),
            Doubt.ofGirth(wet, coarser, s -> 2 * s.girth(height)),
            units::length),
        Message.of("form.station.wetted.how"),
        chords(wet.chords(height)),
        Message.of("form.girth.doubt"));
  }

  private Message chords(double[] lengths) throws TradeException {
    List<Object> parts = new ArrayList<>();
    for (double length : lengths) {
      if (length > 0) {
        parts.add(parts.isEmpty() ? "2 × (" : " + ");
        parts.add(units.length(length));
      }
    }
    parts.add(")");
    return YieldList.joined(parts.toArray());
  }

  /** The areas of the stations with where they stand. */
  private Message areas() throws TradeException {
    List<Object> parts = new ArrayList<>();
    double[] x = hull.nodes();
    double[] area = hull.nodeAreas();
    for (int i = 0; i < x.length; i++) {
      parts.add(i == 0 ? "x, A: " : "; ");
      parts.add(units.length(x[i]));
      parts.add(", ");
      parts.add(units.area(area[i]));
    }
    return YieldList.joined(parts.toArray());
  }
}
