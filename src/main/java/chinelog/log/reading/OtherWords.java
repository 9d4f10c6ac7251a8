package chinelog.log.reading;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** What makers write for a key who do not know its word, and what the key looks like in use. */
final class OtherWords {

  /** Keys, each with an example of its value. */
  private static final Map<String, String> EXAMPLES =
      Map.ofEntries(
          Map.entry("about", "A working model of the pilot launch."),
          Map.entry("address", "https://merrow.example/"),
          Map.entry("agreements", "{lines: {with: Skerrick Yard}}"),
          Map.entry("alt", "Strips in two red bands"),
          Map.entry("amount", "6"),
          Map.entry("bought", "60"),
          Map.entry("budgets", "{mass: 2.30 kg, cost: 260 GBP}"),
          Map.entry("caption", "The bundle"),
          Map.entry("client", "The harbour office"),
          Map.entry("clocks", "{T-20: 1 h 12 min}"),
          Map.entry("currency", "GBP"),
          Map.entry("date", "2026-03-14"),
          Map.entry("finish", "2026-04-08"),
          Map.entry("gets", "[site, book]"),
          Map.entry("chapters", "posts"),
          Map.entry("handover", "{care: Rinse and dry her.}"),
          Map.entry("hazards", "[dust]"),
          Map.entry("hero", "photos/T20_0412.jpg"),
          Map.entry("hours", "18 h"),
          Map.entry("is", "412 g"),
          Map.entry("kind", "harbour pilot launch"),
          Map.entry("language", "en-GB"),
          Map.entry("leave-out", "true"),
          Map.entry("licence", "All rights reserved"),
          Map.entry("limits", "{length: {rule: hull.loa <= 36 in}}"),
          Map.entry("maker", "Tern Lane Workshop"),
          Map.entry("material", "cedar_strip"),
          Map.entry("measured", "{hull.loa: 700 mm ± 1 mm}"),
          Map.entry("party-to", "[lines]"),
          Map.entry("patterns", "{paper: a4}"),
          Map.entry("price", "21.60 GBP"),
          Map.entry("printer", "{across: 99.6 mm, up: 100.2 mm}"),
          Map.entry("rate", "34 GBP/h"),
          Map.entry("readers", "{client: {title: The client, party-to: [lines]}}"),
          Map.entry("rule", "hull.loa <= 36 in"),
          Map.entry("scale", "1:16"),
          Map.entry("stage", "planking"),
          Map.entry("stages", "{planking: {title: Planking}}"),
          Map.entry("start", "2026-03-25"),
          Map.entry("subject", "Merrow"),
          Map.entry("supplier", "The timber loft"),
          Map.entry("taken", "2026-03-14 10:16:04"),
          Map.entry("tell", "{money: [client], client: [public, client]}"),
          Map.entry("theme", "chartroom"),
          Map.entry("time", "2 h 30 min"),
          Map.entry("title", "Planking"),
          Map.entry("under", "lines"),
          Map.entry("used", "{cedar_strip: 12, wood_glue: 30 mL}"),
          Map.entry("weighed", "{hull: 412 g}"),
          Map.entry("with", "Skerrick Yard"),
          Map.entry("zone", "Europe/London"));

  /** Keys in the order in which a word may stand for them, each with such words. */
  private static final Map<String, String> WORDS = new LinkedHashMap<>();

