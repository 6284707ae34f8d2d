package evenrise.solver.document;

import java.util.List;

/**
 * Current of a node by the envelopes at nominal voltage on one phase over time, as one command is carried out; times and
 * currents belong together by place.
 *
 * @param colour of the conductor
 * @param restAmps what that command does not switch, in {@code amps}, too; 0 where one command switches all
 * @param usedAmps once all of it is on and in use; 0 where one command switches all
 */
public record Envelope(
        String phase,
        String colour,
        List<Double> seconds,
        List<Double> amps,
        double peakAmps,
        double peakAtSeconds,
        double restAmps,
        double usedAmps) {}
