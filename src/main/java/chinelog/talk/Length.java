package chinelog.talk;

import chinelog.edition.Edition;
import chinelog.edition.Edition.Entry;
import chinelog.edition.Talk;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * How long an instalment takes.
 *
 * @param number of its post
 * @param folder its name below {@code talk}
 * @param ms in all
 * @param isRecorded whether that is the length of a recording
 * @param script tells its words from others
 * @param entries what each entry takes of it
 * @param frames what each frame shows, in words, with when it begins
 * @param hurried captions that stand too briefly to be read
 */
public record Length(
    int number,
    String title,
    String folder,
    long ms,
    boolean isRecorded,
    String script,
    List<Share> entries,
    List<Frame> frames,
    int hurried) {

  public Length {
    entries = List.copyOf(entries);
    frames = List.copyOf(frames);
  }

  /** What an entry takes. */
  public record Share(String entry, String title, long ms) {}

  /** When a frame begins. */
  public record Frame(long beginMs, String shows) {}

  /** Of every instalment of an edition; none for readers that get no talk. */
  public static List<Length> all(Edition edition) {
    Talk talk = edition.contents().talk();
    if (!talk.isTold()) {
      return List.of();
    }
    return new ScriptMaker(edition)
        .all().stream().map(i -> of(edition.contents(), i, talk)).toList();
  }

  private static Length of(Edition.Contents edition, Instalment instalment, Talk talk) {
    Timing timing = Timing.of(instalment, talk);
    List<Share> shares = new ArrayList<>();
    List<Frame> frames = new ArrayList<>();
    long[] lengths = new long[instalment.post().entries().size()];
    for (int i = 0; i < instalment.scenes().size(); i++) {
      Shot scene = instalment.scenes().get(i);
      Timing.Span span = timing.scenes().get(i);
      if (scene.entry() >= 0) {
        lengths[scene.entry()] += span.lengthMs();
      }
      frames.add(new Frame(span.beginMs(), shows(scene)));
    }
    List<String> ids = instalment.post().entries();
    for (int i = 0; i < lengths.length; i++) {
      String id = ids.get(i);
      String title =
          edition.entries().stream()
              .filter(e -> e.id().equals(id))
              .map(Entry::title)
              .findFirst()
              .orElse("");
      shares.add(new Share(id, title, lengths[i]));
    }
    int hurried =
        (int)
            CaptionFiles.captions(instalment, timing).stream()
                .filter(c -> new Caption(c.lines()).leastMs() > c.endMs() - c.beginMs() + 1)
                .count();
    return new Length(
        instalment.post().number(),
        instalment.post().title(),
        instalment.folder(),
        timing.endMs(),
        timing.isRecorded(),
        instalment.script(),
        shares,
        frames,
        hurried);
  }

  private static String shows(Shot scene) {
    if (scene.sight() instanceof FrameContent.Shot shot) {
      return "plate " + shot.plate().number();
    }
    if (scene.sight() instanceof FrameContent.Graph graph) {
      return "chart: " + graph.chart().title();
    }
    return scene.sight() instanceof FrameContent.Card card ? "card: " + card.title() : "table";
  }

  /** Minutes and seconds, such as {@code 7:58}. */
  public static String clock(long ms) {
    return CaptionFiles.clock(ms);
  }

  /**
   * Where this many instalments would begin that are as even as can be: places of entries, the
   * first of which is 0. Breaks lie between entries alone.
   */
  public List<Integer> breaks(int parts) {
    int n = entries.size();
    int most = Math.min(parts, n);
    double[][] cost = new double[most + 1][n + 1];
    int[][] from = new int[most + 1][n + 1];
    for (double[] row : cost) {
      Arrays.fill(row, Double.MAX_VALUE);
    }
    cost[0][0] = 0;
    for (int part = 1; part <= most; part++) {
      for (int end = part; end <= n; end++) {
        for (int start = part - 1; start < end; start++) {
          double length = entries.subList(start, end).stream().mapToLong(Share::ms).sum();
          double sum = cost[part - 1][start] + length * length;
          if (sum < cost[part][end]) {
            cost[part][end] = sum;
            from[part][end] = start;
          }
        }
      }
    }
    List<Integer> breaks = new ArrayList<>();
    int end = n;
    for (int part = most; part > 0; part--) {
      end = from[part][end];
      breaks.add(0, end);
    }
    return breaks;
  }
}
