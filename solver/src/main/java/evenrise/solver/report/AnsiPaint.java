package evenrise.solver.report;

/** Tones as colours of a terminal; the words say the same without them. */
public final class AnsiPaint implements Paint {
    private static final int BOLD = 1;
    private static final int FAINT = 2;
    private static final int RED = 31;
    private static final int GREEN = 32;

    @Override
    public String on(Tone tone, String text) {
        return switch (tone) {
            case PLAIN -> text;
            case HEADING -> styled(BOLD, text);
            case GOOD -> styled(GREEN, text);
            case BAD -> styled(RED, text);
            case FAINT -> styled(FAINT, text);
        };
    }

    /** Ends with a reset: the code that ends bold alone means double underline on many terminals. */
    private static String styled(int code, String text) {
        return "\u001b[" + code + "m" + text + "\u001b[0m";
    }
}
