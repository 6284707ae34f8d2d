package evenrise.solver.rework;

import evenrise.model.plan.BrokenRule;

/**
 * Something that a step of the work breaks and that was whole at the start.
 *
 * @param stage from 1
 * @param step of the stage, from 1; 0 for the stage as a whole
 * @param message all of it in words
 * @param found the hard rule that is broken, or {@code work} for what is wrong with the step itself
 */
public record Breach(int stage, int step, String message, BrokenRule found) {
    static Breach of(int stage, int step, BrokenRule found) {
        return new Breach(stage, step, text(found), found);
    }

    /** With the name of the hard rule, where it is one. */
    static String text(BrokenRule found) {
        return found.rule().equals(WorkKind.RULE) ? found.message() : found.rule() + ": " + found.message();
    }
}
