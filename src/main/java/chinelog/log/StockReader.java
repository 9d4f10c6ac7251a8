package chinelog.log;

import chinelog.label.Label;
import chinelog.log.reading.Fields;
import chinelog.log.reading.Kind;
import chinelog.log.reading.Scope;
import chinelog.log.reading.Yaml;
import chinelog.log.records.Lot;
import chinelog.log.records.Marked;
import chinelog.problem.Sentence;
import chinelog.quantity.Quantity;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** Reads stock.yaml: what was bought, lot by lot. */
final class StockReader {

  private static final List<String> HAZARDS =
      List.of("resin", "superglue", "dust", "lead", "solvent", "blade", "lithium");

  private final Scope scope;

  StockReader(Scope scope) {
    this.scope = scope;
  }

  List<Lot> read(Yaml root) {
    List<Lot> lots = new ArrayList<>();
    Map<String, Lot> first = new TreeMap<>();
    for (Yaml item : items(root)) {
      Lot lot = lot(item);
      if (lot != null) {
        Lot earlier = first.putIfAbsent(lot.material(), lot);
        if (earlier != null && !earlier.bought().unit().isCompatible(lot.bought().unit())) {
          scope.error(
              lot.place(),
              Sentence.of(
                  "\"{0}\" was bought in {1} before, and now in {2}.",
                  lot.material(), name(earlier.bought()), name(lot.bought())),
              "Write both lots in units of one kind, or give them different words.");
        }
        lots.add(lot);
      }
    }
    return lots;
  }

  static String name(Quantity quantity) {
    String symbol = quantity.unit().symbol();
    return symbol.isEmpty() ? "pieces" : symbol;
  }

  private List<Yaml> items(Yaml root) {
    return new Fields(new Yaml.Mapping(List.of(), root.place()), scope, Label.NONE).items(root);
  }

  private @Nullable Lot lot(Yaml item) {
    Fields fields =
        Fields.of(
            item,
            scope,
            Label.NONE,
            "material",
            "title",
            "bought",
            "price",
            "supplier",
            "date",
            "hazards",
            "repair",
            "under");
    if (fields.require("material", "cedar_strip") == null
        | fields.require("bought", "60") == null) {
      return null;
    }
    Yaml.Scalar word = fields.scalar("material");
    Marked<Quantity> bought = fields.quantity("bought", Kind.ANY);
    if (word == null || bought == null) {
      return null;
    }
    String material = word.text();
    if (!material.matches("[a-z][a-z0-9_-]*")) {
      scope.error(
          word.place(),
          Sentence.of("\"{0}\" cannot be the word for a material.", material),
          "Write one word of small letters a to z, digits and _, such as cedar_strip.");
      return null;
    }
    if (bought.value().value().signum() <= 0) {
      scope.error(bought.place(), "Nothing was bought here.", "Write an amount above 0.");
      return null;
    }
    return new Lot(
        material,
        fields.text("title", LogReader.title(material)),
        bought.value(),
        fields.quantity("price", scope.money()),
        fields.marked("supplier"),
        fields.pastDate("date"),
        List.copyOf(fields.knownWords("hazards", HAZARDS, "a caution that is known here")),
        fields.text("repair", ""),
        fields.label(),
        fields.place());
  }
}
