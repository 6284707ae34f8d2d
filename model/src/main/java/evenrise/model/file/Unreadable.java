package evenrise.model.file;

import evenrise.model.check.Severity;

/** The file cannot be taken in at all, for the one reason given. Never leaves this package. */
final class Unreadable extends Exception {
    private static final long serialVersionUID = 1;
    private final transient Problem problem;

    Unreadable(int line, int column, String subject, String value, String expected, String cure) {
        super(value);
        this.problem = new Problem(Severity.ERROR, "", line, column, subject, value, expected, cure);
    }

    Problem problem() {
        return problem;
    }
}
