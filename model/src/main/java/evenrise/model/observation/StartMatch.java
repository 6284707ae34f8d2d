package evenrise.model.observation;

import evenrise.model.observation.Likeness.Best;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;
import java.util.OptionalInt;

/** Expected to recorded starts at the least cost in all: each is one of the other kind, or missing. */
final class StartMatch {
    private final int expected;
    private final int recorded;
    private final Best[][] pairs;
    private final int[] recordedOf;

    /** @param planSeconds of each recorded start, by the plan's clock */
    StartMatch(List<ExpectedStart> expected, List<RecordedStart> recorded, double[] planSeconds, Likeness likeness) {
        this.expected = expected.size();
        this.recorded = recorded.size();
        this.pairs = new Best[expected.size()][recorded.size()];
        for (int i = 0; i < this.expected; i++) {
            for (int j = 0; j < this.recorded; j++) {
                Best best = likeness.of(expected.get(i), recorded.get(j), planSeconds[j]);
                pairs[i][j] = best.cost() < Likeness.NO_PAIR ? best : null;
            }
        }
        this.recordedOf = solved(-1, -1);
    }

    /** What stands for an expected start; empty where nothing does. */
    OptionalInt recordedOf(int start) {
        return recordedOf[start] < 0 ? OptionalInt.empty() : OptionalInt.of(recordedOf[start]);
    }

    Best pair(int start) {
        return pairs[start][recordedOf[start]];
    }

    /** Recorded starts that nothing expected stands for. */
    List<Integer> unknown() {
        boolean[] known = new boolean[recorded];
        for (int each : recordedOf) {
            if (each >= 0) {
                known[each] = true;
            }
        }
        List<Integer> unknown = new ArrayList<>();
        for (int j = 0; j < recorded; j++) {
            if (!known[j]) {
                unknown.add(j);
            }
        }
        return unknown;
    }

    double cost() {
        return cost(recordedOf);
    }

    /**
     * How sure it is that an expected start is what it is said to be, 0 to 1: by what everything would cost if it were
     * something else, as odds of likelihoods.
     */
    double confidence(int start) {
        int[] otherwise = solved(start, recordedOf[start]);
        return Sureness.of(cost(otherwise) - cost());
    }

    private double cost(int[] columns) {
        double cost = 0;
        boolean[] known = new boolean[recorded];
        for (int i = 0; i < expected; i++) {
            if (columns[i] < 0) {
                cost += Likeness.MISSING;
            } else {
                cost += pairs[i][columns[i]].cost();
                known[columns[i]] = true;
            }
        }
        for (boolean each : known) {
            cost += each ? 0 : Likeness.MISSING;
        }
        return cost;
    }

    /** Part by part, since few pairs are possible. @param barredRow whose column, or whose having none, is barred */
    private int[] solved(int barredRow, int barredColumn) {
        int[] columns = new int[expected];
        Arrays.fill(columns, -1);
        boolean[] done = new boolean[expected];
        for (int i = 0; i < expected; i++) {
            if (!done[i]) {
                part(i, done, columns, barredRow, barredColumn);
            }
        }
        return columns;
    }

    private void part(int first, boolean[] done, int[] columns, int barredRow, int barredColumn) {
        List<Integer> rows = new ArrayList<>();
        List<Integer> among = new ArrayList<>();
        boolean[] taken = new boolean[recorded];
        Deque<Integer> open = new ArrayDeque<>(List.of(first));
        done[first] = true;
        while (!open.isEmpty()) {
            int row = open.remove();
            rows.add(row);
            for (int j = 0; j < recorded; j++) {
                if (pairs[row][j] != null && !taken[j]) {
                    taken[j] = true;
                    among.add(j);
                    for (int i = 0; i < expected; i++) {
                        if (!done[i] && pairs[i][j] != null) {
                            done[i] = true;
                            open.add(i);
                        }
                    }
                }
            }
        }
        // A pair saves what both would cost as missing; a column of its own lets a row have none.
        double never = 1e6;
        double[][] costs = new double[rows.size()][among.size() + rows.size()];
        for (int i = 0; i < rows.size(); i++) {
            int row = rows.get(i);
            Arrays.fill(costs[i], never);
            for (int j = 0; j < among.size(); j++) {
                Best pair = pairs[row][among.get(j)];
                boolean isBarred = row == barredRow && among.get(j) == barredColumn;
                if (pair != null && !isBarred) {
                    costs[i][j] = pair.cost() - 2 * Likeness.MISSING;
                }
            }
            costs[i][among.size() + i] = row == barredRow && barredColumn < 0 ? never : 0;
        }
        int[] found = LeastCost.columns(costs);
        for (int i = 0; i < rows.size(); i++) {
            columns[rows.get(i)] = found[i] < among.size() && costs[i][found[i]] < never ? among.get(found[i]) : -1;
        }
    }
}
