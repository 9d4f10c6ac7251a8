package chinelog.cli;

import java.awt.Color;
import java.awt.GradientPaint;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;
import javax.imageio.ImageIO;

/**
 * A small sound log of the Merrow on disk, for tests to spoil: {@code
 * TinyLog.in(folder).note("stage: planking", "stage: plonking").run("check")}.
 */
final class TinyLog {

  static final String NOTE = "entries/2026-03-25-keel.md";
  static final String PHOTO = "photos/keel.png";

  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-06-01T10:00:00Z"), ZoneId.of("Europe/London"));

  /** What a question begins with, in the languages of a log. */
  static final String QUESTION = "(?:question|Frage|vraag|pregunta)";

  /** What a command printed, and its exit status. */
  record Said(int status, String out, String err) {}

  private final Path folder;

  private TinyLog(Path folder) {
    this.folder = folder;
  }

  static TinyLog in(Path folder) {
    TinyLog log = new TinyLog(folder);
    log.write(
        "log.yaml",
        """
        title: Building Merrow
        subject: Merrow
        scale: 1:16
        language: en-GB
        zone: Europe/London
        currency: GBP
        stages:
          planking: {title: Planking}
        agreements:
          lines: {with: Skerrick Yard, covers: the lines plan, from: 2026-03-02}
        readers:
          public: {title: Everybody, party-to: [], gets: [site]}
          workshop: {title: The workshop, party-to: all, gets: [site]}
        limits:
          length: {title: Length over all, rule: hull.loa <= 36 in}
        """);
    log.write(
        "facts.yaml",
        """
        full.loa: {is: 11.20 m ± 5 mm, title: Length over all}
        hull.loa: full.loa / scale
        """);
    log.write(
        "stock.yaml",
        """
        - material: cedar
          title: Cedar strip
          bought: 60
          price: 21.60 GBP
          date: 2026-03-10
        """);
    log.write("tables/offsets.csv", "station,half breadth [mm]\n0,10\n1,20\n2,30\n");
    log.write(
        NOTE,
        """
        ---
        title: The keel goes down
        stage: planking
        time: 09:10-12:40
        used: {cedar: 6}
        ---
        The keel lies straight.

        ![The keel on the board](../photos/keel.png)
        """);
    log.photo(PHOTO);
    return log;
  }

  /** An empty folder that the test fills itself. */
  static TinyLog empty(Path folder) {
    return new TinyLog(folder);
  }

  Path folder() {
    return folder;
  }

  Path path(String name) {
    return folder.resolve(name);
  }

  TinyLog write(String name, String text) {
    return write(name, text.getBytes(StandardCharsets.UTF_8));
  }

  TinyLog write(String name, byte[] bytes) {
    return with(
        () -> {
          Files.createDirectories(path(name).getParent());
          Files.write(path(name), bytes);
        });
  }

  TinyLog replace(String name, String old, String by) {
    String text = read(name);
    if (!text.contains(old)) {
      throw new IllegalArgumentException(name + " does not hold " + old);
    }
    return write(name, text.replace(old, by));
  }

  TinyLog remove(String name) {
    return with(() -> Files.delete(path(name)));
  }

  TinyLog move(String from, String to) {
    return with(
        () -> {
          Files.createDirectories(path(to).getParent());
          Files.move(path(from), path(to));
        });
  }

  /** A small picture, the same every time for the same name. */
  TinyLog photo(String name) {
    BufferedImage picture = new BufferedImage(48, 32, BufferedImage.TYPE_INT_RGB);
    Graphics2D g = picture.createGraphics();
    g.setPaint(
        new GradientPaint(0, 0, new Color(name.hashCode() & 0xFFFFFF), 48, 32, Color.LIGHT_GRAY));
    g.fillRect(0, 0, 48, 32);
    g.dispose();
    return with(
        () -> {
          Files.createDirectories(path(name).getParent());
          ImageIO.write(picture, name.endsWith("png") ? "png" : "jpg", path(name).toFile());
        });
  }

  /**
   * A photograph from a camera T-20 whose clock showed {@code taken}: EXIF 2.32, 4.6.2 and 4.6.5.
   */
  TinyLog photo(String name, LocalDateTime taken) {
    photo(name);
    byte[] jpeg = bytes(name);
    String time = DateTimeFormatter.ofPattern("uuuu:MM:dd HH:mm:ss", Locale.ROOT).format(taken);
    ByteBuffer app1 = ByteBuffer.allocate(76);
    app1.putShort((short) 0xFFE1).putShort((short) 74);
    app1.put("Exif\0\0MM\0*".getBytes(StandardCharsets.US_ASCII)).putInt(8);
    // Model (272) fits into its field; the time of the file (306) stands after the directory.
    app1.putShort((short) 2);
    app1.putShort((short) 272).putShort((short) 2).putInt(5).putInt(38);
    app1.putShort((short) 306).putShort((short) 2).putInt(20).putInt(44);
    app1.putInt(0).put("T-20\0\0".getBytes(StandardCharsets.US_ASCII));
    app1.put((time + "\0").getBytes(StandardCharsets.US_ASCII));
    ByteBuffer all = ByteBuffer.allocate(jpeg.length + app1.position());
    all.put(jpeg, 0, 2).put(app1.array(), 0, app1.position()).put(jpeg, 2, jpeg.length - 2);
    return write(name, all.array());
  }

  private byte[] bytes(String name) {
    try {
      return Files.readAllBytes(path(name));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  String read(String name) {
    try {
      return Files.readString(path(name));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Runs a command on this log: {@code run("publish", "--for", "public")}. */
  Said run(String command, String... more) {
    List<String> args = new ArrayList<>(List.of(command, folder.toString()));
    args.addAll(List.of(more));
    return say(args.toArray(String[]::new));
  }

  /** Runs the whole program. */
  static Said say(String... args) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    Terminal talk = new Terminal(new PrintWriter(out, true), new PrintWriter(err, true), false);
    int status = Main.run(args, talk, CLOCK);
    return new Said(status, out.toString(), err.toString());
  }

  /** Every file of the folder with its bytes, as one character each. */
  SortedMap<String, String> everything() {
    SortedMap<String, String> all = new TreeMap<>();
    try (Stream<Path> walk = Files.walk(folder)) {
      for (Path file : walk.filter(Files::isRegularFile).toList()) {
        all.put(
            folder.relativize(file).toString(),
            new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return all;
  }

  /** Something done to the file system. */
  interface Deed {
    void run() throws IOException;
  }

  TinyLog with(Deed deed) {
    try {
      deed.run();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return this;
  }
}
