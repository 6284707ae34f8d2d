package evenrise.solver.engine.nearby;

import evenrise.solver.engine.state.PlanSnapshot;

/**
 * One annealing of the way, under one price.
 *
 * @param start where it begins
 * @param priceAmps what a move costs
 * @param counted what the price is for
 * @param isDear whether the least changes are mostly drawn
 * @param begin part of the budget that is used when it begins
 * @param end part of the budget at which it is over
 * @param moves it is over after so many, too
 */
record Leg(
        PlanSnapshot start,
        double priceAmps,
        Counted counted,
        boolean isDear,
        Heat heat,
        double begin,
        double end,
        long moves) {
    /** Part of an annealing in which a rule that is kept may be broken for a while. */
    private static final double LENIENT_PART = 0.4;

    /** What costs: each move, or what changes cost by their kind, in breakers that stay in their panel. */
    enum Counted {
        MOVES,
        COST
    }

    /** Temperatures at its beginning and its end, of the objective in ampere-equivalents and of broken rules. */
    record Heat(double hottest, double coldest, double hotRules, double coldRules) {}

    /**
     * How far it is, from 0 to 1 and beyond.
     *
     * @param used part of the budget that is used
     * @param tried moves since it began
     */
    double progress(double used, long tried) {
        if (used >= end) {
            return 1;
        }
        return moves == Long.MAX_VALUE ? Math.max(0, (used - begin) / (end - begin)) : (double) tried / moves;
    }

    double temperature(double progress) {
        return heat.hottest * Math.pow(heat.coldest / heat.hottest, progress);
    }

    double ruleTemperature(double progress) {
        return heat.hotRules * Math.pow(heat.coldRules / heat.hotRules, Math.min(1, progress / LENIENT_PART));
    }

    /** What is being mended must not be held back by the objective; by moves it must. */
    double leniency(double progress) {
        return ruleTemperature(progress) / heat.coldRules;
    }

    /** Whether a plan that keeps every rule is not let go any more. */
    boolean isStrict(double progress) {
        return progress > LENIENT_PART;
    }
}
