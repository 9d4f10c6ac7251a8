package chinelog.reckon.trade;

import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import chinelog.wording.Message;
import java.util.List;

/**
 * How far the sails' common centre leads the centre of the underwater profile: {@code rig}.
 *
 * <p>Centre of effort = Σ area × distance / Σ area; the centre of lateral resistance is taken as
 * the centre of the profile's area; lead = CE − CLR, forward positive, as a share of the waterline.
 * Common practice, no source.
 */
final class Rig {

  static final TradeReckoning RECKONING =
      new TradeReckoning(
              "rig",
              "The lead of the sails over the lateral plane",
              List.of(
                  Parameter.table("sails", "a row for each sail", "sail?", "area", "x", "z?"),
                  Parameter.table("profile", "corners of the underwater profile", "x", "z")
                      .or("the centre given"),
                  Parameter.quantity(
                          "clr", "centre of lateral resistance from the aft end", Unit.METRE)
                      .or("that of the profile"),
                  Parameter.quantity("lwl", "length of the waterline", Unit.METRE).or("")),
              Rig::of)
          .yielding(
              "area", "rig.area",
              "ce_x", "rig.ce.x",
              "ce_z", "rig.ce.z",
              "lateral", "rig.profile",
              "clr", "rig.clr",
              "lead", "rig.lead",
              "lead_share", "rig.lead.share");

  private Rig() {}

  private static List<Yield> of(Inputs inputs) throws TradeException, QuantityException {
    Columns sails = new Columns("sails", inputs.table("sails"));
    ShopUnits units = ShopUnits.of(sails.unit("x"));
    double[] area = sails.numbers("area", Si.M2);
    double[] x = sails.numbers("x", Unit.METRE);
    double[] z = sails.numbers("z", Unit.METRE, 0);
    double whole = 0;
    double along = 0;
    double up = 0;
    for (int i = 0; i < area.length; i++) {
      if (area[i] <= 0) {
        throw sails.at(i, "A sail's area is not above zero.", "Give its area.");
      }
      whole += area[i];
      along += area[i] * x[i];
      up += area[i] * z[i];
    }
    Message moments = Message.of("rig.ce.how");
    YieldList yields = new YieldList();
    yields.add("area", Message.of("rig.area"), units.area(whole), Message.of("rig.area.how"));
    yields.add("ce_x", Message.of("rig.ce.x"), units.length(along / whole), moments);
    if (sails.find("z").isPresent()) {
      yields.add("ce_z", Message.of("rig.ce.z"), units.length(up / whole), moments);
    }
    lead(yields, inputs, units, along / whole);
    return yields.list();
  }

  private static void lead(YieldList yields, Inputs inputs, ShopUnits units, double ce)
      throws TradeException, QuantityException {
    boolean drawn = inputs.findTable("profile").isPresent();
    if (drawn && inputs.findQuantity("clr").isPresent()) {
      throw new TradeException("clr", "The centre is given twice.", "Give either clr or profile.");
    }
    if (!drawn && inputs.findQuantity("clr").isEmpty()) {
      return;
    }
    double clr;
    if (drawn) {
      Polygon profile = Polygon.read("profile", new Columns("profile", inputs.table("profile")));
      clr = profile.x();
      yields.add(
          "lateral",
          Message.of("rig.profile"),
          units.area(profile.area()),
          Message.of("rig.profile.how"));
      yields.add("clr", Message.of("rig.clr"), units.length(clr), Message.of("rig.clr.how"));
    } else {
      clr = Si.value(inputs, "clr", Unit.METRE);
    }
    yields.add("lead", Message.of("rig.lead"), units.length(ce - clr), Message.of("rig.lead.how"));
    if (inputs.findQuantity("lwl").isPresent()) {
      yields.add(
          "lead_share",
          Message.of("rig.lead.share"),
          Si.percent((ce - clr) / Si.positive(inputs, "lwl", Unit.METRE)),
          Message.of("rig.lead.share.how"));
    }
  }
}
