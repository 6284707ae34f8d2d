package evenrise.solver.engine.move;

import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.InstantIndex;
import evenrise.solver.engine.state.NodeInrush;
import evenrise.solver.engine.state.Place;
import evenrise.solver.engine.state.PlanSums;
import java.util.SplittableRandom;

/**
 * Chooses which load to move. While a rule is broken, mostly one with a part in it. Only what draws at the peak can lower
 * it, so half of the time a load is taken that comes on where the profile is high: at the peak itself, or at the highest
 * of a few instants drawn at random.
 */
public final class Targets {
    private static final int DRAWS = 4;

    private final PlanSums sums;
    private final CompiledProject compiled;
    private final Culprits culprits;

    public Targets(PlanSums sums) {
        this.sums = sums;
        this.compiled = sums.compiled;
        this.culprits = new Culprits(sums);
    }

    /** Any load, often one that comes on near the peak. */
    public int load(SplittableRandom random) {
        if (sums.hardCharge() > 0 && random.nextInt(4) != 0) {
            int culprit = culprits.draw(random);
            if (culprit != CompiledProject.NONE) {
                return culprit;
            }
        }
        if (random.nextInt(2) == 0) {
            int hot = hotLoad(random);
            if (hot != CompiledProject.NONE) {
                return hot;
            }
        }
        return random.nextInt(compiled.loadCount());
    }

    /** A load that comes on at a high instant, or {@link CompiledProject#NONE} where nobody does. */
    int hotLoad(SplittableRandom random) {
        int[] sources = compiled.tree.sources;
        int source = sources.length == 1 ? sources[0] : sources[random.nextInt(sources.length)];
        NodeInrush profile = sums.inrush(source);
        int phase = profile.peakPhase();
        int clock = profile.peakClock();
        InstantIndex index = profile.index(clock);
        int instant;
        if (random.nextInt(2) == 0) {
            instant = profile.peakInstant();
        } else {
            instant = 0;
            int highest = -1;
            for (int i = 0; i < DRAWS; i++) {
                int candidatePhase = random.nextInt(compiled.phaseCount);
                int candidate = random.nextInt(compiled.instants.size());
                if (profile.units(clock, candidatePhase, candidate) > highest && index.count(candidate) > 0) {
                    highest = profile.units(clock, candidatePhase, candidate);
                    instant = candidate;
                    phase = candidatePhase;
                }
            }
        }
        int count = index.count(instant);
        if (count == 0) {
            return CompiledProject.NONE;
        }
        int start = random.nextInt(count);
        for (int i = 0; i < Math.min(count, 8); i++) {
            int load = index.get(instant, (start + i) % count);
            Place place = sums.placeOf(load);
            if (place != null && compiled.tree.touches(place, source, phase)) {
                return load;
            }
        }
        return index.get(instant, start);
    }
}
