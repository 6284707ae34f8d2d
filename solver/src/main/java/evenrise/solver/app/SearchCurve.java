package evenrise.solver.app;

import evenrise.model.contract.Decimals;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The course of a search in rows of text: over time, a bar from what is proven up to the best plan, so that what is still
 * open is the height of the bars. Plans that break hard rules are not in it, since their objective says nothing. However
 * long a search takes, the curve has as many columns: each comes to stand for twice the time when all are full.
 *
 * @since 0.1.0
 */
public final class SearchCurve {
    private static final int COLUMNS = 60;
    private static final int ROWS = 5;
    private static final double FIRST_SECONDS_PER_COLUMN = 0.25;
    /** Steep first plans would flatten all that follows: the scale ends at the best of this share of the time. */
    private static final int SHARE_ABOVE_SCALE = 6;

    private static final int EIGHTHS = 8;
    private static final String FULL_TO_EMPTY = " ▁▂▃▄▅▆▇█";

    /** Of each column the best objective and the greatest bound by then; NaN before there was a plan. */
    private final double[] objectives = new double[COLUMNS];

    private final double[] bounds = new double[COLUMNS];
    private double secondsPerColumn = FIRST_SECONDS_PER_COLUMN;
    private int filled;

    /** Takes in how far a job is; times never go back. */
    public void add(JobProgress progress) {
        progress.search().ifPresent(each -> add(progress.elapsedSeconds(), each));
    }

    private void add(double elapsedSeconds, SearchStanding standing) {
        while (elapsedSeconds / secondsPerColumn >= COLUMNS) {
            extend(COLUMNS);
            halve();
        }
        int column = (int) (elapsedSeconds / secondsPerColumn);
        extend(column);
        objectives[column] = standing.hardViolations() == 0 ? standing.objective() : Double.NaN;
        bounds[column] = standing.provenObjective();
        filled = Math.max(filled, column + 1);
    }

    /** What stood last stands until then. */
    private void extend(int columns) {
        for (; filled < columns; filled++) {
            objectives[filled] = filled == 0 ? Double.NaN : objectives[filled - 1];
            bounds[filled] = filled == 0 ? 0 : bounds[filled - 1];
        }
    }

    private void halve() {
        for (int i = 0; i < COLUMNS / 2; i++) {
            objectives[i] = objectives[2 * i + 1];
            bounds[i] = bounds[2 * i + 1];
        }
        filled = COLUMNS / 2;
        secondsPerColumn *= 2;
    }

    /** Rows of at most 79 columns, the uppermost first; none as long as there is no course to be seen. */
    public List<String> rows() {
        int first = 0;
        while (first < filled && Double.isNaN(objectives[first])) {
            first++;
        }
        if (filled - first < 2) {
            return List.of();
        }
        double best = objectives[filled - 1];
        double top = objectives[first + (filled - first) / SHARE_ABOVE_SCALE];
        double proven = bounds[filled - 1];
        boolean isProven = proven > 0;
        double bottom = isProven
                ? Arrays.stream(bounds, first, filled)
                        .filter(each -> each > 0)
                        .min()
                        .orElse(proven)
                : best - (top - best) / ROWS;
        if (!(top > bottom)) {
            return List.of();
        }
        List<String> rows = new ArrayList<>();
        for (int row = ROWS - 1; row >= 0; row--) {
            rows.add(label(row, top, bottom) + bars(row, top, bottom).stripTrailing());
        }
        rows.add(" ".repeat(10)
                + (isProven
                        ? "bars stand on what is proven, now " + Decimals.fixed(proven, 1)
                        : "nothing is proven yet: bars have no foot")
                + "; a column is " + Decimals.fixed(secondsPerColumn, secondsPerColumn < 1 ? 2 : 0) + " s");
        return rows;
    }

    private static String label(int row, double top, double bottom) {
        String value = row == ROWS - 1 ? Decimals.fixed(top, 1) : row == 0 ? Decimals.fixed(bottom, 1) : "";
        return " ".repeat(Math.max(0, 9 - value.length())) + value + " ";
    }

    private String bars(int row, double top, double bottom) {
        double height = (top - bottom) / ROWS;
        StringBuilder bars = new StringBuilder();
        for (int i = 0; i < filled; i++) {
            double foot = (Math.max(bounds[i], bottom) - bottom) / height - row;
            double head = (objectives[i] - bottom) / height - row;
            boolean isBelowFoot = foot >= 1 || foot > 0.5 && head >= 1;
            int eighths =
                    Double.isNaN(head) || isBelowFoot ? 0 : (int) Math.round(EIGHTHS * Math.min(1, Math.max(0, head)));
            bars.append(FULL_TO_EMPTY.charAt(eighths));
        }
        return bars.toString();
    }
}
