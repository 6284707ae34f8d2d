package evenrise.solver.sample;

/** A part of a plant that a drawn venue may have beside panels on one supply. */
public enum PlantOption {
    /** A main distribution for each zone. */
    NODES,
    /** A service of 277/480 V; a main distribution and a transformer for each zone, of several connections. */
    TRANSFORMERS,
    /** The first zone on a source of its own. */
    SOURCE,
    /** Halls with commands of their own, and a core that they need. */
    SYSTEMS,
    /** Uses in which not everything runs. */
    SCENES,
    /** Boards that pass on after all outputs, and boards of which each output has a time of its own. */
    BOARDS,
    /** Amplifiers behind contactors. */
    CONTACTORS,
    /** Slots, current and outputs that stay free. */
    SPARE,
    /** Racks that loads are mounted in. */
    RACKS,
    /** Loads that go off late, and boards that can do that. */
    OFF_DELAYS,
    /** Cables, devices and sources, for the electrical review. */
    WIRING
}
