package chinelog.cli;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.QuadCurve2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.stream.Stream;
import javax.imageio.ImageIO;

/**
 * A random log in which everything is marked that should be, in one of five languages: withheld
 * notes, sections and phrases, figures, prices, two parties, a sheet, and a photograph. {@link
 * Slip} then does to it what people do.
 */
final class CarelessLog {

  static final List<String> LANGUAGES = List.of("en-GB", "de-DE", "nl-NL", "fr-FR", "es-ES");

  private static final String[] YARDS = {
    "Skerrick Yard", "Tamsin Ferrow", "Oldcastle & Brody", "Hythe Slipway Company",
    "Brannock Drawing Office", "Corvane Naval Design", "Wexley and Thorne", "Ludlam Boatbuilders"
  };

  private static final String[] CLIENTS = {
    "Ravel Sound Pilotage Office", "Museum of Port Arkle", "Sir Hector Quillan",
    "Lantern Bay Trust", "Ottoline Marsden", "Kestrel Ferry Group"
  };

  /** What nobody minds, in each language. */
  private static final String[][] DAILY = {
    {
      "The glue took all day and the shop was cold.",
      "Two clamps slipped, and I swept the floor twice.",
      "The strips lie better when they are damp.",
      "Tea, a sharp blade and a quiet evening."
    },
    {
      "Der Leim brauchte den ganzen Tag, und es war kalt.",
      "Zwei Zwingen rutschten ab; ich habe zweimal gefegt.",
      "Feucht legen sich die Leisten besser.",
      "Tee, eine scharfe Klinge und ein ruhiger Abend."
    },
    {
      "De lijm had de hele dag nodig en het was koud.",
      "Twee klemmen gleden weg; ik heb twee keer geveegd.",
      "Vochtig liggen de latten beter.",
      "Thee, een scherp mes en een rustige avond."
    },
    {
      "La colle a mis la journée et il faisait froid.",
      "Deux serre-joints ont glissé; j'ai balayé deux fois.",
      "Humides, les lattes se posent mieux.",
      "Du thé, une lame neuve et une soirée calme."
    },
    {
      "La cola tardó todo el día y hacía frío.",
      "Dos sargentos resbalaron; barrí dos veces.",
      "Húmedos, los listones asientan mejor.",
      "Té, una hoja nueva y una tarde tranquila."
    }
  };

  /** What a note under the agreement says; figure and name go in. */
  private static final String[][] KEPT = {
    {
      "The forefoot is hollowed out like a spoon, and the keel rises in one long curve to the heel.",
      "Between the second and the third frame the bilge turns far harder than anybody would guess."
    },
    {
      "Der Vorfuß ist ausgehöhlt wie ein Löffel, und der Kiel steigt in langem Bogen zur Hacke.",
      "Zwischen dem zweiten und dem dritten Spant biegt sich die Kimm viel härter als man denkt."
    },
    {
      "De voorvoet is uitgehold als een lepel, en de kiel stijgt in een lange bocht naar de hak.",
      "Tussen het tweede en het derde spant buigt de kim veel scherper dan iemand zou raden."
    },
    {
      "Le brion est creusé comme une cuiller, et la quille monte en longue courbe vers le talon.",
      "Entre le deuxième et le troisième couple le bouchain tourne bien plus fort qu'on ne croit."
    },
    {
      "El pie de roda está vaciado como una cuchara, y la quilla sube en larga curva hasta el talón.",
      "Entre la segunda y la tercera cuaderna el pantoque gira mucho más de lo que nadie creería."
    }
  };

  final TinyLog log;
  final Random random;
  final int language;
  final String yard;
  final String client;
  final String number;
  final String kept;
  final String phrase;
  final double beamMetres;
  final double draughtMillimetres;
  final int volumeCubicCentimetres;
  final int quoted;

  /** The second column of the withheld table. */
  final List<String> heights = new ArrayList<>();

  final String openNote = "entries/2026-03-25-open.md";
  final String keptNote = "entries/2026-03-20-kept.md";

