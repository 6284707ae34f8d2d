package evenrise.solver.engine.state;

import evenrise.model.electrical.InrushEnvelope;
import evenrise.model.project.Load;
import evenrise.model.project.Project;
import java.util.Arrays;

/**
 * What each load draws from its switch-on, instant by instant, in whole units of current so that adding and taking away
 * leaves no rounding behind. The unit is as fine as lets the sum of all peaks stay an {@code int}.
 */
public final class EnvelopeRows {
    private static final double MOST_UNITS = 1 << 30;
    private static final double FINEST_UNITS_PER_AMP = 1e6;

    public final double unitsPerAmp;
    final int[] baseUnits;

    private final InrushEnvelope[] envelopes;
    private final boolean[] switched;
    private final Instants instants;
    /** On a grid: current above the base by number of intervals since switch-on, until only the base is left. */
    private final int[][] rows;

    EnvelopeRows(Project project, Instants instants) {
        this.instants = instants;
        int count = project.loads().size();
        envelopes = new InrushEnvelope[count];
        double sumOfPeaks = 0;
        for (int i = 0; i < count; i++) {
            Load load = project.loads().get(i);
            envelopes[i] = InrushEnvelope.of(load, project.timingToleranceSeconds());
            sumOfPeaks += envelopes[i].baseAmps() + envelopes[i].excessAmps();
        }
        double finest = Math.min(FINEST_UNITS_PER_AMP, MOST_UNITS / Math.max(sumOfPeaks, 1e-9));
        unitsPerAmp = finest >= 1 ? Math.floor(finest) : finest;
        switched = new boolean[count];
        for (int i = 0; i < count; i++) {
            switched[i] = project.loads().get(i).switched();
        }
        baseUnits = new int[count];
        Arrays.setAll(baseUnits, i -> units(envelopes[i].baseAmps()));
        rows = new int[count][];
        if (instants.isGrid()) {
            for (int i = 0; i < count; i++) {
                rows[i] = switched[i] ? row(i) : new int[0];
            }
        }
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
        return (int) Math.round(amps * unitsPerAmp);
    }
}
