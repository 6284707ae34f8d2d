package evenrise.solver.engine.nearby;

import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.IndexSet;
import evenrise.solver.engine.state.Output;
import evenrise.solver.engine.state.Place;
import evenrise.solver.engine.state.PlanSums;
import evenrise.solver.engine.state.Setting;
import java.util.Arrays;
import java.util.Optional;

/** Where everything is in the plan as built, and how far another plan is from it, kept up to date load by load. */
final class BuiltPositions {
    /** Price of another board setting, or time of an output, as a part of the price of a move: nothing is re-terminated for it. */
    static final double SETTING_PART = 0.1;

    private final CompiledProject compiled;
    private final Place[] places;
    private final Output[] outputs;
    private final Setting[] startDelays;
    private final Setting[] steps;
    private final Setting[] times;
    private final boolean[] placeAway;
    private final boolean[] outputAway;
    private final IndexSet awayLoads;
    private final IndexSet awayBoards;
    private final IndexSet awayTimes;
    private final Optional<ChangePrices> prices;
    private final Optional<ChangePrice> price;
    private int moves;

    /**
     * @param built the plan as built; what of it does not fit the project has no position
     * @param prices of changes by kind; with them a lead whose breaker goes to another panel is a move, too
     */
    BuiltPositions(PlanSums built, Optional<ChangePrices> prices) {
        this.prices = prices;
        price = prices.map(each -> new ChangePrice(built.compiled, each));
        compiled = built.compiled;
        int loads = compiled.loadCount();
        places = new Place[loads];
        outputs = new Output[loads];
        startDelays = new Setting[compiled.boardCount];
        steps = new Setting[compiled.boardCount];
        times = new Setting[loads];
        Arrays.setAll(places, built::placeOf);
        Arrays.setAll(outputs, built::outputOf);
        Arrays.setAll(startDelays, built.clock()::startDelay);
        Arrays.setAll(steps, built.clock()::step);
        Arrays.setAll(times, built::timeOf);
        placeAway = new boolean[loads];
        outputAway = new boolean[loads];
        awayLoads = new IndexSet(loads);
        awayBoards = new IndexSet(Math.max(1, compiled.boardCount));
        awayTimes = new IndexSet(loads);
    }

    Place place(int load) {
        return places[load];
    }

    Output output(int load) {
        return outputs[load];
    }

    Setting startDelay(int board) {
        return startDelays[board];
    }

    Setting step(int board) {
        return steps[board];
    }

    /** The time of a load's output as built, where that has one of its own. */
    Setting time(int load) {
        return times[load];
    }

    /** Looks at one load again. */
    void refreshLoad(PlanSums sums, int load) {
        boolean place = sums.placeOf(load) != places[load];
        boolean output = sums.outputOf(load) != outputs[load]
                || price.isPresent() && place && leavesItsLead(load, sums.placeOf(load));
        price.ifPresent(it -> it.refresh(load, places[load], sums.placeOf(load), outputs[load], sums.outputOf(load)));
        moves += count(place) - count(placeAway[load]) + count(output) - count(outputAway[load]);
        placeAway[load] = place;
        outputAway[load] = output;
        awayLoads.set(load, place || output);
        boolean isElsewhere = sums.outputOf(load) != outputs[load];
        awayTimes.set(load, !isElsewhere && isTimed(outputs[load]) && sums.timeOf(load) != times[load]);
    }

    private boolean leavesItsLead(int load, Place to) {
        return outputs[load] != null && places[load] != null && to != null && places[load].panel() != to.panel();
    }

    /** Looks at one board again. */
    void refreshBoard(PlanSums sums, int board) {
        boolean same = sums.clock().startDelay(board) == startDelays[board]
                && sums.clock().step(board) == steps[board];
        awayBoards.set(board, !same);
    }

    private boolean isTimed(Output output) {
        return output != null && compiled.times[output.board()] != null;
    }

    void refreshAll(PlanSums sums) {
        for (int load = 0; load < compiled.loadCount(); load++) {
            refreshLoad(sums, load);
        }
        for (int board = 0; board < compiled.boardCount; board++) {
            refreshBoard(sums, board);
        }
    }

    private static int count(boolean is) {
        return is ? 1 : 0;
    }

    /** Breakers and control leads that are elsewhere. */
    int moves() {
        return moves;
    }

    /** What being elsewhere costs, in moves, or in the cost of a breaker that stays in its panel. */
    double price(Leg.Counted counted) {
        int settings = awayBoards.size() + awayTimes.size();
        return counted == Leg.Counted.MOVES
                ? moves + SETTING_PART * settings
                : (price.orElseThrow().total() + settings * prices.orElseThrow().setting())
                        / Math.max(1e-9, unit(prices.orElseThrow()));
    }

    private static double unit(ChangePrices prices) {
        return prices.samePanel() + prices.test();
    }

    boolean isPriced() {
        return prices.isPresent();
    }

    IndexSet awayLoads() {
        return awayLoads;
    }

    IndexSet awayBoards() {
        return awayBoards;
    }

    /** Loads on the output as built that come on at another time of its own. */
    IndexSet awayTimes() {
        return awayTimes;
    }
}