  static {
    words("under", "secret private confidential confidentiality nda restricted hidden hide");
    words("under", "withhold withheld agreement protected internal geheim vertraulich");
    words("agreements", "ndas nda confidential confidentiality secrets promises contracts");
    words("time", "hours hour hrs duration worked work spent minutes zeit stunden dauer");
    words("time", "arbeitszeit uren tijd heures temps horas tiempo");
    words("hours", "time duration work effort planned");
    words("taken", "time date when datetime");
    words("date", "day when datum tag fecha jour dag");
    words("stage", "phase step part section chapter category categories group");
    words("used", "material materials uses consumed parts stock verbraucht");
    words("measured", "measure measures measurement measurements size sizes dimensions");
    words("measured", "length gemessen");
    words("weighed", "weight weights weigh mass masses gewicht gewogen");
    words("subject", "name boat ship vessel prototype model");
    words("material", "name item what");
    words("title", "name heading headline header label");
    words("kind", "type class");
    words("maker", "author builder by owner modeller workshop");
    words("client", "customer kunde");
    words("language", "lang locale sprache");
    words("zone", "timezone time-zone tz");
    words("currency", "money");
    words("hero", "cover photo image picture");
    words("address", "url site website web homepage domain");
    words("licence", "license copyright rights");
    words("about", "description intro introduction summary story text notes");
    words("theme", "style design look layout colour colours color colors template");
    words("budgets", "budget plan planned targets estimate");
    words("stages", "phases steps parts sections chapters categories");
    words("readers", "audience audiences editions people groups users viewers");
    words("limits", "rules maximum constraints");
    words("rule", "limit max maximum");
    words("rate", "wage hourly hourly-rate");
    words("scale", "ratio");
    words("start", "begin begins from begun started");
    words("finish", "end ends until to done due deadline");
    words("party-to", "sees may-see can-see access allowed agreements knows");
    words("gets", "outputs output receives formats");
    words("with", "who whom partner party");
    words("caption", "text title description legend");
    words("alt", "alternative alttext");
    words("leave-out", "skip exclude ignore omit");
    words("amount", "quantity qty number count");
    words("bought", "quantity qty amount number count pieces");
    words("price", "cost costs paid");
    words("supplier", "shop source vendor dealer from");
    words("hazards", "hazard danger dangers warning warnings");
    words("is", "value amount figure");
  }

  /** Words that are no key of a note, but have their place. */
  private static final Map<String, String> OF_NOTES = new LinkedHashMap<>();

  static {
    note(
        "photo photos image images picture pictures foto fotos",
        "Show it in the text, on a line of its own: ![What is seen](../photos/T20_0412.jpg).");
    note(
        "tags tag keywords labels",
        "Remove it: notes are put in order by their stage, and the search finds every word.");
    note(
        "cost costs price paid money bought expenses",
        "Write what was bought, and its price, in stock.yaml; and here what was used of it.");
    note("author maker by", "Write it once, in log.yaml: \"maker: Tern Lane Workshop\".");
    note("caption alt", "Write it in photos.yaml beside the photograph, or between its [ and ].");
    note("client customer", "Write it once, in log.yaml: \"client: The harbour office\".");
    note(
        "weather temperature humidity notes text description",
        "Write it in the text, below the second line \"---\".");
  }

  private OtherWords() {}

  private static void words(String key, String more) {
    WORDS.merge(key, more, (a, b) -> a + " " + b);
  }

  private static void note(String words, String remedy) {
    for (String word : words.split(" ")) {
      OF_NOTES.put(word, remedy);
    }
  }

  /** The key that was most likely meant, of those known. */
  static Optional<String> findKey(String written, Collection<String> known) {
    String word = written.toLowerCase(Locale.ROOT).replace('_', '-');
    if (known.contains(word)) {
      return Optional.of(word);
    }
    return WORDS.entrySet().stream()
        .filter(e -> known.contains(e.getKey()) && List.of(e.getValue().split(" ")).contains(word))
        .map(Map.Entry::getKey)
        .findFirst();
  }

  /** What to do instead with a word that is no key, but is one of those expected in a note. */
  static Optional<String> findPlace(String written, Collection<String> known) {
    return known.contains("measured")
        ? Optional.ofNullable(OF_NOTES.get(written.toLowerCase(Locale.ROOT)))
        : Optional.empty();
  }

  /** The key with a value, such as {@code time: 2 h 30 min}; without one where none is at hand. */
  static String example(String key) {
    String value = EXAMPLES.get(key);
    return value == null ? key + ":" : key + ": " + value;
  }

  static boolean hasExample(String key) {
    return EXAMPLES.containsKey(key);
  }
}
