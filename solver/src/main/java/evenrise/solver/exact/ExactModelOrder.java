package evenrise.solver.exact;

import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import evenrise.model.project.Load;
import evenrise.model.project.Project;
import evenrise.model.project.Role;
import evenrise.model.project.ShutdownGroup;
import java.util.List;
import java.util.Optional;

/** Which load comes on before which, in the exact model. */
final class ExactModelOrder {
    /** Up to so many instants, order is also said instant by instant, which bounds better. */
    private static final int FEW_INSTANTS = 64;

    private static final long LATEST = 1_000_000_000_000L;

    private final CpModel model;
    private final ExactModelTimes times;
    private final List<Load> switched;

    private ExactModelOrder(CpModel model, Project project, ExactModelTimes times) {
        this.model = model;
        this.times = times;
        this.switched = project.loads().stream().filter(Load::switched).toList();
    }

    static void add(CpModel model, Project project, ExactModelTimes times) {
        ExactModelOrder it = new ExactModelOrder(model, project, times);
        it.roles();
        it.order();
    }

    static List<Load> members(Project project, ShutdownGroup group) {
        return project.loads().stream()
                .filter(load -> load.shutdownGroup().equals(Optional.of(group.id())))
                .toList();
    }

    private List<Load> of(Role role) {
        return switched.stream().filter(load -> load.role() == role).toList();
    }

    /** No auxiliary before the last processing load, no amplifier before the last auxiliary or unsettled processing. */
    private void roles() {
        List<Load> processing = of(Role.PROCESSING);
        List<Load> auxiliaries = of(Role.AUXILIARY);
        List<Load> amplifiers = of(Role.AMPLIFIER);
        before(processing, false, auxiliaries);
        before(processing, true, amplifiers);
        before(auxiliaries, false, amplifiers);
    }

    private void before(List<Load> earlier, boolean settled, List<Load> later) {
        if (earlier.isEmpty() || later.isEmpty()) {
            return;
        }
        IntVar border = model.newIntVar(-ExactModelUnits.TOLERANCE_MICROS, LATEST, "");
        for (Load load : earlier) {
            model.addLessOrEqual(ready(load, settled ? load.settleSeconds() : 0), border);
        }
        for (Load load : later) {
            model.addGreaterOrEqual(times.on(load), border);
        }
    }

    private void order() {
        for (Load later : switched) {
            switched.stream()
                    .filter(earlier -> later.comesAfter().contains(earlier.id()))
                    .forEach(earlier -> inOrder(earlier, later));
        }
    }

    private void inOrder(Load earlier, Load later) {
        model.addLessOrEqual(ready(earlier, earlier.settleSeconds()), times.on(later));
        if (times.all().size() > FEW_INSTANTS) {
            return;
        }
        long wait = settleMicros(earlier.settleSeconds());
        for (long instant : times.instants(later).keySet()) {
            LinearExprBuilder on = LinearExpr.newBuilder();
            times.instants(later).headMap(instant, true).values().forEach(on::add);
            LinearExprBuilder ready = LinearExpr.newBuilder();
            times.instants(earlier)
                    .headMap(instant - wait + ExactModelUnits.TOLERANCE_MICROS, true)
                    .values()
                    .forEach(ready::add);
            model.addLessOrEqual(on, ready);
        }
    }

    /** When a load that comes on has settled, less the tolerance of comparisons. */
    private LinearExpr ready(Load load, double settleSeconds) {
        return LinearExpr.newBuilder()
                .add(times.on(load))
                .add(settleMicros(settleSeconds) - ExactModelUnits.TOLERANCE_MICROS)
                .build();
    }

    /** Rounded down, so that no plan is refused that the rules allow. */
    static long settleMicros(double seconds) {
        return (long) Math.floor(seconds * ExactModelUnits.PER_SECOND + 1e-3);
    }
}
