package chinelog.book;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.util.List;
import java.util.logging.LogManager;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.PDFAValidator;
import org.verapdf.pdfa.VeraPDFFoundry;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.TestAssertion;
import org.verapdf.pdfa.results.TestAssertion.Status;
import org.verapdf.pdfa.results.ValidationResult;

/** The files against ISO 14289-1 (PDF/UA-1) and ISO 19005-2 (PDF/A-2a), by veraPDF's profiles. */
@Order(2)
class StandardsTest {

  @BeforeAll
  static void wakeTheValidator() {
    LogManager.getLogManager().reset();
    VeraGreenfieldFoundryProvider.initialise();
  }

  @ParameterizedTest
  @EnumSource(mode = EnumSource.Mode.EXCLUDE, names = "SHEETS")
  void everyFileMeetsBothStandards(Prints print) throws Exception {
    List<PDFAFlavour> profiles = List.of(PDFAFlavour.PDFUA_1, PDFAFlavour.PDFA_2_A);
    try (VeraPDFFoundry foundry = Foundries.defaultInstance();
        PDFAValidator validator = foundry.createValidator(profiles);
        PDFAParser parser = foundry.createParser(new ByteArrayInputStream(print.bytes()))) {
      List<ValidationResult> results = validator.validateAll(parser);
      assertThat(results).hasSize(profiles.size());
      assertThat(results)
          .flatExtracting(ValidationResult::getTestAssertions)
          .filteredOn(a -> a.getStatus() == Status.FAILED)
          .extracting(StandardsTest::inWords)
          .isEmpty();
      assertThat(results).allMatch(ValidationResult::isCompliant);
    }
  }

  private static String inWords(TestAssertion failed) {
    return failed.getRuleId().getClause()
        + " "
        + failed.getMessage()
        + " at "
        + failed.getLocation().getContext();
  }
}
