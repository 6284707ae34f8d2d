package evenrise.model.project;

/** The body of rules that the electrical review goes by. */
public enum Practice {
    /** The practice of the National Electrical Code, NFPA 70: American wire gauge, breakers to UL 489. */
    NEC,
    /** The practice of IEC 60364: square millimetres, breakers to IEC 60898-1 and IEC 60947-2. */
    IEC
}
