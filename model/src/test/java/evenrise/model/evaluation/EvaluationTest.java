package evenrise.model.evaluation;

import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.aSupply;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.PlanBuilder;
import evenrise.model.ProjectBuilder;
import evenrise.model.plan.Assessment;
import evenrise.model.plan.Bounds;
import evenrise.model.plan.CheckCount;
import evenrise.model.plan.Plan;
import evenrise.model.plan.Review;
import evenrise.model.project.Electrical;
import evenrise.model.project.Equipment;
import evenrise.model.project.Motor;
import evenrise.model.project.Practice;
import evenrise.model.project.Project;
import evenrise.model.project.TripCurve;
import evenrise.model.rules.Layout;
import evenrise.model.rules.PlanFinisher;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;

class EvaluationTest {
    private static final Bounds NOTHING = Bounds.builder()
            .objective(0)
            .peakInrushAmps(0)
            .supplyDeviationAmps(0)
            .panelDeviationsAmps(0)
            .durationSeconds(0)
            .build();

    private static Evaluation of(ProjectBuilder project, PlanBuilder plan) {
        Project built = project.build();
        return Evaluation.of(Layout.of(built, PlanFinisher.timed(built, plan.build())), () -> NOTHING);
    }

    private static CheckCount count(Review review, String check) {
        return review.checks().stream()
                .filter(each -> each.check().equals(check))
                .findFirst()
                .orElseThrow();
    }

    /** Two loads: NEC 210.20(A) asks 1.25·18 = 22.5 A of the second's breaker of 20 A. */
    private final ProjectBuilder twoLoads = aProject()
            .electrical(Electrical.builder().practice(Practice.NEC).build())
            .loads(
                    aLoad("good").unswitched().runningAmps(10).breakerAmps(20),
                    aLoad("high").unswitched().runningAmps(18).breakerAmps(20));

    private final PlanBuilder bothPlaced = aPlan().assignments(
                    anAssignment("good").at("P1", 1), anAssignment("high").at("P1", 3));

    @Test
    void countsEachCheckAndPlace() {
        Review review = of(twoLoads, bothPlaced).review();

        assertThat(count(review, "breaker-rating")).isEqualTo(new CheckCount("breaker-rating", 2, 0));
        // No curve is stated of either, no cable of either nor of the panel.
        assertThat(count(review, "breaker-trip")).isEqualTo(new CheckCount("breaker-trip", 0, 2));
        assertThat(count(review, "conductor")).isEqualTo(new CheckCount("conductor", 0, 3));
    }

    /** A motor that turns forward is judged as one that does not; so is a breaker that no dip opens. */
    @Test
    void whatIsJudgedAndKeptCountsAsMade() {
        Review review = of(
                        aProject()
                                .loads(aLoad("hoist")
                                        .unswitched()
                                        .poles(3)
                                        .curve(TripCurve.C)
                                        .inrushPeakAmps(30)
                                        .equipment(Equipment.builder()
                                                .motor(Motor.builder().build())
                                                .build())),
                        aPlan().assignments(anAssignment("hoist").at("P1", 1)))
                .review();

        assertThat(count(review, "rotation")).isEqualTo(new CheckCount("rotation", 1, 0));
        assertThat(count(review, "device-trip").made()).isEqualTo(1);
    }

    /** Without a practice no rating is checked: not one check less, but one a load. */
    @Test
    void aCheckThatIsMadeNowhereIsNotMadeAtEachPlace() {
        Review review =
                of(aProject().loads(aLoad("one"), aLoad("other")), aPlan()).review();

        assertThat(count(review, "breaker-rating")).isEqualTo(new CheckCount("breaker-rating", 0, 2));
    }

