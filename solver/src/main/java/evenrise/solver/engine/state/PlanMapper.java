package evenrise.solver.engine.state;

import evenrise.model.plan.Assignment;
import evenrise.model.plan.BoardSetting;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

/** Crosses from the files' plan to the search's and back. */
public final class PlanMapper {
    private final Plant plant;
    private final Project project;

    public PlanMapper(Plant plant) {
        this.plant = plant;
        this.project = plant.project;
    }

    /** What of an earlier plan still fits the project; a load that does not is left without a place or output. */
    public Situation toSituation(Plan plan) {
        Situation situation = new Situation(plant);
        Map<String, Integer> loads = new HashMap<>();
        project.loads().forEach(load -> loads.put(load.id(), loads.size()));
        Map<String, Integer> panels = new HashMap<>();
        project.panels().forEach(panel -> panels.put(panel.id(), panels.size()));
        Map<String, Integer> boards = new HashMap<>();
        project.boards().forEach(board -> boards.put(board.id(), boards.size()));
        for (BoardSetting setting : plan.boards()) {
            Integer board = boards.get(setting.id());
            if (board != null) {
                situation.set(
                        board,
                        nearest(plant.startDelays[board], setting.startDelaySeconds()),
                        nearest(plant.steps[board], setting.stepSeconds()));
            }
        }
        situation.settle();
        for (Assignment assignment : plan.assignments()) {
            Integer load = loads.get(assignment.load());
            if (load != null) {
                situation.place(load, place(situation, load, panels.get(assignment.panel()), assignment.slot()));
                Integer board = assignment.board().map(boards::get).orElse(null);
                situation.wire(load, output(situation, load, board, assignment.output()));
                situation.settle();
            }
        }
        return situation;
    }

    private Place place(Situation situation, int load, Integer panel, int slot) {
        if (panel == null || slot < 1 || slot >= plant.placeAt[panel].length) {
            return null;
        }
        Place place = plant.placeAt[panel][slot][plant.poles[load]];
        boolean fits = place != null && plant.mayTake(load, place);
        for (int i = 0; fits && i < place.slots().length; i++) {
            int occupant = situation.loadInSlot(place.slots()[i]);
            fits = occupant == Plant.NONE || occupant == load;
        }
        return fits ? place : null;
    }

    private Output output(Situation situation, int load, Integer board, OptionalInt ordinal) {
        if (board == null
                || ordinal.isEmpty()
                || ordinal.getAsInt() < 1
                || ordinal.getAsInt() > plant.outputCount(board)) {
            return null;
        }
        Output output = plant.output(board, ordinal.getAsInt() - 1);
        int occupant = situation.loadOnOutput(output.index());
        return plant.mayUse(load, output) && (occupant == Plant.NONE || occupant == load) ? output : null;
    }

    private static Setting nearest(Setting[] offered, double seconds) {
        return Arrays.stream(offered)
                .min((a, b) -> Double.compare(Math.abs(a.seconds() - seconds), Math.abs(b.seconds() - seconds)))
                .orElseThrow();
    }

    /**
     * The files' plan, without figures, phases and times, which follow from it. A load that lacks its place or its output
     * is left out: it is not assigned.
     */
    public Plan toPlan(PlanSnapshot plan) {
        List<BoardSetting> settings = new ArrayList<>();
        for (int board = 0; board < plan.boardCount(); board++) {
            settings.add(new BoardSetting(
                    project.boards().get(board).id(),
                    plan.startDelay(board).seconds(),
                    plan.step(board).seconds()));
        }
        List<Assignment> assignments = new ArrayList<>();
        for (int load = 0; load < plan.loadCount(); load++) {
            Place place = plan.placeOf(load);
            Output output = plan.outputOf(load);
            if (place != null && (output != null || !plant.switched[load])) {
                assignments.add(Assignment.builder()
                        .load(plant.loads[load].id())
                        .panel(project.panels().get(place.panel()).id())
                        .slot(place.slot())
                        .board(Optional.ofNullable(output)
                                .map(o -> project.boards().get(o.board()).id()))
                        .output(output == null ? OptionalInt.empty() : OptionalInt.of(output.ordinal() + 1))
                        .build());
            }
        }
        return Plan.builder().boards(settings).assignments(assignments).build();
    }
}
