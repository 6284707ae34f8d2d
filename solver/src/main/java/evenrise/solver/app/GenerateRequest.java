package evenrise.solver.app;

import evenrise.model.project.PhaseSystem;
import evenrise.solver.sample.VenueSize;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * An invented venue is to be drawn.
 *
 * @param loads in all; empty for the usual number a panel
 * @param seed the same seed and size always give the same project
 * @param name of the project; empty for how it was drawn
 * @since 0.1.0
 */
public record GenerateRequest(int panels, OptionalInt loads, PhaseSystem system, long seed, Optional<String> name) {
    public static final int FEWEST_LOADS_A_PANEL = VenueSize.FEWEST_LOADS;
    public static final int MOST_LOADS_A_PANEL = VenueSize.MOST_LOADS;
    public static final int USUAL_LOADS_A_PANEL = VenueSize.USUAL_LOADS;

    public GenerateRequest {
        if (name.filter(String::isBlank).isPresent()) {
            throw new IllegalArgumentException("a name without a visible character.");
        }
        size(panels, loads, system);
    }

    /** With the usual loads, three-phase, seed 1. */
    public static GenerateRequest of(int panels) {
        return new GenerateRequest(panels, OptionalInt.empty(), PhaseSystem.THREE_PHASE, 1, Optional.empty());
    }

    VenueSize size() {
        return size(panels, loads, system);
    }

    private static VenueSize size(int panels, OptionalInt loads, PhaseSystem system) {
        return new VenueSize(
                panels,
                loads.orElseGet(() -> (int) Math.min(Integer.MAX_VALUE, (long) USUAL_LOADS_A_PANEL * panels)),
                system);
    }
}
