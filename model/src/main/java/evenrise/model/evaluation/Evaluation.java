package evenrise.model.evaluation;

import evenrise.model.plan.Assessment;
import evenrise.model.plan.Bounds;
import evenrise.model.plan.Grade;
import evenrise.model.plan.MadeBy;
import evenrise.model.plan.Plan;
import evenrise.model.plan.Review;
import evenrise.model.project.Project;
import evenrise.model.review.ElectricalReview;
import evenrise.model.rules.Layout;
import evenrise.model.rules.PlanFinisher;
import evenrise.model.rules.Proof;
import evenrise.model.rules.Referee;
import evenrise.model.rules.Verdict;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * One plan judged once. Every part is computed when first asked for and kept, and screen, page, print, workbook, tables
 * and files all draw from it.
 */
public final class Evaluation {
    private final Layout layout;
    private final Optional<Plan> earlier;
    private final Once<Bounds> bounds;
    private final Once<Verdict> verdict;
    private final Once<Review> review;
    private final Once<List<NodeEvent>> eventsOverLimit;
    private final Once<Assessment> assessment;

    private Evaluation(Layout layout, Supplier<Bounds> bounds, Optional<Plan> earlier) {
        this.layout = layout;
        this.earlier = earlier;
        this.bounds = new Once<>(bounds);
        this.verdict = new Once<>(() -> Referee.judge(layout, earlier));
        this.review = new Once<>(() -> ElectricalReview.of(layout, earlier));
        this.eventsOverLimit = new Once<>(() -> EventsOverLimit.of(layout));
        this.assessment = new Once<>(this::assessed);
    }

    /** Of a state on the way, for which nothing is to be proven: its bounds are 0, which no plan stays below. */
    public static Evaluation of(Layout layout) {
        return of(layout, () -> Bounds.builder().build());
    }

    /** @param bounds what no plan of the project can stay below; asked for only where somebody wants to see it */
    public static Evaluation of(Layout layout, Supplier<Bounds> bounds) {
        return of(layout, bounds, Optional.empty());
    }

    /** @param earlier a plan that the plant is built by, where this one changes it */
    public static Evaluation of(Layout layout, Supplier<Bounds> bounds, Optional<Plan> earlier) {
        return new Evaluation(layout, bounds, earlier);
    }

    /**
     * A bare plan completed and signed, then judged.
     *
     * @param bare settings, and assignments with load, panel, slot, board and output; the rest of it is replaced
     */
    public static Evaluation finished(
            Project project, Plan bare, MadeBy madeBy, Bounds bounds, Optional<Plan> earlier) {
        Plan signed = PlanFinisher.signed(project, bare, madeBy)
                .with()
                .bounds(Optional.of(bounds))
                .build();
        return new Evaluation(Layout.of(project, signed), () -> bounds, earlier);
    }

    /** The plan that this one was made from or is held against. */
    public Optional<Plan> earlier() {
        return earlier;
    }

    public Layout layout() {
        return layout;
    }

    public Project project() {
        return layout.project();
    }

    /** The plan as it was given, with the figures and findings of this evaluation in place of its own. */
    public Plan plan() {
        return PlanFinisher.judged(layout, verdict(), bounds())
                .with()
                .review(review())
                .assessment(assessment())
                .build();
    }

    /** What the hard rules say. */
    public Verdict verdict() {
        return verdict.get();
    }

    /** What the electrical checks say. */
    public Review review() {
        return review.get();
    }

    public Bounds bounds() {
        return bounds.get();
    }

    /** How near the plan is to its bound. */
    public Proof proof() {
        return Proof.of(verdict(), bounds());
    }

    /** Peaks of events over an inrush limit that is not asked to hold for them. */
    public List<NodeEvent> eventsOverLimit() {
        return eventsOverLimit.get();
    }

    /** All of it together. */
    public Assessment assessment() {
        return assessment.get();
    }

    /** What the figures leave out, in words; empty where every load has a place. */
    public Optional<String> withoutPlace() {
        return assessment().loadsWithoutPlace() == 0
                ? Optional.empty()
                : Optional.of(Headline.withoutPlace(assessment()));
    }

    private Assessment assessed() {
        Unstated unstated = new Unstated(layout);
        Assessment counts = Assessment.builder()
                .headline("counted")
                .hardRulesBroken(verdict().violations().size())
                .limitsBroken((int) review().count(Grade.BREAKS))
                .eventsOverLimit(eventsOverLimit().size())
                .checksMade(review().checksMade())
                .checksNotMade(review().checksNotMade())
                .guessedFields(unstated.guessedFields())
                .loadsWithoutInrush(unstated.loadsWithoutInrush())
                .loadsWithoutPlace(unstated.loadsWithoutPlace())
                .withoutPlaceAmps(unstated.withoutPlaceAmps())
                .build();
        return counts.withHeadline(Headline.of(counts));
    }
}
