package evenrise.solver.exact;

import evenrise.model.project.Load;
import evenrise.model.project.Project;
import evenrise.model.project.Role;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Predicate;

/**
 * The loads of a project as sharers of phases: those that climb, by falling excess, and those that all of these find on.
 * Phases are alike; of panels no more counts than which loads may sit in them, and slots are left out.
 */
final class LadderLoads {
    final int phases;
    /** How many climb; they come first. */
    final int climbers;

    final List<String> ids;
    final int[] poles;
    final double[] baseAmps;
    final double[] runningAmps;
    /** By load and place of {@link LadderPanels}. */
    final boolean[][] maySitIn;

    /** What each climber draws above its base as it comes on, and 0 at the end for a phase that none of them sits on. */
    final double[] excessAmps;

    /**
     * @param tellsRolesApart whether no load can come on a little before one of an earlier role and still be forgiven; else
     *     all switched loads climb together
     */
    LadderLoads(Project project, LadderPanels panels, boolean tellsRolesApart) {
        Predicate<Load> climbs = load -> load.switched() && (!tellsRolesApart || load.role() == Role.AMPLIFIER);
        List<Load> climbing =
                new ArrayList<>(project.loads().stream().filter(climbs).toList());
        climbing.sort(Comparator.comparingDouble(Load::excessAmps).reversed());
        List<Load> loads = new ArrayList<>(climbing);
        loads.addAll(project.loads().stream().filter(climbs.negate()).toList());
        phases = project.supply().system().phases().size();
        climbers = climbing.size();
        ids = loads.stream().map(Load::id).toList();
        poles = loads.stream().mapToInt(Load::poles).toArray();
        baseAmps = loads.stream().mapToDouble(Load::baseAmps).toArray();
        runningAmps = loads.stream().mapToDouble(Load::runningAmps).toArray();
        maySitIn = loads.stream().map(panels::whereMaySit).toArray(boolean[][]::new);
        excessAmps = new double[climbers + 1];
        for (int rank = 0; rank < climbers; rank++) {
            excessAmps[rank] = climbing.get(rank).excessAmps();
        }
    }

    int count() {
        return poles.length;
    }

    int places() {
        return maySitIn.length == 0 ? 0 : maySitIn[0].length;
    }

    /** Whether it sits on a phase if it sits on these, of a mask. */
    static boolean has(int mask, int phase) {
        return (mask >> phase & 1) != 0;
    }

    /** Whether it can sit on the phases of a mask where climbers of greater excess than a box allows are kept off. */
    boolean mayTake(int load, int mask, LadderBox box) {
        if (Integer.bitCount(mask) != poles[load]) {
            return false;
        }
        for (int phase = 0; phase < phases; phase++) {
            if (has(mask, phase) && load < climbers && load < box.from(phase)) {
                return false;
            }
        }
        return true;
    }
}
