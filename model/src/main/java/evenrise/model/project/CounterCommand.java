package evenrise.model.project;

/** What an on or off command does that contradicts the sequence under way. */
public enum CounterCommand {
    /** The sequence turns at once. */
    TURN,
    /** The command waits until the sequence is through. */
    WAIT,
    /** The command is refused. */
    REFUSE
}
