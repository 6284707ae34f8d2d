package evenrise.solver.rendering;

import evenrise.solver.document.SiteLabel;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A label's lines in letters that fit on it: as large as they may be; then what is said beside goes, and only then what is
 * needed is cut.
 *
 * @param code to scan; empty where the label is too small for it
 * @param isWhole whether all that is needed stands there
 */
public record FittedLabel(List<Row> rows, Optional<LinkCode> code, boolean isWhole) {
    /** A line of print: its top and its letters, in millimetres from the label's inner edge and in points. */
    public record Row(String text, boolean isStrong, double top, double points) {}

    /** From the label's edge to its letters. */
    static final double EDGE = 1.5;

    private static final double LARGEST = 14;

    /** Letters of a label that is lower are smaller, so that they do not fill it. */
    private static final double POINTS_PER_MILLIMETRE = 0.25;

    private static final double SMALLEST = 5;
    private static final double STEP = 0.5;
    private static final double STRONG = 1.2;
    private static final double LINE = 1.18;
    private static final double MILLIMETRES = 25.4 / 72;

    /** Part of a label's width that a code may take. */
    private static final double CODE_PART = 0.42;

    static FittedLabel of(SiteLabel label, LabelStock stock, String link, PrintFonts fonts) {
        double height = stock.labelHeight() - 2 * EDGE;
        Optional<LinkCode> code = LinkCode.of(link, Math.min(stock.labelHeight() - 1, CODE_PART * stock.labelWidth()));
        FittedLabel with = of(
                label, stock.labelWidth() - 2 * EDGE - code.map(LinkCode::side).orElse(0.0), height, code, fonts);
        // Words come first: a code that leaves no room for them goes.
        return with.isWhole() || code.isEmpty()
                ? with
                : of(label, stock.labelWidth() - 2 * EDGE, height, Optional.empty(), fonts);
    }

    private static FittedLabel of(
            SiteLabel label, double width, double height, Optional<LinkCode> code, PrintFonts fonts) {
        List<Row> rows = List.of();
        for (double points = largest(height); points >= SMALLEST; points -= STEP) {
            rows = rows(label.lines(), points, width, fonts);
            if (bottom(rows) <= height) {
                return new FittedLabel(rows, code, true);
            }
        }
        List<SiteLabel.Line> needed =
                label.lines().stream().filter(line -> !line.mayBeCut()).toList();
        rows = rows(needed, SMALLEST, width, fonts);
        if (bottom(rows) <= height) {
            return new FittedLabel(rows, code, true);
        }
        List<Row> first = new ArrayList<>(rows);
        while (first.size() > 1 && bottom(first) > height) {
            first.remove(first.size() - 1);
        }
        Row last = first.remove(first.size() - 1);
        String cut = cut(last.text() + "……", last.isStrong(), last.points(), width, fonts);
        first.add(new Row(cut, last.isStrong(), last.top(), last.points()));
        return new FittedLabel(first, code, false);
    }

    private static double largest(double height) {
        double points = Math.min(LARGEST, POINTS_PER_MILLIMETRE * height);
        return Math.max(SMALLEST, Math.rint(points / STEP) * STEP);
    }

    private static double bottom(List<Row> rows) {
        Row last = rows.get(rows.size() - 1);
        return last.top() + last.points() * LINE * MILLIMETRES;
    }

    private static List<Row> rows(List<SiteLabel.Line> lines, double points, double width, PrintFonts fonts) {
        List<Row> rows = new ArrayList<>();
        double top = 0;
        for (SiteLabel.Line line : lines) {
            double size = line.isStrong() ? points * STRONG : points;
            List<String> texts = line.mayBeCut()
                    ? List.of(cut(line.text(), line.isStrong(), size, width, fonts))
                    : wrapped(line.text(), line.isStrong(), size, width, fonts);
            for (String text : texts) {
                rows.add(new Row(text, line.isStrong(), top, size));
                top += size * LINE * MILLIMETRES;
            }
        }
        return rows;
    }

    /** With a sign that says so. */
    private static String cut(String text, boolean isStrong, double size, double width, PrintFonts fonts) {
        if (fonts.width(text, isStrong) * size * MILLIMETRES <= width) {
            return text;
        }
        String kept = text;
        while (!kept.isEmpty() && fonts.width(kept + "…", isStrong) * size * MILLIMETRES > width) {
            kept = kept.substring(0, kept.offsetByCodePoints(kept.length(), -1));
        }
        return kept.strip() + "…";
    }

    /** Between words where it can, else within one. */
    private static List<String> wrapped(String text, boolean isStrong, double size, double width, PrintFonts fonts) {
        List<String> lines = new ArrayList<>();
        String rest = text;
        while (fonts.width(rest, isStrong) * size * MILLIMETRES > width) {
            int end = 0;
            int next = rest.offsetByCodePoints(0, 1);
            while (next <= rest.length()
                    && fonts.width(rest.substring(0, next), isStrong) * size * MILLIMETRES <= width) {
                end = next;
                next = next < rest.length() ? rest.offsetByCodePoints(next, 1) : rest.length() + 1;
            }
            end = Math.max(end, rest.offsetByCodePoints(0, 1));
            int space = rest.lastIndexOf(' ', end);
            int at = space > 0 ? space : end;
            lines.add(rest.substring(0, at).strip());
            rest = rest.substring(at).strip();
        }
        lines.add(rest);
        return lines;
    }
}
