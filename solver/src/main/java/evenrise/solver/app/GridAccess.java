package evenrise.solver.app;

import java.nio.file.Path;
import java.util.Optional;

/**
 * Other machines that take part.
 *
 * @param hosts where workers listen: HOST or HOST:PORT, parted by commas
 * @param keys folder with this machine's key and certificate, and that of the authority; empty stays on this machine
 * @param log of the engine that carries jobs; empty for none
 * @since 0.1.0
 */
public record GridAccess(String hosts, Optional<Path> keys, Optional<Log> log) {
    /** A file that grows, and how much goes into it. */
    public record Log(Path file, Level level) {}

    /** From this one up. */
    public enum Level {
        ERROR,
        WARNING,
        INFO,
        DEBUG
    }
}
