package evenrise.solver.report;

import evenrise.model.plan.Assessment;
import java.util.List;

/** What all judges together say of a plan: the first lines of every screen that shows one. */
public final class AssessmentText {
    /** What whoever holds a plan that breaks something must know. */
    public static final String NOT_TO_BE_BUILT = "Nothing is to be built from this plan.";

    private AssessmentText() {}

    public static List<String> lines(Assessment assessment, Paint paint) {
        Section section = new Section(paint, "Assessment").text(tone(assessment), capital(assessment.headline()));
        return (assessment.isBroken() ? section.text(Tone.BAD, NOT_TO_BE_BUILT) : section).lines();
    }

    /** Good only where nothing is left to check. */
    private static Tone tone(Assessment assessment) {
        if (assessment.isBroken()) {
            return Tone.BAD;
        }
        return assessment.isComplete() && assessment.guessedFields() + assessment.loadsWithoutInrush() == 0
                ? Tone.GOOD
                : Tone.PLAIN;
    }

    /** A sentence begins with a capital letter. */
    public static String capital(String sentence) {
        return sentence.isEmpty() ? sentence : Character.toUpperCase(sentence.charAt(0)) + sentence.substring(1);
    }
}
