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
    private static final int MOST_TIMES = 60;

    private final PlanSums sums;
    private final CompiledProject compiled;
    private final long[] earliest;

    /** By order of roles: processing is to be on by then, so that as much of the sequence as can be is left to what follows. */
    private final long[] processingByMicros;

    /** By order of roles: auxiliary loads are to be on, and processing to be settled, by then. */
    private final long[] readyByMicros;

    /** @param outputs for each board the load that each output will switch */
    BoardPacing(PlanSums sums, int[][] outputs) {
        this.sums = sums;
        this.compiled = sums.compiled;
        earliest = earliestOfAll(outputs);
        processingByMicros = new long[compiled.systemCount];
        readyByMicros = new long[compiled.systemCount];
        for (int load = 0; load < earliest.length; load++) {
            if (compiled.switched[load] && compiled.role[load] != CompiledProject.AMPLIFIER) {
                int order = compiled.orderOf(load);
                long ready = earliest[load];
                if (compiled.role[load] == CompiledProject.PROCESSING) {
                    processingByMicros[order] = Math.max(processingByMicros[order], earliest[load]);
                    ready += compiled.settleMicros[load];
                }
                readyByMicros[order] = Math.max(readyByMicros[order], ready);
            }
        }
        for (int order = 0; order < readyByMicros.length; order++) {
            readyByMicros[order] = Math.max(readyByMicros[order], processingByMicros[order]);
        }
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
                    long micros = compiled.times[board] != null
                            ? compiled.times[board][0].micros()
                            : compiled.startDelays[board][0].micros() + k * compiled.steps[board][0].micros();
                    for (int load : compiled.bundle[outputs[board][k]]) {
                        times[load] = micros;
                    }
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
        if (compiled.times[board] != null) {
            paceEach(board);
            return;
        }
        Setting[] delays = compiled.startDelays[board];
        Setting[] steps = compiled.steps[board];
        int stride = 1 + delays.length * steps.length / MOST_SETTINGS;
        Setting bestDelay = null;
        Setting bestStep = null;
        Least least = new Least();
        for (Setting step : steps) {
            for (int i = 0; i < delays.length; i += stride) {
                sums.set(board, delays[i], step);
                sums.settle();
                if (least.isBettered()) {
                    bestDelay = delays[i];
                    bestStep = step;
                }
            }
        }
        sums.set(board, bestDelay, bestStep);
        sums.settle();
    }

    /** One output after another, each at the time that breaks least and then crowds least. */
    private void paceEach(int board) {
        Setting[] times = compiled.times[board];
        int stride = 1 + times.length / MOST_TIMES;
        for (int k = compiled.firstOutput[board]; k < compiled.firstOutput[board + 1]; k++) {
            int load = sums.loadOnOutput(k);
            if (load == CompiledProject.NONE) {
                continue;
            }
            Setting best = times[0];
            Least least = new Least();
            for (int i = 0; i < times.length; i += stride) {
                sums.time(load, times[i]);
                sums.settle();
                if (least.isBettered()) {
                    best = times[i];
                }
            }
            sums.time(load, best);
            sums.settle();
        }
    }

    private long dallying() {
        RoleOrder[] orders = sums.roles().orders();
        long charge = 0;
        for (int order = 0; order < orders.length; order++) {
            charge += Charges.late(orders[order].auxiliaryMayStartMicros() - processingByMicros[order])
                    + Charges.late(orders[order].amplifiersMayStartMicros() - readyByMicros[order]);
        }
        return charge;
    }

    /** What has broken least so far, and crowded least of what breaks as little. */
    private final class Least {
        private long charge = Long.MAX_VALUE;
        private double crowding = Double.POSITIVE_INFINITY;

        /** Whether the plan as it stands is better; crowding is asked only where that decides. */
        boolean isBettered() {
            long now = sums.hardCharge() + dallying();
            if (now > charge) {
                return false;
            }
            double crowdingNow = sums.unevenness();
            if (now == charge && crowdingNow >= crowding) {
                return false;
            }
            charge = now;
            crowding = crowdingNow;
            return true;
        }
    }
}
