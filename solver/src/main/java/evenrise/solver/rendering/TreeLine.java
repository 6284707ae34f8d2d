package evenrise.solver.rendering;

import evenrise.solver.document.DistributionRow;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * One line of the distribution drawn as a tree: the lines that come down to it, what it is as a sign, and its cells. Each
 * line is a drawing of its own, so that a tree goes on over as many pages as it needs.
 *
 * @param lines SVG path of the conductors, in the drawing's units
 * @param sign SVG path of what it is: a transformer two rings, a source a ring, a panel a box, a node a bar
 * @param what it is, in words
 * @param width of the drawing, in its units: four to a millimetre
 * @param height of the line, which holds the words, so that conductors join those of the next
 */
public record TreeLine(String lines, String sign, String what, int width, int height, Map<String, String> cells) {
    private static final int LEAST_HEIGHT = 26;
    private static final int OF_A_LINE = 13;
    private static final int LETTERS_A_LINE = 30;

    private static final int STEP = 16;
    private static final int SIGN = 22;

    static List<TreeLine> of(List<DistributionRow> rows, List<Map<String, String>> cells) {
        int deepest = rows.stream()
                .mapToInt(row -> row.ancestorsContinue().size())
                .max()
                .orElse(0);
        List<TreeLine> lines = new ArrayList<>();
        for (int i = 0; i < rows.size(); i++) {
            boolean feeds = i + 1 < rows.size()
                    && rows.get(i + 1).ancestorsContinue().size()
                            > rows.get(i).ancestorsContinue().size();
            String what = what(cells.get(i));
            int height = Math.max(LEAST_HEIGHT, 4 + OF_A_LINE * (1 + (what.length() - 1) / LETTERS_A_LINE));
            List<Boolean> ancestors = rows.get(i).ancestorsContinue();
            lines.add(new TreeLine(
                    conductors(ancestors, feeds, height),
                    sign(rows.get(i).kind(), STEP * ancestors.size(), height / 2),
                    what,
                    STEP * deepest + SIGN + 4,
                    height,
                    cells.get(i)));
        }
        return lines;
    }

    private static String what(Map<String, String> cells) {
        return Stream.of("system", "transformer", "wiring")
                .map(cells::get)
                .filter(words -> !words.isEmpty())
                .collect(Collectors.joining("; "));
    }

    private static String conductors(List<Boolean> ancestors, boolean feeds, int height) {
        StringBuilder path = new StringBuilder();
        int middle = height / 2;
        for (int level = 0; level < ancestors.size(); level++) {
            int x = STEP * level + SIGN / 2;
            boolean isOwn = level == ancestors.size() - 1;
            if (isOwn) {
                path.append(format("M%d 0V%d", x, ancestors.get(level) ? height : middle));
                path.append(format("M%d %dH%d", x, middle, x + STEP - SIGN / 2));
            } else if (ancestors.get(level)) {
                path.append(format("M%d 0V%d", x, height));
            }
        }
        if (feeds) {
            path.append(format("M%d %dV%d", STEP * ancestors.size() + SIGN / 2, middle + 7, height));
        }
        return path.toString();
    }

    private static String sign(String kind, int left, int middle) {
        int centre = left + SIGN / 2;
        return switch (kind) {
            case "transformer" -> ring(centre, middle - 3, 5) + ring(centre, middle + 3, 5);
            case "source", "supply" -> ring(centre, middle, 7) + format("M%d %dq2 -5 4 0t4 0", centre - 4, middle);
            case "panel" -> format("M%d %dh14v12h-14zM%d %dv12", centre - 7, middle - 6, centre, middle - 6);
            default -> format("M%d %dh16v3h-16z", centre - 8, middle - 1);
        };
    }

    private static String ring(int x, int y, int radius) {
        return format(
                "M%d %da%d %d 0 1 0 %d 0a%d %d 0 1 0 %d 0",
                x - radius, y, radius, radius, 2 * radius, radius, radius, -2 * radius);
    }

    private static String format(String pattern, Object... values) {
        return String.format(Locale.ROOT, pattern, values);
    }
}
