package evenrise.solver.report;

import java.util.Optional;

/** How what boards switch is told to go off, and on again. */
final class CommandText {
    private CommandText() {}

    /** @param system whose command it is; empty where one is for all */
    static String off(Optional<String> system) {
        return system.map(one -> "Give the off command of system " + one
                        + ". Wait until everything of it that boards switch is off.")
                .orElse("Give the off command. Wait until everything that boards switch is off.");
    }

    static String on(Optional<String> system) {
        return system.map(one -> "Give the on command of system " + one + ". Watch the sequence to its end.")
                .orElse("Give the on command. Watch the sequence to its end.");
    }
}
