package evenrise.solver.app;

import evenrise.model.project.Overlap;
import evenrise.model.project.PhaseSystem;
import evenrise.solver.sample.VenuePlant;
import evenrise.solver.sample.VenueSize;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * An invented venue is to be drawn.
 *
 * @param loads in all; empty for the usual number a panel
 * @param seed the same seed and size always give the same project
 * @param name of the project; empty for how it was drawn
 * @param parts what it has beside panels on one supply
 * @param overlap of its systems, where it has any
 * @since 0.1.0
 */
public record GenerateRequest(
        int panels,
        OptionalInt loads,
        PhaseSystem system,
        long seed,
        Optional<String> name,
        Set<VenuePart> parts,
        Overlap overlap) {
    public static final int FEWEST_LOADS_A_PANEL = VenueSize.FEWEST_LOADS;
    public static final int MOST_LOADS_A_PANEL = VenueSize.MOST_LOADS;
    public static final int USUAL_LOADS_A_PANEL = VenueSize.USUAL_LOADS;

    public GenerateRequest {
        if (name.filter(String::isBlank).isPresent()) {
            throw new IllegalArgumentException("a name without a visible character.");
        }
        parts = Set.copyOf(parts);
        plant(parts, overlap).fit(size(panels, loads, system));
    }

    /** Of panels on one supply. */
    public GenerateRequest(int panels, OptionalInt loads, PhaseSystem system, long seed, Optional<String> name) {
        this(panels, loads, system, seed, name, Set.of(), Overlap.ONE_AT_A_TIME);
    }

    /** With the usual loads, three-phase, seed 1. */
    public static GenerateRequest of(int panels) {
        return new GenerateRequest(panels, OptionalInt.empty(), PhaseSystem.THREE_PHASE, 1, Optional.empty());
    }

    VenuePlant plant() {
        return plant(parts, overlap);
    }

    private static VenuePlant plant(Set<VenuePart> parts, Overlap overlap) {
        return new VenuePlant(parts.stream().map(VenuePart::option).collect(Collectors.toSet()), overlap);
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
