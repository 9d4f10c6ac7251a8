package chinelog.talk;

import chinelog.problem.Place;
import chinelog.problem.ProblemException;
import java.io.BufferedInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.UnsupportedAudioFileException;

/**
 * A recorded voice: where it pauses, and which pauses stand between the frames of an instalment.
 *
 * @param lengthMs in all
 * @param pauses in their order
 */
public record Recording(long lengthMs, List<Pause> pauses) {

  private static final int STEP_MS = 20;

  /** What is shorter is a breath within a sentence. */
  private static final int LEAST_MS = 260;

  /** So far from the quiet to the loud, in decibels, a voice begins. */
  private static final double VOICE = 0.35;

  private static final double LEAST_RANGE_DB = 12;
  private static final double SILENCE_DB = -96;

  /** A frame changes so long before the voice goes on. */
  private static final long AHEAD_MS = 200;

  /** What a longer pause counts for, against the square of a second off. */
  private static final double LONG_PAUSE = 1.5;

  private static final double MOST_PAUSE_S = 2;

  public Recording {
    pauses = List.copyOf(pauses);
  }

  /** Nobody speaks. */
  public record Pause(long beginMs, long endMs) {}

  /**
   * Listens to a recording.
   *
   * @throws ProblemException if it is none that can be read, or nothing is said in it
   */
  public static Recording listen(Path wav) throws IOException {
    try (InputStream file = new BufferedInputStream(Files.newInputStream(wav));
        AudioInputStream sound = AudioSystem.getAudioInputStream(file)) {
      AudioFormat own = sound.getFormat();
      AudioFormat plain =
          new AudioFormat(
              AudioFormat.Encoding.PCM_SIGNED,
              own.getSampleRate(),
              16,
              own.getChannels(),
              2 * own.getChannels(),
              own.getSampleRate(),
              false);
      try (AudioInputStream samples = AudioSystem.getAudioInputStream(plain, sound)) {
        return of(levels(samples, plain), wav);
      }
    } catch (UnsupportedAudioFileException | IllegalArgumentException | EOFException e) {
      throw new ProblemException(
          Place.of(wav.toString()),
          "This is not a recording that can be read.",
          "Save it as WAV (PCM, 16 or 24 bits), and name that file.",
          e);
    }
  }

  /** The loudness of each step, in decibels below the loudest there can be. */
  private static List<Double> levels(AudioInputStream samples, AudioFormat format)
      throws IOException {
    int frames = Math.max(1, Math.round(format.getSampleRate() * STEP_MS / 1000));
    byte[] step = new byte[frames * format.getFrameSize()];
    List<Double> levels = new ArrayList<>();
    int read = samples.readNBytes(step, 0, step.length);
    while (read == step.length) {
      double sum = 0;
      for (int i = 0; i < step.length; i += 2) {
        double sample = (short) (step[i] & 0xFF | step[i + 1] << 8) / 32768.0;
        sum += sample * sample;
      }
      double power = sum / (step.length / 2.0);
      levels.add(power <= 0 ? SILENCE_DB : Math.max(SILENCE_DB, 10 * Math.log10(power)));
      read = samples.readNBytes(step, 0, step.length);
    }
    return levels;
  }

  private static Recording of(List<Double> levels, Path wav) throws ProblemException {
    double[] sorted = levels.stream().mapToDouble(d -> d).sorted().toArray();
    double quiet = sorted.length == 0 ? 0 : sorted[sorted.length / 20];
    double loud = sorted.length == 0 ? 0 : sorted[sorted.length * 9 / 10];
    if (loud - quiet < LEAST_RANGE_DB) {
      throw new ProblemException(
          Place.of(wav.toString()),
          "No voice can be told from silence in this recording.",
          "Name the recording of the voice alone, without music below it.");
    }
    double voice = quiet + VOICE * (loud - quiet);
    List<Pause> pauses = new ArrayList<>();
    int from = -1;
    for (int i = 0; i <= levels.size(); i++) {
      boolean isQuiet = i < levels.size() && levels.get(i) < voice;
      if (isQuiet && from < 0) {
        from = i;
      } else if (!isQuiet && from >= 0) {
        if ((i - from) * STEP_MS >= LEAST_MS) {
          pauses.add(new Pause((long) from * STEP_MS, (long) i * STEP_MS));
        }
        from = -1;
      }
    }
    return new Recording((long) levels.size() * STEP_MS, pauses);
  }

  /**
   * When each frame most likely begins: at the pauses that part the recording most nearly as the
   * plan does, long ones before short ones.
   *
   * @param planned when they begin by the plan, in ms, and at last when it ends
   * @return in ms, as many as there are frames
   */
  public List<Long> propose(List<Long> planned) {
    int frames = planned.size() - 1;
    List<Pause> inner = pauses.stream().filter(p -> p.beginMs > 0 && p.endMs < lengthMs).toList();
    if (inner.size() < frames - 1) {
      return evenly(planned);
    }
    double scale = (double) lengthMs / planned.get(frames);
    int n = inner.size();
    double[][] cost = new double[frames][n];
    int[][] before = new int[frames][n];
    for (int f = 1; f < frames; f++) {
      Arrays.fill(cost[f], Double.MAX_VALUE);
      double wanted = (planned.get(f) - planned.get(f - 1)) * scale / 1000;
      for (int p = f - 1; p < n; p++) {
        for (int q = f == 1 ? -1 : f - 2; q < (f == 1 ? 0 : p); q++) {
          double earlier = q < 0 ? 0 : cost[f - 1][q];
          double length = (inner.get(p).endMs - (q < 0 ? 0 : inner.get(q).endMs)) / 1000.0;
          double sum = earlier + (length - wanted) * (length - wanted) / wanted;
          if (earlier < Double.MAX_VALUE && sum < cost[f][p]) {
            cost[f][p] = sum;
            before[f][p] = q;
          }
        }
        double pause = (inner.get(p).endMs - inner.get(p).beginMs) / 1000.0;
        if (cost[f][p] < Double.MAX_VALUE) {
          cost[f][p] -= LONG_PAUSE * Math.min(MOST_PAUSE_S, pause);
        }
      }
    }
    return traced(planned, inner, cost, before, scale);
  }

  private List<Long> traced(
      List<Long> planned, List<Pause> inner, double[][] cost, int[][] before, double scale) {
    int frames = planned.size() - 1;
    List<Long> begins = new ArrayList<>();
    if (frames > 1) {
      double last = (planned.get(frames) - planned.get(frames - 1)) * scale / 1000;
      int best = -1;
      double least = Double.MAX_VALUE;
      for (int p = frames - 2; p < inner.size(); p++) {
        double length = (lengthMs - inner.get(p).endMs) / 1000.0;
        double sum = cost[frames - 1][p] + (length - last) * (length - last) / last;
        if (cost[frames - 1][p] < Double.MAX_VALUE && sum < least) {
          least = sum;
          best = p;
        }
      }
      for (int f = frames - 1; f > 0; f--) {
        Pause pause = inner.get(best);
        begins.add(0, Math.max(pause.beginMs, pause.endMs - AHEAD_MS));
        best = before[f][best];
      }
    }
    begins.add(0, 0L);
    return begins;
  }

  /** As the plan has it, stretched to the recording. */
  private List<Long> evenly(List<Long> planned) {
    long all = planned.get(planned.size() - 1);
    return planned.subList(0, planned.size() - 1).stream().map(p -> p * lengthMs / all).toList();
  }
}
