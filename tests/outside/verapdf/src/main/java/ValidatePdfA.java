import java.io.FileInputStream;
import java.util.ArrayList;
import java.util.List;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.PDFAValidator;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.TestAssertion;
import org.verapdf.pdfa.results.ValidationResult;

/**
 * Validates PDF files against one flavour (3a, 3b, ua1 …): one line "PASS file" or "FAIL file" each,
 * then one indented line per failed assertion with its clause. Exit 0 when all passed, 1 when one
 * failed, 2 when one could not be read.
 */
public class ValidatePdfA {
  public static void main(String[] args) {
    if (args.length < 2) {
      System.err.println("use: ValidatePdfA FLAVOUR FILE...");
      System.exit(2);
    }
    VeraGreenfieldFoundryProvider.initialise();
    PDFAFlavour flavour = PDFAFlavour.byFlavourId(args[0]);
    if (flavour == PDFAFlavour.NO_FLAVOUR) {
      System.err.println("unknown flavour " + args[0]);
      System.exit(2);
    }
    int exit = 0;
    for (int i = 1; i < args.length; i++) exit = Math.max(exit, validate(args[i], flavour));
    System.exit(exit);
  }

  private static int validate(String file, PDFAFlavour flavour) {
    try (FileInputStream in = new FileInputStream(file);
        PDFAParser parser = Foundries.defaultInstance().createParser(in, flavour);
        PDFAValidator validator = Foundries.defaultInstance().createValidator(flavour, 100, false, false, false)) {
      ValidationResult result = validator.validate(parser);
      System.out.println((result.isCompliant() ? "PASS " : "FAIL ") + file);
      for (TestAssertion assertion : new ArrayList<>((List<TestAssertion>) result.getTestAssertions())) {
        if (assertion.getStatus() != TestAssertion.Status.FAILED) continue;
        System.out.println(
            "  " + assertion.getRuleId().getSpecification() + " " + assertion.getRuleId().getClause()
                + "-" + assertion.getRuleId().getTestNumber() + ": " + assertion.getMessage()
                + " at " + assertion.getLocation().getContext());
      }
      return result.isCompliant() ? 0 : 1;
    } catch (Exception e) {
      System.out.println("ERROR " + file + ": " + e);
      return 2;
    }
  }
}
