package evenrise.model.electrical.source;

import evenrise.model.electrical.LineMatrix;
import evenrise.model.electrical.LineValues;
import evenrise.model.electrical.Phasor;

/**
 * Values and matrices of three lines as rows of numbers, real and imaginary parts side by side, many after one another in one
 * array: for what is worked out so often that an object for each number would take most of the time.
 */
final class FlatLines {
    static final int VALUES = 6;
    static final int MATRIX = 18;

    private FlatLines() {}

    static double[] of(LineMatrix matrix) {
        double[] flat = new double[MATRIX];
        for (int row = 0; row < 3; row++) {
            for (int column = 0; column < 3; column++) {
                flat[6 * row + 2 * column] = matrix.at(row, column).real();
                flat[6 * row + 2 * column + 1] = matrix.at(row, column).imaginary();
            }
        }
        return flat;
    }

    static double[] of(LineValues values) {
        return new double[] {
            values.a().real(),
            values.a().imaginary(),
            values.b().real(),
            values.b().imaginary(),
            values.c().real(),
            values.c().imaginary()
        };
    }

    static LineValues values(double[] flat, int from) {
        return new LineValues(
                new Phasor(flat[from], flat[from + 1]),
                new Phasor(flat[from + 2], flat[from + 3]),
                new Phasor(flat[from + 4], flat[from + 5]));
    }

    static void add(double[] to, int at, double[] more, int count) {
        for (int i = 0; i < count; i++) {
            to[at + i] += more[i];
        }
    }

    /** Values by a matrix. */
    static void apply(double[] matrix, int of, double[] values, int from, double[] into, int at) {
        for (int row = 0; row < 3; row++) {
            double real = 0;
            double imaginary = 0;
            for (int i = 0; i < 6; i += 2) {
                double a = matrix[of + 6 * row + i];
                double b = matrix[of + 6 * row + i + 1];
                double x = values[from + i];
                double y = values[from + i + 1];
                real += a * x - b * y;
                imaginary += a * y + b * x;
            }
            into[at + 2 * row] = real;
            into[at + 2 * row + 1] = imaginary;
        }
    }

    /** A matrix by another; {@code into} is neither. */
    static void product(double[] left, int of, double[] right, int from, double[] into, int at) {
        for (int row = 0; row < 18; row += 6) {
            for (int column = 0; column < 6; column += 2) {
                double real = 0;
                double imaginary = 0;
                for (int i = 0; i < 3; i++) {
                    double a = left[of + row + 2 * i];
                    double b = left[of + row + 2 * i + 1];
                    double x = right[from + 6 * i + column];
                    double y = right[from + 6 * i + column + 1];
                    real += a * x - b * y;
                    imaginary += a * y + b * x;
                }
                into[at + row + column] = real;
                into[at + row + column + 1] = imaginary;
            }
        }
    }

    /** By cofactors, as {@link LineMatrix#inverse}; {@code into} is another. */
    static void invert(double[] matrix, double[] into, int at) {
        double real = 0;
        double imaginary = 0;
        for (int row = 0; row < 3; row++) {
            int next = 6 * ((row + 1) % 3);
            int last = 6 * ((row + 2) % 3);
            for (int column = 0; column < 3; column++) {
                int after = 2 * ((column + 1) % 3);
                int before = 2 * ((column + 2) % 3);
                // The cofactor of a place stands, turned over, in its mirror's.
                int to = at + 6 * column + 2 * row;
                into[to] = real(matrix, next + after, last + before) - real(matrix, next + before, last + after);
                into[to + 1] =
                        imaginary(matrix, next + after, last + before) - imaginary(matrix, next + before, last + after);
            }
        }
        for (int i = 0; i < 3; i++) {
            real += matrix[2 * i] * into[at + 6 * i] - matrix[2 * i + 1] * into[at + 6 * i + 1];
            imaginary += matrix[2 * i] * into[at + 6 * i + 1] + matrix[2 * i + 1] * into[at + 6 * i];
        }
        double squared = real * real + imaginary * imaginary;
        double scale = real / squared;
        double turn = -imaginary / squared;
        for (int i = at; i < at + MATRIX; i += 2) {
            double x = into[i];
            double y = into[i + 1];
            into[i] = x * scale - y * turn;
            into[i + 1] = x * turn + y * scale;
        }
    }

    private static double real(double[] matrix, int one, int other) {
        return matrix[one] * matrix[other] - matrix[one + 1] * matrix[other + 1];
    }

    private static double imaginary(double[] matrix, int one, int other) {
        return matrix[one] * matrix[other + 1] + matrix[one + 1] * matrix[other];
    }
}
