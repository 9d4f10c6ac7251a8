package chinelog.publish;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import javax.imageio.ImageIO;

/**
 * A small log on disk with a mark of every kind. Two of one {@code open} seed differ only in what
 * everybody may not see; how they are laid down (order of the files, their times) differs too.
 */
final class SmallLog {

  private static final String[] SECRETS = {
    "x",
    "W".repeat(40),
    "Quillfeather ropewalk offcuts ".repeat(130),
    "тайна обводов Меррову",
    "秘密の図面です",
    "سر الخطوط كلها",
    "incomprehensibilities of the transom",
    "a hollow of four hairs below the batten"
  };

  private final Random open;
  private final Random secret;
  private final Map<String, byte[]> files = new LinkedHashMap<>();
  private final Map<String, String> more = new LinkedHashMap<>();

  SmallLog(long seed, long secretSeed) {
    this.open = new Random(seed);
    this.secret = new Random(secretSeed);
  }

  /** Adds lines to a file, such as a further fact. */
  SmallLog with(String file, String lines) {
    more.merge(file, lines, String::concat);
    return this;
  }

  private String hidden() {
    return SECRETS[secret.nextInt(SECRETS.length)] + " " + word();
  }

  private String word() {
    return "Q" + Long.toString(100_000 + secret.nextInt(900_000), 36) + "zk";
  }

  private void text(String name, String text) {
    files.put(name, (text + more.getOrDefault(name, "")).getBytes(StandardCharsets.UTF_8));
  }

  /** Writes it below a folder. */
  Path write(Path folder) throws IOException {
    String hiddenEntry = "2026-03-0" + (1 + secret.nextInt(9)) + "-" + word();
    text(
        "log.yaml",
        """
        title: Building Merrow
        subject: Merrow
        kind: harbour pilot launch
        scale: 1:16
        maker: Tern Lane Workshop
        client: {value: "%s", under: client}
        language: en-GB
        zone: Europe/London
        currency: GBP
        rate: {value: %d GBP/h, under: client}
        stages:
          moulds: {title: Moulds, hours: 9 h}
          planking: {title: Planking}
        agreements:
          lines: {with: "%s", covers: "%s", presence: note}
          client: {with: "%s", covers: "%s", presence: nothing}
        sheets: {under: lines}
        readers:
          public: {party-to: [], gets: [site, book]}
          workshop: {party-to: all, gets: [site]}
        releases:
          - {fact: full.draught, under: lines, by: "%s", on: 2026-03-01, words: "%s", for: [public]}
        limits:
          length: {title: Length, rule: hull.loa <= 36 in}
        handover:
          care: {title: Care, text: "%s", under: client}
        """
            .formatted(
                hidden(),
                20 + secret.nextInt(50),
                hidden(),
                hidden(),
                hidden(),
                hidden(),
                hidden(),
                hidden(),
                hidden()));
    text(
        "facts.yaml",
        """
        hull.loa: {is: 700 mm, title: Length}
        full.draught: {is: 0.87 m, under: lines}
        hull.depth: {is: %d.%d mm, under: lines, title: "%s"}
        """
            .formatted(100 + secret.nextInt(800), secret.nextInt(99), hidden()));
    text(
        "stock.yaml",
        """
        - {material: strip, title: Cedar strip, bought: 60, price: {value: %d.%02d GBP, under: client}}
        """
            .formatted(10 + secret.nextInt(80), secret.nextInt(99)));
    text(
        "tables/offsets.csv",
        "x [mm],half [mm]\n"
            + IntStream.range(0, 6)
                .mapToObj(i -> "%d,%d.5\n".formatted(100 * i, secret.nextInt(900)))
                .collect(Collectors.joining()));
    files.merge(
        "log.yaml",
        "tables:\n  offsets: {under: lines}\n".getBytes(StandardCharsets.UTF_8),
        SmallLog::join);
    entries(hiddenEntry);
    photos(hiddenEntry);
    lay(folder);
    return folder;
  }

