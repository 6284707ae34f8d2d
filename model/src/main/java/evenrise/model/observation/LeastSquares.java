package evenrise.model.observation;

/** Values as a sum of columns, by least squares: columns are made orthogonal one after another (Gram and Schmidt). */
final class LeastSquares {
    /** A column of which less than so much is its own says nothing that those before do not. */
    private static final double OWN = 1e-6;

    private final double[][] orthogonal;
    private final double[] left;
    private final double[] parts;
    private final double[][] inverse;
    private final double squares;
    private final boolean isUnique;

    /** @param columns as many values each; they are overwritten */
    LeastSquares(double[][] columns, double[] values) {
        int n = columns.length;
        double[][] upper = new double[n][n];
        orthogonal = columns;
        left = values.clone();
        double[] along = new double[n];
        boolean unique = true;
        for (int j = 0; j < n; j++) {
            double before = Math.sqrt(product(columns[j], columns[j]));
            for (int i = 0; i < j; i++) {
                upper[i][j] = product(columns[i], columns[j]);
                subtract(columns[j], columns[i], upper[i][j]);
            }
            upper[j][j] = Math.sqrt(product(columns[j], columns[j]));
            if (!(upper[j][j] > OWN * before)) {
                unique = false;
                break;
            }
            for (int k = 0; k < columns[j].length; k++) {
                columns[j][k] /= upper[j][j];
            }
            along[j] = product(columns[j], left);
            subtract(left, columns[j], along[j]);
        }
        isUnique = unique;
        squares = product(left, left);
        parts = new double[n];
        inverse = new double[n][n];
        if (unique) {
            invert(upper);
            for (int i = 0; i < n; i++) {
                for (int j = i; j < n; j++) {
                    parts[i] += inverse[i][j] * along[j];
                }
            }
        }
    }

    private void invert(double[][] upper) {
        for (int j = 0; j < upper.length; j++) {
            inverse[j][j] = 1 / upper[j][j];
            for (int i = j - 1; i >= 0; i--) {
                double sum = 0;
                for (int k = i + 1; k <= j; k++) {
                    sum += upper[i][k] * inverse[k][j];
                }
                inverse[i][j] = -sum / upper[i][i];
            }
        }
    }

    /**
     * What one column more would come to.
     *
     * @param part how much of it would be in the values; 0 where it says nothing new
     * @param squares sum of squares that would be left
     */
    record OneMore(double part, double squares) {}

    OneMore with(double[] column) {
        double[] own = column.clone();
        double before = Math.sqrt(product(own, own));
        for (double[] each : orthogonal) {
            subtract(own, each, product(each, own));
        }
        double length = product(own, own);
        if (!(Math.sqrt(length) > OWN * before)) {
            return new OneMore(0, squares);
        }
        double part = product(own, left) / length;
        return new OneMore(part, squares - part * part * length);
    }

    /** Whether no column is a sum of others. */
    boolean isUnique() {
        return isUnique;
    }

    /** How much of a column is in the values. */
    double part(int column) {
        return parts[column];
    }

    /** Variance of the sum of some parts where each value has a variance of 1. */
    double variance(int... columns) {
        double sum = 0;
        for (int k = 0; k < inverse.length; k++) {
            double row = 0;
            for (int column : columns) {
                row += inverse[column][k];
            }
            sum += row * row;
        }
        return sum;
    }

    /** Sum of squares that the columns leave. */
    double squares() {
        return squares;
    }

    private static double product(double[] one, double[] other) {
        double sum = 0;
        for (int k = 0; k < one.length; k++) {
            sum += one[k] * other[k];
        }
        return sum;
    }

    private static void subtract(double[] from, double[] what, double times) {
        for (int k = 0; k < from.length; k++) {
            from[k] -= times * what[k];
        }
    }
}
