package evenrise.solver.rework;

import evenrise.model.plan.Assignment;
import evenrise.model.plan.Plan;
import evenrise.model.project.FixedPlace;
import evenrise.model.project.Load;
import evenrise.model.project.Project;
import evenrise.model.project.Role;
import java.util.Map;

/** Keeps loads where they are built. */
public final class Kept {
    private Kept() {}

    /**
     * The project with every switched load fixed where it is built that may come on only while others are off: whatever is
     * no amplifier where there are amplifiers, and processing where there are auxiliary loads. A search in it moves none
     * of them, so that the system need not go off for one.
     */
    public static Project early(Project project, Plan built) {
        Map<String, Assignment> seats = Changes.seats(built);
        Role last = project.loads().stream()
                .filter(Load::switched)
                .map(Load::role)
                .max(Role::compareTo)
                .orElse(Role.PROCESSING);
        return project.withLoads(project.loads().stream()
                .map(load -> load.switched() && load.role().compareTo(last) < 0 && seats.containsKey(load.id())
                        ? load.withFixed(place(seats.get(load.id())))
                        : load)
                .toList());
    }

    private static FixedPlace place(Assignment seat) {
        return FixedPlace.builder()
                .panel(seat.panel())
                .slot(seat.slot())
                .board(seat.board())
                .output(seat.output())
                .build();
    }
}
