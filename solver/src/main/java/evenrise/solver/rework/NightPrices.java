package evenrise.solver.rework;

import evenrise.model.plan.Plan;
import evenrise.model.project.Board;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.Project;
import evenrise.model.rules.ProjectIndex;
import evenrise.solver.engine.nearby.ChangePrices;
import java.util.Collection;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/** What changes to a plan as built cost: work by kind, panels and boards that go dead with it, systems that go off. */
public final class NightPrices {
    private final ProjectIndex index;
    private final WorkMinutes minutes;
    private final BuiltPlant plant;
    private final Map<String, Set<String>> offWithLoad = new HashMap<>();
    private final Map<String, Set<String>> offWithPanel = new HashMap<>();
    private final Map<String, Set<String>> offWithBoard = new HashMap<>();

    private NightPrices(BuiltPlant plant) {
        this.plant = plant;
        Project project = plant.project();
        index = new ProjectIndex(project);
        minutes = WorkMinutes.of(project);
        Passage still = new Passage(plant, plant.plan(), NightLimits.NONE);
        for (Load load : project.loads()) {
            offWithLoad.put(load.id(), OutageOf.load(still, load.id()).commands());
        }
        for (Panel panel : project.panels()) {
            if (Isolation.isDeadAtWork(panel)) {
                offWithPanel.put(panel.id(), OutageOf.panel(still, panel.id()).commands());
            }
        }
        for (Board board : project.boards()) {
            if (Isolation.isDeadAtWork(board)) {
                offWithBoard.put(board.id(), OutageOf.board(still, board.id()).commands());
            }
        }
    }

    public static NightPrices of(Project project, Plan built) {
        return of(BuiltPlant.of(project, built, Optional.empty()));
    }

    static NightPrices of(BuiltPlant plant) {
        return new NightPrices(plant);
    }

    /** What the changes cost at least. */
    public NightCost cost(Changes changes) {
        Map<MoveKind, Integer> counts = new EnumMap<>(MoveKind.class);
        for (LoadChange change : changes.loads()) {
            change.breakerKind().ifPresent(kind -> counts.merge(kind, 1, Integer::sum));
            change.leadKind(index).ifPresent(kind -> counts.merge(kind, 1, Integer::sum));
            counts.merge(MoveKind.TEST, 1, Integer::sum);
        }
        for (Removal removal : changes.removals()) {
            counts.merge(MoveKind.REMOVAL, 1, Integer::sum);
            removal.from().board().ifPresent(any -> counts.merge(MoveKind.LEAD, 1, Integer::sum));
        }
        counts.merge(MoveKind.REMOVAL, SpareBreakers.evicted(plant, index, changes), Integer::sum);
        Isolation isolation = Isolation.of(index, changes.loads(), changes.removals());
        counts.put(MoveKind.SETTING, changes.settingsInAll());
        counts.put(MoveKind.ISOLATION, isolation.size());
        Set<String> off = new TreeSet<>();
        changes.loads().forEach(change -> add(off, offWithLoad, List.of(change.load())));
        changes.removals().forEach(removal -> add(off, offWithLoad, List.of(removal.load())));
        add(off, offWithPanel, isolation.panels());
        add(off, offWithBoard, isolation.boards());
        counts.put(MoveKind.SHUTDOWN, off.size());
        return NightCost.of(counts, minutes);
    }

    private static void add(Set<String> off, Map<String, Set<String>> with, Collection<String> parts) {
        parts.forEach(part -> off.addAll(with.getOrDefault(part, Set.of())));
    }

    /** The same for a search, which counts it change by change. */
    public ChangePrices forSearch() {
        return new SearchPrices(minutes, offWithLoad, offWithPanel, offWithBoard);
    }
}
