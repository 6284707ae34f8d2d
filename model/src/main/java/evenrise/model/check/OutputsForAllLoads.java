package evenrise.model.check;

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
        Map<BitSet, Integer> wanting = new LinkedHashMap<>();
        Map<List<Object>, BitSet> known = new LinkedHashMap<>();
        for (Load load : candidates.placeable()) {
            if (ProjectParts.needsOutput(load)) {
                List<Object> alike = List.of(
                        candidates.ofLoad.get(load.id()), load.fixed(), load.system(), load.offAfterSeconds() > 0);
                wanting.merge(known.computeIfAbsent(alike, key -> boardsFor(candidates, load)), 1, Integer::sum);
            }
        }
        int[] outputs =
                boards.stream().mapToInt(candidates.parts::usableOutputs).toArray();
        List<BitSet> sets = new ArrayList<>(wanting.keySet());
        Flow flow = new Flow(new ArrayList<>(wanting.values()), sets, outputs);
        if (flow.left() == 0) {
            return;
        }
        BitSet crowded = new BitSet();
        BitSet senders = flow.crowded();
        senders.stream().forEach(i -> crowded.or(sets.get(i)));
        int needed = senders.stream().map(i -> wanting.get(sets.get(i))).sum();
        int there = crowded.stream().map(b -> outputs[b]).sum();
        String where = crowded.isEmpty()
                ? "no board"
                : Shown.quoted(
                        crowded.stream().mapToObj(b -> boards.get(b).id()).toList());
        String pointer = crowded.cardinality() == 1 ? "/boards/" + crowded.nextSetBit(0) : "/boards";
        found.accept(Objection.impossible(
                pointer,
                (crowded.cardinality() == 1 ? "too small: " : "a list too short: ") + needed
                        + " switched loads can only be on " + where + ", with " + there + " outputs",
                "at least " + needed + " outputs for them",
                "Maybe add a board, or let boards reach more panels."));
    }

    private static BitSet boardsFor(Candidates candidates, Load load) {
        BitSet set = new BitSet();
        BitSet fits = candidates.ofLoad.get(load.id());
        List<Board> boards = candidates.parts.project.boards();
        for (int b = 0; b < boards.size(); b++) {
            set.set(
                    b,
                    candidates.mayFeed(boards.get(b), load)
                            && candidates.reach(boards.get(b)).intersects(fits));
        }
        return set;
    }
}
