package evenrise.model.answer;

import evenrise.model.answer.OtherPlaces.Counted;
import evenrise.model.plan.Plan;
import evenrise.model.rules.Layout;
import evenrise.model.rules.PeakShare;
import evenrise.model.rules.Placement;
import evenrise.model.rules.PlanFinisher;
import evenrise.model.rules.Referee;
import evenrise.model.rules.Verdict;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * What else could be done with one load of a plan: every other place, each judged by the referee as a plan of its own, so
 * that what it costs is the difference of two objectives and what it breaks is what that plan breaks.
 */
public final class Alternatives {
    /** Sound ones first, by cost; then those that break little. */
    private static final Comparator<Alternative> BEST_FIRST = Comparator.<Alternative>comparingInt(
                    each -> each.breaks().size())
            .thenComparingDouble(Alternative::objectiveChange);

    /** Less than a person could tell. */
    private static final double SAME_AMPS = 0.005;

    private final Layout layout;
    private final Verdict verdict;
    private final Optional<Plan> earlier;

    /** @param earlier plan that moves are counted from */
    public Alternatives(Layout layout, Optional<Plan> earlier) {
        this.layout = layout;
        this.verdict = Referee.judge(layout, earlier);
        this.earlier = earlier;
    }

    /** The plan as it is. */
    public Layout layout() {
        return layout;
    }

    /** What the rules say of the plan as it is. */
    public Verdict verdict() {
        return verdict;
    }

    /**
     * Why a load is where it is.
     *
     * @param load one that the plan assigns
     * @param everyExchange whether loads that are neither in its panel nor on its board are asked to exchange, too
     */
    public LoadAnswer answer(String load, boolean everyExchange) {
        Placement placement = layout.placement(load).orElseThrow();
        return LoadAnswer.of(placement, of(placement, everyExchange), everyExchange, verdict.violations());
    }

    /**
     * Which changes would lower the supply's peak.
     *
     * @param most how many loads are asked, those with the largest parts
     */
    public PeakAnswer peak(int most) {
        List<PeakShare> shares = verdict.peakShares();
        List<PeakAnswer.Part> parts = shares.stream()
                .limit(most)
                .map(share -> new PeakAnswer.Part(share, lowest(share.load())))
                .toList();
        return new PeakAnswer(parts, shares.size() - parts.size());
    }

    private Optional<Alternative> lowest(String load) {
        return of(layout.placement(load).orElseThrow(), false).stream()
                .filter(each -> each.isSound() && each.peakChangeAmps() < -SAME_AMPS)
                .min(Comparator.comparingDouble(Alternative::peakChangeAmps));
    }

    /** The best first; of equals in the project's order. */
    private List<Alternative> of(Placement placement, boolean everyExchange) {
        return new OtherPlaces(layout, placement)
                .all(everyExchange).parallelStream()
                        .map(each -> judged(placement.id(), each))
                        .sorted(BEST_FIRST)
                        .toList();
    }

    /** The plan so changed, with the times and phases that follow. */
    public Plan changed(PlanChange change) {
        return PlanFinisher.timed(layout.project(), change.in(layout.plan()));
    }

    private Alternative judged(String load, Counted counted) {
        PlanChange change = counted.change();
        Layout then = Layout.of(layout.index(), changed(change));
        Verdict after = Referee.judge(then, earlier);
        BrokenAnew broken = BrokenAnew.of(verdict.violations(), after.violations());
        Placement placement = then.placement(load).orElseThrow();
        return new Alternative(
                change,
                Seat.of(placement.assignment()),
                placement.phases(),
                placement.onSeconds(),
                OtherPlaces.exchangedWith(change, load),
                counted.alike(),
                broken.added(),
                broken.gone(),
                after.metrics().objective() - verdict.metrics().objective(),
                after.metrics().peakInrushAmps() - verdict.metrics().peakInrushAmps());
    }
}
