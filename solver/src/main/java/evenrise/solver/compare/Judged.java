package evenrise.solver.compare;

import java.util.Locale;
import java.util.Optional;

/**
 * A make-up in the list by price, and what is known of it.
 *
 * @param number in order of price, from 1
 * @param why it is ruled out; of the others empty
 * @param finding of what was planned
 */
public record Judged(
        int number, MakeUp makeUp, Standing standing, Optional<String> why, Optional<ScenarioResult> finding) {
    /** Whether plans of a make-up keep every rule. */
    public enum Standing {
        /** A plan does. */
        SOUND,
        /** No plan does, as counting proves. */
        RULED_OUT,
        /** None was found, which proves nothing. */
        UNDECIDED,
        /** Nobody has looked. */
        NOT_LOOKED_AT;

        /** As tables call it. */
        public String word() {
            return name().toLowerCase(Locale.ROOT).replace('_', ' ');
        }
    }

    static Judged notLookedAt(int number, MakeUp makeUp) {
        return new Judged(number, makeUp, Standing.NOT_LOOKED_AT, Optional.empty(), Optional.empty());
    }
}
