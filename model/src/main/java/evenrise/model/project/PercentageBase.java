package evenrise.model.project;

/** What a percentage is taken of. */
public enum PercentageBase {
    MATERIAL,
    LABOUR,
    /** Both, without percentages. */
    MATERIAL_AND_LABOUR,
    /** Both, and the percentages that stand before it. */
    ALL_ABOVE
}
