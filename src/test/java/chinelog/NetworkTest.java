package chinelog;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;

/**
 * chinelog fetches nothing, and nothing but the desk's server serves: there is one door, which
 * stands open only as long as the desk does, and only to this machine.
 */
@AnalyzeClasses(packages = "chinelog", importOptions = ImportOption.DoNotIncludeTests.class)
class NetworkTest {

  @ArchTest
  static final ArchRule ONLY_THE_DESK_SERVES =
      noClasses()
          .that()
          .resideOutsideOfPackage("chinelog.desk.web")
          .should()
          .dependOnClassesThat()
          .haveNameMatching(
              "java\\.net\\.(.*Socket.*|URLConnection|HttpURLConnection|InetAddress|http\\..*)"
                  + "|java\\.nio\\.channels\\..*Socket.*|com\\.sun\\.net\\.httpserver\\..*");

  @ArchTest
  static final ArchRule NO_CLASS_FETCHES =
      noClasses()
          .should()
          .dependOnClassesThat()
          .haveNameMatching(
              "java\\.net\\.(Socket|DatagramSocket|URLConnection|HttpURLConnection|http\\..*)"
                  + "|java\\.nio\\.channels\\.(Asynchronous)?SocketChannel");
}
