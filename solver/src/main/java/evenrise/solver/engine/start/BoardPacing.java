package evenrise.solver.engine.start;

import evenrise.solver.engine.state.Charges;
import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.Pairs;
import evenrise.solver.engine.state.PlanSums;
import evenrise.solver.engine.state.RoleOrder;
import evenrise.solver.engine.state.Setting;
import java.util.Arrays;

/** Gives one board the start delay and step that break least and then crowd the supply's profile least. */
final class BoardPacing {
    private static final int MOST_SETTINGS = 400;

    private final PlanSums sums;
    private final CompiledProject compiled;
    private final long[] earliest;

    /** Processing is to be on by then, so that as much of the sequence as can be is left to what follows. */
    private long processingByMicros;

    /** Auxiliary loads are to be on, and processing to be settled, by then. */
    private long readyByMicros;

    /** @param outputs for each board the load that each output will switch */
    BoardPacing(PlanSums sums, int[][] outputs) {
        this.sums = sums;
        this.compiled = sums.compiled;
        earliest = earliestOfAll(outputs);
        for (int load = 0; load < earliest.length; load++) {
            if (compiled.switched[load] && compiled.role[load] == CompiledProject.PROCESSING) {
                processingByMicros = Math.max(processingByMicros, earliest[load]);
                readyByMicros = Math.max(readyByMicros, earliest[load] + compiled.settleMicros[load]);
            } else if (compiled.switched[load] && compiled.role[load] == CompiledProject.AUXILIARY) {
                readyByMicros = Math.max(readyByMicros, earliest[load]);
            }
        }
        readyByMicros = Math.max(readyByMicros, processingByMicros);
    }

    /** When the last of these loads could come on at the earliest: boards are paced in that order. */
    long earliestMicros(int[] loads) {
        return Arrays.stream(loads)
                .filter(load -> load != CompiledProject.NONE)
                .mapToLong(load -> earliest[load])
                .max()
                .orElse(0);
    }

    /** When each load could come on at the earliest, on its output and behind what it comes after. */
    private long[] earliestOfAll(int[][] outputs) {
        long[] times = new long[compiled.loadCount()];
        for (int board : compiled.boardOrder) {
            for (int k = 0; k < outputs[board].length; k++) {
                if (outputs[board][k] != CompiledProject.NONE) {
                    times[outputs[board][k]] =
                            compiled.startDelays[board][0].micros() + k * compiled.steps[board][0].micros();
                }
            }
        }
        Pairs pairs = compiled.pairs;
        boolean later = true;
        for (int round = 0; later && round < compiled.loadCount(); round++) {
            later = false;
            for (int pair = 0; pair < pairs.kind.length; pair++) {
                int behind = pairs.second[pair];
                long settled = times[pairs.first[pair]] + compiled.settleMicros[pairs.first[pair]];
                if (pairs.kind[pair] == Pairs.ORDER && times[behind] < settled) {
                    times[behind] = settled;
                    later = true;
                }
            }
        }
        return times;
    }

    void pace(int board) {
        if (sums.groups().loadsOn(board) == 0) {
            return;
        }
        Setting[] delays = compiled.startDelays[board];
        Setting[] steps = compiled.steps[board];
        int stride = 1 + delays.length * steps.length / MOST_SETTINGS;
        Setting bestDelay = null;
        Setting bestStep = null;
        long leastCharge = Long.MAX_VALUE;
        double leastCrowding = Double.POSITIVE_INFINITY;
        for (Setting step : steps) {
            for (int i = 0; i < delays.length; i += stride) {
                sums.set(board, delays[i], step);
                sums.settle();
                long charge = sums.hardCharge() + dallying();
                if (charge <= leastCharge) {
                    double crowding = sums.supplyProfile().unevenness();
                    if (charge < leastCharge || crowding < leastCrowding) {
                        leastCharge = charge;
                        leastCrowding = crowding;
                        bestDelay = delays[i];
                        bestStep = step;
                    }
                }
            }
        }
        sums.set(board, bestDelay, bestStep);
        sums.settle();
    }

    private long dallying() {
        RoleOrder roles = sums.roles();
        return Charges.late(roles.auxiliaryMayStartMicros() - processingByMicros)
                + Charges.late(roles.amplifiersMayStartMicros() - readyByMicros);
    }
}
