package evenrise.model.observation;

import java.util.Arrays;

/**
 * Rows to columns, one each, at the least sum of costs: the Hungarian method by shortest augmenting paths (Kuhn, 1955;
 * in the form of Jonker and Volgenant, 1987), in the cube of the number of columns.
 */
final class LeastCost {
    private LeastCost() {}

    /**
     * @param costs finite, a row each, no more rows than columns
     * @return the column of each row
     */
    static int[] columns(double[][] costs) {
        int rows = costs.length;
        int columns = rows == 0 ? 0 : costs[0].length;
        if (rows > columns) {
            throw new IllegalArgumentException(rows + " rows for " + columns + " columns");
        }
        double[] ofRow = new double[rows + 1];
        double[] ofColumn = new double[columns + 1];
        int[] rowAt = new int[columns + 1];
        int[] before = new int[columns + 1];
        for (int row = 1; row <= rows; row++) {
            double[] least = new double[columns + 1];
            boolean[] used = new boolean[columns + 1];
            Arrays.fill(least, Double.POSITIVE_INFINITY);
            rowAt[0] = row;
            int column = 0;
            do {
                used[column] = true;
                int current = rowAt[column];
                double step = Double.POSITIVE_INFINITY;
                int next = 0;
                for (int j = 1; j <= columns; j++) {
                    if (!used[j]) {
                        double reduced = costs[current - 1][j - 1] - ofRow[current] - ofColumn[j];
                        if (reduced < least[j]) {
                            least[j] = reduced;
                            before[j] = column;
                        }
                        if (least[j] < step) {
                            step = least[j];
                            next = j;
                        }
                    }
                }
                for (int j = 0; j <= columns; j++) {
                    if (used[j]) {
                        ofRow[rowAt[j]] += step;
                        ofColumn[j] -= step;
                    } else {
                        least[j] -= step;
                    }
                }
                column = next;
            } while (rowAt[column] != 0);
            for (; column != 0; column = before[column]) {
                rowAt[column] = rowAt[before[column]];
            }
        }
        int[] columnOf = new int[rows];
        for (int j = 1; j <= columns; j++) {
            if (rowAt[j] > 0) {
                columnOf[rowAt[j] - 1] = j - 1;
            }
        }
        return columnOf;
    }
}
