package evenrise.model.event;

/**
 * A shutdown group is off, partly on or on from now on. It is what its breakers do, not what the control believes.
 *
 * @param loadsOn how many of its loads are on
 * @param loads how many it has
 */
public record GroupChange(double atSeconds, String group, State state, int loadsOn, int loads) {
    /** How much of a group is on. */
    public enum State {
        OFF("off"),
        PARTLY_ON("partly on"),
        ON("on");

        private final String words;

        State(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    static State state(int loadsOn, int loads) {
        return loadsOn == 0 ? State.OFF : loadsOn < loads ? State.PARTLY_ON : State.ON;
    }
}
