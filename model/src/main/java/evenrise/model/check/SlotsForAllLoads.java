package evenrise.model.check;

import evenrise.model.contract.Phrase;
import evenrise.model.project.Load;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;

/**
 * There are slots enough for all poles, in the panels that their loads may sit in; the same for switched loads and slots
 * that take them. Necessary: a plan gives each pole a slot of its own, so its poles are a flow that leaves none over.
 */
final class SlotsForAllLoads {
    private SlotsForAllLoads() {}

    static void check(Candidates candidates, Consumer<Objection> found) {
        if (!check(candidates, false, found)) {
            check(candidates, true, found);
        }
    }

    private static boolean check(Candidates candidates, boolean switchedOnly, Consumer<Objection> found) {
        Map<BitSet, Integer> poles = new LinkedHashMap<>();
        for (Load load : candidates.placeable()) {
            if (ProjectParts.needsSwitchedBreaker(load) || !switchedOnly) {
                poles.merge(candidates.ofLoad.get(load.id()), load.poles(), Integer::sum);
            }
        }
        int[] slots = new int[candidates.panels.size()];
        for (int p = 0; p < slots.length; p++) {
            slots[p] = candidates.slots(p, switchedOnly);
        }
        List<BitSet> sets = new ArrayList<>(poles.keySet());
        Flow flow = new Flow(new ArrayList<>(poles.values()), sets, slots);
        if (flow.left() == 0) {
            return false;
        }
        BitSet panels = new BitSet();
        BitSet crowded = flow.crowded();
        crowded.stream().forEach(i -> panels.or(sets.get(i)));
        int needed = crowded.stream().map(i -> poles.get(sets.get(i))).sum();
        int free = panels.stream().map(p -> slots[p]).sum();
        String what = switchedOnly ? "poles of switched loads" : "poles";
        String pointer = panels.cardinality() == 1 ? "/panels/" + panels.nextSetBit(0) : "/panels";
        found.accept(Objection.impossible(
                pointer,
                (panels.cardinality() == 1 ? "too small: " : "a set too small: ") + needed + " " + what
                        + " can only sit in " + candidates.names(panels) + ", which "
                        + (panels.cardinality() == 1 ? "has " : "have ") + free + " slots for them",
                "at least " + needed + " slots for them",
                Phrase.counted(needed - free, "slot")
                        + " missing. Maybe allow other panels for some loads, or add a panel"
                        + " of at least as many."));
        return true;
    }
}
