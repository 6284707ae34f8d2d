package evenrise.solver.bench;

import evenrise.model.plan.Assignment;
import evenrise.model.plan.BoardSetting;
import evenrise.model.plan.Plan;
import evenrise.model.project.Board;
import evenrise.model.project.BoardType;
import evenrise.model.project.Load;
import evenrise.model.project.OnEmergency;
import evenrise.model.project.Panel;
import evenrise.model.project.Phase;
import evenrise.model.project.Project;
import evenrise.model.project.SlotLayout;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/**
 * What a person does with a list: loads in the file's order, each to the first slot that takes its breaker and the first
 * free output there that does not mix what drops with what holds; then boards one after another.
 */
final class ListOrderLayout {
    private final Project project;
    private final Map<String, Set<Integer>> takenSlots = new HashMap<>();
    private final Map<String, Set<Integer>> takenOutputs = new HashMap<>();
    private final Map<String, Boolean> dropping = new HashMap<>();
    private final Map<String, BoardType> types = new HashMap<>();

    private ListOrderLayout(Project project) {
        this.project = project;
        project.boardTypes().forEach(type -> types.put(type.id(), type));
    }

    static Plan of(Project project) {
        ListOrderLayout it = new ListOrderLayout(project);
        List<Assignment> assignments = new ArrayList<>();
        project.loads().forEach(load -> it.assign(load).ifPresent(assignments::add));
        return Plan.builder().boards(it.settings()).assignments(assignments).build();
    }

    private Optional<Assignment> assign(Load load) {
        for (Panel panel : project.panels()) {
            OptionalInt slot = firstSlot(panel, load);
            Optional<Assignment> found =
                    slot.isEmpty() ? Optional.empty() : onFirstOutput(load, panel, slot.getAsInt());
            if (found.isPresent()) {
                takenSlots
                        .get(panel.id())
                        .addAll(new SlotLayout(panel, project.supply().system()).span(slot.getAsInt(), load.poles()));
                return found;
            }
        }
        return Optional.empty();
    }

    private OptionalInt firstSlot(Panel panel, Load load) {
        boolean allowed = (load.panels().isEmpty() || load.panels().contains(panel.id()))
                && load.fixed().panel().orElse(panel.id()).equals(panel.id());
        SlotLayout layout = new SlotLayout(panel, project.supply().system());
        Set<Integer> taken = takenSlots.computeIfAbsent(panel.id(), any -> new HashSet<>(panel.reservedSlots()));
        for (int slot = 1; slot <= panel.slots() && allowed; slot++) {
            List<Integer> span = layout.span(slot, load.poles());
            Set<Phase> phases = new HashSet<>();
            span.forEach(each -> phases.add(layout.phase(each)));
            boolean fits = phases.size() == load.poles()
                    && load.fixed().slot().orElse(slot) == slot
                    && span.stream().noneMatch(taken::contains)
                    && (!load.switched()
                            || panel.switchedSlots()
                                    .map(slots -> slots.containsAll(span))
                                    .orElse(true));
            if (fits) {
                return OptionalInt.of(slot);
            }
        }
        return OptionalInt.empty();
    }

    private Optional<Assignment> onFirstOutput(Load load, Panel panel, int slot) {
        if (!load.switched()) {
            return Optional.of(assignment(load, panel, slot, Optional.empty(), OptionalInt.empty()));
        }
        boolean drops = project.shutdownGroups().stream()
                .anyMatch(group -> load.shutdownGroup().equals(Optional.of(group.id()))
                        && group.onEmergency() == OnEmergency.DROP);
        for (Board board : project.boards()) {
            boolean fits = board.reaches().contains(panel.id())
                    && load.fixed().board().orElse(board.id()).equals(board.id())
                    && dropping.getOrDefault(board.id(), drops) == drops;
            Set<Integer> taken = takenOutputs.computeIfAbsent(board.id(), any -> new HashSet<>());
            for (int output = 1; fits && output <= types.get(board.type()).outputs(); output++) {
                if (load.fixed().output().orElse(output) == output && taken.add(output)) {
                    dropping.put(board.id(), drops);
                    return Optional.of(assignment(load, panel, slot, Optional.of(board.id()), OptionalInt.of(output)));
                }
            }
        }
        return Optional.empty();
    }

    private static Assignment assignment(Load load, Panel panel, int slot, Optional<String> board, OptionalInt output) {
        return Assignment.builder()
                .load(load.id())
                .panel(panel.id())
                .slot(slot)
                .board(board)
                .output(output)
                .build();
    }

    /** Each board with its shortest step, from the first offered delay at which the one before is done, or its longest. */
    private List<BoardSetting> settings() {
        List<BoardSetting> settings = new ArrayList<>();
        double done = 0;
        for (Board board : project.boards()) {
            BoardType type = types.get(board.type());
            double step =
                    type.stepSeconds().stream().min(Comparator.naturalOrder()).orElseThrow();
            double free = done;
            double delay = board.after().isPresent()
                    ? type.startDelaySeconds().stream()
                            .min(Comparator.naturalOrder())
                            .orElseThrow()
                    : type.startDelaySeconds().stream()
                            .filter(offered -> offered >= free)
                            .min(Comparator.naturalOrder())
                            .orElseGet(() -> type.startDelaySeconds().stream()
                                    .max(Comparator.naturalOrder())
                                    .orElseThrow());
            int used = takenOutputs.getOrDefault(board.id(), Set.of()).stream()
                    .max(Comparator.naturalOrder())
                    .orElse(0);
            done = used == 0 ? done : Math.max(done, delay + used * step);
            settings.add(new BoardSetting(board.id(), delay, step));
        }
        return settings;
    }
}
