package evenrise.solver.report;

import evenrise.model.contract.Harmless;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Breaks running text into lines. */
public final class Wrap {
    /** Widest line of running text: what the narrowest usual terminal shows. */
    static final int WIDEST = 80;

    private static final int LONGEST_WORD = 60;
    private static final int LONGEST_TEXT = 1_000;

    private Wrap() {}

    /** In how many pieces a word is broken at most, where it is wider than its column. */
    private static final int MOST_PIECES = 4;

    /** Words in lines of so many columns; a much longer one has a line of its own. Blanks at the beginning stay. */
    static List<String> within(int columns, String text) {
        List<String> lines = new ArrayList<>();
        if (DisplayWidth.of(text) <= columns) {
            return List.of(text);
        }
        String indent = text.substring(0, text.length() - text.stripLeading().length());
        StringBuilder line = new StringBuilder(indent);
        for (String word : Arrays.stream(text.strip().split(" +"))
                .flatMap(each -> pieces(each, columns).stream())
                .toList()) {
            boolean isFresh = line.length() == indent.length();
            if (!isFresh && DisplayWidth.of(line.toString()) + 1 + DisplayWidth.of(word) > columns) {
                lines.add(line.toString());
                line = new StringBuilder(indent);
                isFresh = true;
            }
            line.append(isFresh ? "" : " ").append(word);
        }
        lines.add(line.toString());
        return lines;
    }

    /** A word that is somewhat wider than its column, in pieces that fit. */
    private static List<String> pieces(String word, int columns) {
        int width = DisplayWidth.of(word);
        if (width <= columns || width > MOST_PIECES * columns) {
            return List.of(word);
        }
        List<String> pieces = new ArrayList<>();
        StringBuilder piece = new StringBuilder();
        word.codePoints().forEach(sign -> {
            if (DisplayWidth.of(piece + Character.toString(sign)) > columns) {
                pieces.add(piece.toString());
                piece.setLength(0);
            }
            piece.appendCodePoint(sign);
        });
        pieces.add(piece.toString());
        return pieces;
    }

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
