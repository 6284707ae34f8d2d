package evenrise.solver.exact;

import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import evenrise.model.project.ObjectiveWeights;
import evenrise.model.project.Panel;
import evenrise.model.project.Project;
import evenrise.model.rules.NodeFigures;

/**
 * Who shares a phase with whom, as an integer program without time: loads choose panels, phases and slots, and a phase
 * must bear what it must bear in any order of switching ({@link PhaseRungs}). A relaxation of the contract, and far smaller.
 */
final class PhaseLadder {
    private final CpModel model = new CpModel();
    private final Project project;
    private final ExactModelPlaces places;
    private final IntVar peak;

    /**
     * @param tellsRolesApart whether no load can come on a little before one of an earlier role and still be forgiven
     * @throws Unfit where the project does not fit the model, or there is no solver on this platform
     */
    PhaseLadder(Project project, boolean tellsRolesApart) {
        NativeSolver.load();
        this.project = project;
        places = new ExactModelPlaces(model, project);
        peak = model.newIntVar(0, ExactModelCurrents.LARGEST, "");
        PhaseRungs.add(model, project, places, peak, 1, tellsRolesApart);
    }

    CpModel model() {
        return model;
    }

    /**
     * One unit of what is made small, in amperes: of the peak.
     *
     * @param leastPeakAmps what the peak is known not to stay below
     */
    double minimizePeak(double leastPeakAmps) {
        know(leastPeakAmps);
        model.minimize(peak);
        return 1.0 / ExactModelUnits.PER_AMP;
    }

    /**
     * The same, in ampere-equivalents: of the peak and the deviations of running currents by their weights. Ratings of running
     * currents join the model.
     *
     * @param leastPeakAmps what the peak is known not to stay below
     */
    double minimizePeakAndDeviations(double leastPeakAmps) {
        ExactModelCurrents currents = new ExactModelCurrents(model, project, places);
        ObjectiveWeights weights = project.objective();
        know(leastPeakAmps);
        LinearExprBuilder sum = LinearExpr.newBuilder();
        sum.addTerm(peak, ExactModelUnits.weight(weights.peakInrush()) * currents.commonPhases());
        currents.addDeviation(sum, NodeFigures.SUPPLY, ExactModelUnits.weight(weights.supplyImbalance()));
        for (Panel panel : project.panels()) {
            currents.addDeviation(sum, panel.id(), ExactModelUnits.weight(weights.panelImbalance()));
        }
        model.minimize(sum.build());
        return 1.0 / (ExactModelUnits.PER_AMP * ExactModelUnits.PER_WEIGHT * currents.commonPhases());
    }

    /** Whatever is known of the peak in amperes holds of this model but for its roundings. */
    private void know(double leastPeakAmps) {
        model.addGreaterOrEqual(
                peak, ExactModelUnits.amps(leastPeakAmps) - 2L * project.loads().size());
    }
}
