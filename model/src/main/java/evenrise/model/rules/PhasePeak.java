package evenrise.model.rules;

import evenrise.model.project.Phase;

/**
 * Greatest instantaneous current of one node on one phase, by the sum of envelopes.
 *
 * @param atSeconds nominal switch-on time of what makes it; 0 where only unswitched loads draw
 */
public record PhasePeak(Phase phase, double amps, double atSeconds) {}
