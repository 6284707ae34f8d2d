package evenrise.model.nodal;

/** Solves linear equations of complex numbers by elimination with pivots; rows hold real and imaginary parts in turn. */
final class ComplexSolver {
    private ComplexSolver() {}

    /**
     * @param matrix n rows of 2n numbers; spoilt
     * @param right 2n numbers; spoilt
     * @return 2n numbers
     */
    static double[] solve(double[][] matrix, double[] right) {
        int n = matrix.length;
        for (int column = 0; column < n; column++) {
            int pivot = column;
            for (int row = column + 1; row < n; row++) {
                if (squared(matrix[row], column) > squared(matrix[pivot], column)) {
                    pivot = row;
                }
            }
            swap(matrix, right, column, pivot);
            double size = squared(matrix[column], column);
            if (size == 0) {
                throw new IllegalArgumentException("node " + column + " hangs in the air");
            }
            for (int row = column + 1; row < n; row++) {
                double re = matrix[row][2 * column];
                double im = matrix[row][2 * column + 1];
                if (re == 0 && im == 0) {
                    continue;
                }
                double pr = matrix[column][2 * column];
                double pi = matrix[column][2 * column + 1];
                double fr = (re * pr + im * pi) / size;
                double fi = (im * pr - re * pi) / size;
                for (int k = column; k < n; k++) {
                    double ar = matrix[column][2 * k];
                    double ai = matrix[column][2 * k + 1];
                    matrix[row][2 * k] -= fr * ar - fi * ai;
                    matrix[row][2 * k + 1] -= fr * ai + fi * ar;
                }
                right[2 * row] -= fr * right[2 * column] - fi * right[2 * column + 1];
                right[2 * row + 1] -= fr * right[2 * column + 1] + fi * right[2 * column];
            }
        }
        return back(matrix, right);
    }

    private static double[] back(double[][] matrix, double[] right) {
        int n = matrix.length;
        double[] solution = new double[2 * n];
        for (int row = n - 1; row >= 0; row--) {
            double re = right[2 * row];
            double im = right[2 * row + 1];
            for (int k = row + 1; k < n; k++) {
                re -= matrix[row][2 * k] * solution[2 * k] - matrix[row][2 * k + 1] * solution[2 * k + 1];
                im -= matrix[row][2 * k] * solution[2 * k + 1] + matrix[row][2 * k + 1] * solution[2 * k];
            }
            double pr = matrix[row][2 * row];
            double pi = matrix[row][2 * row + 1];
            double size = pr * pr + pi * pi;
            solution[2 * row] = (re * pr + im * pi) / size;
            solution[2 * row + 1] = (im * pr - re * pi) / size;
        }
        return solution;
    }

    private static double squared(double[] row, int column) {
        return row[2 * column] * row[2 * column] + row[2 * column + 1] * row[2 * column + 1];
    }

    private static void swap(double[][] matrix, double[] right, int a, int b) {
        double[] row = matrix[a];
        matrix[a] = matrix[b];
        matrix[b] = row;
        for (int part = 0; part < 2; part++) {
            double value = right[2 * a + part];
            right[2 * a + part] = right[2 * b + part];
            right[2 * b + part] = value;
        }
    }
}
