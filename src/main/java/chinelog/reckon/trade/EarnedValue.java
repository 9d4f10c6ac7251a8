package chinelog.reckon.trade;

import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import chinelog.wording.Message;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * How a build stands against its plan, from the share of each stage that is done: {@code
 * earned-value}.
 *
 * <p>PV = Σ planned × due, EV = Σ planned × done, AC = Σ worked; SV = EV − PV, CV = EV − AC, SPI =
 * EV/PV, CPI = EV/AC; EAC = BAC/CPI, AC + (BAC − EV), or AC + (BAC − EV)/(CPI SPI); ETC = EAC − AC,
 * VAC = BAC − EAC, TCPI = (BAC − EV)/(BAC − AC). Project Management Institute, Practice Standard
 * for Earned Value Management, 2nd edition (2011), chapter 3 (from memory).
 */
final class EarnedValue {

  private static final Message SOURCE = Message.of("earned.source");

  static final TradeReckoning RECKONING =
      new TradeReckoning(
              "earned-value",
              "How the build stands against its plan",
              List.of(
                  Parameter.table(
                      "stages",
                      "a row for each stage: hours planned and worked, share that is done, and"
                          + " share that should be",
                      "stage?",
                      "planned",
                      "done",
                      "worked",
                      "due?")),
              EarnedValue::of)
          .yielding(
              "planned", "earned.planned",
              "earned", "earned.earned",
              "worked", "earned.worked",
              "share_done", "earned.share",
              "to_go_…", "earned.stage.left",
              "due", "earned.due",
              "schedule_variance", "earned.sv",
              "schedule_index", "earned.spi",
              "cost_variance", "earned.cv",
              "cost_index", "earned.cpi",
              "forecast", "earned.eac",
              "to_go", "earned.etc",
              "variance_at_end", "earned.vac",
              "forecast_as_planned", "earned.eac.planned",
              "forecast_by_both", "earned.eac.both",
              "index_to_go", "earned.tcpi");

  private final YieldList yields = new YieldList().from("stages");
  private final Unit unit;
  private final double planned;
  private final double earned;
  private final double worked;

  private EarnedValue(Columns stages, double[] plan, double[] done, double[] work)
      throws TradeException {
    unit = stages.unit("planned");
    double bac = 0;
    double ev = 0;
    double ac = 0;
    for (int i = 0; i < plan.length; i++) {
      bac += plan[i];
      ev += plan[i] * done[i];
      ac += work[i];
    }
    planned = bac;
    earned = ev;
    worked = ac;
  }

  private static List<Yield> of(Inputs inputs) throws TradeException, QuantityException {
    Columns stages = new Columns("stages", inputs.table("stages"));
    stages.requireDistinct("stage");
    double[] plan = stages.numbers("planned", Unit.HOUR);
    double[] done = stages.numbers("done", Unit.ONE);
    double[] work = stages.numbers("worked", Unit.HOUR);
    for (int i = 0; i < plan.length; i++) {
      if (plan[i] < 0 || work[i] < 0 || done[i] < 0 || done[i] > 1) {
        throw stages.at(
            i,
            "Hours are less than nothing, or more than the whole is done.",
            "Give hours of 0 or more, and a share from 0 % to 100 %.");
      }
    }
    EarnedValue value = new EarnedValue(stages, plan, done, work);
    value.sums(value.added(plan, null), value.added(plan, done), value.added(work, null));
    for (int i = 0; i < plan.length; i++) {
      String name = stages.text(i, "stage");
      value.add(
          "to_go_" + Offsets.factPart(name),
          Message.of("earned.stage.left", name),
          plan[i] * (1 - done[i]),
          YieldList.worked("{0} × (1 − {1})", value.hours(plan[i]), Si.percent(done[i])));
    }
    if (stages.find("due").isPresent()) {
      double[] due = stages.numbers("due", Unit.ONE);
      double pv = 0;
      for (int i = 0; i < plan.length; i++) {
        pv += plan[i] * due[i];
      }
      value.schedule(pv, value.added(plan, due));
    }
    value.cost();
    return value.yields.list();
  }

  private Quantity hours(double hours) throws TradeException {
    return Si.show(hours, Unit.HOUR, unit);
  }

