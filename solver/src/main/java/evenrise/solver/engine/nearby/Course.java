package evenrise.solver.engine.nearby;

import evenrise.solver.engine.search.Cooling;
import evenrise.solver.engine.state.PlanSnapshot;
import java.util.Optional;
import java.util.SplittableRandom;

/**
 * Which annealing follows which: where anything is broken, short ones for the cure, again and again from the start; then
 * down the ladder of prices and up again.
 */
final class Course {
    /** Prices of one ladder, from dear to cheap. */
    private static final int RUNGS = 8;

    /** Cheapest price over the dearest. */
    private static final double SPAN = 500;

    private static final double HOT_RULES = 4_000;
    private static final double COLD_RULES = 40;
    private static final double WARM_RULES = 1_000;

    /** Part of the budget for cures, where anything is broken. */
    private static final double CURING_PART = 0.4;

    /** From this part of the budget on, changes are undone. */
    private static final double SHRINKING_FROM = 0.85;

    private static final long CURE_MOVES = 3_000;

    /** First and last rungs, on which few changes pay. */
    private static final int DEAR_RUNGS = 4;

    private final PlanSnapshot built;
    private final NearbyArchive archive;
    private final Cooling cooling;
    private final double dearestAmps;
    private final SplittableRandom random;
    private final double ladder;
    private final boolean isPriced;
    private long cureMoves = CURE_MOVES;
    private int cures;
    private int rung;

    /**
     * @param isBroken whether the plan as built breaks a rule
     * @param isPriced whether changes have prices by their kind, which then count as often as moves do
     * @param dearestAmps the dearest price of a move
     */
    Course(
            PlanSnapshot built,
            boolean isBroken,
            boolean isPriced,
            NearbyArchive archive,
            Cooling cooling,
            double dearestAmps,
            SplittableRandom random) {
        this.built = built;
        this.archive = archive;
        this.cooling = cooling;
        this.dearestAmps = dearestAmps;
        this.random = random;
        this.isPriced = isPriced;
        this.ladder = isBroken ? CURING_PART : 0;
    }

    /**
     * The next one; none where changes are to be undone.
     *
     * @param used part of the budget that is used
     */
    Optional<Leg> next(double used) {
        if (used < ladder) {
            return Optional.of(cure(used));
        }
        double part = (SHRINKING_FROM - ladder) / (2 * RUNGS);
        while (rung < 2 * RUNGS && used >= ladder + (rung + 1) * part) {
            rung++;
        }
        if (rung == 2 * RUNGS) {
            return Optional.empty();
        }
        double begin = ladder + rung * part;
        return Optional.of(rung(rung++, begin, begin + part));
    }

    /** Moves are dear and the objective counts little. */
    private Leg cure(double used) {
        boolean again = random.nextInt(3) == 0;
        long moves = cureMoves;
        cureMoves += CURE_MOVES / 4;
        Leg.Counted counted = counted(cures++ % 2 == 0);
        return new Leg(
                again ? archive.best(dearestAmps, counted) : built,
                dearestAmps,
                counted,
                true,
                new Leg.Heat(dearestAmps / 2, dearestAmps / 8, again ? HOT_RULES : WARM_RULES, COLD_RULES),
                used,
                ladder,
                moves);
    }

    private Leg.Counted counted(boolean byCost) {
        return isPriced && byCost ? Leg.Counted.COST : Leg.Counted.MOVES;
    }

    private Leg rung(int number, double begin, double end) {
        int depth = number < RUNGS ? number : 2 * RUNGS - 1 - number;
        double price = dearestAmps * Math.pow(SPAN, -depth / (RUNGS - 1.0));
        double coldest = cooling.temperature(1);
        double hottest = Math.max(2 * coldest, Math.max(cooling.temperature(0.4), price / 6));
        boolean isDear = number < DEAR_RUNGS || number >= 2 * RUNGS - DEAR_RUNGS;
        Leg.Counted counted = counted(number >= RUNGS);
        return new Leg(
                archive.best(price, counted),
                price,
                counted,
                isDear,
                new Leg.Heat(hottest, coldest, HOT_RULES, COLD_RULES),
                begin,
                end,
                Long.MAX_VALUE);
    }
}
