package evenrise.solver.engine.nearby;

import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.solver.engine.Budget;
import evenrise.solver.engine.move.BoardRetime;
import evenrise.solver.engine.move.DraftMove;
import evenrise.solver.engine.move.Insertion;
import evenrise.solver.engine.move.Neighbourhood;
import evenrise.solver.engine.move.Targets;
import evenrise.solver.engine.move.Wheel;
import evenrise.solver.engine.search.Cooling;
import evenrise.solver.engine.search.Energy;
import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.Output;
import evenrise.solver.engine.state.Place;
import evenrise.solver.engine.state.PlanMapper;
import evenrise.solver.engine.state.PlanSnapshot;
import evenrise.solver.engine.state.PlanSums;
import evenrise.solver.engine.state.Setting;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;

/**
 * Searches around a plan as built: for every number of moves (breakers re-terminated, control leads re-landed) the best
 * plan that so few can reach. It anneals under a price per move that falls and rises again, and keeps whatever it meets
 * that no plan of fewer moves equals.
 */
public final class NearbySearch {
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

    /** Part of a rung in which a rule that is kept may be broken for a while. */
    private static final double LENIENT_PART = 0.4;

    private static final int MOST_DRAWS = 50;
    private static final int RETURN_SHARE = 4;
    private static final int WITH_SETTING = 5;

    private final CompiledProject compiled;
    private final PlanMapper mapper;
    private final PlanSums sums;
    private final BuiltPositions positions;
    private final NearbyArchive archive;
    private final Cooling cooling;
    private final Energy measure;
    private final SplittableRandom random;
    private final Targets targets;
    private final DraftMove draft;
    private final List<Neighbourhood> wheel;
    private final Neighbourhood returnToBuilt;
    private final Neighbourhood insertion;
    private final Neighbourhood smallestChange = new SmallestChange();
    private final PlanSnapshot built;
    private final Neighbourhood retime = new BoardRetime();
    private final double dearestAmps;
    private Place[] oldPlaces = new Place[64];
    private Output[] oldOutputs = new Output[64];
    private long tried;
    private volatile boolean stopped;

    /** @param built the plan as built, broken or not */
    public NearbySearch(Project project, Plan built, long seed) {
        compiled = new CompiledProject(project);
        mapper = new PlanMapper(compiled);
        sums = mapper.toSums(built);
        this.built = sums.snapshot();
        positions = new BuiltPositions(sums);
        archive = new NearbyArchive(compiled);
        cooling = new Cooling(compiled);
        measure = new Energy(compiled);
        measure.enterStage(1);
        random = new SplittableRandom(seed);
        targets = new Targets(sums);
        draft = new DraftMove(sums);
        wheel = Wheel.of(sums);
        returnToBuilt = new ReturnToBuilt(positions);
        insertion = new Insertion(sums);
        dearestAmps = Math.max(1, sums.objective() / 10);
        archive.offer(sums, 0);
    }

    /** Takes a plan from elsewhere into account. */
    public void offer(Plan plan) {
        load(mapper.toSums(plan).snapshot());
        archive.offer(sums, positions.moves());
    }

    /** Cures what is broken, again and again from the start; goes down the ladder of prices and up again; undoes changes. */
    public void search(Budget budget) {
        Deadline deadline = new Deadline(budget);
        double ladder = planIsBroken() ? CURING_PART : 0;
        cure(deadline, ladder);
        int rungs = 2 * RUNGS;
        double part = (SHRINKING_FROM - ladder) / rungs;
        for (int rung = 0; rung < rungs && !stopped; rung++) {
            int depth = rung < RUNGS ? rung : rungs - 1 - rung;
            double price = dearestAmps * Math.pow(SPAN, -depth / (RUNGS - 1.0));
            load(archive.best(price));
            double coldest = cooling.temperature(1);
            double hottest = Math.max(2 * coldest, Math.max(cooling.temperature(0.4), price / 6));
            double from = ladder + rung * part;
            Heat heat = new Heat(hottest, coldest, HOT_RULES, COLD_RULES);
            boolean isDear = rung < DEAR_RUNGS || rung >= rungs - DEAR_RUNGS;
            anneal(price, heat, isDear, used -> (used - from) / part, deadline);
        }
        new Shrinking(sums, positions, archive).run(this::load, () -> {
            tried++;
            return deadline.used(tried) < 1 && !stopped;
        });
    }

    private boolean planIsBroken() {
        load(built);
        return sums.hardCharge() > 0;
    }

    /** Short annealings in which a move is dear and the objective counts little, each from the plan as built. */
    private void cure(Deadline deadline, double end) {
        long length = CURE_MOVES;
        while (deadline.used(tried) < end && !stopped) {
            boolean again = random.nextInt(3) == 0;
            load(again ? archive.best(dearestAmps) : built);
            long begun = tried;
            long moves = length;
            Heat heat = new Heat(dearestAmps / 2, dearestAmps / 8, again ? HOT_RULES : WARM_RULES, COLD_RULES);
            anneal(dearestAmps, heat, true, used -> used >= end ? 1 : (double) (tried - begun) / moves, deadline);
            length += CURE_MOVES / 4;
        }
    }

    /** Ends the search soon; what was found stays. */
    public void stop() {
        stopped = true;
    }

