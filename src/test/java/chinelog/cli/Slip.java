package chinelog.cli;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.AffineTransform;
import java.awt.image.AffineTransformOp;
import java.awt.image.BufferedImage;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;

/**
 * Something that a hurried maker does to a well-marked log.
 *
 * @param afterPublishing whether it is done to what was published well marked before
 * @param deed does it, and says what must then not be read in what is published; for a picture,
 *     {@link #PICTURE}
 */
record Slip(String kind, boolean afterPublishing, Function<CarelessLog, String> deed) {

  Slip(String kind, Function<CarelessLog, String> deed) {
    this(kind, false, deed);
  }

  /** That one picture more is published than before, or one without what hid it. */
  static final String PICTURE = "\0picture";

  static final List<Slip> ALL =
      List.of(
          new Slip("takes the mark off a note", true, Slip::unmarkNote),
          new Slip("writes a note without its mark", Slip::noteWithoutMark),
          new Slip("puts a note's mark in a wrong place", Slip::misplaceNote),
          new Slip("takes the mark off a paragraph or section", true, Slip::unmarkPart),
          new Slip("puts a paragraph's mark a line off", Slip::misplacePart),
          new Slip("writes a section without its mark", Slip::partWithoutMark),
          new Slip("takes the mark off a figure", true, Slip::unmarkFact),
          new Slip("writes a figure without its mark", Slip::factWithoutMark),
          new Slip("takes the mark off a price, a rate or a name", true, Slip::unmarkMoney),
          new Slip("copies a sentence", Slip::copySentence),
          new Slip("types a name", Slip::typeName),
          new Slip("types the number of a sheet", Slip::typeNumber),
          new Slip("types a figure in other units", Slip::typeFigure),
          new Slip("types a figure rounded or in words", Slip::roundFigure),
          new Slip("types a price", Slip::typePrice),
          new Slip("gives a figure another name", Slip::renameFact),
          new Slip("saves a picture again", Slip::saveAgain),
          new Slip("cuts or turns a picture", Slip::cut),
          new Slip("saves the sheet as a picture", Slip::sheetAsPicture),
          new Slip("renames a picture or its file of marks", true, Slip::renamePicture),
          new Slip("renames one before anything is published", Slip::renameBefore),
          new Slip("copies figures of a table", Slip::copyTable),
          new Slip("brings in a photograph of a withheld day", Slip::photoOfTheDay),
          new Slip("gives the withheld day a second note", Slip::secondNote),
          new Slip("slips a year", Slip::year));

  private static String unmarkNote(CarelessLog log) {
    log.log.replace(
        log.keptNote, "under: lines\n", log.one("", "# under: lines\n", "#under: lines\n"));
    return log.kept;
  }

  private static String noteWithoutMark(CarelessLog log) {
    String text =
        log.one(
            log.number(log.beamMetres, 2) + " m",
            log.number(log.beamMetres * 62.5, 1) + " mm",
            log.yard,
            log.number,
            log.client);
    log.log.write(
        "entries/2026-03-2" + log.one("1", "2", "6") + "-new.md",
        "---\ntitle: New\nstage: moulds\n---\n" + log.daily() + "\n\n" + text + ".\n");
    return text;
  }

  private static String misplaceNote(CarelessLog log) {
    String head = "---\ntitle: Kept\nstage: moulds\n---\n";
    String text = log.log.read(log.keptNote).replaceFirst("(?s)---.*?---\n", "");
    log.log.write(
        log.keptNote,
        log.one(
            head + "under: lines\n\n" + text,
            head + "\n" + text + "\nunder: lines\n",
            head + "Under: lines\n" + text,
            head + "# Kept\nunder: lines\n" + text,
            "under: lines\n" + head + text,
            "---\ntitle: Kept under lines\nstage: moulds\n---\n{under=lines}\n\n" + text,
            "---\ntitle: Kept\nstage: moulds\nagreement: lines\n---\n" + text,
            "---\ntitle: Kept\nstage: moulds\nUNDER : lines\n---\n" + text,
            "---\ntitle: Kept\nstage: moulds\ntags: [under, lines]\n---\n" + text,
            head + "```yaml\nunder: lines\n```\n" + text,
            head + "{ under = lines }\n" + text,
            head + "---\nunder: lines\n---\n" + text));
    return log.kept;
  }