  private CarelessLog(Path folder, Random random) {
    this.log = TinyLog.empty(folder);
    this.random = random;
    this.language = random.nextInt(LANGUAGES.size());
    this.yard = one(YARDS);
    this.client = one(CLIENTS);
    this.number =
        ""
            + (char) ('A' + random.nextInt(26))
            + (char) ('A' + random.nextInt(26))
            + "-"
            + (1101 + random.nextInt(8000))
            + "/"
            + (2 + random.nextInt(7));
    this.kept = KEPT[language][random.nextInt(2)];
    this.phrase = KEPT[language][kept.equals(KEPT[language][0]) ? 1 : 0];
    this.beamMetres = (2111 + random.nextInt(1800)) / 1000.0;
    this.draughtMillimetres = 41.3 + random.nextInt(300) / 10.0;
    this.volumeCubicCentimetres = 1811 + random.nextInt(1500);
    this.quoted = 2113 + random.nextInt(4000);
  }

  /** Lays one down. */
  static CarelessLog in(Path folder, long number) {
    CarelessLog careless = new CarelessLog(folder, new Random(number));
    careless.lay();
    return careless;
  }

  /** The same log in another folder, to which another slip is done. */
  CarelessLog copied(Path to, long number) {
    Random other = new Random(number);
    return new CarelessLog(this, to, other);
  }

