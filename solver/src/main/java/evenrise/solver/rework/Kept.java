package evenrise.solver.rework;

import evenrise.model.plan.Assignment;
import evenrise.model.plan.Plan;
import evenrise.model.project.FixedPlace;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.Project;
import java.util.BitSet;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;

/** Keeps what cannot be moved without an outage that is not wanted. */
public final class Kept {
    private final Project project;
    private final Map<String, Assignment> seats;
    private final Set<String> early = new HashSet<>();
    private final Set<String> panels = new HashSet<>();
    private final Set<String> boards = new HashSet<>();

    private Kept(Project project, Plan built, Predicate<Outages.Outage> isUnwanted) {
        this.project = project;
        this.seats = Changes.seats(built);
        Passage still = new Passage(project, built, built);
        project.loads().stream()
                .map(Load::id)
                .filter(id -> seats.containsKey(id) && isUnwanted.test(OutageOf.load(still, id)))
                .forEach(early::add);
        project.panels().stream()
                .filter(panel -> Isolation.isDeadAtWork(panel) && isUnwanted.test(OutageOf.panel(still, panel.id())))
                .forEach(panel -> panels.add(panel.id()));
        project.boards().stream()
                .filter(board -> Isolation.isDeadAtWork(board) && isUnwanted.test(OutageOf.board(still, board.id())))
                .forEach(board -> boards.add(board.id()));
    }

    /**
     * The project with everything fixed where it is built that cannot be worked on without an outage that is not wanted:
     * loads, breakers in panels and leads on boards that would be off or dead with them.
     *
     * @param keepsRunning whether no system may go off
     */
    public static Project inPlace(Project project, Plan built, boolean keepsRunning, NightLimits night) {
        Predicate<Outages.Outage> isUnwanted = unwanted(keepsRunning, night);
        if (!keepsRunning && night.live().isEmpty()) {
            return project;
        }
        Kept kept = new Kept(project, built, isUnwanted);
        return project.withLoads(project.loads().stream().map(kept::held).toList());
    }

    private static Predicate<Outages.Outage> unwanted(boolean keepsRunning, NightLimits night) {
        return outage -> keepsRunning && outage.isByCommand() || !Collections.disjoint(outage.loads(), night.live());
    }

    /** Whether a plan can be reached with none of its changes, each by itself, asking for such an outage. */
    public static boolean isReached(Project project, Plan built, Plan plan, boolean keepsRunning, NightLimits night) {
        if (!keepsRunning && night.live().isEmpty()) {
            return true;
        }
        Passage passage = new Passage(project, built, plan);
        return passage.all().stream()
                .filter(change -> !passage.isRemoval(change))
                .noneMatch(change -> {
                    BitSet one = new BitSet();
                    one.set(change);
                    Passage.Way way = passage.unchecked(new BitSet(), one);
                    return keepsRunning && way.isSystemOff() || !Collections.disjoint(way.off(), night.live());
                });
    }

    private Load held(Load load) {
        Assignment seat = seats.get(load.id());
        if (seat == null) {
            return elsewhere(load);
        }
        boolean isEarly = early.contains(load.id());
        boolean isHeld = isEarly || panels.contains(seat.panel());
        boolean keepsLead = isEarly || seat.board().filter(boards::contains).isPresent();
        Load placed = isHeld ? load : elsewhere(load);
        return isHeld || keepsLead ? placed.withFixed(place(load, seat, isHeld, keepsLead)) : placed;
    }

    /** The load kept out of the panels that must not be dead, where that leaves it one. */
    private Load elsewhere(Load load) {
        List<String> left = project.panels().stream()
                .map(Panel::id)
                .filter(id -> load.panels().isEmpty() || load.panels().contains(id))
                .filter(id -> !panels.contains(id))
                .toList();
        return left.isEmpty() || panels.isEmpty() ? load : load.withPanels(left);
    }

    private static FixedPlace place(Load load, Assignment seat, boolean isHeld, boolean keepsLead) {
        var fixed = FixedPlace.builder()
                .panel(load.fixed().panel())
                .slot(load.fixed().slot())
                .board(load.fixed().board())
                .output(load.fixed().output())
                .onSeconds(load.fixed().onSeconds());
        if (isHeld) {
            fixed.panel(seat.panel()).slot(seat.slot());
        }
        if (keepsLead) {
            fixed.board(seat.board()).output(seat.output());
        }
        return fixed.build();
    }
}
