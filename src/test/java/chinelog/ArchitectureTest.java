package chinelog;

import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static java.util.Map.entry;
import static org.assertj.core.api.Assertions.assertThat;

import chinelog.edition.Edition;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.domain.JavaPackage;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.library.GeneralCodingRules;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZonedDateTime;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.jspecify.annotations.NullMarked;

/** The floors of the house: a package may use only those named beside it. */
@AnalyzeClasses(packages = "chinelog", importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {

  private static final String ROOT = "chinelog";

  private static final Map<String, List<String>> MAY_USE =
      Map.ofEntries(
          entry("digest", List.of()),
          entry("drawn", List.of()),
          entry("json", List.of()),
          entry("jpeg", List.of()),
          entry("problem", List.of()),
          entry("label", List.of("problem")),
          entry("nesting", List.of()),
          entry("quantity", List.of("problem")),
          entry("wording", List.of("quantity", "problem")),
          entry("log", List.of("wording", "quantity", "label", "problem", "digest")),
          entry(
              "reckon",
              List.of(
                  "log", "wording", "json", "nesting", "drawn", "quantity", "label", "problem")),
          entry("photo", List.of("log", "quantity", "label", "problem", "jpeg", "digest")),
          entry("keep", List.of("problem", "digest")),
          entry("edition", List.of("wording", "drawn", "quantity", "problem")),
          entry(
              "withhold",
              List.of(
                  "edition",
                  "reckon",
                  "photo",
                  "log",
                  "wording",
                  "drawn",
                  "quantity",
                  "label",
                  "problem",
                  "digest")),
          entry("markup", List.of("edition", "wording", "drawn", "quantity", "problem", "digest")),
          // A renderer cannot leak what it cannot name.
          entry("site", List.of("edition", "markup", "json", "quantity", "problem", "digest")),
          entry("book", List.of("edition", "markup", "wording", "quantity", "problem", "digest")),
          entry("pattern", List.of("edition", "markup", "drawn", "nesting", "quantity", "problem")),
          entry(
              "talk",
              List.of("edition", "markup", "wording", "quantity", "problem", "digest", "jpeg")),
          // The audit trusts neither the renderers nor the withholding.
          entry("audit", List.of("log", "label", "quantity", "problem", "digest")),
          entry(
              "publish",
              List.of(
                  "site",
                  "book",
                  "pattern",
                  "talk",
                  "markup",
                  "audit",
                  "withhold",
                  "edition",
                  "reckon",
                  "photo",
                  "log",
                  "quantity",
                  "label",
                  "problem",
                  "wording",
                  "digest")),
          entry(
              "desk",
              List.of(
                  "publish",
                  "site",
                  "markup",
                  "keep",
                  "json",
                  "withhold",
                  "edition",
                  "reckon",
                  "photo",
                  "log",
                  "wording",
                  "quantity",
                  "label",
                  "problem",
                  "json",
                  "digest")),
          entry(
              "cli",
              List.of(
                  "desk",
                  "publish",
                  "talk",
                  "keep",
                  "withhold",
                  "reckon",
                  "photo",
                  "log",
                  "wording",
                  "json",
                  "quantity",
                  "label",
                  "problem")));

  /** Libraries that stay where they are: everything else of ours must do without them. */
  private static final Map<String, List<String>> ONLY_IN =
      Map.ofEntries(
          entry("com.vladsch.flexmark..", List.of("log.markdown")),
          // The log reads YAML; the desk asks the parser where to splice.
          entry("org.snakeyaml..", List.of("log.reading", "desk.files")),
          entry("org.apache.commons.csv..", List.of("log", "reckon")),
          entry("org.apache.commons.numbers..", List.of("quantity")),
          entry("com.drew..", List.of("photo", "audit")),
          entry("net.coobird..", List.of("photo")),
          entry("boofcv..", List.of("photo")),
          entry("georegression..", List.of("photo")),
          entry("org.ddogleg..", List.of("photo")),
          entry("javax.imageio..", List.of("photo", "audit", "book", "talk", "jpeg")),
          entry("org.apache.pdfbox..", List.of("book", "pattern", "talk", "audit", "photo")),
          entry("com.openhtmltopdf..", List.of("book.setting", "book.page")),
          entry("freemarker..", List.of("markup", "site", "desk")),
          entry("com.sun.net.httpserver..", List.of("desk")),
          entry("javax.sound..", List.of("talk")),
          // Figures in words; the audit reads them by words of its own.
          entry("com.ibm.icu..", List.of("talk")),
          entry("org.jsoup..", List.of("audit")),
          // Paths of SVG; drawings are written without it.
          entry("org.apache.batik..", List.of("audit")),
          entry("picocli..", List.of("cli")));

  @ArchTest
  void packagesUseOnlyTheFloorsBelow(JavaClasses all) {
    MAY_USE.forEach(
        (floor, below) ->
            noClasses()
                .that(resideInAPackage(inside(floor)))
                .should()
                .dependOnClassesThat(
                    resideInAPackage(ROOT + "..")
                        .and(
                            not(
                                resideInAnyPackage(
                                    Stream.concat(Stream.of(floor), below.stream())
                                        .map(ArchitectureTest::inside)
                                        .toArray(String[]::new)))))
                .check(all));
  }

  @ArchTest
  void librariesStayInTheirPackages(JavaClasses all) {
    ONLY_IN.forEach(
        (library, floors) ->
            noClasses()
                .that(
                    not(
                        resideInAnyPackage(
                            floors.stream().map(ArchitectureTest::inside).toArray(String[]::new))))
                .should()
                .dependOnClassesThat(resideInAPackage(library))
                .allowEmptyShould(true)
                .check(all));
  }

  /** Rooms behind the face of a package: what they open to each other is no business of others. */
  private static final Map<String, List<String>> ROOMS =
      Map.ofEntries(
          entry("log", List.of("reading", "markdown")),
          entry("book", List.of("writing", "setting", "page")));

  @ArchTest
  void roomsOpenToTheirOwnFloorAlone(JavaClasses all) {
    ROOMS.forEach(
        (floor, rooms) ->
            rooms.forEach(
                room ->
                    noClasses()
                        .that(not(resideInAPackage(inside(floor))))
                        .should()
                        .dependOnClassesThat(resideInAPackage(inside(floor + "." + room)))
                        .check(all)));
  }

  @ArchTest
  void everyPackageIsOnTheList(JavaClasses all) {
    assertThat(all.getPackage(ROOT).getSubpackages())
        .extracting(JavaPackage::getRelativeName)
        .containsExactlyInAnyOrderElementsOf(MAY_USE.keySet());
  }

  @ArchTest
  void thereAreNoCycles(JavaClasses all) {
    slices().matching(ROOT + ".(**)").should().beFreeOfCycles().check(all);
  }

  @ArchTest
  void everyPackageIsNullMarked(JavaClasses all) {
    assertThat(all.getPackage(ROOT).getSubpackagesInTree())
        .allMatch(p -> p.isAnnotatedWith(NullMarked.class));
  }

  @ArchTest
  void onlyWithholdMakesAnEdition(JavaClasses all) {
    noClasses()
        .that(not(resideInAPackage(inside("withhold"))))
        .should()
        .callMethod(Edition.class, "seal", Edition.Contents.class)
        .check(all);
    assertThat(Edition.class.getConstructors()).isEmpty();
  }

  @ArchTest
  void onlyTheCommandLineTalksToTheConsole(JavaClasses all) {
    GeneralCodingRules.NO_CLASSES_SHOULD_ACCESS_STANDARD_STREAMS.check(
        all.that(not(resideInAPackage(inside("cli")))));
  }

  @ArchTest
  void nothingReadsTheClockByItself(JavaClasses all) {
    noClasses()
        .that(not(resideInAPackage(inside("cli"))))
        .should()
        .callMethod(LocalDate.class, "now")
        .orShould()
        .callMethod(LocalDateTime.class, "now")
        .orShould()
        .callMethod(ZonedDateTime.class, "now")
        .orShould()
        .callMethod(Instant.class, "now")
        .check(all);
  }

  @ArchTest
  void noTwoClassesBearOneName(JavaClasses all) {
    Set<String> names = new HashSet<>();
    assertThat(
            all.stream()
                .filter(JavaClass::isTopLevelClass)
                .map(JavaClass::getSimpleName)
                .filter(name -> !name.equals("package-info") && !names.add(name)))
        .isEmpty();
  }

  @ArchTest
  void publicMeansUsedByAnotherPackage(JavaClasses all) {
    assertThat(all.stream().filter(ArchitectureTest::isNeedlesslyPublic).map(JavaClass::getName))
        .isEmpty();
  }

  private static boolean isNeedlesslyPublic(JavaClass type) {
    return type.isTopLevelClass()
        && type.getModifiers().contains(JavaModifier.PUBLIC)
        && !type.getPackageName().equals(ROOT + ".cli")
        // A lambda leaves no trace of the interface it stands for.
        && !type.isAnnotatedWith(FunctionalInterface.class)
        && Stream.concat(Stream.of(type), nested(type))
            .flatMap(t -> t.getDirectDependenciesToSelf().stream())
            .allMatch(use -> use.getOriginClass().getPackageName().equals(type.getPackageName()));
  }

  private static Stream<JavaClass> nested(JavaClass type) {
    return type.getPackage().getClasses().stream()
        .filter(t -> t.getName().startsWith(type.getName() + "$"));
  }

  private static String inside(String floor) {
    return ROOT + "." + floor + "..";
  }
}
