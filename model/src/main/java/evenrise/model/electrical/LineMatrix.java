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
        return new LineMatrix(a.times(factor), b.times(factor), c.times(factor));
    }

    public LineValues times(LineValues values) {
        return new LineValues(
                product(a, values.a(), values.b(), values.c()),
                product(b, values.a(), values.b(), values.c()),
                product(c, values.a(), values.b(), values.c()));
    }

    public LineMatrix times(LineMatrix other) {
        return new LineMatrix(product(a, other), product(b, other), product(c, other));
    }

    public LineMatrix plusIdentity() {
        return plus(IDENTITY);
    }

    /** Conjugated and turned over: what a transformer makes of voltages by the numbers that it makes of currents by. */
    public LineMatrix adjoint() {
        return new LineMatrix(
                conjugated(a.a(), b.a(), c.a()), conjugated(a.b(), b.b(), c.b()), conjugated(a.c(), b.c(), c.c()));
    }

    /** By cofactors; it is not singular where it is one plus a product of passive parts. */
    public LineMatrix inverse() {
        Phasor aa = minor(b.b(), c.c(), b.c(), c.b());
        Phasor ab = minor(b.c(), c.a(), b.a(), c.c());
        Phasor ac = minor(b.a(), c.b(), b.b(), c.a());
        Phasor scale = product(a, aa, ab, ac).inverse();
        return new LineMatrix(
                new LineValues(aa, minor(c.b(), a.c(), c.c(), a.b()), minor(a.b(), b.c(), a.c(), b.b())).times(scale),
                new LineValues(ab, minor(c.c(), a.a(), c.a(), a.c()), minor(a.c(), b.a(), a.a(), b.c())).times(scale),
                new LineValues(ac, minor(c.a(), a.b(), c.b(), a.a()), minor(a.a(), b.b(), a.b(), b.a())).times(scale));
    }

    /** The first two's product less that of the others. */
    private static Phasor minor(Phasor one, Phasor other, Phasor lessOne, Phasor lessOther) {
        return one.times(other).minus(lessOne.times(lessOther));
    }

    private static LineValues conjugated(Phasor a, Phasor b, Phasor c) {
        return new LineValues(
                new Phasor(a.real(), -a.imaginary()),
                new Phasor(b.real(), -b.imaginary()),
                new Phasor(c.real(), -c.imaginary()));
    }

    private static LineValues product(LineValues row, LineMatrix other) {
        return new LineValues(
                product(row, other.a.a(), other.b.a(), other.c.a()),
                product(row, other.a.b(), other.b.b(), other.c.b()),
                product(row, other.a.c(), other.b.c(), other.c.c()));
    }

    /** Written out, as it is asked for more than anything else. */
    private static Phasor product(LineValues row, Phasor x, Phasor y, Phasor z) {
        Phasor a = row.a();
        Phasor b = row.b();
        Phasor c = row.c();
        return new Phasor(
                a.real() * x.real()
                        - a.imaginary() * x.imaginary()
                        + (b.real() * y.real() - b.imaginary() * y.imaginary())
                        + (c.real() * z.real() - c.imaginary() * z.imaginary()),
                a.real() * x.imaginary()
                        + a.imaginary() * x.real()
                        + (b.real() * y.imaginary() + b.imaginary() * y.real())
                        + (c.real() * z.imaginary() + c.imaginary() * z.real()));
    }
}
