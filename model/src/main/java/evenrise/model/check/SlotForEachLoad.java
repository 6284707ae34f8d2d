package evenrise.model.check;

import evenrise.model.project.Load;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.function.Consumer;

/** Each load has a panel that could take it. Necessary, as {@link Candidates} rules out only what no plan can do. */
final class SlotForEachLoad {
    private static final int MOST_REASONS = 3;

    private SlotForEachLoad() {}

    static void check(Candidates candidates, Consumer<Objection> found) {
        for (Load load : candidates.parts.loads.values()) {
            if (!candidates.ofLoad.get(load.id()).isEmpty()) {
                continue;
            }
            BitSet stated = candidates.stated(load);
            List<String> reasons = new ArrayList<>();
            stated.stream()
                    .limit(MOST_REASONS)
                    .forEach(p -> reasons.add("panel "
                            + Shown.quoted(candidates.panels.get(p).id()) + ": " + candidates.whyNot(load, p)));
            if (stated.cardinality() > MOST_REASONS) {
                reasons.add("and " + (stated.cardinality() - MOST_REASONS) + " panels more");
            }
            String kind = (load.switched() ? "switched, " : "unswitched, ") + load.poles() + "-pole";
            found.accept(Objection.impossible(
                    candidates.parts.pointer(load),
                    kind + ", and no slot can take it (" + String.join("; ", reasons) + ")",
                    "a slot in at least one of its panels",
                    "Maybe allow another panel, or free what is fixed of its place."));
        }
    }
}
