package evenrise.solver.document;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;

/**
 * How many loads, boards or panels changed in one way.
 *
 * @param of how many there are, before or now
 */
public record KindOfChange(String kind, int count, int of) {
    private static final Set<String> PLACE = Set.of("panel", "slots", "phases");
    private static final Set<String> LEAD = Set.of("board", "output");
    private static final Set<String> TIME = Set.of("on", "off", "set", "offAfter");
    private static final Set<String> SETTING = Set.of("delay", "step");
    /** Of a board, what follows from where loads hang. */
    private static final Set<String> FOLLOWS = Set.of("use", "used", "unused", "chain");

    static DocumentTable<KindOfChange> table(List<ChangedCell> cells, PlanState before, PlanState now) {
        return DocumentTable.of(
                "moves",
                "What changed, by kind",
                "A load counts in each row that is true of it. A board's outputs in use and its chain follow from others,"
                        + " and do not count.",
                List.of(
                        Column.text("kind", "Change", KindOfChange::kind),
                        Column.count("count", "Count", KindOfChange::count),
                        Column.count("of", "Of", KindOfChange::of)),
                of(cells, before, now));
    }

    private static List<KindOfChange> of(List<ChangedCell> cells, PlanState before, PlanState now) {
        List<KindOfChange> kinds = new ArrayList<>();
        int loads = together(
                before.tables().circuits().rows().stream()
                        .map(PlannedCircuit::load)
                        .toList(),
                now.tables().circuits().rows().stream()
                        .map(PlannedCircuit::load)
                        .toList());
        List<Set<String>> ofLoads = keys(cells, ChangedCell.LOAD);
        int isNew = (int) cells.stream()
                .filter(each -> each.isOf(ChangedCell.LOAD)
                        && each.key().equals(ChangedCell.IN_THE_PLAN)
                        && each.before().equals("no"))
                .count();
        int gone = (int) ofLoads.stream()
                        .filter(keys -> keys.contains(ChangedCell.IN_THE_PLAN))
                        .count()
                - isNew;
        add(kinds, "loads new in the plan", isNew, loads);
        add(kinds, "loads gone from the plan", gone, loads);
        add(kinds, "loads to another panel", ofLoads, keys -> keys.contains("panel"), loads);
        add(
                kinds,
                "loads to other slots of their panel",
                ofLoads,
                keys -> keys.contains("slots") && !keys.contains("panel"),
                loads);
        add(kinds, "loads to another phase", ofLoads, keys -> keys.contains("phases"), loads);
        add(kinds, "loads to another board or output", ofLoads, keys -> hasAny(keys, LEAD), loads);
        add(kinds, "loads that switch at another time", ofLoads, keys -> hasAny(keys, TIME), loads);
        add(kinds, "loads with other data", ofLoads, KindOfChange::isOfData, loads);
        int boards = together(
                before.layout().project().boards().stream()
                        .map(each -> each.id())
                        .toList(),
                now.layout().project().boards().stream().map(each -> each.id()).toList());
        List<Set<String>> ofBoards = keys(cells, ChangedCell.BOARD);
        add(kinds, "boards set otherwise", ofBoards, keys -> hasAny(keys, SETTING), boards);
        add(
                kinds,
                "boards new, gone or with other data",
                ofBoards,
                keys -> keys.stream().anyMatch(key -> !FOLLOWS.contains(key) && !SETTING.contains(key)),
                boards);
        int panels = together(
                before.schedules().stream().map(Schedule::panel).toList(),
                now.schedules().stream().map(Schedule::panel).toList());
        add(kinds, "panels new, gone or with another head", keys(cells, ChangedCell.PANEL), keys -> true, panels);
        return kinds;
    }

    private static boolean isOfData(Set<String> keys) {
        return keys.stream()
                .anyMatch(key -> !key.equals(ChangedCell.IN_THE_PLAN)
                        && !PLACE.contains(key)
                        && !LEAD.contains(key)
                        && !TIME.contains(key));
    }

    private static boolean hasAny(Set<String> keys, Set<String> of) {
        return keys.stream().anyMatch(of::contains);
    }

    /** The keys that changed, for each thing that has any. */
    private static List<Set<String>> keys(List<ChangedCell> cells, String what) {
        Map<String, Set<String>> keys = new LinkedHashMap<>();
        cells.stream()
                .filter(each -> each.isOf(what))
                .forEach(each -> keys.computeIfAbsent(each.id(), any -> new LinkedHashSet<>())
                        .add(each.key()));
        return List.copyOf(keys.values());
    }

    private static int together(List<String> before, List<String> now) {
        Set<String> all = new LinkedHashSet<>(before);
        all.addAll(now);
        return all.size();
    }

    private static void add(
            List<KindOfChange> kinds, String kind, List<Set<String>> things, Predicate<Set<String>> is, int of) {
        add(kinds, kind, (int) things.stream().filter(is).count(), of);
    }

    private static void add(List<KindOfChange> kinds, String kind, int count, int of) {
        kinds.add(new KindOfChange(kind, count, of));
    }
}
