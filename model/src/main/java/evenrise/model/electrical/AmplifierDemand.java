package evenrise.model.electrical;

/**
 * What a power amplifier draws from the mains while it plays, from its rated output alone, for want of a datasheet's
 * figures at the same duty. A duty is mean output over rated output; 1/8 (9 dB of headroom) is the usual rating of clean
 * programme, 1/3 (4.8 dB) of heavily limited programme (IEC 60065 and UL 6500 rate at 1/8; read in a manual, clause from
 * memory).
 */
public final class AmplifierDemand {
    /** Duty of programme with its peaks unclipped. */
    public static final double EIGHTH = 1.0 / 8;

    /** Duty of heavily limited programme: the worst that is met in use. */
    public static final double THIRD = 1.0 / 3;

    private AmplifierDemand() {}

    /**
     * A linear output stage on fixed rails, ideal class B: with a Gaussian programme of mean power d·P the mean rail
     * current gives d·P·(2/√π)/√d. Rail losses and crossover bias are left out, so a real one of this kind draws more; one
     * that changes its rails with the signal draws less. Its efficiency at a full sine would be π/4.
     *
     * @param duty in (0, 1]
     */
    public static double linearWatts(double ratedOutputWatts, double duty, double idleWatts) {
        return idleWatts + ratedOutputWatts * 2 / Math.sqrt(Math.PI) * Math.sqrt(duty);
    }

    /**
     * A switching output stage of constant efficiency.
     *
     * @param efficiency of the output stage, in (0, 1]
     */
    public static double switchingWatts(double ratedOutputWatts, double duty, double idleWatts, double efficiency) {
        return idleWatts + duty * ratedOutputWatts / efficiency;
    }
}
