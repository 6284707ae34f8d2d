package evenrise.model.project;

/** What a maximum demand was recorded over. */
public enum DemandBasis {
    YEAR,
    THIRTY_DAYS
}
