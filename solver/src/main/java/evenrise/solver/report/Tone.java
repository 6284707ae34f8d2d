package evenrise.solver.report;

/** What a piece of text is for; whoever shows it may give it a colour, and no tone says what the words do not. */
public enum Tone {
    PLAIN,
    HEADING,
    GOOD,
    BAD,
    FAINT
}
