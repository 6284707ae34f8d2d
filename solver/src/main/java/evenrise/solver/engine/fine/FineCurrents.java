package evenrise.solver.engine.fine;

import evenrise.model.project.ObjectiveWeights;
import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.Currents;
import evenrise.solver.engine.state.NodeCurrents;
import java.util.Arrays;

/** Running and neutral current of the supply and of each panel, and how far phases are from their mean. */
final class FineCurrents {
    private final NodeCurrents[] nodes;
    private final double supplyWeight;
    private final double panelWeight;
    private double deviationsAmps;

    FineCurrents(CompiledProject compiled) {
        nodes = new NodeCurrents[compiled.panelCount + 1];
        Arrays.setAll(nodes, node -> new NodeCurrents(compiled, node));
        ObjectiveWeights weights = compiled.project.objective();
        supplyWeight = weights.supplyImbalance() / Currents.NANO;
        panelWeight = weights.panelImbalance() / Currents.NANO;
    }

    void add(int load, int panel, int phaseMask, int sign) {
        nodes[0].add(load, phaseMask, sign);
        nodes[panel + 1].add(load, phaseMask, sign);
    }

    /** Sums the deviations of all nodes, in ampere-equivalents. */
    void sum() {
        deviationsAmps = supplyWeight * nodes[0].deviationNano();
        for (int node = 1; node < nodes.length; node++) {
            deviationsAmps += panelWeight * nodes[node].deviationNano();
        }
    }

    double deviationsAmps() {
        return deviationsAmps;
    }

    void deviationsAmps(double known) {
        deviationsAmps = known;
    }

    /** What a panel and the supply are off, in ampere-equivalents. */
    double deviationsAmps(int panel) {
        return supplyWeight * nodes[0].deviationNano() + panelWeight * nodes[panel + 1].deviationNano();
    }

    /** Charge for what the supply and a panel carry over their limits. */
    long overload(int panel) {
        return nodes[0].overload() + nodes[panel + 1].overload();
    }
}
