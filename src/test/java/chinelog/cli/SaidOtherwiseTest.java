package chinelog.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * What is withheld, said in a roundabout way: by first letters, a number to ring, a day, feet and
 * inches and eighths, a ratio, a half in words.
 */
class SaidOtherwiseTest {

  private static final Map<String, List<String>> SAID = new LinkedHashMap<>();

  static {
    SAID.put(
        "en-GB",
        List.of(
            "M. E. came by.",
            "M.E. wants it by June.",
            "Ask ME about it.",
            "Ring 01595 555 0142.",
            "Ring +44 (0)1595 5550142.",
            "Ring 0044-1595-5550142.",
            "Ordered on March 14th.",
            "Ordered on 14/3/26.",
            "Ordered 2026-03-14.",
            "Her air draught is 2-7-4.",
            "Air draught two foot seven and a half.",
            "She displaces three and a half tonnes.",
            "It cost 4.25k.",
            "It cost four and a quarter thousand.",
            "Beam to length is 0.267.",
            "The beam is 26.7 % of the length.",
            "She is 3.75 times as long as she is broad.",
            "Hull number 1174 is the one."));
    SAID.put(
        "de",
        List.of(
            "M. E. kam vorbei.",
            "Tel. 01595/5550142.",
            "Bestellt am 14. März.",
            "Sie verdrängt dreieinhalb Tonnen.",
            "Sie zahlt 4,25 tausend.",
            "Das Verhältnis von Breite zu Länge ist 0,267."));
    SAID.put(
        "nl",
        List.of(
            "M.E. kwam langs.",
            "Besteld op 14-3-2026.",
            "Ze verplaatst drieënhalve ton.",
            "Breedte op lengte is 0,267."));
    SAID.put(
        "fr",
        List.of(
            "M. E. est passée.",
            "Tél. 01595 55 50 142.",
            "Commandé le 14 mars.",
            "Le rapport largeur sur longueur est 0,267."));
    SAID.put(
        "es",
        List.of(
            "M. E. pasó por aquí.",
            "Encargado el 14/3/2026.",
            "La relación entre manga y eslora es 0,267."));
  }

  @TempDir private Path folder;

  private TinyLog log(String language) {
    TinyLog log =
        TinyLog.in(folder.resolve(language))
            .replace("log.yaml", "language: en-GB", "language: " + language)
            .replace(
                "log.yaml",
                "readers:",
                "  owner: {with: Margaret Elford, covers: the order, until: never}\nreaders:");
    return log.write(
            "facts.yaml",
            log.read("facts.yaml")
                + """
                full.beam: {is: 2.99 m, title: Beam, under: lines}
                full.displacement: {is: 3480 kg, title: Displacement, under: lines}
                full.air_draught: {is: 2 ft 7 1/2 in, title: Air draught, under: lines}
                quote: {is: 4250 GBP, title: Price quoted, under: owner}
                hull.number: {is: 1174, title: Hull number, under: lines}
                """)
        .write(
            "entries/2026-03-20-yard.md",
            "---\ntitle: At the yard\nunder: owner\n---\n"
                + "She (+44 1595 555 0142) ordered on 14 March 2026 and pays in two parts.\n");
  }

  @Test
  void isAskedAbout() {
    List<String> silent = new ArrayList<>();
    SAID.forEach(
        (language, sentences) -> {
          TinyLog log = log(language);
          for (int i = 0; i < sentences.size(); i++) {
            String text = "# X\n\n" + sentences.get(i) + "\n";
            log.write(String.format("entries/2026-04-%02d-day.md", i + 1), text);
          }
          String said =
              log.run("check")
                  .err()
                  .lines()
                  .filter(line -> line.matches(".*: " + TinyLog.QUESTION + ".*"))
                  .collect(Collectors.joining());
          for (int i = 0; i < sentences.size(); i++) {
            String note = String.format("entries/2026-04-%02d-day.md:3:", i + 1);
            if (!said.contains(note)) {
              silent.add(sentences.get(i));
            }
          }
        });
    assertThat(silent).isEmpty();
  }

  @Test
  void whatOnlySoundsLikeItIsNot() {
    TinyLog log = log("en-GB");
    List<String> plain =
        List.of(
            "I stroked it a hundred times, and OK.",
            "One hundred parts to forty, by mass.",
            "The UV lamp and the AC adapter are by the bench.",
            "Ordered glue on 15 March.",
            "Ring 01595 555 9999 for glue.",
            "Three and a half hours of sanding, 4k grit.",
            "The strip is 0.267 of a plank.");
    for (int i = 0; i < plain.size(); i++) {
      log.write(
          String.format("entries/2026-04-%02d-day.md", i + 1), "# X\n\n" + plain.get(i) + "\n");
    }
    assertThat(log.run("check").err()).doesNotContain("question");
  }
}
