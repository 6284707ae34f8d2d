package evenrise.model.electrical.source;

import evenrise.model.electrical.Impedance;

/** Peak of an inrush that several loads draw through one impedance. */
public final class SharedSource {
    private SharedSource() {}

    /**
     * The crest that flows where loads whose crests on a stiff source add to {@code boundAmps} share {@code source}: each
     * counts as the resistance that crest stands for. Less than the bound always.
     *
     * @param crestVolts √2 times the nominal voltage to neutral
     */
    public static double crestAmps(double boundAmps, double crestVolts, Impedance source) {
        if (boundAmps <= 0) {
            return 0;
        }
        double loadsOhms = crestVolts / boundAmps;
        return crestVolts / Math.hypot(loadsOhms + source.resistanceOhms(), source.reactanceOhms());
    }
}
