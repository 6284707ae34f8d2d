package evenrise.model.check;

/**
 * What a check found in a project or plan. It reads "… is {@code value}, expected {@code expected}. {@code cure}".
 *
 * @param pointer JSON pointer to what is wrong; may name a field that the file leaves to its default
 * @param cure a sentence, or empty
 */
public record Objection(Severity severity, String pointer, String value, String expected, String cure) {
    static Objection error(String pointer, String value, String expected, String cure) {
        return new Objection(Severity.ERROR, pointer, value, expected, cure);
    }

    static Objection impossible(String pointer, String value, String expected, String cure) {
        return new Objection(Severity.IMPOSSIBLE, pointer, value, expected, cure);
    }
}
