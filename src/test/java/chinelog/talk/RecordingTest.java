package chinelog.talk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import chinelog.problem.ProblemException;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import javax.sound.sampled.AudioFileFormat;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RecordingTest {

  private static final int RATE = 8000;

  @TempDir Path folder;

  /** A hum that stands for a voice, with a little noise throughout. */
  private Path wav(String name, double seconds, List<double[]> spoken, int channels)
      throws IOException {
    Random noise = new Random(1);
    byte[] bytes = new byte[(int) (seconds * RATE) * 2 * channels];
    for (int i = 0; i < bytes.length / 2; i++) {
      double at = i / channels / (double) RATE;
      boolean isSpoken = spoken.stream().anyMatch(s -> at >= s[0] && at < s[1]);
      int sample = noise.nextInt(60) - 30 + (isSpoken ? (int) (9000 * Math.sin(i * 0.4)) : 0);
      bytes[2 * i] = (byte) sample;
      bytes[2 * i + 1] = (byte) (sample >> 8);
    }
    Path file = folder.resolve(name);
    AudioFormat format = new AudioFormat(RATE, 16, channels, true, false);
    AudioSystem.write(
        new AudioInputStream(
            new ByteArrayInputStream(bytes), format, bytes.length / format.getFrameSize()),
        AudioFileFormat.Type.WAVE,
        file.toFile());
    return file;
  }

  @Test
  void pausesAreHeardWhereNobodySpeaks() throws IOException {
    for (int channels = 1; channels <= 2; channels++) {
      Recording heard =
          Recording.listen(
              wav(
                  "a" + channels,
                  10,
                  List.of(new double[] {1, 4}, new double[] {5.5, 9}),
                  channels));
      assertThat(heard.lengthMs()).isEqualTo(10_000);
      assertThat(heard.pauses()).hasSize(3);
      assertThat(heard.pauses().get(1).beginMs()).isBetween(3980L, 4040L);
      assertThat(heard.pauses().get(1).endMs()).isBetween(5460L, 5520L);
    }
  }

  /** Sentences of unlike length, faster and slower than planned, between shorter pauses. */
  @Test
  void marksAreProposedAtThePausesThatThePlanMeans() throws IOException {
    Random random = new Random(7);
    List<double[]> spoken = new ArrayList<>();
    List<Long> planned = new ArrayList<>();
    List<Double> begins = new ArrayList<>();
    double at = 0.3;
    long plan = 0;
    for (int scene = 0; scene < 6; scene++) {
      planned.add(plan);
      begins.add(at);
      double pace = 0.85 + 0.3 * random.nextDouble();
      for (int sentence = 0; sentence < 3; sentence++) {
        double length = 1.5 + 4 * random.nextDouble();
        spoken.add(new double[] {at, at + length * pace});
        at += length * pace + (sentence == 2 ? 1.2 : 0.5);
        plan += (long) (length * 1000) + (sentence == 2 ? 1000 : 400);
      }
    }
    planned.add(plan);
    List<Long> marks = Recording.listen(wav("b", at, spoken, 1)).propose(planned);
    assertThat(marks).hasSize(6).isSorted();
    assertThat(marks.get(0)).isZero();
    for (int i = 1; i < marks.size(); i++) {
      assertThat(marks.get(i))
          .isBetween(Math.round(begins.get(i) * 1000) - 300, Math.round(begins.get(i) * 1000));
    }
  }

  @Test
  void tooFewPausesGiveMarksByThePlan() throws IOException {
    Recording heard = Recording.listen(wav("c", 8, List.of(new double[] {0.5, 7.5}), 1));
    assertThat(heard.propose(List.of(0L, 2000L, 3000L, 4000L))).containsExactly(0L, 4000L, 6000L);
  }

  @Test
  void whatIsNoRecordingIsRefusedInWords() throws IOException {
    Path text = Files.writeString(folder.resolve("d.wav"), "This is not sound.");
    Path empty = Files.createFile(folder.resolve("e.wav"));
    Path silent = wav("f.wav", 3, List.of(), 1);
    assertThatThrownBy(() -> Recording.listen(text))
        .isInstanceOf(ProblemException.class)
        .hasMessageContaining("not a recording that can be read");
    assertThatThrownBy(() -> Recording.listen(empty)).isInstanceOf(ProblemException.class);
    assertThatThrownBy(() -> Recording.listen(silent))
        .isInstanceOf(ProblemException.class)
        .hasMessageContaining("No voice can be told from silence");
  }
}