    @Test
    void aBrokenElectricalLimitIsBrokenThoughEveryRuleIsKept() {
        Assessment assessment = of(twoLoads, bothPlaced).assessment();

        assertThat(assessment.hardRulesBroken()).isZero();
        assertThat(assessment.limitsBroken()).isEqualTo(1);
        assertThat(assessment.isBroken()).isTrue();
        assertThat(assessment.headline())
                .startsWith("1 limit broken (1 electrical); ")
                .doesNotContain("none broken");
    }

    @Test
    void aPartOfTheChecksIsNeverCalledTheWhole() {
        Assessment assessment = of(
                        aProject().loads(aLoad("one").unswitched()),
                        aPlan().assignments(anAssignment("one").at("P1", 1)))
                .assessment();
        int all = assessment.checksMade() + assessment.checksNotMade();

        assertThat(assessment.checksNotMade()).isPositive();
        assertThat(assessment.isBroken()).isFalse();
        assertThat(assessment.isComplete()).isFalse();
        assertThat(assessment.headline())
                .startsWith(
                        "every hard rule kept; " + assessment.checksMade() + " of " + all + " electrical checks made");
    }

    /** Two loads are left out: 10 A on one pole and 5 A on three make 25 A on three phases, 8.3 A on each. */
    @Test
    void tellsWhatTheFiguresLeaveOut() {
        Evaluation evaluation = of(
                aProject()
                        .supply(aSupply())
                        .panels(aPanel("P1"))
                        .loads(
                                aLoad("in").unswitched(),
                                aLoad("left").unswitched().runningAmps(10),
                                aLoad("motor").unswitched().threePole().runningAmps(5)),
                aPlan().assignments(anAssignment("in").at("P1", 1)));

        assertThat(evaluation.assessment().loadsWithoutPlace()).isEqualTo(2);
        assertThat(evaluation.withoutPlace()).contains("without 2 loads that have no place, 8.3 A a phase");
        assertThat(evaluation.assessment().headline()).contains("without 2 loads that have no place, 8.3 A a phase");
    }

    /** Each peaks at 150 A, on the same phase; both come back at once when the mains return: more than 200 A. */
    @Test
    void tellsEventsOverALimitThatIsNotAskedToHoldForThem() {
        ProjectBuilder project = aProject()
                .panels(aPanel("P1").inrushLimitAmps(200))
                .loads(
                        aLoad("one").unswitched().inrushPeakAmps(150),
                        aLoad("other").unswitched().inrushPeakAmps(150));
        Evaluation evaluation = of(
                project,
                aPlan().assignments(
                                anAssignment("one").at("P1", 1),
                                anAssignment("other").at("P1", 2)));

        assertThat(evaluation.eventsOverLimit()).isNotEmpty().allSatisfy(each -> {
            assertThat(each.node()).isEqualTo("P1");
            assertThat(each.peak().peakInrushAmps()).isGreaterThan(200);
        });
        assertThat(evaluation.assessment().isComplete()).isFalse();
        assertThat(evaluation.assessment().headline()).contains("of events over an inrush limit");
    }

    @Test
    void computesEachPartOnceAndOnlyWhenAskedFor() {
        AtomicInteger asked = new AtomicInteger();
        Evaluation evaluation = Evaluation.of(Layout.of(twoLoads.build(), bothPlaced.build()), () -> {
            asked.incrementAndGet();
            return NOTHING;
        });

        evaluation.assessment();
        assertThat(asked).hasValue(0);
        evaluation.bounds();
        evaluation.proof();
        assertThat(asked).hasValue(1);
        assertThat(evaluation.review()).isSameAs(evaluation.review());
        assertThat(evaluation.verdict()).isSameAs(evaluation.verdict());
    }

    @Test
    void theFinishedPlanCarriesAllOfIt() {
        Evaluation evaluation = of(twoLoads, bothPlaced);

        Plan plan = evaluation.plan();

        assertThat(plan.assessment()).contains(evaluation.assessment());
        assertThat(plan.review()).contains(evaluation.review());
        assertThat(plan.metrics()).contains(evaluation.verdict().metrics());
    }
}
