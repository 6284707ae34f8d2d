package evenrise.model.nodal;

import evenrise.model.electrical.Impedance;
import evenrise.model.electrical.Phasor;
import java.util.ArrayList;
import java.util.List;

/**
 * A network of impedances and current sources at one frequency, solved by the admittances between its nodes. Node 0 is the
 * reference. A voltage source is its impedance and the current that it drives through that.
 */
final class Circuit {
    /** Where there is no impedance, there is this one. */
    static final Impedance NEXT_TO_NOTHING = new Impedance(1e-7, 0);

    private record Branch(int from, int to, Phasor siemens, Phasor drivenVolts) {}

    private record Driven(int from, int to, Phasor amps) {}

    private final List<Branch> branches = new ArrayList<>();
    /** A current of siemens times the sum of weights times voltages, that leaves each node by its weight. */
    private record Coupled(int[] nodes, double[] weights, Phasor siemens) {}

    private final List<Driven> driven = new ArrayList<>();
    private final List<Coupled> coupled = new ArrayList<>();
    private int nodes = 1;
    private double[] volts;

    int node() {
        return nodes++;
    }

    /** @return its number, to ask for its current */
    int impedance(int from, int to, Impedance impedance) {
        return branch(from, to, impedance, Phasor.ZERO);
    }

    /** A voltage that lifts {@code to} above {@code from}, behind an impedance. */
    int source(int from, int to, Phasor volts, Impedance impedance) {
        return branch(from, to, impedance, volts);
    }

    /** A current that flows from one node to the other whatever their voltages. */
    void current(int from, int to, Phasor amps) {
        driven.add(new Driven(from, to, amps));
    }

    /**
     * Two windings of one core: the second has the voltage of the first times {@code turns}, behind an impedance, and their
     * ampere-turns are equal.
     */
    void windings(int from, int to, int secondFrom, int secondTo, double turns, Impedance impedance) {
        double squared = impedance.magnitudeOhms() * impedance.magnitudeOhms();
        Phasor siemens = new Phasor(impedance.resistanceOhms() / squared, -impedance.reactanceOhms() / squared);
        coupled.add(
                new Coupled(new int[] {from, to, secondFrom, secondTo}, new double[] {turns, -turns, -1, 1}, siemens));
    }

    private int branch(int from, int to, Impedance impedance, Phasor volts) {
        double squared = impedance.magnitudeOhms() * impedance.magnitudeOhms();
        Phasor siemens = new Phasor(impedance.resistanceOhms() / squared, -impedance.reactanceOhms() / squared);
        branches.add(new Branch(from, to, siemens, volts));
        return branches.size() - 1;
    }

    void solve() {
        int n = nodes - 1;
        double[][] matrix = new double[n][2 * n];
        double[] right = new double[2 * n];
        for (Branch each : branches) {
            add(matrix, each.from(), each.from(), each.siemens(), 1);
            add(matrix, each.to(), each.to(), each.siemens(), 1);
            add(matrix, each.from(), each.to(), each.siemens(), -1);
            add(matrix, each.to(), each.from(), each.siemens(), -1);
            Phasor amps = product(each.siemens(), each.drivenVolts());
            inject(right, each.to(), amps, 1);
            inject(right, each.from(), amps, -1);
        }
        for (Coupled each : coupled) {
            for (int i = 0; i < each.nodes().length; i++) {
                for (int j = 0; j < each.nodes().length; j++) {
                    add(
                            matrix,
                            each.nodes()[i],
                            each.nodes()[j],
                            each.siemens().times(each.weights()[i] * each.weights()[j]),
                            1);
                }
            }
        }
        for (Driven each : driven) {
            inject(right, each.from(), each.amps(), -1);
            inject(right, each.to(), each.amps(), 1);
        }
        volts = ComplexSolver.solve(matrix, right);
    }

    Phasor volts(int node) {
        return node == 0 ? Phasor.ZERO : new Phasor(volts[2 * node - 2], volts[2 * node - 1]);
    }

    Phasor volts(int from, int to) {
        return new Phasor(
                volts(from).real() - volts(to).real(),
                volts(from).imaginary() - volts(to).imaginary());
    }

    /** What flows through a branch from its first to its second node. */
    Phasor amps(int branch) {
        Branch it = branches.get(branch);
        Phasor across = volts(it.from(), it.to());
        return product(
                it.siemens(),
                new Phasor(
                        across.real() + it.drivenVolts().real(),
                        across.imaginary() + it.drivenVolts().imaginary()));
    }

    private static Phasor product(Phasor a, Phasor b) {
        return new Phasor(
                a.real() * b.real() - a.imaginary() * b.imaginary(),
                a.real() * b.imaginary() + a.imaginary() * b.real());
    }

    private static void add(double[][] matrix, int row, int column, Phasor siemens, int sign) {
        if (row > 0 && column > 0) {
            matrix[row - 1][2 * column - 2] += sign * siemens.real();
            matrix[row - 1][2 * column - 1] += sign * siemens.imaginary();
        }
    }

    private static void inject(double[] right, int node, Phasor amps, int sign) {
        if (node > 0) {
            right[2 * node - 2] += sign * amps.real();
            right[2 * node - 1] += sign * amps.imaginary();
        }
    }
}
