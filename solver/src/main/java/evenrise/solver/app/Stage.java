package evenrise.solver.app;

/**
 * What a job is at.
 *
 * @since 0.1.0
 */
public enum Stage {
    READING("reading"),
    SEARCHING("searching"),
    ORDERING("putting the work in order"),
    BOUNDS("proving what no plan can stay below"),
    JUDGING("judging the plan"),
    PLAYING("playing what happens"),
    TRIALS("drawing switch-ons"),
    WRITING("writing");

    private final String words;

    Stage(String words) {
        this.words = words;
    }

    /** In words, for a screen. */
    public String words() {
        return words;
    }
}