  private static String unmarkPart(CarelessLog log) {
    boolean section = log.random.nextBoolean();
    log.log.replace(
        "entries/2026-03-30-parts.md", section ? " {under=client}" : " {under=lines}", "");
    return section ? log.client : log.phrase;
  }

  private static String misplacePart(CarelessLog log) {
    log.log.replace(
        "entries/2026-03-30-parts.md",
        log.phrase + " {under=lines}",
        log.one(
            "{under=lines}\n\n" + log.phrase,
            log.phrase + "\n\n{under=lines}",
            "{under=lines} " + log.phrase,
            log.phrase + " {under=lines",
            log.phrase + " under=lines",
            log.phrase + " {under:lines}",
            log.phrase + " {under=line}",
            log.phrase + " (under=lines)",
            log.phrase + " {=lines}",
            log.phrase + "\n" + log.daily() + "\n\n" + log.daily() + " {under=lines}"));
    return log.phrase;
  }

  private static String partWithoutMark(CarelessLog log) {
    String text =
        log.one(log.number(log.beamMetres, 2) + " m", log.yard, log.number, "\u00a3" + log.quoted);
    log.typed("## V\n\n" + log.daily() + " " + text + ".");
    return text;
  }

  private static String unmarkFact(CarelessLog log) {
    String title = log.one("Draught", "Volume", "Beam");
    log.log.write(
        "facts.yaml",
        log.log
            .read("facts.yaml")
            .replace("title: " + title + ", under: lines", "title: " + title));
    return title;
  }

  /** The beam, which the withheld note has to two decimals. */
  private static String factWithoutMark(CarelessLog log) {
    log.log.replace("facts.yaml", "title: Beam, under: lines", "title: Beam");
    return "Beam";
  }

  private static String unmarkMoney(CarelessLog log) {
    switch (log.random.nextInt(4)) {
      case 0 -> log.log.replace("log.yaml", "{value: 37 GBP/h, under: client}", "37 GBP/h");
      case 1 ->
          log.log.write(
              "stock.yaml",
              log.log.read("stock.yaml").replaceAll("\\{value: (.*?), under.*?\\}", "$1"));
      case 2 -> log.log.replace("facts.yaml", "Quoted, under: client", "Quoted");
      default ->
          log.log.replace("log.yaml", "{value: " + log.client + ", under: client}", log.client);
    }
    return log.one("\u00a3", "GBP", log.client);
  }

  private static String copySentence(CarelessLog log) {
    String of = log.random.nextBoolean() ? log.kept : log.phrase;
    String[] words = of.split(" ");
    String half = String.join(" ", List.of(words).subList(words.length / 2, words.length));
    String start = String.join(" ", List.of(words).subList(0, words.length * 2 / 3));
    String text =
        log.one(
            of,
            of.toUpperCase(Locale.ROOT),
            half,
            start + " \u2026",
            of.replace(",", ""),
            of.replaceFirst(words[3], "*" + words[3] + "*"));
    switch (log.random.nextInt(4)) {
      case 0 ->
          log.log.write(
              "log.yaml",
              log.log.read("log.yaml") + "about: |\n  " + text.replace("\n", " ") + "\n");
      case 1 -> log.log.replace("photos/photos.yaml", "caption: O", "caption: \"" + text + "\"");
      default -> log.typed(text);
    }
    return text.replace("*", "");
  }

  /** What people write of a client or a yard. */
  private static final String[][] SAID_OF_A_NAME = {
    {
      "%s rang about the fittings.",
      "Rang %s today, nobody in.",
      "Off to %s with the first photographs.",
      "A letter from %s lay on the mat.",
      "Two more photographs for %s tonight.",
      "%s wants a second coat."
    },
    {
      "%s hat wegen der Beschläge angerufen.",
      "Heute %s angerufen, niemand da.",
      "Mit den ersten Bildern zu %s.",
      "Brief von %s im Kasten.",
      "Noch zwei Bilder für %s gemacht.",
      "%s will einen zweiten Anstrich."
    },
    {
      "%s belde over het beslag.",
      "Vandaag %s gebeld, niemand thuis.",
      "Met de eerste foto's naar %s.",
      "Een brief van %s op de mat.",
      "Nog twee foto's voor %s gemaakt.",
      "%s wil een tweede laag."
    },
    {
      "%s a appelé pour les ferrures.",
      "Appelé %s ce matin, personne.",
      "Les premières photos sont parties chez %s.",
      "Une lettre de %s sur le paillasson.",
      "Encore deux photos pour %s ce soir.",
      "%s veut une seconde couche."
    },
    {
      "%s llamó por los herrajes.",
      "Hoy llamé a %s, nadie en casa.",
      "Con las primeras fotos a %s.",
      "Una carta de %s en el buzón.",
      "Dos fotos más para %s esta noche.",
      "%s quiere otra mano."
    }
  };

