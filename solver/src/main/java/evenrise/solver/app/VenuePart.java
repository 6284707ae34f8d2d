package evenrise.solver.app;

import evenrise.solver.sample.PlantOption;

/**
 * A part of a plant that a drawn venue may have beside panels on one supply.
 *
 * @since 0.1.0
 */
public enum VenuePart {
    /** A main distribution for each zone. */
    NODES(PlantOption.NODES),
    /** A service of 277/480 V; a main distribution and a transformer for each zone, of several connections. */
    TRANSFORMERS(PlantOption.TRANSFORMERS),
    /** The first zone on a source of its own. */
    SOURCE(PlantOption.SOURCE),
    /** Halls with commands of their own, and a core that they need. */
    SYSTEMS(PlantOption.SYSTEMS),
    /** Uses in which not everything runs. */
    SCENES(PlantOption.SCENES),
    /** Boards that pass on after all outputs, and boards of which each output has a time of its own. */
    BOARDS(PlantOption.BOARDS),
    /** Amplifiers behind contactors. */
    CONTACTORS(PlantOption.CONTACTORS),
    /** Slots, current and outputs that stay free. */
    SPARE(PlantOption.SPARE),
    /** Racks that loads are mounted in. */
    RACKS(PlantOption.RACKS),
    /** Loads that go off late, and boards that can do that. */
    OFF_DELAYS(PlantOption.OFF_DELAYS),
    /** Cables, devices and sources, for the electrical review. */
    WIRING(PlantOption.WIRING);

    private final PlantOption option;

    VenuePart(PlantOption option) {
        this.option = option;
    }

    PlantOption option() {
        return option;
    }
}
