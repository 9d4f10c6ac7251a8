package chinelog.log.reading;

import chinelog.log.records.Entry;
import chinelog.problem.Place;
import chinelog.problem.Problems;
import chinelog.problem.Sentence;
import chinelog.problem.Suggestion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Lists the folder of a log and sorts its files by what they are for. */
public final class FolderWalk {

  static final List<String> SETTINGS =
      List.of("log.yaml", "facts.yaml", "stock.yaml", "answers.yaml");

  private static final String REMARKS = "photos.yaml";

  /** What loses an agreement with the file that holds it. */
  private static final Pattern MARKS = Pattern.compile("\\b(under|regions|leave-out)\\b");

  /** Read only when asked for by name, but at home here. */
  private static final String QUOTATION = "quotation.yaml";

  private static final List<String> FOLDERS =
      List.of("entries", "photos", "sheets", "tables", "talk", "themes", "site-template");
  private static final Set<String> OURS = Set.of("published", "records", "workshop/forms");
  private static final Set<String> STRAY = Set.of("thumbs.db", "desktop.ini", "icon\r");
  private static final List<String> SHEET_ENDINGS =
      List.of("pdf", "png", "jpg", "jpeg", "tif", "tiff", "webp", "gif", "svg", "dxf", "dwg");

  private static final Set<String> PLAIN_TEXTS = Set.of("txt", "text", "markdown", "mdown", "mkd");
  private static final Set<String> WRITTEN =
      Set.of("doc", "docx", "odt", "rtf", "pages", "html", "htm");
  private static final Set<String> FILMS =
      Set.of("mp4", "mov", "avi", "mts", "m4v", "3gp", "mkv", "wmv", "webm");
  private static final Set<String> PICTURES =
      Set.of("bmp", "cr2", "cr3", "nef", "arw", "dng", "raf", "orf", "rw2", "psd", "svg", "avif");
  private static final Set<String> SOUND =
      Set.of("wav", "flac", "mp3", "m4a", "aac", "ogg", "opus");
  private static final int NAMED = 4;

  private final Path folder;
  private final Problems problems;
  private final SortedMap<String, Path> all = new TreeMap<>();

  /** Paths of what looks like a file of settings, but is none, by what to do about them. */
  private final SortedMap<CharSequence, List<String>> misnamed =
      new TreeMap<>(CharSequence::compare);

  /** Paths of other files that are not read, by what to do about them. */
  private final SortedMap<CharSequence, List<String>> unread = new TreeMap<>(CharSequence::compare);

  private FolderWalk(Path folder, Problems problems) {
    this.folder = folder;
    this.problems = problems;
  }

  /**
   * Everything in the folder that is part of the log.
   *
   * @throws IOException if the folder itself cannot be listed
   */
  public static Inventory walk(Path folder, Problems problems) throws IOException {
    FolderWalk walk = new FolderWalk(folder, problems);
    for (Path child : list(folder)) {
      walk.visit(child, name(child));
    }
    walk.refuseTwins();
    return walk.sort();
  }

  private static List<Path> list(Path folder) throws IOException {
    try (Stream<Path> children = Files.list(folder)) {
      return children.sorted(Comparator.comparing(FolderWalk::name)).toList();
    }
  }

  /** Whether chinelog itself made this: of a folder "workshop", only the editions it recorded. */
  private boolean isOurs(String path) {
    return OURS.contains(path)
        || path.matches("workshop/[^/]+")
            && Files.isDirectory(folder.resolve("records").resolve(path.substring(9)));
  }

  private static String name(Path path) {
    return String.valueOf(path.getFileName());
  }

