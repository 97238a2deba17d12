// Validates PDF files with the libraries of veraPDF, the reference validator.
//
//     java -cp JARS Check.java FILE...
//
// Profiles: 3a (ISO 19005-3, level A) and ua1 (ISO 14289-1). Prints one line for each file and
// profile: file, profile, "true" or "false", and each rule that failed with its clause, parted by
// tabs. Exit status 0 whenever it could look.
import java.io.FileInputStream;
import java.io.InputStream;
import java.util.Set;
import java.util.TreeSet;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.PDFAValidator;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.TestAssertion;
import org.verapdf.pdfa.results.ValidationResult;

public class Check {
    public static void main(String[] arguments) throws Exception {
        VeraGreenfieldFoundryProvider.initialise();
        for (String file : arguments) {
            for (String profile : new String[] {"3a", "ua1"}) {
                System.out.println(file + "\t" + profile + "\t" + verdict(file, profile));
            }
        }
    }

    private static String verdict(String file, String profile) throws Exception {
        PDFAFlavour flavour = PDFAFlavour.fromString(profile);
        try (InputStream stream = new FileInputStream(file);
                PDFAParser parser = Foundries.defaultInstance().createParser(stream, flavour);
                PDFAValidator validator =
                        Foundries.defaultInstance().createValidator(flavour, false)) {
            ValidationResult result = validator.validate(parser);
            Set<String> failed = new TreeSet<>();
            for (TestAssertion assertion : result.getTestAssertions()) {
                if (assertion.getStatus() == TestAssertion.Status.FAILED) {
                    failed.add(
                            assertion.getRuleId().getClause()
                                    + "-"
                                    + assertion.getRuleId().getTestNumber()
                                    + " "
                                    + assertion.getMessage());
                }
            }
            return result.isCompliant() + "\t" + failed;
        }
    }
}
