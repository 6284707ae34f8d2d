package evenrise.model.project;

/** The body of rules that the electrical review goes by. */
public enum Practice {
    /** The practice of the National Electrical Code, NFPA 70: American wire gauge, breakers to UL 489. */
    NEC,
    /** The practice of IEC 60364: square millimetres, breakers to IEC 60898-1 and IEC 60947-2. */
    IEC;

    private static final double NORTH_AMERICAN_HERTZ = 60;

    /**
     * What is usual where a supply has this voltage and frequency: at 60 Hz, 100 to 130 V and 265 to 360 V to neutral (120,
     * 127, 277 and 347 V) are American, all else is not. From memory; Brazil's 127 V goes by a rule of the IEC's kind.
     */
    public static Practice usualAt(double lineToNeutralVolts, double hertz) {
        boolean isAmerican = lineToNeutralVolts >= 100 && lineToNeutralVolts <= 130
                || lineToNeutralVolts >= 265 && lineToNeutralVolts <= 360;
        return hertz == NORTH_AMERICAN_HERTZ && isAmerican ? NEC : IEC;
    }
}
