package chinelog.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Logs in which everything is marked that should be, written as makers write: on the average at
 * most one question in ten notes, and a name of everyday words can be published.
 */
@Timeout(300)
@Order(2)
class NeedlessQuestionsTest {

  private static final int LOGS = Integer.getInteger("chinelog.quiet-logs", 50);
  private static final int NOTES = 10;

  /** Of so many logs one is published, too. */
  private static final int PUBLISHED = Integer.getInteger("chinelog.quiet-published", 10);

  private static final int PUBLISHED_PARTIES = Integer.getInteger("chinelog.quiet-parties", 6);

  private static final String[] PARTIES = {
    "White & Daughters",
    "Brown Brothers",
    "Green's Yard",
    "Black and Sons",
    "Grey Heron Models",
    "The Boat House",
    "North Quay Marine",
    "Harbour Office",
    "Old Mill Trust",
    "Long & Short",
    "Skerrick Yard",
    "Ravel Sound Pilotage Office",
    "Stone Bridge Museum",
    "Swift Models",
    "Carpenter & Daughter",
    "Young Sailors' Club",
    "Bell Rock Society",
    "May Fisher",
    "June Carter",
    "Redwood Craft",
    "Silver Line Ferries",
    "Marsh & Field",
    "King's Dock Company",
    "Good Wood",
    "Best Lines",
    "Clear Water Board",
    "Hand and Eye",
    "Sharp & Fine",
    "Fair Wind Charter",
    "Tide Mill Press"
  };

  private static final String[] SENTENCES = {
    "White primer went on in two thin coats, and the green after it.",
    "The old boat in the harbour has a sheer like this one, only longer.",
    "I cut N strips and kept the best of them for the bow.",
    "The clamp held for N minutes before the glue took.",
    "Rain all day, so the shop was warm and the varnish slow.",
    "A good eye is worth more than a long board.",
    "Sanding took N minutes a side with fine paper.",
    "The dowel is N mm thick and fits its hole.",
    "A scrap of brown paper, N mm wide, made the pattern.",
    "Each pin stands N mm from the next.",
    "The kettle boiled twice; the plank did not care.",
    "It weighs N g with the tape still on.",
    "A young man in the office asked whether she floats.",
    "The office sent a letter about parking at the quay.",
    "The first coat used N mL of resin.",
    "Long and short strips lie in different boxes now.",
    "The mill down the road sells oak by the foot.",
    "In May the light is better, and in June too good.",
    "The black line at the waterline is struck with a pencil.",
    "I spent £N on sandpaper and do not regret it.",
    "The bench is N cm wide, which is too little.",
    "Fair is what the finger says is fair.",
    "A second pair of hands would have helped with the deck.",
    "The brush lost a hair, which is in the port side for good.",
    "N of the pegs are broken and the rest are lost.",
    "The north wall of the shop is damp again.",
    "Merrow sat in her cradle and said nothing.",
    "On the N of the month the parcel came.",
    "The silver solder ran where it should, at the third try.",
    "She is fine forward and full aft, as a working boat should be."
  };

  @TempDir private Path folder;

  @Test
  void makersAreAskedLittle() throws IOException {
    int questions = 0;
    StringBuilder asked = new StringBuilder();
    for (int seed = 0; seed < LOGS; seed++) {
      Path place = Files.createDirectory(folder.resolve("log" + seed));
      TinyLog log = log(place, new Random(seed));
      TinyLog.Said said = log.run("check");
      assertThat(said.err()).doesNotContain(": error: ");
      String[] found =
          said.err().lines().filter(l -> l.contains(": question: ")).toArray(String[]::new);
      questions += found.length;
      asked.append(String.join("\n", found)).append('\n');
      if (seed % PUBLISHED == 0 && found.length == 0) {
        TinyLog.Said published = log.run("publish", "--for", "public");
        assertThat(published.status()).as(published.err()).isEqualTo(Main.DONE);
      }
    }
    assertThat(questions).as(asked.toString()).isLessThanOrEqualTo(LOGS * NOTES / 10);
  }

  @ParameterizedTest
  @ValueSource(
      ints = {
        0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20, 21, 22, 23, 24,
        25, 26, 27, 28, 29
      })
  void aPartyOfAnyNameCanPublish(int party) throws IOException {
    TinyLog log = log(folder, new Random(7), PARTIES[party]);
    TinyLog.Said said = log.run("check");
    assertThat(said.err()).as(PARTIES[party]).doesNotContain("may name");
    if (party % PUBLISHED_PARTIES == 0) {
      TinyLog.Said published = log.run("publish", "--for", "public");
      assertThat(published.err()).as(PARTIES[party]).doesNotContain("the other party");
    }
  }

  private TinyLog log(Path place, Random random) {
    return log(place, random, PARTIES[random.nextInt(PARTIES.length)]);
  }

  private TinyLog log(Path place, Random random, String party) {
    TinyLog log = TinyLog.in(place);
    log.write(
        "log.yaml",
        """
        title: Building Merrow
        subject: Merrow
        maker: Tern Lane Workshop
        scale: 1:16
        language: en-GB
        zone: Europe/London
        currency: GBP
        sheets: {under: lines}
        agreements:
          lines: {with: "PARTY", covers: the lines plan, until: never}
        readers:
          public: {title: Everybody, party-to: [], gets: [site]}
          workshop: {title: The workshop, party-to: all, gets: [site]}
        """
            .replace("PARTY", party));
    StringBuilder facts = new StringBuilder("full.loa: {is: 11.20 m, title: Length over all}\n");
    String[] secrets = {"beam", "draught", "freeboard", "depth", "rake", "sheer", "tumblehome"};
    for (String name : secrets) {
      facts.append(
          String.format(
              Locale.ROOT,
              "full.%s: {is: %.2f m, title: %s, under: lines}%nhull.%s: full.%s / scale%n",
              name,
              0.4 + random.nextInt(300) / 100.0,
              name,
              name,
              name));
    }
    facts.append("hull.volume: {is: ").append(1800 + random.nextInt(900));
    facts.append(" cm³, title: Volume, under: lines}\n");
    log.write("facts.yaml", facts.toString());
    for (int i = 0; i < NOTES; i++) {
      StringBuilder note = new StringBuilder("---\ntitle: Day " + i + "\n");
      note.append("weighed:\n  part_").append(i).append(": {is: ");
      note.append(20 + random.nextInt(300)).append(" g, title: Part ").append(i).append("}\n---\n");
      for (int s = 0; s < 6; s++) {
        String sentence = SENTENCES[random.nextInt(SENTENCES.length)];
        note.append(sentence.replaceAll("\\bN\\b", String.valueOf(2 + random.nextInt(60))))
            .append(' ');
      }
      note.append("\n\n## Off the sheet {under=lines}\n\nThe sections were read off one by one.\n");
      log.write("entries/2026-04-" + (10 + i) + "-day.md", note.toString());
    }
    return log;
  }
}
