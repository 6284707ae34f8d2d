package evenrise.solver.report.page;

import java.util.List;

/** Upper bound at nominal voltage of the supply's current on one phase over time; times and currents belong together by place. */
public record Envelope(String phase, List<Double> seconds, List<Double> amps, double peakAmps, double peakAtSeconds) {}
