import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.File;
import java.io.IOException;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.io.Reader;
import java.io.StringWriter;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.spi.ToolProvider;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;

/**
 * Makes what can be handed to somebody who has no Java: {@code java Bundle.java HOME VERSION}, run
 * by {@code mvn -Pbundle package}, with the JDK's own jdeps, jlink and jpackage, for the platform
 * that it runs on.
 */
final class Bundle {

  /** Found by name only, so that jdeps cannot see them: zips as folders, and other languages. */
  private static final String FOUND_BY_NAME = "jdk.zipfs,jdk.localedata";

  private static final String LANGUAGES = "en,de,nl,fr,es";

  /** Of the unpacked folder, in bytes: 90 MB. */
  private static final long MOST_BYTES = 90_000_000;

  /** Of these much is never called, and nothing by its name: what is not reached stays behind. */
  private static final Pattern PARTLY =
      Pattern.compile(
          "(boofcv-.*|ddogleg|ejml-.*|fop-core|georegression|trove4j|xmlgraphics-commons)-[0-9].*");

  /** Of glibc, which every Linux has and which fits its kernel: it is never bundled. */
  private static final Pattern OF_THE_SYSTEM =
      Pattern.compile("(ld-linux.*|lib(c|m|dl|rt|pthread|resolv|util|nsl))\\.so.*");

  /** What only a window, or sound, would need; chinelog has neither. */
  private static final List<String> FOR_WINDOWS =
      List.of("libawt_xawt.so", "libsplashscreen.so", "libjawt.so", "libjsound.so");

  private final Path home;
  private final Path target;
  private final Path work;
  private final String version;
  private final String system;

  private Bundle(Path home, String version) {
    this.home = home;
    this.version = version;
    this.target = home.resolve("target");
    this.work = target.resolve("bundle");
    String name = System.getProperty("os.name").toLowerCase(Locale.ROOT);
    this.system = name.contains("win") ? "windows" : name.contains("mac") ? "macos" : "linux";
  }

  public static void main(String[] args) throws Exception {
    new Bundle(Path.of(args[0]).toAbsolutePath(), args[1]).make();
  }

  private void make() throws Exception {
    delete(work);
    Path input = Files.createDirectories(work.resolve("input"));
    Files.copy(target.resolve("chinelog.jar"), input.resolve("chinelog.jar"));
    copyAll(target.resolve("lib"), input.resolve("lib"));
    dropUnreached(input);
    Path runtime = runtime(input);
    if (system.equals("linux")) {
      bundleLibraries(runtime.resolve("lib"));
      bundleFont(runtime.resolve("lib"));
    }
    Path image = image(input, runtime);
    Path root = image;
    Path java = runtime.resolve("bin").resolve("java");
    boolean opens = run(java, "open", "--help").status == 0;
    if (system.equals("linux")) {
      Files.delete(image.resolve("bin/chinelog"));
      install("chinelog", image.resolve("bin/chinelog"));
      install("quick-start.sh", image.resolve("lib/app/quick-start.sh"));
      Files.deleteIfExists(image.resolve("lib/libapplauncher.so"));
    } else if (system.equals("macos")) {
      root = image.resolve("Contents");
    }
    write(root.resolve("share/man/man1/chinelog.1"), run(java, "manual").output);
    write(
        root.resolve("share/bash-completion/completions/chinelog"), run(java, "completion").output);
    licences(input, root.resolve("share/doc/chinelog"));
    say("The bundle is " + image + ": " + mega(size(image)) + " unpacked.");
    if (size(image) > MOST_BYTES) {
      throw new IllegalStateException("the bundle has grown beyond " + mega(MOST_BYTES));
    }
    pack(image, opens);
  }

  /**
   * Leaves out the classes of computing libraries that no path of calls reaches, by jdeps, and the
   * patterns of hyphenation whose licence is not known.
   */
  private void dropUnreached(Path input) throws IOException {
    List<Path> jars = list(input.resolve("lib"));
    Set<String> reached = reached(input, jars);
    Properties patterns = new Properties();
    try (Reader licences =
        Files.newBufferedReader(
            home.resolve("src/main/resources/chinelog/book/hyphenation.properties"))) {
      patterns.load(licences);
    }
    for (Path jar : jars) {
      String name = jar.getFileName().toString();
      if (PARTLY.matcher(name).matches()) {
        keep(jar, e -> !e.endsWith(".class") || reached.contains(className(e)));
      } else if (name.startsWith("fop-hyph-")) {
        keep(
            jar,
            e -> !e.endsWith(".hyp") || patterns.containsKey(e.replaceAll("^hyph/|\\.hyp$", "")));
      }
    }
  }