  private static String typeName(CarelessLog log) {
    String name = log.random.nextBoolean() ? log.yard : log.client;
    String[] parts = name.replace("&", "").split("\\s+(and\\s+|of\\s+)?");
    String longest = "";
    for (String part : parts) {
      longest = part.length() > longest.length() ? part : longest;
    }
    String written =
        log.one(
            name,
            name,
            longest,
            name.toUpperCase(Locale.ROOT),
            longest + "'s",
            longest.substring(0, 2) + longest.substring(3));
    String text = log.daily().replaceFirst("[.]$", "") + ", " + written + ".";
    if (log.random.nextBoolean()) {
      text = log.one(SAID_OF_A_NAME[log.language]).replace("%s", written);
    }
    switch (log.random.nextInt(4)) {
      case 0 -> log.log.replace("photos/photos.yaml", "caption: O", "caption: \"" + written + "\"");
      case 1 -> log.log.replace(log.openNote, "title: Day", "title: \"" + written + "\"");
      default -> log.typed(text);
    }
    return written;
  }

  private static String typeNumber(CarelessLog log) {
    String written =
        log.one(
            log.number,
            log.number.replace("-", " "),
            log.number.replace("-", "").toLowerCase(Locale.ROOT),
            log.number.replace("/", "-"),
            log.number.replace("/", " / "));
    log.typed(log.daily() + " (" + written + ")");
    return written;
  }

  private static String typeFigure(CarelessLog log) {
    double beam = log.beamMetres;
    double model = beam / 16;
    String written =
        switch (log.random.nextInt(12)) {
          case 0 -> log.number(beam, 2) + " m";
          case 1 -> log.number(beam, 3) + " m";
          case 2 -> log.number(beam * 1000, 0) + " mm";
          case 3 -> log.number(beam * 100, 1) + " cm";
          case 4 -> log.number(model * 1000, 1) + " mm";
          case 5 -> log.number(model * 100, 2) + " cm";
          case 6 -> log.number(beam / 0.3048, 2) + " ft";
          case 7 -> log.number(model / 0.0254, 2) + " in";
          case 8 -> log.number(log.draughtMillimetres, 1) + " mm";
          case 9 -> log.number(log.draughtMillimetres * 16 / 1000, 2) + " m";
          case 10 -> log.number(log.volumeCubicCentimetres / 1000.0, 3) + " L";
          default -> log.volumeCubicCentimetres + " cm\u00b3";
        };
    log.typed(log.daily() + " " + written + ".");
    return written;
  }

  private static String roundFigure(CarelessLog log) {
    String[] wide = {"beam", "Breite", "breedte", "largeur", "manga"};
    String[] deep = {"draught", "Tiefgang", "diepgang", "tirant d'eau", "calado"};
    String[] about = {"about", "etwa", "ongeveer", "environ", "unos"};
    boolean beam = log.random.nextBoolean();
    double millimetres = beam ? log.beamMetres * 62.5 : log.draughtMillimetres;
    String written =
        switch (log.random.nextInt(3)) {
          case 0 -> Math.round(millimetres) + " mm";
          case 1 -> Math.round(millimetres) + "";
          default -> log.number(Math.round(millimetres) / 10.0, 1) + " cm";
        };
    String what = (beam ? wide : deep)[log.language];
    log.typed(what + ": " + about[log.language] + " " + written + ".");
    return written;
  }

  private static String typePrice(CarelessLog log) {
    String grouped =
        String.format(Locale.ROOT, "%,d", log.quoted)
            .replace(",", log.language == 0 ? "," : log.language == 3 ? " " : ".");
    String written =
        log.one(
            "\u00a3" + log.quoted,
            "\u00a3" + grouped,
            log.quoted + " GBP",
            log.quoted + "",
            grouped + " \u00a3");
    log.typed(log.daily() + " " + written + ".");
    return written;
  }

