package evenrise.solver.document;

import evenrise.model.contract.Harmless;
import java.util.regex.Pattern;

/** Makes names inert, as they are on screen: each sign that is not seen or turns others round is a ?; not too long. */
public final class Plain {
    private static final int LONGEST_WORD = 40;

    /** A word without end would not break over a line. */
    private static final Pattern ENDLESS_WORD = Pattern.compile("(\\S{" + LONGEST_WORD + "})(?=\\S)");

    private Plain() {}

    /** @param longest number of characters */
    public static String text(String name, int longest) {
        String cut = Harmless.cut(Harmless.shown(name), longest);
        return cut.length() <= LONGEST_WORD ? cut : ENDLESS_WORD.matcher(cut).replaceAll("$1 ");
    }
}
