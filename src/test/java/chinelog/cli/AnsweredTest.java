package chinelog.cli;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.cli.TinyLog.Said;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * Whatever stops the publishing of what the maker wrote openly is a question that has an answer:
 * who lets all of it stand can publish.
 */
@Timeout(600)
class AnsweredTest {

  private static final Pattern ANSWER = Pattern.compile("- \\{questions: \\[.*?\\}");

  private static final int LOGS = Integer.getInteger("chinelog.answered-logs", 1);

  @TempDir private Path folder;

  @Test
  void whatMayStandIsPublished() {
    List<String> refused = new ArrayList<>();
    for (int i = 0; i < LOGS; i++) {
      CarelessLog log = CarelessLog.in(folder.resolve("log" + i), 700 + i);
      String words = String.join(" ", List.of(log.kept.split(" ")).subList(2, 9));
      log.typed(log.kept);
      log.typed("V " + words + " W.");
      log.typed(log.yard + ", " + log.client + ".");
      for (String part : (log.yard + " " + log.client).split("[ &]+")) {
        log.typed(log.daily().replaceFirst("[.]$", " ") + part + " x.");
      }
      log.typed(log.number + " " + log.number(log.beamMetres, 2) + " m, \u00a3" + log.quoted + ".");
      log.typed(log.number(log.draughtMillimetres, 1) + " mm");
      log.typed(log.volumeCubicCentimetres + " cm\u00b3");
      log.log.replace("photos/photos.yaml", "caption: O", "caption: \"" + log.phrase + "\"");
      Said said = log.log.run("publish", "--for", "public");
      assertThat(said.status()).isEqualTo(Main.PROBLEMS);
      log.log.write("answers.yaml", answers(said));
      Said answered = log.log.run("publish", "--for", "public");
      if (answered.status() != Main.DONE) {
        refused.add(i + ": " + answered.status() + " " + answered.out() + answered.err());
      }
    }
    assertThat(refused).isEmpty();
  }

  /** Nothing but the audit minds the title of a withheld figure. */
  @Test
  void anAnswerToWhatTheAuditWouldFindIsVoidWhenTheTextChanges() {
    CarelessLog log = CarelessLog.in(folder.resolve("log"), 700);
    log.log.replace("facts.yaml", "title: Draught", "title: Width across the aftermost thwart");
    log.typed("Zwieback: the width across the aftermost thwart.");

    Said said = log.log.run("check");
    assertThat(said.err())
        .containsPattern(TinyLog.QUESTION + ": .*Zwieback: the width")
        .contains("[a");
    assertThat(said.status()).isEqualTo(Main.PROBLEMS);
    assertThat(log.log.run("publish", "--for", "public").status()).isEqualTo(Main.PROBLEMS);

    log.log.write("answers.yaml", answers(said));
    assertThat(log.log.run("check").err())
        .doesNotContainPattern(TinyLog.QUESTION + ": ")
        .doesNotContain("answers.yaml");
    assertThat(log.log.run("publish", "--for", "public").status()).isEqualTo(Main.DONE);
    assertThat(log.log.run("audit", "--for", "public").status()).isEqualTo(Main.DONE);

    log.log.replace(log.openNote, "Zwieback: the", "Zwieback and the");
    assertThat(log.log.run("publish", "--for", "public").status()).isEqualTo(Main.PROBLEMS);
  }

  private static String answers(Said said) {
    StringBuilder answers = new StringBuilder();
    Matcher m = ANSWER.matcher(said.err());
    while (m.find()) {
      answers.append(m.group().replace("\u2026", "It may")).append('\n');
    }
    return answers.toString();
  }
}
