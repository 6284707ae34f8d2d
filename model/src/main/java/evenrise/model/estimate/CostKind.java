package evenrise.model.estimate;

/** What a line of a bill is, for subtotals and percentages. */
public enum CostKind {
    MATERIAL,
    LABOUR
}
