package evenrise.solver.engine.nearby;

import evenrise.solver.engine.move.DraftMove;
import evenrise.solver.engine.search.Cooling;
import evenrise.solver.engine.search.Steering;
import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.PlanSnapshot;
import evenrise.solver.engine.state.PlanSums;
import java.util.Optional;
import java.util.SplittableRandom;

/**
 * Leads one search around a plan as built: annealings under a price per move that falls and rises again, then changes
 * undone. Whatever is met goes to the archive.
 */
final class NearbySteering implements Steering {
    /** What was drawn last: nothing, a way to where something begins, a change to be weighed, or one only to be looked at. */
    enum Drawn {
        NOTHING,
        JUMP,
        CHANGE,
        LOOK
    }

    private final BuiltPositions positions;
    private final NearbyArchive archive;
    private final SplittableRandom random;
    private final Course course;
    private final Shrinking shrinking;
    private PlanSums sums;
    private NearbyDraws draws;
    private Optional<Leg> leg = Optional.empty();
    private boolean shrinks;
    private boolean isDone;
    private Drawn drawn = Drawn.NOTHING;
    private long tried;
    private long begun;
    private double progress;
    private double energyAmps;
    private double price;
    private long charge;

    /** @param built the plan as built, broken or not */
    NearbySteering(
            CompiledProject compiled,
            PlanSnapshot built,
            NearbyArchive archive,
            Optional<ChangePrices> prices,
            long seed) {
        PlanSums start = PlanSums.of(compiled, built);
        this.positions = new BuiltPositions(start, prices);
        this.archive = archive;
        this.random = new SplittableRandom(seed);
        double dearestAmps = Math.max(1, start.objective() / 10);
        this.course = new Course(
                built, start.hardCharge() > 0, prices.isPresent(), archive, new Cooling(compiled), dearestAmps, random);
        this.shrinking = new Shrinking(positions, archive);
    }

    NearbyArchive archive() {
        return archive;
    }

    @Override
    public void take(PlanSums searched) {
        sums = searched;
        draws = new NearbyDraws(sums, positions, random);
        positions.refreshAll(sums);
    }

    @Override
    public void loadChanged(int load) {
        positions.refreshLoad(sums, load);
    }

    @Override
    public void boardChanged(int board) {
        positions.refreshBoard(sums, board);
    }

    @Override
    public void draw(DraftMove draft, double used) {
        tried++;
        if (!shrinks && (leg.isEmpty() || leg.get().progress(used, tried - begun) >= 1)) {
            leg = course.next(used);
            shrinks = leg.isEmpty();
            if (leg.isPresent()) {
                begun = tried;
                Jump.to(leg.get().start(), sums, draft);
                drawn = Drawn.JUMP;
                return;
            }
        }
        if (shrinks) {
            drawn = shrinking.draw(sums, draft);
            isDone = drawn == Drawn.NOTHING;
            return;
        }
        progress = leg.get().progress(used, tried - begun);
        draws.draw(leg.get().isDear(), draft);
        drawn = draft.isEmpty() ? Drawn.NOTHING : Drawn.CHANGE;
    }

    @Override
    public boolean stays(double nextEnergyAmps) {
        if (drawn == Drawn.NOTHING) {
            return false;
        }
        archive.offer(sums, positions);
        double nextPrice = positions.price(leg.map(Leg::counted).orElse(Leg.Counted.MOVES));
        long nextCharge = sums.hardCharge();
        boolean stays = drawn == Drawn.JUMP || drawn == Drawn.CHANGE && accepts(nextEnergyAmps, nextPrice, nextCharge);
        if (stays) {
            energyAmps = nextEnergyAmps;
            price = nextPrice;
            charge = nextCharge;
        }
        return stays;
    }

    private boolean accepts(double nextEnergyAmps, double nextPrice, long nextCharge) {
        Leg at = leg.get();
        double temperature = at.temperature(progress);
        double leniency = charge > 0 ? at.leniency(progress) : 1;
        double rise = (nextEnergyAmps - energyAmps) / temperature / leniency
                + at.priceAmps() * (nextPrice - price) / temperature
                + (nextCharge - charge) / at.ruleTemperature(progress);
        boolean isForbidden = at.isStrict(progress) && charge == 0 && nextCharge > 0;
        return !isForbidden && random.nextDouble() < Math.exp(-rise);
    }

    @Override
    public boolean isDone() {
        return isDone;
    }
}
