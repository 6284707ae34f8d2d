package evenrise.solver.compare;

import evenrise.model.file.WriteFailed;
import evenrise.solver.compare.Judged.Standing;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Consumer;

/**
 * Decides make-ups until the cheapest that stands is known, or so many have been planned: from below in order of price, and
 * at the same time further up, to have a price soon that can be told, and then between the two. What is planned does not
 * depend on the number of threads.
 */
final class LeastPriceSearch {
    /** Make-ups planned in one round, whatever the number of threads. */
    private static final int ROUND = 4;

    /** So many rungs up, each as far as the one before times this. */
    private static final int GROWTH = 4;

    /** No more make-ups are listed. */
    static final int MOST_LISTED = 20_000;

    /** So many are listed in any case, for whoever has to tell prices before plans are made. */
    private static final int LISTED = 1000;

    private final Variation variation;
    private final MakeUps makeUps;
    private final KindPrices prices;
    private final List<String> basis;
    private final Sweep sweep;
    private final TreeMap<Integer, Judged> known = new TreeMap<>();
    private final Consumer<LeastPrice> told;
    private int cheapest = Integer.MAX_VALUE;

    /**
     * @param basis what prices rest on, in sentences
     * @param told of the state after each round, and before the first
     */
    LeastPriceSearch(
            Variation variation,
            KindPrices prices,
            List<String> basis,
            MakeUps makeUps,
            Sweep sweep,
            Consumer<LeastPrice> told) {
        this.variation = variation;
        this.prices = prices;
        this.basis = basis;
        this.makeUps = makeUps;
        this.sweep = sweep;
        this.told = told;
    }

    /**
     * @param tries make-ups that may be planned
     * @param finding told of each plan as it comes
     */
    LeastPrice run(int tries, Consumer<ScenarioResult> finding) throws WriteFailed {
        told.accept(state(false));
        int rung = GROWTH;
        int left = tries;
        while (left > 0 && !sweep.isStopped()) {
            List<Integer> round = cheapest == Integer.MAX_VALUE ? climbing(rung) : between();
            rung = (int) Math.min(MOST_LISTED, (long) rung * GROWTH * GROWTH);
            round = round.subList(0, Math.min(left, round.size()));
            if (round.isEmpty()) {
                break;
            }
            left -= round.size();
            List<Scenario> scenarios = round.stream().map(this::scenario).toList();
            List<ScenarioResult> results = sweep.run(scenarios, finding);
            for (ScenarioResult result : results) {
                int number = round.get(scenarios.indexOf(result.scenario()));
                Standing standing = result.isSound() ? Standing.SOUND : Standing.UNDECIDED;
                note(number, standing, result.why(), Optional.of(result));
                if (result.isSound()) {
                    cheapest = Math.min(cheapest, number);
                }
            }
            told.accept(state(false));
        }
        return state(sweep.isStopped());
    }

    /** The cheapest ones, and some further up. */
    private List<Integer> climbing(int rung) {
        List<Integer> round = new ArrayList<>();
        nextOpen(0, MOST_LISTED, round);
        if (rung == GROWTH) {
            return round; // often the cheapest stands
        }
        nextOpen(0, MOST_LISTED, round);
        nextOpen(rung, MOST_LISTED, round);
        nextOpen(Math.min(MOST_LISTED - 1, rung * GROWTH), MOST_LISTED, round);
        return round;
    }

    /** The cheapest ones, and some in the middle of what is open below the cheapest that stands. */
    private List<Integer> between() {
        List<Integer> round = new ArrayList<>();
        int end = endOfCheaper();
        nextOpen(0, end, round);
        int first = round.isEmpty() ? end : round.get(0);
        nextOpen(first + (end - first) / 2, end, round);
        nextOpen(first + (end - first) / 4, end, round);
        while (round.size() < ROUND && nextOpen(0, end, round)) {
            // fill the round from below
        }
        return round;
    }

    /** The first make-up that is not cheaper than the cheapest that stands. */
    private int endOfCheaper() {
        double price = makeUps.at(cheapest).orElseThrow().price() - LeastPrice.SAME_PRICE;
        int end = cheapest;
        while (end > 0 && makeUps.at(end - 1).orElseThrow().price() >= price) {
            end--;
        }
        return end;
    }

    /** Adds the first make-up from a number on that is open and that counting does not rule out. */
    private boolean nextOpen(int from, int end, List<Integer> round) {
        for (int number = from; number < end && !sweep.isStopped(); number++) {
            if (known.containsKey(number) || round.contains(number)) {
                continue;
            }
            Optional<MakeUp> makeUp = makeUps.at(number);
            if (makeUp.isEmpty()) {
                return false;
            }
            Optional<String> against = Scenarios.against(variation, makeUp.get());
            if (against.isEmpty()) {
                round.add(number);
                return true;
            }
            note(number, Standing.RULED_OUT, against, Optional.empty());
        }
        return false;
    }

    private void note(int number, Standing standing, Optional<String> why, Optional<ScenarioResult> result) {
        MakeUp makeUp = makeUps.at(number).orElseThrow();
        known.put(number, new Judged(number + 1, makeUp, standing, why, result));
    }

    private Scenario scenario(int number) {
        MakeUp makeUp = makeUps.at(number).orElseThrow();
        return new Scenario(
                String.format(Locale.ROOT, "try-%05d", number + 1), Aim.USUAL, makeUp, variation.built(makeUp));
    }

    /** Lists all up to the cheapest that stands, and a thousand in any case. */
    private LeastPrice state(boolean wasStopped) {
        int last = cheapest == Integer.MAX_VALUE ? known.isEmpty() ? 0 : known.lastKey() : cheapest;
        int end = Math.max(LISTED, last + 1);
        List<Judged> all = new ArrayList<>();
        double completeBelow = Double.POSITIVE_INFINITY;
        for (int number = 0; number < end; number++) {
            Optional<MakeUp> makeUp = makeUps.at(number);
            if (makeUp.isEmpty()) {
                break;
            }
            Judged judged = known.get(number);
            all.add(judged == null ? Judged.notLookedAt(number + 1, makeUp.get()) : judged);
        }
        completeBelow = makeUps.at(end).map(MakeUp::price).orElse(completeBelow);
        return new LeastPrice(
                all,
                Math.min(completeBelow, makeUps.completeBelow()),
                wasStopped,
                basis,
                prices.leftOut(),
                prices.unpriced());
    }
}