  private void entries(String hiddenEntry) {
    text(
        "entries/2026-03-14-moulds.md",
        """
        ---
        title: The moulds go up %d
        stage: moulds
        time: 2 h
        used: {strip: 6}
        weighed: {hull: {is: %d g, under: lines}}
        ---
        We set the moulds up. She is [](fact:hull.loa) long and draws [](fact:full.draught); her depth is [](fact:hull.depth).

        A phrase: [%s]{under=lines} and one of which nothing shows: [%s]{under=client}.

        %s {under=lines}

        ## %s {under=client}

        %s

        ## Open again

        ![The moulds](../photos/b-open.jpg)
        """
            .formatted(
                open.nextInt(1000),
                100 + secret.nextInt(900),
                hidden(),
                hidden(),
                hidden(),
                hidden(),
                hidden()));
    text(
        "entries/" + hiddenEntry + ".md",
        """
        ---
        title: "%s"
        stage: planking
        time: %d min
        under: lines
        ---
        %s
        """
            .formatted(hidden(), 15 + secret.nextInt(400), hidden()));
    for (int i = secret.nextInt(3); i > 0; i--) {
      text(
          "entries/2026-03-1" + i + "-quiet.md",
          "---\ntitle: %s\nstage: moulds\nunder: client\n---\n%s\n".formatted(word(), hidden()));
    }
  }

  private void photos(String hiddenEntry) {
    byte[] region = jpeg(scene(open.nextInt(1000)));
    files.put("photos/a-region.jpg", region);
    files.put("photos/b-open.jpg", jpeg(open(open.nextInt(1000))));
    files.put("photos/z-" + word() + ".jpg", jpeg(noise(120 + secret.nextInt(80))));
    text(
        "photos/photos.yaml",
        """
        a-region.jpg:
          caption: The bench
          taken: 2026-03-14 10:00:00
          sha256: %s
          regions:
            - {box: [0.4, 0.4, 0.6, 0.6], under: lines}
        b-open.jpg:
          taken: 2026-03-14 12:00:00
        %s:
          caption: "%s"
          under: lines
        """
            .formatted(
                sha256(region),
                files.keySet().stream()
                    .filter(n -> n.startsWith("photos/z-"))
                    .findFirst()
                    .orElseThrow()
                    .substring("photos/".length()),
                hidden()));
  }

  /** A bench with a drawing on it, which is what may not be seen. */
  private BufferedImage scene(int seed) {
    BufferedImage image = open(seed);
    for (int y = 96; y < 144; y++) {
      for (int x = 128; x < 192; x++) {
        image.setRGB(x, y, secret.nextInt(1 << 24));
      }
    }
    return image;
  }

  private static BufferedImage open(int seed) {
    BufferedImage image = new BufferedImage(320, 240, BufferedImage.TYPE_INT_RGB);
    Graphics2D g = image.createGraphics();
    Random r = new Random(seed);
    for (int i = 0; i < 40; i++) {
      g.setColor(new Color(r.nextInt(1 << 24)));
      g.fillRect(r.nextInt(300), r.nextInt(220), 10 + r.nextInt(90), 10 + r.nextInt(70));
    }
    g.dispose();
    return image;
  }

  private BufferedImage noise(int size) {
    BufferedImage image = new BufferedImage(size, 90, BufferedImage.TYPE_INT_RGB);
    for (int y = 0; y < 90; y++) {
      for (int x = 0; x < size; x++) {
        image.setRGB(x, y, secret.nextInt(1 << 24));
      }
    }
    return image;
  }

  private static byte[] jpeg(BufferedImage image) {
    try {
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      ImageIO.write(image, "jpeg", out);
      return out.toByteArray();
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  private static String sha256(byte[] bytes) {
    try {
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }

  private static byte[] join(byte[] one, byte[] other) {
    byte[] both = java.util.Arrays.copyOf(one, one.length + other.length);
    System.arraycopy(other, 0, both, one.length, other.length);
    return both;
  }

  private void lay(Path folder) throws IOException {
    List<String> names = new ArrayList<>(files.keySet());
    Collections.shuffle(names, secret);
    for (String name : names) {
      Path file = folder.resolve(name);
      Files.createDirectories(file.getParent());
      Files.write(file, files.get(name));
      Files.setLastModifiedTime(
          file, FileTime.from(Instant.ofEpochSecond(1_700_000_000L + secret.nextInt(9_000_000))));
    }
  }
}
