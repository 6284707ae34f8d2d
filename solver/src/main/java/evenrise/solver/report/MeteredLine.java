package evenrise.solver.report;

import java.util.OptionalDouble;

/**
 * What a clamp meter shows at most on one conductor where something was moved.
 *
 * @param where the supply, a panel or a node
 * @param line its letter, or that it is the neutral
 * @param idleAmps sum of magnitudes, all loads on and idle
 * @param idlePhasorAmps the same by phasors; empty of a neutral, which is by phasors itself
 * @param fullAmps the same at full use; of a neutral whatever is on
 * @param allowedAmps that hard rules allow at full use
 */
public record MeteredLine(
        String where,
        String line,
        double idleAmps,
        OptionalDouble idlePhasorAmps,
        double fullAmps,
        OptionalDouble fullPhasorAmps,
        double allowedAmps) {
    static final String NEUTRAL = "neutral";

    private static final double ROUNDING_AMPS = 1e-9;

    public boolean isNeutral() {
        return line.equals(NEUTRAL);
    }

    /** Whether more may flow than is allowed. */
    public boolean isOver() {
        return fullAmps > allowedAmps + ROUNDING_AMPS;
    }

    /** Idle as it stands on a sheet. */
    public String idle() {
        return idleAmperes() + (isNeutral() ? " all on" : "");
    }

    /** Full use as it stands on a sheet. */
    public String full() {
        return fullAmperes() + (isNeutral() ? " whatever is on" : "");
    }

    public String idleAmperes() {
        return words(idleAmps, idlePhasorAmps);
    }

    public String fullAmperes() {
        return words(fullAmps, fullPhasorAmps);
    }

    public String allowed() {
        return Numbers.amps(allowedAmps);
    }

    private static String words(double amps, OptionalDouble phasorAmps) {
        return Numbers.amps(amps) + (phasorAmps.isPresent() ? " (" + Numbers.amps(phasorAmps.getAsDouble()) + ")" : "");
    }
}
