package evenrise.model.project;

/** How a transformer joins two systems. Others (high-leg and open delta, autotransformers) are refused. */
public enum TransformerConnection {
    /** Primary windings between lines, secondary ones in a star: shifted by 30°, no way for the neutral. */
    DELTA_WYE,
    /** Both in a star with the neutral: not shifted, the neutral is passed on. */
    WYE_WYE,
    /** One winding on one or two primary phases. */
    SINGLE
}