  private static Set<String> reached(Path input, List<Path> jars) throws IOException {
    List<String> jdeps = new ArrayList<>();
    jdeps.addAll(List.of("-verbose:class", "-filter:none", "--ignore-missing-deps"));
    jdeps.addAll(List.of("--multi-release", "17"));
    String all = String.join(File.pathSeparator, jars.stream().map(Path::toString).toList());
    jdeps.addAll(List.of("--class-path", all, input.resolve("chinelog.jar").toString()));
    jars.forEach(jar -> jdeps.add(jar.toString()));
    Map<String, List<String>> uses = new HashMap<>();
    Matcher use =
        Pattern.compile("(?m)^ +(\\S+) +-> (\\S+) +\\S+\\.jar$").matcher(tool("jdeps", jdeps));
    while (use.find()) {
      uses.computeIfAbsent(use.group(1), c -> new ArrayList<>()).add(use.group(2));
    }
    Deque<String> next = new ArrayDeque<>();
    for (Path jar : jars) {
      try (ZipFile zip = new ZipFile(jar.toFile())) {
        boolean whole = !PARTLY.matcher(jar.getFileName().toString()).matches();
        for (ZipEntry entry : Collections.list(zip.entries())) {
          if (whole && entry.getName().endsWith(".class")) {
            next.add(className(entry.getName()));
          } else if (entry.getName().startsWith("META-INF/services/") && !entry.isDirectory()) {
            String services =
                new String(zip.getInputStream(entry).readAllBytes(), StandardCharsets.UTF_8);
            String service = entry.getName().replaceFirst(".*/", "");
            uses.computeIfAbsent(service, c -> new ArrayList<>())
                .addAll(services.lines().map(l -> l.replaceFirst("#.*", "").strip()).toList());
            if (service.startsWith("java")) {
              next.add(service);
            }
          }
        }
      }
    }
    uses.keySet().stream().filter(c -> c.startsWith("chinelog.")).forEach(next::add);
    Set<String> reached = new HashSet<>();
    while (!next.isEmpty()) {
      String name = next.remove();
      if (reached.add(name)) {
        next.addAll(uses.getOrDefault(name, List.of()));
      }
    }
    return reached;
  }

  /** Of a file in an archive; what holds for one Java alone counts as the class that it is. */
  private static String className(String file) {
    return file.replaceFirst("^META-INF/versions/\\d+/", "")
        .replaceFirst("\\.class$", "")
        .replace('/', '.');
  }

  private static void keep(Path jar, Predicate<String> wanted) throws IOException {
    Path small = jar.resolveSibling("small");
    try (ZipFile all = new ZipFile(jar.toFile());
        ZipOutputStream out = new ZipOutputStream(Files.newOutputStream(small))) {
      for (ZipEntry entry : Collections.list(all.entries())) {
        if (wanted.test(entry.getName())) {
          ZipEntry kept = new ZipEntry(entry.getName());
          kept.setTime(entry.getTime());
          out.putNextEntry(kept);
          all.getInputStream(entry).transferTo(out);
        }
      }
    }
    Files.move(small, jar, StandardCopyOption.REPLACE_EXISTING);
  }

  private Path runtime(Path input) throws Exception {
    List<String> jdeps = new ArrayList<>();
    jdeps.addAll(List.of("--print-module-deps", "--ignore-missing-deps", "--multi-release", "17"));
    String jars =
        String.join(
            File.pathSeparator, list(input.resolve("lib")).stream().map(Path::toString).toList());
    jdeps.addAll(List.of("--class-path", jars, input.resolve("chinelog.jar").toString()));
    list(input.resolve("lib")).forEach(jar -> jdeps.add(jar.toString()));
    String[] said = tool("jdeps", jdeps).split("\\R");
    String modules = said[said.length - 1] + "," + FOUND_BY_NAME;
    say("Modules: " + modules);
    Path runtime = work.resolve("runtime");
    tool(
        "jlink",
        List.of(
            "--add-modules",
            modules,
            "--include-locales",
            LANGUAGES,
            "--strip-debug",
            "--no-man-pages",
            "--no-header-files",
            "--compress",
            "2",
            "--output",
            runtime.toString()));
    return runtime;
  }

