package evenrise.model.file;

import evenrise.model.check.Severity;
import evenrise.model.contract.Harmless;
import evenrise.model.contract.Words;
import evenrise.model.plan.Finding;
import evenrise.model.plan.Grade;

/**
 * One thing that is wrong with an input file.
 *
 * @param pointer JSON pointer to the value, or to where it is missing; empty for the file as a whole
 * @param line line from 1; 0 where there is none
 * @param column column from 1, in characters; 0 where there is none
 * @param subject what is wrong, in words: {@code poles of load 'SUB-3'}
 * @param value what stands there; {@code missing} where nothing does
 * @param expected what should stand there
 * @param cure the likely cure, as a sentence; empty where there is no better advice than what is expected
 */
public record Problem(
        Severity severity,
        String pointer,
        int line,
        int column,
        String subject,
        String value,
        String expected,
        String cure)
        implements Finding {

    /** Whether the file is not well-formed, or no plan can follow from it. */
    @Override
    public String check() {
        return severity == Severity.IMPOSSIBLE ? "feasible" : "well-formed";
    }

    @Override
    public String kind() {
        return Words.word(severity);
    }

    @Override
    public Grade gravity() {
        return severity == Severity.REMARK ? Grade.NOTE : Grade.BREAKS;
    }

    @Override
    public String place() {
        return pointer;
    }

    /** One line: place, subject, value, expected, cure. It holds no control characters. */
    @Override
    public String message() {
        String at = line > 0 ? "line " + line + ", column " + column + (pointer.isEmpty() ? "" : ", ") : "";
        String where = at + Harmless.named(pointer) + (at.isEmpty() && pointer.isEmpty() ? "" : ": ");
        return where + subject + " is " + value + ", expected " + expected + "." + (cure.isEmpty() ? "" : " " + cure);
    }
}
