package evenrise.solver.sample;

import evenrise.model.project.Overlap;
import evenrise.model.project.PhaseSystem;
import java.util.Locale;
import java.util.Set;

/**
 * What a drawn venue has beside panels on one supply.
 *
 * @param overlap of its systems, where it has any
 */
public record VenuePlant(Set<PlantOption> options, Overlap overlap) {
    /** Panels on one supply, one command, stepped boards. */
    public static final VenuePlant FLAT = new VenuePlant(Set.of(), Overlap.ONE_AT_A_TIME);

    public VenuePlant {
        options = Set.copyOf(options);
        if (overlap != Overlap.ONE_AT_A_TIME && !options.contains(PlantOption.SYSTEMS)) {
            throw new IllegalArgumentException("an overlap of systems without systems. Maybe ask for systems, too.");
        }
    }

    /** All of it. */
    public static VenuePlant whole(Overlap overlap) {
        return new VenuePlant(Set.of(PlantOption.values()), overlap);
    }

    /** @throws IllegalArgumentException where a venue of that size has no room for a part of it */
    public void fit(VenueSize size) {
        if (has(PlantOption.SOURCE) && VenueZones.count(size.panels()) < 2) {
            throw new IllegalArgumentException(String.format(
                    Locale.ROOT,
                    "a source for the first zone of %d panels, expected more than one zone. Maybe ask for %d panels.",
                    VenueZones.PANELS_IN_ZONE,
                    VenueZones.PANELS_IN_ZONE + 1));
        }
        if (has(PlantOption.TRANSFORMERS) && size.system() != PhaseSystem.THREE_PHASE) {
            throw new IllegalArgumentException(
                    "transformers of a split-phase venue, expected three-phase. Maybe ask for nodes alone.");
        }
    }

    /** Whether it has any part; its limits are then those of devices, and leave room to grow. */
    boolean isFlat() {
        return options.isEmpty();
    }

    boolean has(PlantOption option) {
        return options.contains(option);
    }
}
