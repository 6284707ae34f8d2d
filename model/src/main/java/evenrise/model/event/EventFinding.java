package evenrise.model.event;

/**
 * What a rehearsal has found.
 *
 * @param atSeconds when it began
 * @param grade how grave it is
 * @param rule the rule of order that is broken, or another word for what it is about
 */
public record EventFinding(double atSeconds, Grade grade, String rule, String text) {
    /** How grave a remark is. */
    public enum Grade {
        /** Something that must not be. */
        BROKEN,
        /** Something that one should know. */
        NOTE
    }
}
