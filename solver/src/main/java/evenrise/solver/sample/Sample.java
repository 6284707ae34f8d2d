package evenrise.solver.sample;

import evenrise.model.project.Project;

/** Draws invented venues: the same seed and size always give the same project. */
public final class Sample {
    private Sample() {}

    /** A three-phase venue with the usual number of loads in each of {@code panels}. */
    public static Project venue(long seed, int panels) {
        return venue(seed, VenueSize.ofPanels(panels)).project();
    }

    /** A venue of {@code size} with a name that tells how it was drawn. */
    public static Venue venue(long seed, VenueSize size) {
        return venue(seed, size, usualName(seed, size));
    }

    /** How a venue without a name of its own is called. */
    public static String usualName(long seed, VenueSize size) {
        return "Drawn venue of " + size.panels() + " panels, seed " + seed;
    }

    /** A venue of {@code size}, with a layout that keeps its rules. Time: linear in the loads, but for the peaks. */
    public static Venue venue(long seed, VenueSize size, String name) {
        return venue(seed, size, name, VenuePlant.FLAT);
    }

    /**
     * The same with parts of a plant.
     *
     * @throws IllegalArgumentException where the venue has no room for one of them
     */
    public static Venue venue(long seed, VenueSize size, String name, VenuePlant plant) {
        return new VenueDraft(new SeededDraws(seed), VenueFrame.of(plant, size)).venue(name);
    }
}
