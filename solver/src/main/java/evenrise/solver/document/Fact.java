package evenrise.solver.document;

/**
 * One figure of the cover.
 *
 * @param isBad whether it says that something is wrong
 */
public record Fact(String name, String value, String note, boolean isBad) {
    public Fact(String name, String value, String note) {
        this(name, value, note, false);
    }
}
