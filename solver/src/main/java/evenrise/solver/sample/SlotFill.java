package evenrise.solver.sample;

import evenrise.model.project.Panel;
import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.SlotLayout;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Gives slots to a panel's loads: most poles first, then those tied to a phase, then the heaviest, each where the phases stay most even. */
final class SlotFill {
    private final Panel panel;
    private final SlotLayout layout;
    private final Set<Integer> taken;
    private final Map<Phase, Double> amps = new EnumMap<>(Phase.class);
    private final Map<String, Phase> phaseOf = new HashMap<>();

    SlotFill(Panel panel, PhaseSystem system) {
        this.panel = panel;
        layout = new SlotLayout(panel, system);
        taken = new HashSet<>(panel.reservedSlots());
    }

    /** @throws IllegalStateException when a load finds no slot, which a panel drawn with spare slots does not allow */
    void fill(List<LoadDraft> loads) {
        Set<String> tied = new HashSet<>();
        for (LoadDraft load : loads) {
            if (!load.samePhaseAs.isEmpty()) {
                tied.add(load.id);
                tied.addAll(load.samePhaseAs);
            }
        }
        loads.stream()
                .sorted(Comparator.comparing((LoadDraft load) -> !isUnswitchedInSplitPanel(load))
                        .thenComparing(load -> -load.poles)
                        .thenComparing(load -> !tied.contains(load.id))
                        .thenComparing(load -> load.samePhaseAs.isEmpty())
                        .thenComparing(load -> -load.runningAmps))
                .forEach(this::place);
    }

    private boolean isUnswitchedInSplitPanel(LoadDraft load) {
        return !load.switched && load.poles == 1 && panel.switchedSlots().isPresent();
    }

    private void place(LoadDraft load) {
        int best = 0;
        double least = Double.POSITIVE_INFINITY;
        for (int slot = 1; slot <= panel.slots(); slot++) {
            double cost = cost(load, layout.span(slot, load.poles));
            if (cost < least) {
                least = cost;
                best = slot;
            }
        }
        if (best == 0) {
            throw new IllegalStateException("panel '" + panel.id() + "' has no slot for load '" + load.id + "'");
        }
        load.slot = best;
        for (int slot : layout.span(best, load.poles)) {
            taken.add(slot);
            amps.merge(layout.phase(slot), load.runningAmps, Double::sum);
        }
        phaseOf.put(load.id, layout.phase(best));
        for (String other : load.samePhaseAs) {
            phaseOf.putIfAbsent(other, layout.phase(best));
        }
    }

    /** The greatest phase current after placing it there, in ampere; infinite where it may not sit. */
    private double cost(LoadDraft load, List<Integer> span) {
        if (span.isEmpty() || span.stream().anyMatch(taken::contains)) {
            return Double.POSITIVE_INFINITY;
        }
        List<Integer> forSwitched = panel.switchedSlots().orElse(null);
        boolean isForSwitched = forSwitched == null || forSwitched.containsAll(span);
        if (load.switched && !isForSwitched || isUnswitchedInSplitPanel(load) && isForSwitched) {
            return Double.POSITIVE_INFINITY;
        }
        Phase wanted = phaseOf.get(load.id);
        if (wanted != null && wanted != layout.phase(span.get(0))) {
            return Double.POSITIVE_INFINITY;
        }
        return span.stream()
                .mapToDouble(slot -> amps.getOrDefault(layout.phase(slot), 0.0) + load.runningAmps)
                .max()
                .orElseThrow();
    }
}