  private CarelessLog(CarelessLog of, Path to, Random random) {
    this.log = TinyLog.empty(to);
    this.random = random;
    this.language = of.language;
    this.yard = of.yard;
    this.client = of.client;
    this.number = of.number;
    this.kept = of.kept;
    this.phrase = of.phrase;
    this.beamMetres = of.beamMetres;
    this.draughtMillimetres = of.draughtMillimetres;
    this.volumeCubicCentimetres = of.volumeCubicCentimetres;
    this.quoted = of.quoted;
    this.heights.addAll(of.heights);
    try (Stream<Path> all = Files.walk(of.log.folder())) {
      for (Path file : all.filter(Files::isRegularFile).toList()) {
        Path place = to.resolve(of.log.folder().relativize(file).toString());
        Files.createDirectories(place.getParent());
        Files.copy(file, place);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  final String one(String... of) {
    return of[random.nextInt(of.length)];
  }

  String daily() {
    return one(DAILY[language]);
  }

  /** A number as the log's language writes it. */
  String number(double value, int decimals) {
    String plain = String.format(Locale.ROOT, "%." + decimals + "f", value);
    return language == 0 ? plain : plain.replace('.', ',');
  }

  private void lay() {
    log.write(
        "log.yaml",
        """
        title: Building Merrow
        subject: Merrow
        maker: Tern Lane Workshop
        client: {value: CLIENT, under: client}
        scale: 1:16
        language: LANGUAGE
        zone: Europe/London
        currency: GBP
        rate: {value: 37 GBP/h, under: client}
        sheets: {under: lines}
        tables: {offsets: {under: lines}}
        stages:
          moulds: {title: M}
          planking: {title: P}
        agreements:
          lines: {with: YARD, covers: the lines plan, from: 2026-03-02, until: 2027-09-30, afterwards: free}
          client: {with: CLIENT, covers: who ordered her, until: never, presence: nothing}
        readers:
          public: {title: Everybody, party-to: [], gets: [site]}
          workshop: {title: The workshop, party-to: all, gets: [site]}
        """
            .replace("LANGUAGE", LANGUAGES.get(language))
            .replace("YARD", yard)
            .replace("CLIENT", client));
    log.write(
        "facts.yaml",
        String.format(
            Locale.ROOT,
            """
            full.loa: {is: 11.20 m, title: Length over all}
            full.beam: {is: %.3f m, title: Beam, under: lines}
            hull.beam: full.beam / scale
            hull.draught: {is: %.1f mm, title: Draught, under: lines}
            hull.volume: {is: %d cm³, title: Volume, under: lines}
            quoted: {is: %d GBP, title: Quoted, under: client}
            """,
            beamMetres,
            draughtMillimetres,
            volumeCubicCentimetres,
            quoted));
    log.write(
        "stock.yaml",
        "- {material: cedar, title: Cedar, bought: 60, price: {value: "
            + (17 + random.nextInt(40))
            + ".35 GBP, under: client}}\n");
    open("2026-03-17-moulds.md", "moulds");
    open(openNote.substring("entries/".length()), "planking");
    open("2026-03-28-more.md", "planking");
    log.write(
        keptNote,
        "---\ntitle: Kept\nstage: moulds\nunder: lines\n---\n"
            + kept
            + " "
            + yard
            + ", "
            + number
            + ".\n\n"
            + number(beamMetres, 2)
            + " m.\n");
    log.write(
        "entries/2026-03-30-parts.md",
        "---\ntitle: Parts\nstage: planking\n---\n"
            + daily()
            + "\n\n"
            + phrase
            + " {under=lines}\n\n## S {under=client}\n\n"
            + client
            + ".\n\n## T\n\n"
            + daily()
            + "\n");
    StringBuilder table = new StringBuilder("station,keel [mm],breadth [mm]\n");
    for (int i = 0; i < 8; i++) {
      heights.add(String.format(Locale.ROOT, "%.1f", 12 + random.nextInt(700) / 10.0));
      table.append(i).append(',').append(heights.get(i)).append(',');
      table.append(40 + random.nextInt(50)).append('\n');
    }
    log.write("tables/offsets.csv", table.toString());
    log.write("sheets/lines.png", png(drawing(random.nextLong())));
    sample("T20_0549.jpg", "photos/kept.jpg");
    sample("T20_0458.jpg", "photos/open.jpg");
    log.write(
        "photos/photos.yaml",
        """
        kept.jpg: {taken: 2026-03-20 10:00:00, under: lines}
        open.jpg: {taken: 2026-03-25 11:00:00, caption: O}
        """);
  }

  private void open(String name, String stage) {
    log.write(
        "entries/" + name,
        "---\ntitle: Day\nstage: "
            + stage
            + "\ntime: 2 h\nused: {cedar: 3}\n---\n"
            + daily()
            + " "
            + daily()
            + "\n\n## U\n\n"
            + daily()
            + "\n");
  }

  private void sample(String name, String to) {
    try {
      log.write(to, Files.readAllBytes(Path.of("sample-log/photos", name)));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  BufferedImage picture(String name) {
    try {
      BufferedImage read = ImageIO.read(log.path(name).toFile());
      BufferedImage rgb =
          new BufferedImage(read.getWidth(), read.getHeight(), BufferedImage.TYPE_INT_RGB);
      rgb.createGraphics().drawImage(read, 0, 0, null);
      return rgb;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static byte[] png(BufferedImage image) {
    return encoded(image, "png");
  }

  static byte[] jpeg(BufferedImage image) {
    return encoded(image, "jpeg");
  }

  private static byte[] encoded(BufferedImage image, String format) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try {
      ImageIO.write(image, format, out);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out.toByteArray();
  }

  /** A lines plan of no vessel. */
  private static BufferedImage drawing(long number) {
    Random random = new Random(number);
    BufferedImage sheet = new BufferedImage(1600, 1130, BufferedImage.TYPE_INT_RGB);
    Graphics2D g = sheet.createGraphics();
    g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    g.setColor(new Color(0xF4F1E4));
    g.fillRect(0, 0, 1600, 1130);
    g.setColor(new Color(0x202830));
    g.setStroke(new BasicStroke(1.5f));
    g.drawRect(20, 20, 1560, 1090);
    g.drawRect(1200, 950, 360, 140);
    g.setFont(new Font(Font.SANS_SERIF, Font.BOLD, 24));
    g.drawString("LINES " + number % 9973, 1215, 990);
    g.setFont(new Font(Font.SANS_SERIF, Font.PLAIN, 13));
    for (int view = 0; view < 3; view++) {
      int top = 80 + view * 290;
      int wide = view == 2 ? 500 : 1400;
      for (int i = 0; i < 9; i++) {
        g.drawLine(80, top + 25 * i, 80 + wide, top + 25 * i);
        g.drawString("" + (10 + random.nextInt(90)), 50, top + 25 * i + 5);
      }
      for (int i = 0; i < 12; i++) {
        int x = 80 + wide * i / 12 + random.nextInt(9);
        g.drawLine(x, top - 15, x, top + 240);
      }
      for (int i = 0; i < 8; i++) {
        g.draw(
            new QuadCurve2D.Double(
                80,
                top + random.nextInt(220),
                80 + random.nextInt(wide),
                top + random.nextInt(300) - 40,
                80 + wide * (0.6 + 0.4 * random.nextDouble()),
                top + random.nextInt(220)));
      }
    }
    g.dispose();
    return sheet;
  }

  /** Adds a paragraph to the open note. */
  String typed(String text) {
    List<String> lines = new ArrayList<>(List.of(log.read(openNote).split("\n", -1)));
    lines.add(text);
    lines.add("");
    log.write(openNote, String.join("\n", lines));
    return text;
  }
}
