package evenrise.solver.document;

import evenrise.solver.report.Sanitizer;

/** Makes names inert, as they are on screen: each sign that is not seen or turns others round is a ?; not too long. */
public final class Plain {
    private static final int LONGEST_WORD = 40;

    private Plain() {}

    /** @param longest number of characters */
    public static String text(String name, int longest) {
        String plain = Sanitizer.clean(name);
        String cut = plain.length() <= longest ? plain : plain.substring(0, longest - 1) + "…";
        // A word without end would not break over a line.
        return cut.replaceAll("(\\S{" + LONGEST_WORD + "})(?=\\S)", "$1 ");
    }
}
