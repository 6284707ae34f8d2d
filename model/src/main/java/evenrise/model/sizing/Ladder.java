package evenrise.model.sizing;

import evenrise.model.electrical.breaker.InterruptingRatings;
import evenrise.model.electrical.breaker.StandardRatings;
import evenrise.model.electrical.conductor.ConductorSize;
import evenrise.model.project.Practice;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;

/** Standard sizes, least first. */
final class Ladder {
    /** Smaller breakers of branches are made, and hardly used for them (common practice, no source). */
    private static final double LEAST_NEC_AMPS = 15;

    private static final double LEAST_IEC_AMPS = 6;

    /** Larger single conductors are hardly pulled; several in parallel take their place (common practice, no source). */
    private static final double GREATEST_SINGLE_SQUARE_MILLIMETRES = 254;

    private static final int MOST_SETS = 10;

    private Ladder() {}

    static List<Size> ratings(Practice practice) {
        List<Size> ratings = new ArrayList<>();
        double least = practice == Practice.NEC ? LEAST_NEC_AMPS : LEAST_IEC_AMPS;
        for (OptionalDouble each = StandardRatings.atLeast(practice, least);
                each.isPresent();
                each = StandardRatings.atLeast(practice, Math.nextUp(each.getAsDouble()))) {
            ratings.add(Size.amps(each.getAsDouble()));
        }
        return ratings;
    }

    /** Greatest first. */
    static List<Size> ratingsFromAbove(Practice practice) {
        List<Size> ratings = ratings(practice);
        Collections.reverse(ratings);
        return ratings;
    }

    /** Of the system of sizes that {@code like} is of: single conductors, then sets in parallel with more metal in all. */
    static List<Size> cables(ConductorSize like) {
        List<Size> cables = new ArrayList<>();
        for (int sets = 1; sets <= MOST_SETS; sets++) {
            double metal = cables.isEmpty() ? 0 : cables.get(cables.size() - 1).amount();
            for (ConductorSize each : like.isMetric() ? ConductorSize.METRIC : ConductorSize.AMERICAN) {
                boolean isAllowed = sets == 1 || each.mayBeParallel() && sets * each.squareMillimetres() > metal + 1e-6;
                if (isAllowed && each.squareMillimetres() <= GREATEST_SINGLE_SQUARE_MILLIMETRES) {
                    cables.add(Size.cable(each, sets));
                }
            }
        }
        return cables;
    }

    /** As transformers are commonly made (common practice, no source; IEC: the R10 series, from memory). */
    static List<Size> transformers(Practice practice, boolean isThreePhase) {
        DoubleStream kva;
        if (practice == Practice.IEC) {
            kva = DoubleStream.of(
                    1, 1.6, 2.5, 4, 6.3, 10, 16, 25, 40, 63, 100, 160, 250, 315, 400, 500, 630, 800, 1000, 1250, 1600,
                    2000, 2500);
        } else {
            kva = isThreePhase
                    ? DoubleStream.of(3, 6, 9, 15, 30, 45, 75, 112.5, 150, 225, 300, 500, 750, 1000, 1500, 2000, 2500)
                    : DoubleStream.of(1, 1.5, 2, 3, 5, 7.5, 10, 15, 25, 37.5, 50, 75, 100, 167, 250, 333, 500);
        }
        return kva.mapToObj(Size::kilovoltamperes).toList();
    }

    static List<Size> interrupting(Practice practice) {
        return InterruptingRatings.all(practice).stream().map(Size::kiloamps).toList();
    }
}
