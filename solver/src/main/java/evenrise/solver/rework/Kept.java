package evenrise.solver.rework;

import evenrise.model.plan.Assignment;
import evenrise.model.plan.Plan;
import evenrise.model.project.Board;
import evenrise.model.project.FixedPlace;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.Project;
import evenrise.model.project.Role;
import evenrise.model.rules.ProjectIndex;
import java.util.BitSet;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Keeps what cannot be moved without the whole system off. */
public final class Kept {
    private final Project project;
    private final Map<String, Assignment> seats;
    private final Set<String> early = new HashSet<>();
    private final Set<String> panels = new HashSet<>();
    private final Set<String> boards = new HashSet<>();

    private Kept(Project project, Plan built) {
        this.project = project;
        this.seats = Changes.seats(built);
        Role last = project.loads().stream()
                .filter(Load::switched)
                .map(Load::role)
                .max(Role::compareTo)
                .orElse(Role.PROCESSING);
        project.loads().stream()
                .filter(load -> load.switched() && load.role().compareTo(last) < 0 && seats.containsKey(load.id()))
                .forEach(load -> early.add(load.id()));
        Set<String> theirs = new HashSet<>();
        early.forEach(load -> seats.get(load).board().ifPresent(theirs::add));
        project.boards().stream()
                .filter(board -> theirs.contains(board.id()))
                .flatMap(board -> board.fedBy().stream())
                .filter(seats::containsKey)
                .forEach(early::add);
        early.forEach(load -> panels.add(seats.get(load).panel()));
        for (Board board : project.boards()) {
            if (theirs.contains(board.id())) {
                panels.addAll(Downstream.supplies(board));
                if (Isolation.isDeadAtWork(board)) {
                    boards.add(board.id());
                }
            }
        }
        ProjectIndex index = new ProjectIndex(project);
        List.copyOf(panels).forEach(panel -> panels.addAll(Downstream.panelsAbove(index, panel)));
        panels.retainAll(project.panels().stream().map(Panel::id).toList());
        project.panels().stream()
                .filter(panel -> !Isolation.isDeadAtWork(panel))
                .map(Panel::id)
                .forEach(panels::remove);
    }

    /**
     * The project with every switched load fixed where it is built that may come on only while others are off (whatever is
     * no amplifier where there are amplifiers, and processing where there are auxiliary loads), and with no breaker to be
     * worked on in a panel, and no lead on a board, that would be isolated with one of them.
     */
    public static Project early(Project project, Plan built) {
        Kept kept = new Kept(project, built);
        return project.withLoads(project.loads().stream().map(kept::held).toList());
    }

    /** Whether a plan can be reached with none of its changes, each by itself, asking for the whole system to be off. */
    public static boolean keepsRunning(Project project, Plan built, Plan plan) {
        Passage passage = new Passage(project, built, plan);
        return passage.all().stream().noneMatch(change -> {
            BitSet one = new BitSet();
            one.set(change);
            return passage.unchecked(new BitSet(), one).isSystemOff();
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