  private void add(String name, Message title, double hours, Message... how) throws TradeException {
    List<Message> method = new ArrayList<>(List.of(how));
    method.add(SOURCE);
    yields.add(name, title, hours(hours), method.toArray(Message[]::new));
  }

  /** Hours added up, each times its share where there are shares. */
  private Message added(double[] hours, double @Nullable [] share) throws TradeException {
    Terms terms = new Terms();
    for (int i = 0; i < hours.length; i++) {
      if (share == null) {
        terms.add(hours(hours[i]));
      } else {
        terms.add(hours(hours[i]), " × ", Si.percent(share[i]));
      }
    }
    return terms.end();
  }

  private void sums(Message plan, Message done, Message work) throws TradeException {
    add("planned", Message.of("earned.planned"), planned, Message.of("earned.planned.how"), plan);
    add("earned", Message.of("earned.earned"), earned, Message.of("earned.earned.how"), done);
    add("worked", Message.of("earned.worked"), worked, Message.of("earned.worked.how"), work);
    if (planned > 0) {
      yields.add(
          "share_done",
          Message.of("earned.share"),
          Si.percent(earned / planned),
          YieldList.worked("EV ÷ BAC = {0} ÷ {1}", hours(earned), hours(planned)),
          SOURCE);
    }
  }

  private void schedule(double pv, Message due) throws TradeException {
    add("due", Message.of("earned.due"), pv, Message.of("earned.due.how"), due);
    add(
        "schedule_variance",
        Message.of("earned.sv"),
        earned - pv,
        YieldList.worked("EV − PV = {0} − {1}", hours(earned), hours(pv)));
    if (pv > 0) {
      yields.add(
          "schedule_index",
          Message.of("earned.spi"),
          Si.number(earned / pv),
          YieldList.worked("EV ÷ PV = {0} ÷ {1}", hours(earned), hours(pv)),
          SOURCE);
    }
    if (pv > 0 && worked > 0 && earned > 0) {
      double both = worked + (planned - earned) / (earned / worked * earned / pv);
      add(
          "forecast_by_both",
          Message.of("earned.eac.both"),
          both,
          YieldList.worked(
              "AC + (BAC − EV) ÷ (CPI × SPI) = {0} + ({1} − {2}) ÷ ({3} × {4})",
              hours(worked),
              hours(planned),
              hours(earned),
              Si.number(earned / worked),
              Si.number(earned / pv)));
    }
  }

  private void cost() throws TradeException {
    add(
        "cost_variance",
        Message.of("earned.cv"),
        earned - worked,
        YieldList.worked("EV − AC = {0} − {1}", hours(earned), hours(worked)));
    add(
        "forecast_as_planned",
        Message.of("earned.eac.planned"),
        worked + planned - earned,
        YieldList.worked(
            "AC + (BAC − EV) = {0} + ({1} − {2})", hours(worked), hours(planned), hours(earned)));
    if (planned > worked) {
      yields.add(
          "index_to_go",
          Message.of("earned.tcpi"),
          Si.number((planned - earned) / (planned - worked)),
          YieldList.worked(
              "(BAC − EV) ÷ (BAC − AC) = ({0} − {1}) ÷ ({0} − {2})",
              hours(planned), hours(earned), hours(worked)),
          SOURCE);
    }
    if (worked == 0 || earned == 0) {
      return;
    }
    double index = earned / worked;
    double forecast = planned / index;
    yields.add(
        "cost_index",
        Message.of("earned.cpi"),
        Si.number(index),
        YieldList.worked("EV ÷ AC = {0} ÷ {1}", hours(earned), hours(worked)),
        SOURCE);
    add(
        "forecast",
        Message.of("earned.eac"),
        forecast,
        YieldList.worked("BAC ÷ CPI = {0} ÷ {1}", hours(planned), Si.number(index)));
    add(
        "to_go",
        Message.of("earned.etc"),
        forecast - worked,
        YieldList.worked("EAC − AC = {0} − {1}", hours(forecast), hours(worked)));
    add(
        "variance_at_end",
        Message.of("earned.vac"),
        planned - forecast,
        YieldList.worked("BAC − EAC = {0} − {1}", hours(planned), hours(forecast)));
  }
}
