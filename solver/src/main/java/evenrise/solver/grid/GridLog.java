package evenrise.solver.grid;

import java.nio.file.Path;

/** Where the engine writes what it does, and how much of it. */
public record GridLog(Path file, Level level) {
    /** From this one up. */
    public enum Level {
        ERROR,
        WARNING,
        INFO,
        DEBUG
    }
}
