package evenrise.model.project;

/** How hard an amplifier is driven on average, over its rated output. */
public enum Programme {
    /** 1/8: clean programme with its peaks unclipped. */
    EIGHTH,
    /** 1/3: heavily limited programme. */
    THIRD
}
