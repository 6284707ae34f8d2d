package evenrise.model.project;

import java.util.List;

/**
 * Geometry of one panel: which slots a breaker takes and on which phase each lies. Numbered from the top, odd left and
 * even right where alternating. Which number sits where is practice, not code; the phase of a row repeats down the bus.
 */
public final class SlotLayout {
    private final Panel panel;
    private final List<Phase> rotation;
    private final List<Phase> phases;

    public SlotLayout(Panel panel, PhaseSystem system) {
        this.panel = panel;
        this.rotation = panel.phaseRotation().isEmpty() ? system.phases() : panel.phaseRotation();
        this.phases = system.phases().stream().filter(rotation::contains).toList();
    }

    /** Phases that the panel has rows on, in the system's order: two of three in a panel on two legs. */
    public List<Phase> phases() {
        return phases;
    }

    /** Bus row of a slot, from 1. */
    public int row(int slot) {
        return panel.numbering() == SlotNumbering.ALTERNATING ? (slot + 1) / 2 : slot;
    }

    /** Phase of a slot. */
    public Phase phase(int slot) {
        return rotation.get((row(slot) - 1) % rotation.size());
    }

    /** The slots that a breaker takes when its first pole is in {@code slot}; empty where it does not fit. */
    public List<Integer> span(int slot, int poles) {
        int stride = panel.numbering() == SlotNumbering.ALTERNATING ? 2 : 1;
        if (slot < 1 || slot + stride * (poles - 1) > panel.slots()) {
            return List.of();
        }
        return java.util.stream.IntStream.range(0, poles)
                .mapToObj(pole -> slot + stride * pole)
                .toList();
    }
}
