package evenrise.solver.document;

import java.util.List;

/** The supply's current by the envelopes at nominal voltage on one phase over time; times and currents belong together by place. */
public record Envelope(String phase, List<Double> seconds, List<Double> amps, double peakAmps, double peakAtSeconds) {}
