package evenrise.model.check;

import evenrise.model.contract.Phrase;
import evenrise.model.project.Board;
import evenrise.model.project.Load;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;

/**
 * There are outputs enough for all switched loads, on boards that reach the panels they may sit in. Necessary: a plan gives
 * each switched load an output of its own on such a board.
 */
final class OutputsForAllLoads {
    private OutputsForAllLoads() {}

    static void check(Candidates candidates, Consumer<Objection> found) {
        List<Board> boards = candidates.parts.project.boards();
        Map<BitSet, List<Load>> wanting = new LinkedHashMap<>();
        Map<List<Object>, BitSet> known = new LinkedHashMap<>();
        for (Load load : candidates.placeable()) {
            if (ProjectParts.needsOutput(load)) {
                List<Object> alike = List.of(
                        candidates.ofLoad.get(load.id()), load.fixed(), load.system(), load.offAfterSeconds() > 0);
                wanting.computeIfAbsent(
                                known.computeIfAbsent(alike, key -> boardsFor(candidates, load)),
                                any -> new ArrayList<>())
                        .add(load);
            }
        }
        int[] outputs =
                boards.stream().mapToInt(candidates.parts::usableOutputs).toArray();
        List<BitSet> sets = new ArrayList<>(wanting.keySet());
        Flow flow = new Flow(wanting.values().stream().map(List::size).toList(), sets, outputs);
        if (flow.left() == 0) {
            return;
        }
        BitSet crowded = new BitSet();
        List<Load> loads = new ArrayList<>();
        flow.crowded().stream().forEach(i -> {
            crowded.or(sets.get(i));
            loads.addAll(wanting.get(sets.get(i)));
        });
        int there = crowded.stream().map(b -> outputs[b]).sum();
        List<Board> on = crowded.stream().mapToObj(boards::get).toList();
        String where = on.isEmpty()
                ? "no board"
                : Shown.quoted(on.stream().map(Board::id).toList());
        String pointer = on.size() == 1 ? "/boards/" + crowded.nextSetBit(0) : "/boards";
        MissingBoards missing = new MissingBoards(candidates);
        found.accept(Objection.impossible(
                pointer,
                (on.size() == 1 ? "too small: " : "a list too short: ") + missing.counted(loads) + " can only be on "
                        + where + ", with " + Phrase.counted(there, "output") + " for them",
                "at least " + Phrase.counted(loads.size(), "output"),
                missing.forOutputs(loads.size() - there, on, loads)));
    }

    private static BitSet boardsFor(Candidates candidates, Load load) {
        BitSet set = new BitSet();
        BitSet fits = candidates.ofLoad.get(load.id());
        List<Board> boards = candidates.parts.project.boards();
        for (int b = 0; b < boards.size(); b++) {
            set.set(b, candidates.mayFeed(boards.get(b), load) && candidates.reaches(boards.get(b), fits));
        }
        return set;
    }
}
