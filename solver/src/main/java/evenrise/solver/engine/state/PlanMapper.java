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
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** Crosses from the files' plan to the search's and back. */
public final class PlanMapper {
    private final CompiledProject compiled;
    private final Project project;

    public PlanMapper(CompiledProject compiled) {
        this.compiled = compiled;
        this.project = compiled.project;
    }

    /** What of an earlier plan still fits the project; a load that does not is left without a place or output. */
    public PlanSums toSums(Plan plan) {
        PlanSums sums = new PlanSums(compiled);
        Map<String, Integer> loads = new HashMap<>();
        project.loads().forEach(load -> loads.put(load.id(), loads.size()));
        Map<String, Integer> panels = new HashMap<>();
        project.panels().forEach(panel -> panels.put(panel.id(), panels.size()));
        Map<String, Integer> boards = new HashMap<>();
        project.boards().forEach(board -> boards.put(board.id(), boards.size()));
        for (BoardSetting setting : plan.boards()) {
            Integer board = boards.get(setting.id());
            if (board != null
                    && compiled.times[board] == null
                    && setting.startDelaySeconds().isPresent()) {
                sums.set(
                        board,
                        nearest(compiled.startDelays[board], setting.delaySeconds()),
                        nearest(compiled.steps[board], setting.betweenSeconds()));
            }
        }
        sums.settle();
        for (Assignment assignment : plan.assignments()) {
            Integer load = loads.get(assignment.load());
            if (load != null) {
                sums.place(load, place(sums, load, panels.get(assignment.panel()), assignment.slot()));
                Integer board = assignment.board().map(boards::get).orElse(null);
                sums.wire(load, output(sums, load, board, assignment.output()));
                sums.settle();
            }
        }
        if (compiled.hasTimes()) {
            takeTimes(plan, loads, sums);
        }
        return sums;
    }

    /** Board by board, each after the one that it follows: an output's time counts from its board's start. */
    private void takeTimes(Plan plan, Map<String, Integer> loads, PlanSums sums) {
        long[] onMicros = new long[compiled.loadCount()];
        for (Assignment assignment : plan.assignments()) {
            Integer load = loads.get(assignment.load());
            if (load != null) {
                onMicros[load] = Math.round(assignment.onSeconds().orElse(0) * 1e6);
            }
        }
        for (int board : compiled.boardOrder) {
            for (int k = compiled.firstOutput[board];
                    compiled.times[board] != null && k < compiled.firstOutput[board + 1];
                    k++) {
                int load = sums.loadOnOutput(k);
                if (load != CompiledProject.NONE) {
                    long offset = onMicros[load] - sums.clock().startMicros(board);
                    sums.time(load, Setting.nearest(compiled.times[board], offset));
                }
            }
            sums.settle();
        }
    }

    private Place place(PlanSums sums, int load, Integer panel, int slot) {
        if (panel == null || slot < 1 || slot >= compiled.placeAt[panel].length) {
            return null;
        }
        Place place = compiled.placeAt[panel][slot][compiled.poles[load]];
        boolean fits = place != null && compiled.mayTake(load, place);
        for (int i = 0; fits && i < place.slots().length; i++) {
            int occupant = sums.loadInSlot(place.slots()[i]);
            fits = occupant == CompiledProject.NONE || occupant == load;
        }
        return fits ? place : null;
    }

    private Output output(PlanSums sums, int load, Integer board, OptionalInt ordinal) {
        if (board == null
                || ordinal.isEmpty()
                || ordinal.getAsInt() < 1
                || ordinal.getAsInt() > compiled.outputCount(board)) {
            return null;
        }
        Output output = compiled.output(board, ordinal.getAsInt() - 1);
        int occupant = sums.loadOnOutput(output.index());
        return compiled.mayUse(load, output) && (occupant == CompiledProject.NONE || occupant == load) ? output : null;
    }

    private boolean isTimed(Output output) {
        return output != null && compiled.times[output.board()] != null;
    }

    private static Setting nearest(Setting[] offered, double seconds) {
        return Arrays.stream(offered)
                .min((a, b) -> Double.compare(Math.abs(a.seconds() - seconds), Math.abs(b.seconds() - seconds)))
                .orElseThrow();
    }

    /**
     * The files' plan, without figures, phases and times that follow from it. A load that lacks its place or its output
     * is left out: it is not assigned.
     */
    public Plan toPlan(PlanSnapshot plan) {
        List<BoardSetting> settings = new ArrayList<>();
        for (int board = 0; board < plan.boardCount(); board++) {
            String id = project.boards().get(board).id();
            settings.add(
                    compiled.times[board] != null
                            ? BoardSetting.ofEach(id)
                            : new BoardSetting(
                                    id,
                                    plan.startDelay(board).seconds(),
                                    plan.step(board).seconds()));
        }
        BoardClock clock = compiled.hasTimes() ? PlanSums.of(compiled, plan).clock() : null;
        List<Assignment> assignments = new ArrayList<>();
        for (int load = 0; load < plan.loadCount(); load++) {
            Place place = plan.placeOf(load);
            Output output = plan.outputOf(load);
            if (place != null && (output != null || !compiled.needsOutput[load])) {
                assignments.add(Assignment.builder()
                        .load(compiled.loads[load].id())
                        .panel(project.panels().get(place.panel()).id())
                        .slot(place.slot())
                        .board(Optional.ofNullable(output)
                                .map(o -> project.boards().get(o.board()).id()))
                        .output(output == null ? OptionalInt.empty() : OptionalInt.of(output.ordinal() + 1))
                        .onSeconds(
                                isTimed(output)
                                        ? OptionalDouble.of(clock.onMicros(load, output) / 1e6)
                                        : OptionalDouble.empty())
                        .build());
            }
        }
        return Plan.builder().boards(settings).assignments(assignments).build();
    }
}
