package evenrise.solver.exact;

import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.CpSolver;
import com.google.ortools.sat.CpSolverStatus;
import evenrise.model.project.Load;
import evenrise.model.project.Phase;
import evenrise.model.project.Project;
import evenrise.solver.exact.ExactModelPlaces.Place;
import evenrise.solver.exact.ExactModelPlaces.Spot;
import java.util.Deque;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Slots in a project's only panel for loads whose phases are known. */
final class SlotProgram {
    private final Project project;

    SlotProgram(Project project) {
        this.project = project;
    }

    /**
     * As {@link evenrise.solver.exhaustive.SlotChooser}.
     *
     * @throws Unfit where there is no solver on this platform, or it does not say
     */
    Optional<Map<String, Integer>> of(Map<String, List<Phase>> phases) {
        NativeSolver.load();
        String panel = project.panels().get(0).id();
        CpModel model = new CpModel();
        ExactModelPlaces places = new ExactModelPlaces(model, project);
        for (Load load : project.loads()) {
            Spot asked = new Spot(panel, phases.get(load.id()));
            places.spots(load).forEach((spot, there) -> model.addEquality(there, spot.equals(asked) ? 1 : 0));
        }
        CpSolver solver = new CpSolver();
        solver.getParameters().setNumWorkers(1).setCatchSigintSignal(false);
        CpSolverStatus status = solver.solve(model);
        if (status == CpSolverStatus.INFEASIBLE) {
            return Optional.empty();
        }
        if (status != CpSolverStatus.OPTIMAL && status != CpSolverStatus.FEASIBLE) {
            throw new Unfit("whether panel " + panel + " has slots for a plan was not found out: " + status);
        }
        Map<Map<Place, BoolVar>, Map<Spot, Deque<Place>>> free = new IdentityHashMap<>();
        Map<String, Integer> slots = new HashMap<>();
        for (Load load : project.loads()) {
            Place place = free.computeIfAbsent(
                            places.taken(load), all -> ExactModelPlaces.bySpot(solver::booleanValue, all))
                    .get(new Spot(panel, phases.get(load.id())))
                    .pop();
            slots.put(load.id(), place.slot());
        }
        return Optional.of(slots);
    }
}
