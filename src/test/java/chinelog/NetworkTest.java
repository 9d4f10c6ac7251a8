package chinelog;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;

/** chinelog neither serves nor fetches anything: there is no door that could stand open. */
@AnalyzeClasses(packages = "chinelog", importOptions = ImportOption.DoNotIncludeTests.class)
class NetworkTest {

  @ArchTest
  static final ArchRule NO_CLASS_TALKS_TO_A_NETWORK =
      noClasses()
          .should()
          .dependOnClassesThat()
          .haveNameMatching(
              "java\\.net\\.(.*Socket.*|URLConnection|HttpURLConnection|InetAddress|http\\..*)"
                  + "|java\\.nio\\.channels\\..*Socket.*|com\\.sun\\.net\\.httpserver\\..*");
}
