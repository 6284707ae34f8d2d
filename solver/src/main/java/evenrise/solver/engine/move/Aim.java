package evenrise.solver.engine.move;

import evenrise.solver.engine.state.InrushProfile;
import evenrise.solver.engine.state.Place;
import evenrise.solver.engine.state.Plant;
import evenrise.solver.engine.state.Situation;
import java.util.SplittableRandom;

/**
 * Chooses which load to move. While a rule is broken, mostly one with a part in it. Only what draws at the peak can lower
 * it, so half of the time a load is taken that comes on where the profile is high: at the peak itself, or at the highest
 * of a few instants drawn at random.
 */
public final class Aim {
    private static final int DRAWS = 4;

    private final Situation situation;
    private final Plant plant;
    private final Culprits culprits;

    public Aim(Situation situation) {
        this.situation = situation;
        this.plant = situation.plant;
        this.culprits = new Culprits(situation);
    }

    /** Any load, often one that comes on near the peak. */
    public int load(SplittableRandom random) {
        if (situation.hardCharge() > 0 && random.nextInt(4) != 0) {
            int culprit = culprits.draw(random);
            if (culprit != Plant.NONE) {
                return culprit;
            }
        }
        if (random.nextInt(2) == 0) {
            int hot = hotLoad(random);
            if (hot != Plant.NONE) {
                return hot;
            }
        }
        return random.nextInt(plant.loadCount());
    }

    /** A load that comes on at a high instant, or {@link Plant#NONE} where nobody does. */
    int hotLoad(SplittableRandom random) {
        InrushProfile profile = situation.supplyProfile();
        int phase = profile.peakPhase();
        int instant;
        if (random.nextInt(2) == 0) {
            instant = profile.peakInstant();
        } else {
            instant = 0;
            int highest = -1;
            for (int i = 0; i < DRAWS; i++) {
                int candidatePhase = random.nextInt(plant.phaseCount);
                int candidate = random.nextInt(plant.instants.size());
                if (profile.units(candidatePhase, candidate) > highest
                        && situation.byInstant().count(candidate) > 0) {
                    highest = profile.units(candidatePhase, candidate);
                    instant = candidate;
                    phase = candidatePhase;
                }
            }
        }
        int count = situation.byInstant().count(instant);
        if (count == 0) {
            return Plant.NONE;
        }
        int start = random.nextInt(count);
        for (int i = 0; i < Math.min(count, 8); i++) {
            int load = situation.byInstant().get(instant, (start + i) % count);
            Place place = situation.placeOf(load);
            if (place != null && (place.phaseMask() >> phase & 1) != 0) {
                return load;
            }
        }
        return situation.byInstant().get(instant, start);
    }
}
