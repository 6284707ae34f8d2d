package evenrise.model.sizing;

/** What is sized. */
public enum Part {
    BREAKER("breaker", "breaker_a"),
    BRANCH_CABLE("cable", "circuit.cable"),
    DEVICE("feeder device", "feeder.breaker_a"),
    FEEDER_CABLE("feeder cable", "feeder.cable"),
    TRANSFORMER("transformer", "transformer.rated_kva"),
    INTERRUPTING("interrupting rating", "interrupting_a");

    private final String text;
    private final String field;

    Part(String text, String field) {
        this.text = text;
        this.field = field;
    }

    public String text() {
        return text;
    }

    /** Of the project file, where a proposal is taken over. */
    public String field() {
        return field;
    }
}