  /** A JDK of a Linux distribution leans on libraries that another machine may lack. */
  private void bundleLibraries(Path lib) throws Exception {
    for (String name : FOR_WINDOWS) {
      Files.deleteIfExists(lib.resolve(name));
    }
    Set<Path> foreign = new TreeSet<>();
    List<Path> ours = new ArrayList<>(list(lib));
    ours.addAll(list(lib.resolve("server")));
    for (Path file : ours) {
      if (file.toString().endsWith(".so")) {
        Matcher needed =
            Pattern.compile("=> (/\\S+)").matcher(command(List.of("ldd", file.toString())).output);
        while (needed.find()) {
          Path library = Path.of(needed.group(1));
          if (!library.startsWith(lib)
              && !OF_THE_SYSTEM.matcher(library.getFileName().toString()).matches()) {
            foreign.add(library);
          }
        }
      }
    }
    for (Path library : foreign) {
      Files.copy(library.toRealPath(), lib.resolve(library.getFileName()));
      copyright(library, lib.resolveSibling("legal").resolve("system"));
    }
    say("Libraries of this system, bundled: " + foreign.size());
    if (has("strip")) {
      for (Path file : ours) {
        if (file.toString().endsWith(".so")) {
          require(command(List.of("strip", "--strip-unneeded", file.toString())), "strip");
        }
      }
    }
  }

  /** For a machine without any: Java wants to know of one font, though books bring their own. */
  private void bundleFont(Path lib) throws IOException {
    String face = "-misc-dejavu sans-medium-r-normal--*-%d-*-*-p-*-iso10646-1";
    write(
        lib.resolve("fontconfig.properties"),
        "version=1\nallfonts.default="
            + face
            + "\nsequence.allfonts=default\nfilename."
            + face.replace(' ', '_')
            + "=$JRE_LIB_FONTS/DejaVuSans.ttf\n");
    Files.createDirectories(lib.resolve("fonts"));
    Files.copy(
        home.resolve("themes/fonts/DejaVuSans.ttf"),
        lib.resolve("fonts").resolve("DejaVuSans.ttf"));
  }

  private void copyright(Path library, Path legal) throws Exception {
    for (Path path : List.of(library, library.toRealPath(), Path.of("/usr" + library))) {
      String owner = command(List.of("dpkg", "-S", path.toString())).output;
      int colon = owner.indexOf(':');
      Path text =
          Path.of("/usr/share/doc", colon < 0 ? "" : owner.substring(0, colon), "copyright");
      if (colon > 0 && Files.isRegularFile(text)) {
        Files.createDirectories(legal);
        Files.copy(
            text,
            legal.resolve(owner.substring(0, colon) + ".txt"),
            StandardCopyOption.REPLACE_EXISTING);
        return;
      }
    }
    throw new IllegalStateException("the licence of " + library + " is not on this machine");
  }

  private Path image(Path input, Path runtime) throws Exception {
    List<String> jpackage = new ArrayList<>();
    jpackage.addAll(
        List.of(
            "--type",
            "app-image",
            "--name",
            "chinelog",
            "--app-version",
            version,
            "--input",
            input.toString(),
            "--main-jar",
            "chinelog.jar",
            "--main-class",
            "chinelog.cli.Main",
            "--runtime-image",
            runtime.toString(),
            "--icon",
            icon().toString(),
            "--dest",
            Files.createDirectories(work.resolve("image")).toString(),
            "--java-options",
            "-XX:+UseSerialGC -XX:MaxNewSize=128m -Djava.awt.headless=true"));
    if (!system.equals("linux")) {
      // What the launcher does when it is told nothing, as by a double click.
      jpackage.addAll(List.of("--arguments", "open"));
    }
    if (system.equals("windows")) {
      jpackage.add("--win-console");
    }
    tool("jpackage", jpackage);
    return work.resolve("image").resolve(system.equals("macos") ? "chinelog.app" : "chinelog");
  }

