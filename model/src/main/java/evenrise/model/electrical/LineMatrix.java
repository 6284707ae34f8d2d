package evenrise.model.electrical;

import evenrise.model.project.PhaseSystem;

/**
 * Impedances or admittances between the line conductors: row by row what the currents of all lines make of the voltage of
 * one, or the other way round.
 */
public record LineMatrix(LineValues a, LineValues b, LineValues c) {
    public static final LineMatrix ZERO = new LineMatrix(LineValues.ZERO, LineValues.ZERO, LineValues.ZERO);
    private static final Phasor ONE = new Phasor(1, 0);
    private static final LineMatrix IDENTITY = new LineMatrix(
            new LineValues(ONE, Phasor.ZERO, Phasor.ZERO),
            new LineValues(Phasor.ZERO, ONE, Phasor.ZERO),
            new LineValues(Phasor.ZERO, Phasor.ZERO, ONE));

    /** The same on every line of a system, and the same between any two. */
    public static LineMatrix coupled(PhaseSystem system, Phasor self, Phasor mutual) {
        int lines = system.phases().size();
        return of((i, j) -> i >= lines || j >= lines ? Phasor.ZERO : i == j ? self : mutual);
    }

    /** An entry by row and column, from 0. */
    @FunctionalInterface
    public interface Entry {
        Phasor at(int row, int column);
    }

    public static LineMatrix of(Entry entry) {
        return new LineMatrix(row(0, entry), row(1, entry), row(2, entry));
    }

    private static LineValues row(int row, Entry entry) {
        return new LineValues(entry.at(row, 0), entry.at(row, 1), entry.at(row, 2));
    }

    public Phasor at(int row, int column) {
        LineValues values = row == 0 ? a : row == 1 ? b : c;
        return column == 0 ? values.a() : column == 1 ? values.b() : values.c();
    }

    public LineMatrix plus(LineMatrix other) {
        return new LineMatrix(a.plus(other.a), b.plus(other.b), c.plus(other.c));
    }

    public LineMatrix times(Phasor factor) {
        return of((i, j) -> at(i, j).times(factor));
    }

    public LineValues times(LineValues values) {
        return new LineValues(product(a, values), product(b, values), product(c, values));
    }

    public LineMatrix times(LineMatrix other) {
        return of((i, j) -> at(i, 0).times(other.at(0, j))
                .plus(at(i, 1).times(other.at(1, j)))
                .plus(at(i, 2).times(other.at(2, j))));
    }

    public LineMatrix plusIdentity() {
        return plus(IDENTITY);
    }

    /** Conjugated and turned over: what a transformer makes of voltages by the numbers that it makes of currents by. */
    public LineMatrix adjoint() {
        return of((i, j) -> {
            Phasor value = at(j, i);
            return new Phasor(value.real(), -value.imaginary());
        });
    }

    /** By cofactors; it is not singular where it is one plus a product of passive parts. */
    public LineMatrix inverse() {
        Phasor scale = at(0, 0).times(cofactor(0, 0))
                .plus(at(0, 1).times(cofactor(0, 1)))
                .plus(at(0, 2).times(cofactor(0, 2)))
                .inverse();
        return of((i, j) -> cofactor(j, i).times(scale));
    }

    /** Taken round in a circle, the minor has its sign already. */
    private Phasor cofactor(int row, int column) {
        int nextRow = (row + 1) % 3;
        int lastRow = (row + 2) % 3;
        int nextColumn = (column + 1) % 3;
        int lastColumn = (column + 2) % 3;
        return at(nextRow, nextColumn)
                .times(at(lastRow, lastColumn))
                .minus(at(nextRow, lastColumn).times(at(lastRow, nextColumn)));
    }

    private static Phasor product(LineValues row, LineValues column) {
        return row.a()
                .times(column.a())
                .plus(row.b().times(column.b()))
                .plus(row.c().times(column.c()));
    }
}
