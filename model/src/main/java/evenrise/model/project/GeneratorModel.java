package evenrise.model.project;

/** How a generator's dip follows from the step in load. */
public enum GeneratorModel {
    /** Reactance times step over rating: the larger figure. */
    LINEAR,
    /** Reactance and step as a divider of voltage. */
    DIVIDER
}