  private void visit(Path file, String path) {
    String name = name(file);
    if (copyOfSettings(file, path)) {
      misnamed.computeIfAbsent(remedyForSettings(path), r -> new ArrayList<>()).add(path);
      return;
    }
    if (name.startsWith(".")
        || name.endsWith("~")
        || STRAY.contains(name.toLowerCase(Locale.ROOT))
        || isOurs(path)) {
      return;
    }
    if (name.indexOf('\ufffd') >= 0 || name.chars().anyMatch(c -> c < ' ' || c == '\\')) {
      problems.error(
          Place.of(path),
          "The name of this file holds characters that cannot be used.",
          "Rename it, with letters, digits, spaces and hyphens.");
    } else if (Files.isSymbolicLink(file)) {
      problems.error(
          Place.of(path),
          "This is a link to somewhere else.",
          "Put the file itself here, so that the log is whole.");
    } else if (Files.isDirectory(file, LinkOption.NOFOLLOW_LINKS)) {
      if (SETTINGS.contains(path) || isRemarks(name) && !isDecoration(path)) {
        problems.error(
            Place.of(path),
            "This is a folder, but a file has this name in a log.",
            "Rename the folder; then write the file, or do without it.");
        return;
      }
      try {
        for (Path child : list(file)) {
          visit(child, path + "/" + name(child));
        }
      } catch (IOException e) {
        problems.error(
            Place.of(path),
            "This folder cannot be read.",
            "See that you may open it and that its disk is sound.");
      }
    } else if (FOLDERS.contains(path)) {
      problems.error(
          Place.of(path),
          "This is a file, but a folder has this name in a log.",
          "Rename the file; then make the folder, or do without it.");
    } else if (Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)) {
      all.put(path, file);
    } else {
      problems.error(Place.of(path), "This is neither a file nor a folder.", "Remove it.");
    }
  }

  /** On other computers two names that differ only in case or accents' coding are one. */
  private void refuseTwins() {
    Map<String, String> seen = new HashMap<>();
    Map<String, String> notes = new HashMap<>();
    for (String path : all.keySet()) {
      String other =
          Entry.isNoteFile(path) ? notes.putIfAbsent(Entry.withoutEnding(path), path) : null;
      if (other != null && path.startsWith("entries/")) {
        problems.error(
            Place.of(path),
            Sentence.of("This note and {0} differ only in the endings of their names.", other),
            "Rename one of the two, such as by a word more.");
      }
      String twin = seen.putIfAbsent(alike(path), path);
      if (twin != null) {
        problems.error(
            Place.of(path),
            Sentence.of(
                "Its name and that of {0} differ only in capitals or in the coding of an"
                    + " accent.",
                twin),
            "Rename one of the two; on many computers they would be one file.");
      }
    }
  }

  private static String alike(String name) {
    return Normalizer.normalize(name, Normalizer.Form.NFC).toLowerCase(Locale.ROOT);
  }

  /**
   * That of the names, or null, which differs from {@code name} at most in the coding of accents.
   */
  public static @Nullable String findSame(Set<String> names, String name) {
    String coded = Normalizer.normalize(name, Normalizer.Form.NFC);
    return names.contains(name)
        ? name
        : names.stream()
            .filter(n -> Normalizer.normalize(n, Normalizer.Form.NFC).equals(coded))
            .findFirst()
            .orElse(null);
  }

  private Inventory sort() {
    SortedMap<String, Path> settings = new TreeMap<>();
    SortedMap<String, Path> entries = new TreeMap<>();
    SortedMap<String, Path> photos = new TreeMap<>();
    SortedMap<String, Path> remarks = new TreeMap<>();
    SortedMap<String, Path> sheets = new TreeMap<>();
    SortedMap<String, Path> tables = new TreeMap<>();
    SortedMap<String, Path> marks = new TreeMap<>();
    boolean loose = !all.containsKey("log.yaml");
    List<String> strangers = new ArrayList<>();
    all.forEach(
        (path, file) -> {
          String top = path.contains("/") ? path.substring(0, path.indexOf('/')) : "";
          String ending = ending(path);
          boolean inPhotos = top.equals("photos") || loose && !top.equals("sheets");
          if (SETTINGS.contains(path) || path.equals(Entry.HOURS_FILE)) {
            settings.put(path, file);
          } else if (top.equals("sheets") && SHEET_ENDINGS.contains(ending)) {
            sheets.put(path, file);
          } else if (top.equals("tables") && ending.equals("csv")) {
            tables.put(path, file);
          } else if (path.matches("talk/[^/]+/[^/]+[.]csv")) {
            marks.put(path, file);
          } else if (top.equals("talk") && SOUND.contains(ending)) {
            // Recordings may be kept beside their marks.
            return;
          } else if (Entry.isNoteFile(path) && isNote(path, loose)) {
            entries.put(path, file);
          } else if (inPhotos && name(file).equals(REMARKS)) {
            remarks.put(path, file);
          } else if (inPhotos && Inventory.PHOTO_ENDINGS.contains(ending)) {
            photos.put(path, file);
          } else if (!top.equals("themes")
              && !top.equals("site-template")
              && !path.equals(QUOTATION)) {
            strangers.add(path);
          }
        });
    strangers.forEach(path -> reportStranger(path, loose));
    tellStrangers();
    if (loose && entries.isEmpty() && photos.isEmpty() && !problems.hasErrors()) {
      problems.error(
          Place.of("log.yaml"),
          "This folder holds no log: no log.yaml, no note (.md) and no photograph.",
          "Name the folder of your build; or lay down a new log with chinelog begin.");
    }
    return new Inventory(
        folder, settings, entries, photos, remarks, sheets, tables, marks, new TreeMap<>());
  }

  /**
   * Whether a text is one of the notes: in a folder without a log.yaml, where plain text may be
   * anything, one that ends in .txt only if its name begins with a day.
   */
  private static boolean isNote(String path, boolean loose) {
    return loose
        ? ending(path).equals("md")
            || !WrittenDate.atStart(path.substring(path.lastIndexOf('/') + 1)).isEmpty()
        : path.startsWith("entries/");
  }

  /** A settings file under another name would silently lose its agreements: that stops. */
  private void reportStranger(String path, boolean loose) {
    String ending = ending(path);
    boolean hours = !path.contains("/") && near(Entry.HOURS_FILE, path.toLowerCase(Locale.ROOT));
    if (ending.equals("yaml") || ending.equals("yml") || isDisguised(path) || hours) {
      misnamed.computeIfAbsent(remedyForSettings(path), r -> new ArrayList<>()).add(path);
      return;
    }
    CharSequence remedy = remedy(path, ending, loose);
    if (!remedy.isEmpty()) {
      unread.computeIfAbsent(remedy, r -> new ArrayList<>()).add(path);
    }
  }

  private static CharSequence remedyForSettings(String path) {
    boolean top = !path.contains("/");
    List<String> known =
        top
            ? Stream.concat(SETTINGS.stream(), Stream.of(QUOTATION, Entry.HOURS_FILE)).toList()
            : List.of(REMARKS);
    String name = path.substring(path.lastIndexOf('/') + 1);
    return Suggestion.findNearest(undisguised(name), known)
        .map(k -> Sentence.of("Rename it to \"{0}\".", k))
        .orElseGet(
            () ->
                Sentence.of(
                    "Rename it to one of: {0}; or move it out of the log.",
                    String.join(", ", known)));
  }

  /**
   * Whether a file that would be passed over was most likely meant as a file of settings, such as
   * {@code photos.yaml~} or {@code Copy of photos.yaml.bak}. The last but one state, which an
   * editor keeps beside a file, is none as long as it holds no more marks than the file.
   */
  private static boolean copyOfSettings(Path file, String path) {
    String name = name(file);
    if (!Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)
        || isDecoration(path)
        || name.matches("(?i)\\..*\\.sw.")) {
      return false;
    }
    String small = name.toLowerCase(Locale.ROOT);
    if (Inventory.PHOTO_ENDINGS.contains(ending(small)) && !small.contains(".y")) {
      // Of a thousand files in a log, nearly all.
      return false;
    }
    String bare = small.replaceAll("^[.#~$]+|[~#]+$", "");
    String plain =
        bare.replaceAll(
                "\\s*[(\\[]?(\\d+|copy( of)?|kopie( von)?|kopie van|copie( de)?|copia( de)?)[)\\]]?\\s*",
                "")
            .replaceAll("(\\.ya?ml)\\W.*$", "$1")
            .replaceAll("^[-_ ]+|[-_ ]+(?=\\.ya?ml)", "");
    boolean settings =
        Stream.concat(SETTINGS.stream(), Stream.of(REMARKS))
            .anyMatch(s -> near(plain, s) || near(plain, s.replace(".yaml", ".yml")));
    boolean readAlready = name.equals(REMARKS) || SETTINGS.contains(path);
    if (!settings || readAlready || ending(path).matches("ya?ml")) {
      return settings && !readAlready && name.startsWith(".");
    }
    Path real = file.resolveSibling(name.replaceFirst("~$", ""));
    return !name.endsWith("~") || !Files.isRegularFile(real) || marks(file) > marks(real);
  }

  private static boolean near(String name, String known) {
    return Math.abs(name.length() - known.length()) <= 1 && Suggestion.distance(name, known) <= 1;
  }

  private static long marks(Path file) {
    try {
      return MARKS.matcher(Files.readString(file)).results().count();
    } catch (IOException e) {
      // Whatever cannot be read may hold any number of them.
      return Long.MAX_VALUE;
    }
  }

  private static boolean isRemarks(String name) {
    return name.equalsIgnoreCase(REMARKS) || name.equalsIgnoreCase("photos.yml");
  }

  /** Whether a path lies in a folder of which nothing is part of the log. */
  private static boolean isDecoration(String path) {
    String top = path.contains("/") ? path.substring(0, path.indexOf('/')) : "";
    return top.equals("themes") || top.equals("site-template");
  }

  /** Whether an editor hung an ending of its own on a file of settings, as log.yaml.txt. */
  private static boolean isDisguised(String path) {
    return !undisguised(path).equals(path);
  }

  private static String undisguised(String path) {
    return path.replaceFirst("(?i)(\\.ya?ml)\\.[a-z]{2,5}$", "$1");
  }

  /** What to do with a file that is not read; empty where that is nobody's business. */
  private static CharSequence remedy(String path, String ending, boolean loose) {
    String top = path.contains("/") ? path.substring(0, path.indexOf('/')) : "";
    boolean note = PLAIN_TEXTS.contains(ending) || WRITTEN.contains(ending);
    if (note && (loose || top.equals("entries"))) {
      return PLAIN_TEXTS.contains(ending)
          ? loose && ending.equals("txt")
              ? "If it is a note, let its name begin with its day, such as 2026-03-14."
              : "If it is a note, let its name end in .md or .txt."
          : "If it is a note, save it as plain text, under a name that ends in .md.";
    }
    String folder =
        FOLDERS.contains(top)
            ? ""
            : FOLDERS.stream().filter(f -> f.equalsIgnoreCase(top)).findFirst().orElse("");
    if (loose) {
      return top.equals("sheets") || top.equals("tables") || !PICTURES.contains(ending)
          ? ""
          : "If it is a picture, save it as JPEG.";
    } else if (!folder.isEmpty()) {
      return Sentence.of("Rename the folder to {0}, in small letters.", folder);
    } else if (ending.equals("md")) {
      return "Move it into the folder entries if it belongs to the log.";
    } else if (top.isEmpty()) {
      return "";
    } else if (Inventory.PHOTO_ENDINGS.contains(ending) && !FOLDERS.contains(top)
        || Inventory.PHOTO_ENDINGS.contains(ending) && top.equals("entries")) {
      return "Put photographs into the folder photos.";
    } else if (top.equals("photos") && FILMS.contains(ending)) {
      return "A film cannot be shown; save a picture out of it if it is to be told of.";
    } else if (top.equals("photos") && PICTURES.contains(ending)) {
      return "Save it as JPEG, and put that here.";
    }
    return FOLDERS.contains(top)
        ? Sentence.of("It is of no kind that belongs into the folder {0}.", top)
        : "Files are read from the folders entries, photos, sheets and tables.";
  }

  /** Many files of one sort are told in one message. */
  private void tellStrangers() {
    misnamed.forEach(
        (remedy, paths) ->
            problems.error(
                Place.of(paths.get(0)),
                told(
                    "No file of this name is read here.",
                    "No file of this name is read here, nor {0}.",
                    "No file of this name is read here, nor {0} and {1} more.",
                    paths),
                remedy));
    unread.forEach(
        (remedy, paths) ->
            problems.reminder(
                Place.of(paths.get(0)),
                told(
                    "This file is not read.",
                    "This file is not read, nor {0}.",
                    "This file is not read, nor {0} and {1} more.",
                    paths),
                remedy));
  }

  private static Sentence told(String alone, String several, String many, List<String> paths) {
    int named = Math.min(paths.size(), NAMED);
    return Sentence.of(
        paths.size() == 1 ? alone : paths.size() == named ? several : many,
        String.join(", ", paths.subList(1, named)),
        paths.size() - named);
  }

  static String ending(String path) {
    int dot = path.lastIndexOf('.');
    return dot < path.lastIndexOf('/') ? "" : path.substring(dot + 1).toLowerCase(Locale.ROOT);
  }
}