  /**
   * The drawing, in the form that the platform wants: each may hold a PNG of 256 × 256 as it is.
   */
  private Path icon() throws IOException {
    Path drawing = home.resolve("src/bundle/icon.png");
    byte[] png = Files.readAllBytes(drawing);
    if (system.equals("linux")) {
      return drawing;
    }
    ByteBuffer head;
    if (system.equals("windows")) {
      head = ByteBuffer.allocate(22).order(ByteOrder.LITTLE_ENDIAN);
      head.putShort((short) 0).putShort((short) 1).putShort((short) 1).putInt(0);
      head.putShort((short) 1).putShort((short) 32).putInt(png.length).putInt(22);
    } else {
      head = ByteBuffer.allocate(16);
      head.put("icns".getBytes(StandardCharsets.US_ASCII)).putInt(png.length + 16);
      head.put("ic08".getBytes(StandardCharsets.US_ASCII)).putInt(png.length + 8);
    }
    ByteArrayOutputStream all = new ByteArrayOutputStream();
    new DataOutputStream(all).write(head.array());
    all.write(png);
    return Files.write(
        work.resolve(system.equals("windows") ? "chinelog.ico" : "chinelog.icns"),
        all.toByteArray());
  }

  /** Our own licence, those of the fonts, and the texts that each library carries. */
  private void licences(Path input, Path doc) throws IOException {
    Files.createDirectories(doc);
    for (String own : List.of("LICENSE", "NOTICE", "README.md", "CHANGELOG.md")) {
      Files.copy(home.resolve(own), doc.resolve(own));
    }
    Files.createDirectories(doc.resolve("fonts"));
    for (Path file : list(home.resolve("themes/fonts"))) {
      if (file.getFileName().toString().contains("LICENSE")) {
        Files.copy(file, doc.resolve("fonts").resolve(file.getFileName()));
      }
    }
    Pattern text = Pattern.compile("(?i)(META-INF/)?(LICEN[SC]E|NOTICE|COPYING|DEPENDENCIES)[^/]*");
    StringBuilder terms =
        new StringBuilder("Libraries in lib/app/lib, and the terms that each names\n\n");
    for (Path jar : list(input.resolve("lib"))) {
      String name = jar.getFileName().toString().replaceFirst("\\.jar$", "");
      try (ZipFile zip = new ZipFile(jar.toFile())) {
        for (ZipEntry entry :
            zip.stream().filter(e -> text.matcher(e.getName()).matches()).toList()) {
          Path file = doc.resolve("libraries").resolve(name);
          Files.createDirectories(file);
          Files.copy(
              zip.getInputStream(entry),
              file.resolve(entry.getName().replaceFirst("^META-INF/", "")),
              StandardCopyOption.REPLACE_EXISTING);
        }
        terms.append(name).append(": ").append(terms(zip, name)).append('\n');
      }
    }
    write(doc.resolve("LIBRARIES.txt"), terms.toString());
  }

  /** The licence as the library's own description has it: in the jar, else in the repository. */
  private String terms(ZipFile zip, String name) throws IOException {
    for (ZipEntry entry : zip.stream().filter(e -> e.getName().endsWith("/pom.xml")).toList()) {
      String found =
          licence(new String(zip.getInputStream(entry).readAllBytes(), StandardCharsets.UTF_8));
      if (!found.isEmpty()) {
        return found;
      }
    }
    ZipEntry manifest = zip.getEntry("META-INF/MANIFEST.MF");
    if (manifest != null) {
      Matcher line =
          Pattern.compile("Bundle-License: ([^\\r\\n]+)")
              .matcher(
                  new String(zip.getInputStream(manifest).readAllBytes(), StandardCharsets.UTF_8));
      if (line.find()) {
        return line.group(1);
      }
    }
    return Files.isDirectory(work.resolve("image")) && hasText(zip)
        ? "see libraries/" + name
        : "see the project that publishes it";
  }

  private static boolean hasText(ZipFile zip) {
    return zip.stream().anyMatch(e -> e.getName().matches("(?i)(META-INF/)?LICEN[SC]E.*"));
  }

  private static String licence(String pom) {
    Matcher licence =
        Pattern.compile("<license>\\s*<name>([^<]+)</name>", Pattern.DOTALL).matcher(pom);
    Set<String> names = new TreeSet<>();
    while (licence.find()) {
      names.add(licence.group(1).strip().replaceAll("\\s+", " "));
    }
    return String.join("; ", names);
  }

