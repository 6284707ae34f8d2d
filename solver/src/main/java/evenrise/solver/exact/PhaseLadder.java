package evenrise.solver.exact;

import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import evenrise.model.electrical.InrushEnvelope;
import evenrise.model.project.Load;
import evenrise.model.project.ObjectiveWeights;
import evenrise.model.project.Panel;
import evenrise.model.project.Phase;
import evenrise.model.project.Project;
import evenrise.model.project.Role;
import evenrise.model.rules.NodeFigures;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Who shares a phase with whom, as an integer program without time: loads choose panels, phases and slots, and a phase
 * must bear what it must bear in any order of switching. Of the loads of a role on a phase whose excess is at least some
 * threshold, the last to come on brings at least the threshold, and finds the bases of the others there, those of all
 * earlier roles and those of unswitched loads. A relaxation of the contract, and far smaller.
 */
final class PhaseLadder {
    private final CpModel model = new CpModel();
    private final Project project;
    private final ExactModelPlaces places;
    private final List<Phase> phases;
    private final IntVar peak;
    private final Map<Load, Map<Phase, BoolVar>> on = new LinkedHashMap<>();

    /**
     * @param tellsRolesApart whether no load can come on a little before one of an earlier role and still be forgiven
     * @throws Unfit where the project does not fit the model, or there is no solver on this platform
     */
    PhaseLadder(Project project, boolean tellsRolesApart) {
        NativeSolver.load();
        this.project = project;
        phases = project.supply().system().phases();
        places = new ExactModelPlaces(model, project);
        peak = model.newIntVar(0, ExactModelCurrents.LARGEST, "");
        project.loads().forEach(load -> on.put(load, onPhases(load)));
        List<Load> switched = project.loads().stream().filter(Load::switched).toList();
        List<Load> standing =
                project.loads().stream().filter(load -> !load.switched()).toList();
        if (tellsRolesApart) {
            List<Load> earlier = new ArrayList<>(standing);
            for (Role role : Role.values()) {
                List<Load> loads =
                        switched.stream().filter(load -> load.role() == role).toList();
                climb(loads, earlier);
                earlier.addAll(loads);
            }
        } else {
            climb(switched, standing);
        }
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

    private Map<Phase, BoolVar> onPhases(Load load) {
        Map<Phase, BoolVar> own = new LinkedHashMap<>();
        for (Phase phase : phases) {
            BoolVar literal = model.newBoolVar("");
            model.addEquality(places.where(load.id(), spot -> spot.phases().contains(phase)), literal);
            own.put(phase, literal);
        }
        return own;
    }

    /** @param earlier whose bases every one of the loads finds */
    private void climb(List<Load> loads, List<Load> earlier) {
        List<Load> falling = new ArrayList<>(loads);
        falling.sort(Comparator.comparingDouble(PhaseLadder::excessAmps).reversed());
        for (Phase phase : phases) {
            LinearExprBuilder bases = LinearExpr.newBuilder();
            earlier.forEach(load -> bases.addTerm(on.get(load).get(phase), baseUnits(load)));
            model.addGreaterOrEqual(peak, bases.build());
            BoolVar any = null;
            for (Load load : falling) {
                BoolVar itself = on.get(load).get(phase);
                bases.addTerm(itself, baseUnits(load));
                any = either(any, itself);
                LinearExprBuilder found = LinearExpr.newBuilder().add(bases.build());
                found.addTerm(any, ExactModelUnits.amps(excessAmps(load)));
                model.addGreaterOrEqual(peak, found.build());
            }
        }
    }

    /** True at least where one of the two is. */
    private BoolVar either(BoolVar before, BoolVar itself) {
        BoolVar any = model.newBoolVar("");
        model.addImplication(itself, any);
        if (before != null) {
            model.addImplication(before, any);
        }
        return any;
    }

    private static long baseUnits(Load load) {
        return ExactModelUnits.amps(InrushEnvelope.of(load, 0).baseAmps());
    }

    private static double excessAmps(Load load) {
        return InrushEnvelope.of(load, 0).excessAmps();
    }
}
