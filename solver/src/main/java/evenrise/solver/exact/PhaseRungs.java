package evenrise.solver.exact;

import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import evenrise.model.project.Load;
import evenrise.model.project.Phase;
import evenrise.model.project.Project;
import evenrise.model.project.Role;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What the supply's peak must bear in any order of switching, by who sits on which phase. Of the loads of a role on a phase
 * whose excess is at least some threshold, the last to come on brings at least the threshold, and finds the bases of the
 * others there, those of all earlier roles and those of unswitched loads.
 */
final class PhaseRungs {
    private final CpModel model;
    private final ExactModelPlaces places;
    private final List<Phase> phases;
    private final IntVar peak;
    private final long grain;
    private final Map<Load, Map<Phase, BoolVar>> on = new LinkedHashMap<>();

    private PhaseRungs(CpModel model, Project project, ExactModelPlaces places, IntVar peak, long grain) {
        this.model = model;
        this.places = places;
        this.phases = project.supply().system().phases();
        this.peak = peak;
        this.grain = grain;
        project.loads().forEach(load -> on.put(load, onPhases(load)));
    }

    /**
     * @param peak of the supply, in grains
     * @param grain units of current of which each base and each excess is a multiple
     * @param tellsRolesApart whether no load can come on a little before one of an earlier role and still be forgiven
     */
    static void add(
            CpModel model, Project project, ExactModelPlaces places, IntVar peak, long grain, boolean tellsRolesApart) {
        PhaseRungs it = new PhaseRungs(model, project, places, peak, grain);
        List<Load> switched = project.loads().stream().filter(Load::switched).toList();
        List<Load> earlier = new ArrayList<>(
                project.loads().stream().filter(load -> !load.switched()).toList());
        if (!tellsRolesApart) {
            it.climb(switched, earlier);
            return;
        }
        for (Role role : Role.values()) {
            List<Load> loads =
                    switched.stream().filter(load -> load.role() == role).toList();
            it.climb(loads, earlier);
            earlier.addAll(loads);
        }
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
        falling.sort(Comparator.comparingDouble(Load::excessAmps).reversed());
        for (Phase phase : phases) {
            LinearExprBuilder bases = LinearExpr.newBuilder();
            earlier.forEach(load -> bases.addTerm(on.get(load).get(phase), grains(load.baseAmps())));
            model.addGreaterOrEqual(peak, bases.build());
            BoolVar any = null;
            for (Load load : falling) {
                BoolVar itself = on.get(load).get(phase);
                bases.addTerm(itself, grains(load.baseAmps()));
                any = either(any, itself);
                LinearExprBuilder found = LinearExpr.newBuilder().add(bases.build());
                found.addTerm(any, grains(load.excessAmps()));
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

    private long grains(double amps) {
        return ExactModelUnits.amps(amps) / grain;
    }
}
