package evenrise.model.project;

import java.util.List;

/** How many line conductors the supply has and how they stand to each other. */
public enum PhaseSystem {
    /** Three phases, 120° apart, A before B before C. */
    THREE_PHASE(Phase.A, Phase.B, Phase.C),
    /** Two legs of one centre-tapped winding, 180° apart. */
    SPLIT_PHASE(Phase.A, Phase.B),
    SINGLE_PHASE(Phase.A);

    private final List<Phase> phases;

    PhaseSystem(Phase... phases) {
        this.phases = List.of(phases);
    }

    /** The phases in their order of rotation. */
    public List<Phase> phases() {
        return phases;
    }
}
