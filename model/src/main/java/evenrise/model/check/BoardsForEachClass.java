package evenrise.model.check;

import evenrise.model.contract.Phrase;
import evenrise.model.project.Board;
import evenrise.model.project.Load;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * Loads of each class find boards of their own among those that they can be on. Necessary: a board serves one system, and
 * where an emergency drops whole boards it has no loads that drop beside loads that hold, so of any set of boards each
 * class of loads that can be on no other needs at least as many as it fills of the largest. The sets tried are those of all
 * boards and of the boards that some load can be on, so not every conflict is seen.
 */
final class BoardsForEachClass {
    /** Loads of one class share boards with their like alone. */
    private record Kind(Optional<String> system, boolean drops) {}

    private final Candidates candidates;
    private final ProjectParts parts;
    private final Consumer<Objection> found;
    private final Map<BitSet, List<Load>> byBoards = new LinkedHashMap<>();

    BoardsForEachClass(Candidates candidates, Consumer<Objection> found) {
        this.candidates = candidates;
        this.parts = candidates.parts;
        this.found = found;
    }

    void check() {
        Map<Board, Integer> numbers = new HashMap<>();
        parts.project.boards().forEach(board -> numbers.putIfAbsent(board, numbers.size()));
        Map<List<Board>, BitSet> known = new IdentityHashMap<>();
        for (Load load : candidates.placeable()) {
            if (ProjectParts.needsOutput(load)) {
                BitSet able = known.computeIfAbsent(candidates.boardsFor(load), boards -> numbered(boards, numbers));
                byBoards.computeIfAbsent(able, any -> new ArrayList<>()).add(load);
            }
        }
        List<BitSet> sets = new ArrayList<>(byBoards.keySet());
        BitSet all = new BitSet();
        all.set(0, parts.project.boards().size());
        sets.add(all);
        sets.sort(Comparator.comparingInt(BitSet::cardinality));
        List<BitSet> said = new ArrayList<>();
        for (BitSet set : sets) {
            if (said.stream().noneMatch(small -> isWithin(small, set)) && isTooFew(set)) {
                said.add(set);
            }
        }
    }

    private static BitSet numbered(List<Board> boards, Map<Board, Integer> numbers) {
        BitSet set = new BitSet();
        boards.forEach(board -> set.set(numbers.get(board)));
        return set;
    }

    private boolean isTooFew(BitSet set) {
        List<Board> boards = set.stream().mapToObj(parts.project.boards()::get).toList();
        boolean mayMix = boards.stream().anyMatch(board -> EmergencyClasses.dropsByOutput(parts, board));
        List<Load> loads = new ArrayList<>();
        byBoards.forEach((able, some) -> {
            if (isWithin(able, set)) {
                loads.addAll(some);
            }
        });
        Map<Kind, Integer> counts = new LinkedHashMap<>();
        loads.forEach(load ->
                counts.merge(new Kind(load.system(), !mayMix && EmergencyClasses.drops(parts, load)), 1, Integer::sum));
        List<Integer> outputs = boards.stream()
                .map(parts::usableOutputs)
                .sorted(Comparator.reverseOrder())
                .toList();
        boolean hasOutputs =
                loads.size() <= outputs.stream().mapToInt(Integer::intValue).sum();
        int needed = counts.values().stream()
                .mapToInt(count -> boards(count, outputs))
                .sum();
        if (!hasOutputs || needed <= boards.size()) {
            return false; // too few outputs are said elsewhere
        }
        report(boards, loads, needed, mayMix);
        return true;
    }

    private void report(List<Board> boards, List<Load> loads, int needed, boolean mayMix) {
        MissingBoards missing = new MissingBoards(candidates);
        boolean isAll = boards.size() == parts.project.boards().size();
        String where = isAll
                ? ""
                : ", which can only be on "
                        + Shown.quoted(boards.stream().map(Board::id).toList()) + ",";
        found.accept(Objection.impossible(
                "/boards",
                "a list too short: " + missing.counted(loads) + where + " need at least "
                        + Phrase.counted(needed, "board") + ", as no board may mix " + (mayMix ? "systems" : "them"),
                "at least " + Phrase.counted(needed, "board") + (isAll ? "" : " for them"),
                missing.whole(needed - boards.size(), boards, loads)));
    }

    private static boolean isWithin(BitSet some, BitSet set) {
        BitSet rest = (BitSet) some.clone();
        rest.andNot(set);
        return rest.isEmpty();
    }

    /** How many of the largest boards so many loads fill; all of them where they are too few. */
    private static int boards(int loads, List<Integer> largestFirst) {
        int count = 0;
        for (int left = loads; left > 0 && count < largestFirst.size(); count++) {
            left -= largestFirst.get(count);
        }
        return count;
    }
}
