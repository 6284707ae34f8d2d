package evenrise.solver.document;

import evenrise.model.project.Circuit;
import evenrise.model.project.Feeder;
import evenrise.model.project.Panel;
import evenrise.model.rules.Layout;
import java.util.ArrayList;
import java.util.List;

/**
 * A residual-current device that the project states.
 *
 * @param panel its panel
 * @param place panel, with slots where it protects a branch
 * @param protects load or panel behind it
 * @param ratedMilliamps its rated residual current
 */
public record ResidualTest(String panel, String place, String protects, double ratedMilliamps) {
    /** IEC 60364-5-53 clause 531.3.2 (from memory): what flows in protective conductors behind one device, in sum. */
    private static final double FRACTION = 0.3;

    /** Of feeders first, then of branches along the panels. */
    static List<ResidualTest> of(Layout layout) {
        List<ResidualTest> all = new ArrayList<>();
        for (Panel panel : layout.project().panels()) {
            panel.feeder()
                    .map(Feeder::residualCurrentAmps)
                    .ifPresent(rated -> rated.ifPresent(amps ->
                            all.add(new ResidualTest(panel.id(), panel.id(), "panel " + panel.id(), 1000 * amps))));
        }
        for (PlannedCircuit circuit : PlannedCircuit.along(layout)) {
            layout.index()
                    .load(circuit.load())
                    .flatMap(load -> load.circuit())
                    .map(Circuit::residualCurrentAmps)
                    .ifPresent(rated -> rated.ifPresent(amps ->
                            all.add(new ResidualTest(circuit.panel(), circuit.place(), circuit.load(), 1000 * amps))));
        }
        return all;
    }

    /** What may flow through it all the time. */
    public double leakageMilliamps() {
        return FRACTION * ratedMilliamps;
    }
}
