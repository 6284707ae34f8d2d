package evenrise.solver.report;

/** Gives text the look of its tone. It must not change the text's width. */
@FunctionalInterface
public interface Paint {
    /** No colour at all. */
    Paint NONE = (tone, text) -> text;

    String on(Tone tone, String text);
}
