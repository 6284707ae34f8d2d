package evenrise.solver.app;

import java.util.logging.Level;
import java.util.logging.Logger;

/** Keeps what libraries log off the screen: their words are about themselves, not about a plan. */
final class QuietLibraries {
    /** Held, because a logger that nobody holds forgets its level. */
    private static final Logger ROOT = Logger.getLogger("");

    private QuietLibraries() {}

    static void hush() {
        ROOT.setLevel(Level.OFF);
    }
}