  private static String renameFact(CarelessLog log) {
    String line =
        switch (log.random.nextInt(4)) {
          case 0 ->
              String.format(
                  Locale.ROOT, "hull.width: {is: %.1f mm, title: W}", log.beamMetres * 62.5);
          case 1 ->
              String.format(Locale.ROOT, "box.inside: {is: %.3f m, title: W}", log.beamMetres);
          case 2 ->
              String.format(
                  Locale.ROOT,
                  "hull.depth_in_water: {is: %.1f mm, title: W}",
                  log.draughtMillimetres);
          default ->
              String.format(
                  Locale.ROOT,
                  "hull.contents: {is: %.3f L, title: W}",
                  log.volumeCubicCentimetres / 1000.0);
        };
    log.log.write(
        "facts.yaml",
        log.log.read("facts.yaml") + line.replace("title: W", "title: Zwieback") + "\n");
    return "Zwieback";
  }

  private static String saveAgain(CarelessLog log) {
    log.log.write(
        "photos/again.jpg", CarelessLog.jpeg(scaled(log.picture("photos/kept.jpg"), 0.8)));
    return shown(log, "again.jpg");
  }

  private static String cut(CarelessLog log) {
    BufferedImage kept = log.picture("photos/kept.jpg");
    int w = kept.getWidth();
    int h = kept.getHeight();
    BufferedImage other =
        switch (log.random.nextInt(4)) {
          case 0 -> copy(kept.getSubimage(w / 6, h / 8, w * 2 / 3, h * 2 / 3));
          case 1 -> transformed(kept, new AffineTransform(-1, 0, 0, 1, w, 0));
          case 2 -> {
            AffineTransform turn = AffineTransform.getRotateInstance(0.09, w / 2.0, h / 2.0);
            yield transformed(kept, turn);
          }
          default -> {
            BufferedImage desk = new BufferedImage(w, h, BufferedImage.TYPE_INT_RGB);
            Graphics2D g = desk.createGraphics();
            g.setColor(new Color(0x664433));
            g.fillRect(0, 0, w, h);
            g.drawImage(kept, w / 10, h / 8, w * 7 / 10, h * 7 / 10, null);
            g.dispose();
            yield desk;
          }
        };
    log.log.write("photos/cut.jpg", CarelessLog.jpeg(other));
    return shown(log, "cut.jpg");
  }

  private static String sheetAsPicture(CarelessLog log) {
    BufferedImage sheet = log.picture("sheets/lines.png");
    int w = sheet.getWidth();
    int h = sheet.getHeight();
    BufferedImage part =
        log.random.nextBoolean()
            ? sheet
            : copy(sheet.getSubimage(w / 20, h / 20, w * 3 / 5, h * 3 / 5));
    boolean png = log.random.nextBoolean();
    String name = "screen." + (png ? "png" : "jpg");
    log.log.write("photos/" + name, png ? CarelessLog.png(part) : CarelessLog.jpeg(part));
    return shown(log, name);
  }

  /** The maker shows the picture in the open note, or leaves it to its day. */
  private static String shown(CarelessLog log, String name) {
    if (log.random.nextBoolean()) {
      log.typed("![P](../photos/" + name + ")");
    } else {
      log.log.write(
          "photos/photos.yaml",
          log.log.read("photos/photos.yaml") + name + ": {taken: 2026-03-25 12:00:00}\n");
    }
    return PICTURE;
  }

  private static String renamePicture(CarelessLog log) {
    switch (log.random.nextInt(6)) {
      case 0 -> {
        log.log.move("photos/kept.jpg", "photos/2026-03-25 bench.jpg");
        log.log.write("photos/photos.yaml", "open.jpg: {taken: 2026-03-25 11:00:00}\n");
      }
      case 1 -> log.log.move("photos/kept.jpg", "photos/other.jpg");
      case 2 -> log.log.move("photos/photos.yaml", "photos/photos.yml");
      case 3 -> log.log.move("photos/photos.yaml", "photos/Photos.yaml");
      case 4 -> log.log.move("photos/photos.yaml", "photos/photos (1).yaml");
      default -> log.log.move("photos/photos.yaml", "photos/photo.yaml");
    }
    if (log.log.read(log.openNote).contains("kept.jpg") || log.random.nextBoolean()) {
      log.typed(log.daily());
    }
    return PICTURE;
  }

