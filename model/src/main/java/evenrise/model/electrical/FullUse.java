package evenrise.model.electrical;

import evenrise.model.project.Load;

/**
 * What a load draws while the show runs. A load may idle at more than it runs at (a discharge lamp that warms up, a
 * heater that is warm): the greater of both counts.
 */
public final class FullUse {
    private FullUse() {}

    /** Crest of the current in each pole: √2 times the greater of running and idle current. Sinusoidal. */
    public static double amps(Load load) {
        return Math.sqrt(2) * Math.max(load.runningAmps(), load.idleAmps());
    }
}
