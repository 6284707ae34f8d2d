package evenrise.model.check;

import evenrise.model.contract.Phrase;
import evenrise.model.project.Board;
import evenrise.model.project.GroupSeating;
import evenrise.model.project.Load;
import evenrise.model.project.ShutdownGroup;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;

/**
 * Each shutdown group has a board, or several where it is larger than the largest, that can take it. Necessary: the rules
 * {@code group-whole}, {@code emergency} and {@code group-panel} give it such a board, or such boards for itself alone, and
 * with {@code same_panel} a panel that each of its loads and boards allow.
 */
final class BoardsForEachGroup {
    private final Candidates candidates;
    private final ProjectParts parts;
    private final Map<String, List<Load>> fixedOn = new HashMap<>();
    private final int largest;

    private BoardsForEachGroup(Candidates candidates) {
        this.candidates = candidates;
        this.parts = candidates.parts;
        this.largest =
                parts.project.boards().stream().mapToInt(parts::outputs).max().orElse(0);
        for (Load load : parts.loads.values()) {
            load.fixed()
                    .board()
                    .ifPresent(id -> fixedOn.computeIfAbsent(id, key -> new ArrayList<>())
                            .add(load));
        }
    }

    static void check(Candidates candidates, Consumer<Objection> found) {
        boolean isAnyhow = candidates.parts.project.boards().stream()
                .map(board -> candidates.parts.types.get(board.type()))
                .anyMatch(type -> type != null && type.groups() == GroupSeating.ANY);
        if (isAnyhow) {
            return; // some boards seat groups anyhow
        }
        BoardsForEachGroup check = new BoardsForEachGroup(candidates);
        Map<String, List<Load>> members = new HashMap<>();
        for (Load load : check.parts.loads.values()) {
            if (ProjectParts.needsOutput(load)) {
                load.shutdownGroup()
                        .ifPresent(id -> members.computeIfAbsent(id, key -> new ArrayList<>())
                                .add(load));
            }
        }
        List<ShutdownGroup> groups = check.parts.project.shutdownGroups();
        for (int i = 0; i < groups.size() && check.largest > 0; i++) {
            List<Load> loads = members.getOrDefault(groups.get(i).id(), List.of());
            boolean placeable = loads.stream()
                    .noneMatch(load -> candidates.ofLoad.get(load.id()).isEmpty());
            if (placeable && !loads.isEmpty()) {
                check.group(groups.get(i), loads, "/shutdown_groups/" + i, found);
            }
        }
    }

    private void group(ShutdownGroup group, List<Load> loads, String pointer, Consumer<Objection> found) {
        boolean whole = loads.size() <= largest;
        boolean possible = group.samePanel()
                ? common(loads).stream().anyMatch(p -> inPanel(group, loads, p, whole))
                : whole
                        ? parts.project.boards().stream().anyMatch(board -> onOne(group, loads, board, null))
                        : onSeveral(group, loads, null);
        if (!possible) {
            String size = Phrase.counted(loads.size(), "load");
            String boards = whole ? "one board that has as many outputs" : "boards of its own with as many outputs";
            String panel = group.samePanel() ? ", and one panel that takes them all" : "";
            found.accept(Objection.impossible(
                    pointer,
                    "too much for any board: its " + size
                            + " find none that is large enough, reaches their panels, keeps"
                            + " their fixed places and holds no load that is fixed there against it",
                    boards + ", reaches a panel of each of its loads" + panel,
                    "Maybe split the group, let a board reach more panels, or free what is fixed."));
        }
    }

    private boolean inPanel(ShutdownGroup group, List<Load> loads, int p, boolean whole) {
        BitSet only = new BitSet();
        only.set(p);
        int poles = loads.stream().mapToInt(Load::poles).sum();
        int switchedPoles = loads.stream()
                .filter(ProjectParts::needsSwitchedBreaker)
                .mapToInt(Load::poles)
                .sum();
        boolean apart = loads.stream()
                .anyMatch(a ->
                        loads.stream().anyMatch(b -> a != b && a.apartFrom().contains(b.id())));
        if (apart || poles > candidates.slots(p, false) || switchedPoles > candidates.slots(p, true)) {
            return false;
        }
        return whole
                ? parts.project.boards().stream().anyMatch(board -> onOne(group, loads, board, only))
                : onSeveral(group, loads, only);
    }

    /** @param only the one panel that all must sit in, or null */
    private boolean onOne(ShutdownGroup group, List<Load> loads, Board board, BitSet only) {
        boolean opposed = !EmergencyClasses.dropsByOutput(parts, board)
                && fixedOn.getOrDefault(board.id(), List.of()).stream()
                        .anyMatch(load -> EmergencyClasses.drops(parts, load) != EmergencyClasses.drops(group));
        return !opposed
                && parts.usableOutputs(board) >= loads.size()
                && loads.stream().allMatch(load -> reaches(board, load, only));
    }

    private boolean onSeveral(ShutdownGroup group, List<Load> loads, BitSet only) {
        List<Board> own = parts.project.boards().stream()
                .filter(board -> fixedOn.getOrDefault(board.id(), List.of()).stream()
                        .allMatch(load ->
                                load.shutdownGroup().filter(group.id()::equals).isPresent()))
                .toList();
        List<BitSet> ways = new ArrayList<>();
        for (Load load : loads) {
            BitSet way = new BitSet();
            for (int b = 0; b < own.size(); b++) {
                way.set(b, reaches(own.get(b), load, only));
            }
            ways.add(way);
        }
        int[] outputs = own.stream().mapToInt(parts::usableOutputs).toArray();
        return new Flow(Collections.nCopies(loads.size(), 1), ways, outputs).left() == 0;
    }

    private boolean reaches(Board board, Load load, BitSet only) {
        BitSet fits = candidates.ofLoad.get(load.id());
        return candidates.mayFeed(board, load)
                && (only == null || only.intersects(fits))
                && candidates.reaches(board, only == null ? fits : only);
    }

    private BitSet common(List<Load> loads) {
        BitSet common = (BitSet) candidates.ofLoad.get(loads.get(0).id()).clone();
        loads.forEach(load -> common.and(candidates.ofLoad.get(load.id())));
        return common;
    }
}
