package evenrise.solver.report;

import evenrise.model.contract.Harmless;
import java.util.ArrayList;
import java.util.List;

/** Breaks running text into lines. */
public final class Wrap {
    /** Widest line of running text: what the narrowest usual terminal shows. */
    static final int WIDEST = 80;

    private static final int LONGEST_WORD = 60;
    private static final int LONGEST_TEXT = 1_000;

    private Wrap() {}

    /** Lines of at most {@value #WIDEST} columns, the first after {@code first}, the others after as many blanks. */
    public static List<String> lines(String first, String text) {
        String rest = " ".repeat(DisplayWidth.of(first));
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder(first);
        boolean isFresh = true;
        for (String each :
                DisplayWidth.cut(Harmless.shown(text).strip(), LONGEST_TEXT).split(" +")) {
            String word = DisplayWidth.cut(each, LONGEST_WORD);
            if (!isFresh && DisplayWidth.of(line.toString()) + 1 + DisplayWidth.of(word) > WIDEST) {
                lines.add(line.toString());
                line = new StringBuilder(rest);
                isFresh = true;
            }
            line.append(isFresh ? "" : " ").append(word);
            isFresh = false;
        }
        lines.add(line.toString().stripTrailing());
        return lines;
    }
}
