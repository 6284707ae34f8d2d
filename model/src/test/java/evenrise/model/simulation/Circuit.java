package evenrise.model.simulation;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * A netlist for the simulator: one phase or three on one source, loads that close one after another. Node {@code b1} is the
 * bus of phase 1, {@code n} the neutral at the bus; the probe of a phase measures what its loads draw together.
 */
final class Circuit {
    static final double HERTZ = 50;
    static final double CREST_VOLTS = 230 * Math.sqrt(2);

    private final List<String> lines = new ArrayList<>();
    private final int phases;
    private int loads;

    /**
     * @param sourceOhms of each phase
     * @param sourceHenry of each phase
     * @param neutralOhms between the bus's neutral and the source's
     */
    Circuit(String title, int phases, double sourceOhms, double sourceHenry, double neutralOhms) {
        this.phases = phases;
        lines.add("* " + title);
        lines.add(".model contact sw(vt=0.5 vh=0 ron=1m roff=1e6)");
        for (int phase = 1; phase <= phases; phase++) {
            double degrees = -360.0 / 3 * (phase - 1);
            add("vs%d s%d 0 sin(0 %.6f %.0f 0 0 %.3f)", phase, phase, CREST_VOLTS, HERTZ, degrees);
            add("rs%d s%d t%d %.6g", phase, phase, phase, Math.max(sourceOhms, 1e-6));
            add("ls%d t%d u%d %.6g", phase, phase, phase, Math.max(sourceHenry, 1e-6));
            add("vp%d u%d b%d 0", phase, phase, phase);
            // The simulator wants a path for direct current wherever contacts are open.
            add("rb%d b%d n 1e6", phase, phase);
            add("cb%d b%d 0 10n", phase, phase);
        }
        add("rn n 0 %.6g", Math.max(neutralOhms, 1e-6));
    }

    int phases() {
        return phases;
    }

    /**
     * A bridge rectifier behind a resistance that charges a capacitor; it idles on {@code idleOhms}. The bridge is ideal with
     * two drops of 0.7 V: what flows in while the mains are above the capacitor charges it.
     */
    Circuit rectifier(int phase, double closesSeconds, double seriesOhms, double farad, double idleOhms) {
        int k = contact(phase, closesSeconds);
        add("br%d a%d n i=(v(a%d,n)>0?1:-1)*max(0,abs(v(a%d,n))-1.4-v(p%d))/%.6g", k, k, k, k, k, seriesOhms);
        add("bc%d 0 p%d i=max(0,abs(v(a%d,n))-1.4-v(p%d))/%.6g", k, k, k, k, seriesOhms);
        add("cc%d p%d 0 %.6g ic=0", k, k, farad);
        add("ro%d p%d 0 %.6g", k, k, idleOhms);
        return this;
    }

    /**
     * A transformer without load: winding resistance, and a core whose magnetising current rises with the thirteenth power of
     * its flux beyond the knee.
     *
     * @param remanence over the flux of normal service, with the sign that is worse
     */
    Circuit transformer(int phase, double closesSeconds, double windingOhms, double kneeAmps, double remanence) {
        int k = contact(phase, closesSeconds);
        double servedFlux = CREST_VOLTS / (2 * Math.PI * HERTZ);
        add("rw%d a%d w%d %.6g", k, k, k, windingOhms);
        // The contact's own control keeps flux and current as they are until it closes.
        add("bf%d 0 f%d i=v(w%d,n)*v(g%d)", k, k, k, k);
        add("cf%d f%d 0 1 ic=%.6g", k, k, remanence * servedFlux);
        add("rf%d f%d 0 1e9", k, k);
        add("bm%d w%d n i=v(g%d)*%.6g*pwr(v(f%d)/%.6g,13)", k, k, k, kneeAmps, k, 1.15 * servedFlux);
        return this;
    }

    /** The text of the netlist, which writes time, bus voltages and currents of all phases to {@code wave.txt}. */
    String text(double seconds) {
        StringBuilder text = new StringBuilder();
        lines.forEach(line -> text.append(line).append('\n'));
        StringBuilder vectors = new StringBuilder();
        for (int phase = 1; phase <= phases; phase++) {
            vectors.append(String.format(Locale.ROOT, " v(b%d,n) i(vp%d)", phase, phase));
        }
        text.append(String.format(Locale.ROOT, ".options reltol=1e-4 abstol=1e-6 chgtol=1e-11 itl4=200%n"));
        text.append(String.format(Locale.ROOT, ".tran 40u %.4f 0 40u uic%n", seconds));
        text.append(".control\nset wr_singlescale\nset numdgt=7\nrun\nlinearize")
                .append(bare(phases))
                .append("\nwrdata wave.txt")
                .append(vectors)
                .append("\nquit\n.endc\n.end\n");
        return text.toString().replace("\r", "");
    }

    private static String bare(int phases) {
        StringBuilder vectors = new StringBuilder();
        for (int phase = 1; phase <= phases; phase++) {
            vectors.append(String.format(Locale.ROOT, " v(b%d) i(vp%d)", phase, phase));
        }
        return vectors.append(" v(n)").toString();
    }

    private int contact(int phase, double closesSeconds) {
        int k = ++loads;
        add("vc%d g%d 0 pwl(0 0 %.6f 0 %.6f 1)", k, k, closesSeconds, closesSeconds + 20e-6);
        add("sw%d b%d a%d g%d 0 contact", k, phase, k, k);
        add("rg%d a%d n 1e7", k, k);
        return k;
    }

    private void add(String format, Object... values) {
        lines.add(String.format(Locale.ROOT, format, values));
    }
}