  private void pack(Path image, boolean opens) throws Exception {
    String kind = system + "-" + System.getProperty("os.arch");
    boolean zip = system.equals("windows");
    Path archive = target.resolve("chinelog-" + version + "-" + kind + (zip ? ".zip" : ".tar.gz"));
    List<String> tar = new ArrayList<>(List.of("tar"));
    if (system.equals("linux")) {
      tar.addAll(List.of("--sort=name", "--owner=0", "--group=0", "--numeric-owner"));
    }
    tar.addAll(List.of(zip ? "-acf" : "-czf", archive.toString()));
    tar.addAll(List.of("-C", image.getParent().toString(), image.getFileName().toString()));
    require(command(tar), "tar");
    say(archive + ": " + mega(Files.size(archive)));
    if (system.equals("linux") && has("dpkg-deb") && has("fakeroot")) {
      Path resources = work.resolve("deb");
      copyAll(home.resolve("src/bundle/deb"), resources);
      List<String> jpackage = new ArrayList<>();
      jpackage.addAll(
          List.of(
              "--type",
              "deb",
              "--name",
              "chinelog",
              "--app-version",
              version,
              "--app-image",
              image.toString(),
              "--resource-dir",
              resources.toString(),
              "--install-dir",
              "/opt",
              "--description",
              "The build log of a scale model: figures reckoned, promises kept",
              "--license-file",
              home.resolve("LICENSE").toString(),
              "--dest",
              target.toString()));
      if (opens) {
        jpackage.add("--linux-shortcut");
      }
      tool("jpackage", jpackage);
      for (Path file : list(target)) {
        if (file.toString().endsWith(".deb")) {
          say(file + ": " + mega(Files.size(file)));
        }
      }
    }
  }

  private void install(String name, Path to) throws IOException {
    Files.copy(home.resolve("src/bundle").resolve(name), to);
    to.toFile().setExecutable(true, false);
  }

  /** What a command said, and its status. */
  private record Said(int status, String output) {}

  private Said run(Path java, String... args) throws Exception {
    List<String> all = new ArrayList<>();
    all.addAll(List.of(java.toString(), "-cp", work.resolve("input/chinelog.jar").toString()));
    all.add("chinelog.cli.Main");
    all.addAll(Arrays.asList(args));
    return command(all);
  }

  private static Said command(List<String> command) throws Exception {
    Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
    String output = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    return new Said(process.waitFor(), output);
  }

  private static void require(Said said, String what) {
    if (said.status != 0) {
      throw new IllegalStateException(what + " failed: " + said.output);
    }
  }

  private static boolean has(String program) {
    return Stream.of(System.getenv("PATH").split(File.pathSeparator))
        .anyMatch(folder -> Files.isExecutable(Path.of(folder, program)));
  }

  private static String tool(String name, List<String> args) {
    StringWriter said = new StringWriter();
    PrintWriter out = new PrintWriter(said, true);
    int status =
        ToolProvider.findFirst(name)
            .orElseThrow(
                () -> new IllegalStateException("this Java has no " + name + ": a JDK is needed"))
            .run(out, out, args.toArray(String[]::new));
    require(new Said(status, said.toString()), name);
    return said.toString().strip();
  }

  private static void write(Path file, String text) throws IOException {
    Files.createDirectories(file.getParent());
    Files.writeString(file, text);
  }

  private static List<Path> list(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.filter(Files::isRegularFile).sorted().toList();
    }
  }

  private static void copyAll(Path from, Path to) throws IOException {
    Files.createDirectories(to);
    for (Path file : list(from)) {
      Files.copy(file, to.resolve(file.getFileName()), StandardCopyOption.COPY_ATTRIBUTES);
    }
  }

  private static long size(Path folder) throws IOException {
    try (Stream<Path> all = Files.walk(folder)) {
      return all.filter(Files::isRegularFile).mapToLong(f -> f.toFile().length()).sum();
    }
  }

  private static void delete(Path folder) throws IOException {
    if (!Files.exists(folder)) {
      return;
    }
    Files.walkFileTree(
        folder,
        new SimpleFileVisitor<>() {
          @Override
          public FileVisitResult visitFile(Path file, BasicFileAttributes attributes)
              throws IOException {
            Files.delete(file);
            return FileVisitResult.CONTINUE;
          }

          @Override
          public FileVisitResult postVisitDirectory(Path dir, IOException e) throws IOException {
            Files.delete(dir);
            return FileVisitResult.CONTINUE;
          }
        });
  }

  private static String mega(long bytes) {
    return String.format(Locale.ROOT, "%.1f MB", bytes / 1e6);
  }

  private static void say(String line) {
    PrintStream out = System.out;
    out.println(line);
  }
}
