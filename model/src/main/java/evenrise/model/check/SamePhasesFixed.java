package evenrise.model.check;

import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.Phase;
import evenrise.model.project.SlotLayout;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Collectors;

/** Loads that must touch the same phases are not fixed to different ones. Necessary: a fixed panel and slot give the phases. */
final class SamePhasesFixed {
    private SamePhasesFixed() {}

    static void check(Candidates candidates, Consumer<Objection> found) {
        ProjectParts parts = candidates.parts;
        for (Load load : parts.loads.values()) {
            Optional<Set<Phase>> mine = phases(parts, load);
            for (int k = 0; k < load.samePhaseAs().size() && mine.isPresent(); k++) {
                Load other = parts.loads.get(load.samePhaseAs().get(k));
                Optional<Set<Phase>> theirs = other == null ? Optional.empty() : phases(parts, other);
                boolean isOneOrigin = theirs.isPresent() && origin(parts, other).equals(origin(parts, load));
                if (isOneOrigin && !theirs.equals(mine)) {
                    found.accept(Objection.impossible(
                            parts.pointer(load) + "/same_phase_as/" + k,
                            Shown.quoted(other.id()) + ", which is fixed to phases " + theirs.get()
                                    + ", while this load is fixed to " + mine.get(),
                            "loads that are fixed to the same phases",
                            "Maybe move one of the fixed slots by a row."));
                }
            }
        }
    }

    /** The transformer, source or supply whose voltages its panel has. */
    private static String origin(ProjectParts parts, Load load) {
        Panel panel = parts.panels.get(load.fixed().panel().orElseThrow());
        List<String> carriers = parts.carriersOf(panel);
        return carriers.get(carriers.size() - 1);
    }

    private static Optional<Set<Phase>> phases(ProjectParts parts, Load load) {
        Optional<Panel> panel = load.fixed().panel().map(parts.panels::get);
        if (panel.isEmpty() || load.fixed().slot().isEmpty()) {
            return Optional.empty();
        }
        SlotLayout layout = new SlotLayout(panel.get(), parts.systemOf(panel.get()));
        Set<Phase> phases = layout.span(load.fixed().slot().getAsInt(), load.poles()).stream()
                .map(layout::phase)
                .collect(Collectors.toCollection(java.util.TreeSet::new));
        return phases.isEmpty() ? Optional.empty() : Optional.of(phases);
    }
}
