package evenrise.solver.engine.state;

import evenrise.model.electrical.InrushEnvelope;
import java.util.Arrays;

/**
 * What each load draws from its switch-on, instant by instant, in whole units of current so that adding and taking away
 * leaves no rounding behind. The unit is as fine as lets the sum of all peaks stay an {@code int}. Beyond a transformer it
 * is a part of that.
 */
public final class EnvelopeRows {
    private static final double MOST_UNITS = 1 << 30;
    private static final double FINEST_UNITS_PER_AMP = 1e6;

    public final double unitsPerAmp;
    public final int[] baseUnits;
    /** In use: at the greatest use in any scene, or idling. */
    final int[] useUnits;

    private final double part;
    private final InrushEnvelope[] envelopes;
    private final boolean[] switched;
    private final Instants instants;
    /** On a grid: current above the base by number of intervals since switch-on, until only the base is left. */
    private final int[][] rows;

    /** The whole of each load. */
    EnvelopeRows(CompiledProject compiled) {
        instants = compiled.instants;
        part = 1;
        int count = compiled.loadCount();
        envelopes = new InrushEnvelope[count];
        switched = compiled.switched;
        double sumOfPeaks = 0;
        for (int i = 0; i < count; i++) {
            envelopes[i] = InrushEnvelope.of(compiled.loads[i], compiled.project.timingToleranceSeconds());
            double most = envelopes[i].baseAmps() + envelopes[i].excessAmps();
            if (compiled.hasClocks || compiled.tree.transformers.length > 0) {
                most = Math.max(most, useAmps(compiled, i)) * mostOf(compiled, i);
            }
            sumOfPeaks += most;
        }
        double finest = Math.min(FINEST_UNITS_PER_AMP, MOST_UNITS / Math.max(sumOfPeaks, 1e-9));
        unitsPerAmp = finest >= 1 ? Math.floor(finest) : finest;
        baseUnits = new int[count];
        useUnits = new int[count];
        rows = new int[count][];
        for (int i = 0; i < count; i++) {
            fill(compiled, i);
        }
    }

    /** A part of those loads that any node can see so. */
    EnvelopeRows(CompiledProject compiled, int share) {
        EnvelopeRows whole = compiled.envelopes;
        instants = whole.instants;
        part = compiled.tree.shares[share];
        envelopes = whole.envelopes;
        switched = whole.switched;
        unitsPerAmp = whole.unitsPerAmp;
        int count = envelopes.length;
        baseUnits = new int[count];
        useUnits = new int[count];
        rows = new int[count][];
        for (int i = 0; i < count; i++) {
            int load = i;
            boolean isSeen = compiled.allowedPanels[load].stream()
                    .flatMap(panel -> compiled.tree.sharesOf(panel, compiled.poles[load]))
                    .anyMatch(each -> each == share);
            if (isSeen) {
                fill(compiled, i);
            }
        }
    }

    private void fill(CompiledProject compiled, int load) {
        baseUnits[load] = units(envelopes[load].baseAmps());
        useUnits[load] = units(useAmps(compiled, load));
        if (instants.isGrid()) {
            rows[load] = switched[load] ? row(load) : new int[0];
        }
    }

    private static double useAmps(CompiledProject compiled, int load) {
        double running = compiled.currents.runningNano[load] / Currents.NANO;
        return Math.sqrt(2) * Math.max(compiled.loads[load].idleAmps(), running);
    }

    private static double mostOf(CompiledProject compiled, int load) {
        return compiled.allowedPanels[load].stream()
                .mapToDouble(compiled.tree::mostOf)
                .max()
                .orElse(1);
    }

    /**
     * Adds ({@code sign} 1) or takes away (−1) what a load that comes on at instant {@code from} draws above its base.
     *
     * @return the first instant at which only the base is left
     */
    int addExcess(int load, int[] profile, int from, int sign) {
        if (instants.isGrid()) {
            int[] row = rows[load];
            int end = Math.min(profile.length, from + row.length);
            for (int t = from; t < end; t++) {
                profile[t] += sign * row[t - from];
            }
            return end;
        }
        int next = from;
        while (switched[load] && next < profile.length) {
            int excess = unitsAfter(load, instants.micros(next) - instants.micros(from)) - baseUnits[load];
            if (excess == 0) {
                break;
            }
            profile[next++] += sign * excess;
        }
        return next;
    }

    /** On a grid: current above the base at each instant from a load's switch-on, until only the base is left. */
    public int[] excessUnits(int load) {
        return rows[load];
    }

    /** Current at instant {@code at} of a switched load that has come on at {@code from}. */
    int units(int load, int from, int at) {
        if (instants.isGrid()) {
            return baseUnits[load] + (at - from < rows[load].length ? rows[load][at - from] : 0);
        }
        return unitsAfter(load, instants.micros(at) - instants.micros(from));
    }

    /**
     * Current of a load when another comes on so much later: the profile is looked at where that one may draw at the
     * earliest, for currents only fall in between.
     */
    private int unitsAfter(int load, long micros) {
        InrushEnvelope envelope = envelopes[load];
        return units(envelope.amps(0, envelope.startSeconds(micros / 1e6)));
    }

    private int[] row(int load) {
        int[] row = new int[instants.size()];
        int length = 0;
        while (length < row.length) {
            int excess = unitsAfter(load, instants.micros(length)) - baseUnits[load];
            if (excess == 0) {
                break;
            }
            row[length++] = excess;
        }
        return Arrays.copyOf(row, length);
    }

    private int units(double amps) {
        return (int) Math.round(part * amps * unitsPerAmp);
    }
}