    /** Every plan that no plan of fewer moves equals, by rising moves; the first is the plan as built. */
    public List<NearbyPlan> plans() {
        return archive.plans();
    }

    /** Changes tried so far. */
    public long tried() {
        return tried;
    }

    private void load(PlanSnapshot plan) {
        sums.take(plan);
        positions.refreshAll(sums);
    }

    /** Temperatures of an annealing at its beginning and its end, of the objective and of broken rules. */
    private record Heat(double hottest, double coldest, double hotRules, double coldRules) {
        double temperature(double progress) {
            return hottest * Math.pow(coldest / hottest, progress);
        }

        double rules(double progress) {
            return hotRules * Math.pow(coldRules / hotRules, Math.min(1, progress / LENIENT_PART));
        }
    }

    private void anneal(double price, Heat heat, boolean isDear, DoubleUnaryOperator progressAt, Deadline deadline) {
        double energy = measure.of(sums);
        double moved = positions.price();
        long charge = sums.hardCharge();
        double progress = progressAt.applyAsDouble(deadline.used(tried));
        while (progress < 1 && !stopped) {
            double temperature = heat.temperature(Math.max(0, progress));
            double rules = heat.rules(Math.max(0, progress));
            boolean isStrict = progress > LENIENT_PART && charge == 0;
            tried++;
            progress = progressAt.applyAsDouble(deadline.used(tried));
            if (!draw(isDear)) {
                continue;
            }
            Undo undo = apply();
            archive.offer(sums, positions.moves());
            double nextEnergy = measure.of(sums);
            double nextMoved = positions.price();
            long nextCharge = sums.hardCharge();
            // What is being mended must not be held back by the objective; by moves it must.
            double leniency = charge > 0 ? rules / COLD_RULES : 1;
            double rise = (nextEnergy - energy) / temperature / leniency
                    + price * (nextMoved - moved) / temperature
                    + (nextCharge - charge) / rules;
            if (!(isStrict && nextCharge > 0) && random.nextDouble() < Math.exp(-rise)) {
                energy = nextEnergy;
                moved = nextMoved;
                charge = nextCharge;
            } else {
                undo.run();
            }
        }
    }

    /** @param isDear whether the least changes are mostly drawn */
    private boolean draw(boolean isDear) {
        for (int i = 0; i < MOST_DRAWS; i++) {
            draft.clear();
            if (choose(isDear).draw(sums, targets, random, draft) && !draft.isEmpty()) {
                if (compiled.isSmall() && random.nextInt(WITH_SETTING) == 0) {
                    retime.draw(sums, targets, random, draft);
                }
                return true;
            }
        }
        return false;
    }

    private Neighbourhood choose(boolean isDear) {
        if (sums.unassigned() > 0 && random.nextBoolean()) {
            return insertion;
        }
        if (isDear && random.nextInt(4) != 0) {
            return random.nextInt(RETURN_SHARE) == 0 ? returnToBuilt : smallestChange;
        }
        return random.nextInt(RETURN_SHARE) == 0 ? returnToBuilt : wheel.get(random.nextInt(wheel.size()));
    }

    private interface Undo {
        void run();
    }

    /** Works the draft in. */
    private Undo apply() {
        int loads = draft.loadCount();
        if (loads > oldPlaces.length) {
            oldPlaces = new Place[2 * loads];
            oldOutputs = new Output[2 * loads];
        }
        for (int i = 0; i < loads; i++) {
            oldPlaces[i] = sums.placeOf(draft.load(i));
            oldOutputs[i] = sums.outputOf(draft.load(i));
        }
        int[] boards = draft.boards();
        Setting[] delays = new Setting[boards.length];
        Setting[] steps = new Setting[boards.length];
        for (int i = 0; i < boards.length; i++) {
            delays[i] = sums.clock().startDelay(boards[i]);
            steps[i] = sums.clock().step(boards[i]);
        }
        draft.apply();
        refresh(loads, boards);
        return () -> {
            for (int i = 0; i < loads; i++) {
                sums.place(draft.load(i), oldPlaces[i]);
                sums.wire(draft.load(i), oldOutputs[i]);
            }
            for (int i = 0; i < boards.length; i++) {
                sums.set(boards[i], delays[i], steps[i]);
            }
            sums.settle();
            refresh(loads, boards);
        };
    }

    private void refresh(int loads, int[] boards) {
        for (int i = 0; i < loads; i++) {
            positions.refreshLoad(sums, draft.load(i));
        }
        for (int board : boards) {
            positions.refreshBoard(sums, board);
        }
    }

    /** How much of a budget is used. */
    private static final class Deadline {
        private static final int LOOK_EVERY = 64;

        private final Budget budget;
        private final long startNanos = System.nanoTime();
        private double used;
        private long looks;

        Deadline(Budget budget) {
            this.budget = budget;
        }

        /** From 0 to 1 and beyond. */
        double used(long tried) {
            if (budget instanceof Budget.Moves moves) {
                return (double) tried / moves.limit();
            }
            if (looks++ % LOOK_EVERY == 0) {
                used = (double) (System.nanoTime() - startNanos)
                        / ((Budget.Time) budget).limit().toNanos();
            }
            return used;
        }
    }
}
