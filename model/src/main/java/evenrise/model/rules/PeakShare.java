package evenrise.model.rules;

/**
 * What one load adds to a peak.
 *
 * @param load id of the load
 * @param amps instantaneous current at the peak's instant, by the envelope at nominal voltage
 * @param baseAmps the part of it that stays
 */
public record PeakShare(String load, double amps, double baseAmps) {}