  /** The mark stays behind, or the file of marks gets another name. */
  private static String renameBefore(CarelessLog log) {
    String marks = "photos/photos.yaml";
    switch (log.random.nextInt(5)) {
      case 0 -> log.log.move("photos/kept.jpg", "photos/2026-03-25 bench.jpg");
      case 1 -> log.log.move("photos/kept.jpg", "photos/other.jpg");
      case 2 -> log.log.move(marks, "photos/" + log.one("photos.yml", "Photos.yaml"));
      case 3 -> log.log.move(marks, "photos/" + log.one("photos (1).yaml", "photo.yaml"));
      default -> log.log.move(marks, log.one("photos.yaml", "photos/photos.yaml~"));
    }
    return PICTURE;
  }

  private static String copyTable(CarelessLog log) {
    int from = log.random.nextInt(4);
    List<String> run = log.heights.subList(from, from + 4 + log.random.nextInt(5 - from));
    String written =
        switch (log.random.nextInt(4)) {
          case 0 -> String.join(", ", run);
          case 1 -> "| a | b |\n|---|---|\n| x | " + String.join(" |\n| x | ", run) + " |";
          case 2 -> "- " + String.join("\n- ", run);
          default -> {
            log.log.write("tables/zwieback.csv", "n [mm]\n" + String.join("\n", run) + "\n");
            yield "";
          }
        };
    if (!written.isEmpty()) {
      log.typed((log.language == 0 ? written : written.replace('.', ',')) + "\n");
    }
    return log.language == 0 ? run.get(0) : run.get(0).replace('.', ',');
  }

  private static String photoOfTheDay(CarelessLog log) {
    try {
      byte[] other =
          java.nio.file.Files.readAllBytes(java.nio.file.Path.of("sample-log/photos/T20_0566.jpg"));
      String name =
          log.one("photos/new.jpg", "photos/2026-03-20/new.jpg", "photos/20260320_1010.jpg");
      log.log.write(name, other);
      if (name.equals("photos/new.jpg")) {
        log.log.write(
            "photos/photos.yaml",
            log.log.read("photos/photos.yaml")
                + "new.jpg: {taken: "
                + log.one("2026-03-20 15:00:00", "2026-03-21 01:10:00")
                + "}\n");
      }
    } catch (java.io.IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
    return PICTURE;
  }

  private static String secondNote(CarelessLog log) {
    log.log.write(
        "entries/2026-03-20-second.md",
        "---\ntitle: Second\nstage: planking\ntime: 14:00-17:00\n---\n" + log.daily() + "\n");
    return photoOfTheDay(log);
  }

  private static String year(CarelessLog log) {
    switch (log.random.nextInt(3)) {
      case 0 -> log.log.replace("log.yaml", "until: 2027-09-30", "until: 2025-09-30");
      case 1 -> log.log.replace("log.yaml", "until: 2027-09-30", "until: 2026-05-30");
      default ->
          log.log.replace(
              "log.yaml", "from: 2026-03-02, until: 2027", "from: 2027-03-02, until: 2026");
    }
    return log.kept;
  }

  private static BufferedImage scaled(BufferedImage of, double by) {
    int w = (int) (of.getWidth() * by);
    int h = (int) (of.getHeight() * by);
    BufferedImage small = new BufferedImage(w, h, BufferedImage.TYPE_INT_RGB);
    small
        .createGraphics()
        .drawImage(of.getScaledInstance(w, h, java.awt.Image.SCALE_AREA_AVERAGING), 0, 0, null);
    return small;
  }

  private static BufferedImage copy(BufferedImage of) {
    BufferedImage copy =
        new BufferedImage(of.getWidth(), of.getHeight(), BufferedImage.TYPE_INT_RGB);
    copy.createGraphics().drawImage(of, 0, 0, null);
    return copy;
  }

  private static BufferedImage transformed(BufferedImage of, AffineTransform by) {
    return new AffineTransformOp(by, AffineTransformOp.TYPE_BILINEAR)
        .filter(of, new BufferedImage(of.getWidth(), of.getHeight(), BufferedImage.TYPE_INT_RGB));
  }
}
