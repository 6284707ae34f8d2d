package evenrise.solver.grid;

import java.util.Optional;

/**
 * How a process takes part.
 *
 * @param hosts where workers are looked for
 * @param keys with which it shows who it is, and knows the others by; without them it stays on this machine
 * @param software what all who take part must run: version and parts
 * @param log of the engine; empty for none
 */
public record GridSite(GridHosts hosts, Optional<SiteKeys> keys, String software, Optional<GridLog> log) {
    /** @throws GridUnavailable where hosts outside this machine are to be joined without keys */
    public GridSite {
        if (keys.isEmpty() && !hosts.areLoopback()) {
            throw new GridUnavailable("without keys nothing is joined outside this machine, and " + hosts
                    + " is outside it. Maybe make keys ('evenrise worker --make-certificates FOLDER --for NAMES') and name"
                    + " them with --keys.");
        }
    }
}
