package evenrise.solver.report.page;

/** Makes names inert: no controls, no marks that turn the direction of text, no signs that print and XML refuse, not too long. */
public final class Plain {
    private static final int LONGEST_WORD = 40;

    private Plain() {}

    /** @param longest number of characters */
    public static String text(String name, int longest) {
        String plain = name.replaceAll("[\\p{Cntrl}\\u200e\\u200f\\u202a-\\u202e\\u2066-\\u2069\\ufffe\\uffff]", "");
        String cut = plain.length() <= longest ? plain : plain.substring(0, longest - 1) + "…";
        // A word without end would not break over a line.
        return cut.replaceAll("(\\S{" + LONGEST_WORD + "})(?=\\S)", "$1 ");
    }
}
