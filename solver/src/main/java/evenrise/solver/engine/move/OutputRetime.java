package evenrise.solver.engine.move;

import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.NodeInrush;
import evenrise.solver.engine.state.Output;
import evenrise.solver.engine.state.Place;
import evenrise.solver.engine.state.PlanSums;
import evenrise.solver.engine.state.Setting;
import java.util.SplittableRandom;

/**
 * One output with a time of its own gets another: a little earlier or later, the quietest of a few times drawn, or that of
 * another such output, which takes its own.
 */
final class OutputRetime implements Neighbourhood {
    private static final int NEARBY = 6;
    private static final int DRAWS = 5;

    @Override
    public boolean draw(PlanSums sums, Targets targets, SplittableRandom random, DraftMove draft) {
        CompiledProject compiled = sums.compiled;
        int load = compiled.leadOf[targets.load(random)];
        Output output = sums.outputOf(load);
        if (output == null || compiled.times[output.board()] == null) {
            return false;
        }
        Setting[] times = compiled.times[output.board()];
        Setting now = Setting.nearest(times, sums.timeOf(load));
        switch (random.nextInt(4)) {
            case 0 -> {
                int shift = 1 + random.nextInt(NEARBY);
                int index = now.index() + (random.nextBoolean() ? shift : -shift);
                draft.time(load, times[Math.max(0, Math.min(times.length - 1, index))]);
            }
            case 1 -> {
                int other = random.nextInt(compiled.loadCount());
                Output theirs = sums.outputOf(other);
                if (theirs == null || other == load || compiled.times[theirs.board()] == null) {
                    return false;
                }
                draft.time(load, Setting.nearest(times, offset(sums, other, output)));
                draft.time(other, Setting.nearest(compiled.times[theirs.board()], offset(sums, load, theirs)));
            }
            default -> draft.time(load, quietest(sums, load, times, random));
        }
        return true;
    }

    /** When a load comes on, counted from the start of an output's board. */
    private static long offset(PlanSums sums, int load, Output output) {
        return sums.compiled.instants.micros(sums.instantOf(load))
                - sums.clock().startMicros(output.board());
    }

    private static Setting quietest(PlanSums sums, int load, Setting[] times, SplittableRandom random) {
        CompiledProject compiled = sums.compiled;
        Place place = sums.placeOf(load);
        int source = compiled.tree.sources[random.nextInt(compiled.tree.sources.length)];
        NodeInrush profile = sums.inrush(source);
        int clock = compiled.clockOf(load);
        long start = sums.clock().startMicros(sums.outputOf(load).board());
        Setting best = null;
        int least = Integer.MAX_VALUE;
        for (int i = 0; i < DRAWS; i++) {
            Setting drawn = times[random.nextInt(times.length)];
            int instant = compiled.instants.indexOf(start + drawn.micros());
            int units = 0;
            for (int phase = 0; phase < compiled.phaseCount; phase++) {
                if (place == null || compiled.tree.touches(place, source, phase)) {
                    units = Math.max(units, profile.units(clock, phase, instant));
                }
            }
            if (units < least) {
                least = units;
                best = drawn;
            }
        }
        return best;
    }
}
