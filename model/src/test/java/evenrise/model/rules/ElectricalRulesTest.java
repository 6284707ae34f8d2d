package evenrise.model.rules;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aGroup;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.aSupply;
import static evenrise.model.Fixtures.anAssignment;
import static evenrise.model.rules.Judging.broken;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.LoadBuilder;
import evenrise.model.PlanBuilder;
import evenrise.model.ProjectBuilder;
import evenrise.model.TestBehaviour;
import evenrise.model.plan.Subject;
import evenrise.model.project.PlanEvent;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** Rules on currents. Two loads on phase A of panel P1, in slots 1 and 2 of row 1. */
class ElectricalRulesTest {
    private static PlanBuilder bothOnA() {
        return aPlan().assignments(
                        anAssignment("L1").at("P1", 1), anAssignment("L2").at("P1", 2));
    }

    private static LoadBuilder load(String id, double runningAmps) {
        return aLoad(id).unswitched().runningAmps(runningAmps);
    }

    @Nested
    class Rating {
        private ProjectBuilder project(double supply, double panel, double second) {
            // wide neutrals, so that only the lines count
            return aProject()
                    .supply(aSupply().ratedAmps(supply).neutralFactor(4))
                    .panels(aPanel("P1").ratedAmps(panel).neutralFactor(4))
                    .loads(load("L1", 50), load("L2", second));
        }

        @Test
        void isKeptAtExactlyTheContinuousPart() {
            // 50 + 30 A on A; 80 % of 100 A
            assertThat(broken("rating", project(100, 100, 30), bothOnA())).isEmpty();
        }

        @Test
        void chargesTheExcessAtPanelAndSupply() {
            assertThat(broken("rating", project(100, 100, 30.01), bothOnA()))
                    .containsExactly(
                            "the supply phase A runs at 80.01 A, allowed are 80 % of 100 A, which is 80 A."
                                    + " Maybe move a load to another phase or panel.",
                            "panel 'P1' phase A runs at 80.01 A, allowed are 80 % of 100 A, which is 80 A."
                                    + " Maybe move a load to another phase or panel.");
        }

        @Test
        void judgesThePanelByItsOwnRating() {
            assertThat(broken("rating", project(400, 90, 30), bothOnA()))
                    .singleElement()
                    .asString()
                    .contains("panel 'P1'", "72 A");
        }

        @Test
        void countsTheLineCurrentInEveryPole() {
            ProjectBuilder project = aProject()
                    .panels(aPanel("P1").ratedAmps(100))
                    .loads(load("L1", 81).threePole());

            assertThat(broken(
                            "rating",
                            project,
                            aPlan().assignments(anAssignment("L1").at("P1", 1))))
                    .hasSize(3);
        }

        @Test
        void usesTheSuppliesContinuousFraction() {
            ProjectBuilder project = aProject()
                    .supply(aSupply().ratedAmps(100).continuousFraction(1).neutralFactor(4))
                    .panels(aPanel("P1").ratedAmps(100).neutralFactor(4))
                    .loads(load("L1", 50), load("L2", 50));

            assertThat(broken("rating", project, bothOnA())).isEmpty();
        }
    }

    @Nested
    class Neutral {
        private ProjectBuilder project(double panelFactor) {
            return aProject()
                    .panels(aPanel("P1").ratedAmps(100).neutralFactor(panelFactor))
                    .loads(load("L1", 40), load("L2", 40));
        }

        @Test
        void isKeptAtExactlyItsCapacity() {
            // one phase alone returns all its current: 80 A; 0.8 of 100 A
            assertThat(broken("neutral", project(0.8), bothOnA())).isEmpty();
        }

        @Test
        void refusesMore() {
            assertThat(broken("neutral", project(0.7999), bothOnA()))
                    .containsExactly("panel 'P1' carries 80 A in its neutral, allowed are 79.99 A (neutral_factor"
                            + " 0.7999). Maybe balance its one-pole loads better, or spread those rich in third"
                            + " harmonic.");
        }

        @Test
        void judgesTheSupplyToo() {
            ProjectBuilder project = aProject()
                    .supply(aSupply().ratedAmps(100).neutralFactor(0.5))
                    .loads(load("L1", 40), load("L2", 40));

            assertThat(broken("neutral", project, bothOnA()))
                    .singleElement()
                    .asString()
                    .startsWith("the supply carries 80 A");
        }

        @Test
        void isKeptByLoadsOfMorePoles() {
            ProjectBuilder project = aProject()
                    .panels(aPanel("P1").ratedAmps(100).neutralFactor(0.1))
                    .loads(load("L1", 60).twoPole());

            assertThat(broken(
                            "neutral",
                            project,
                            aPlan().assignments(anAssignment("L1").at("P1", 1))))
                    .isEmpty();
        }
    }

    @Nested
    class InrushLimit {
        /** L1 100 A and L2 60 A at switch-on, no idle current, one after the other a second apart, on phase A. */
        private ProjectBuilder project(double limit) {
            return aProject()
                    .panels(aPanel("P1").inrushLimitAmps(limit))
                    .boards(aBoard("B1"))
                    .loads(
                            aLoad("L1").idleAmps(0).inrushPeakAmps(100).inrushHalfMillis(1000),
                            aLoad("L2").idleAmps(0).inrushPeakAmps(60).inrushHalfMillis(10));
        }

        private PlanBuilder plan() {
            return aPlan().board("B1", 0, 1)
                    .assignments(
                            anAssignment("L1").at("P1", 1).on("B1", 1),
                            anAssignment("L2").at("P1", 2).on("B1", 2));
        }

        @Test
        void isKeptAtExactlyTheLimit() {
            // L1 has halved when L2 comes on: 50 + 60 A
            assertThat(broken("inrush-limit", project(110), plan())).isEmpty();
        }

        @Test
        void refusesMore() {
            assertThat(broken("inrush-limit", project(109.99), plan()))
                    .containsExactly("panel 'P1' peaks at 110 A on phase A at 1 s, allowed are 109.99 A. Maybe"
                            + " switch the loads with the highest inrush further apart or earlier, or spread them over"
                            + " phases.");
        }

        @Test
        void judgesTheSupplyToo() {
            ProjectBuilder project = project(200).supply(aSupply().inrushLimitAmps(100));

            assertThat(broken("inrush-limit", project, plan()))
                    .singleElement()
                    .asString()
                    .startsWith("the supply peaks at 110 A");
        }

        @Test
        void isKeptWhereThereIsNone() {
            ProjectBuilder project = aProject()
                    .boards(aBoard("B1"))
                    .loads(aLoad("L1").inrushPeakAmps(1e6), aLoad("L2").inrushPeakAmps(1e6));

            assertThat(broken("inrush-limit", project, plan())).isEmpty();
        }
    }

    @Nested
    class EventInrush {
        /** An unswitched 90 A inrush, and one of 60 A that is switched, on phase A of P1; they run and idle at nothing. */
        private ProjectBuilder project(double limit, PlanEvent... events) {
            return aProject()
                    .behaviour(TestBehaviour.holdingFor(events))
                    .panels(aPanel("P1").inrushLimitAmps(limit))
                    .boards(aBoard("B1"))
                    .groups(aGroup("G").drops())
                    .loads(
                            aLoad("U")
                                    .unswitched()
                                    .runningAmps(0)
                                    .inrushPeakAmps(90)
                                    .inrushHalfMillis(10),
                            aLoad("L")
                                    .group("G")
                                    .runningAmps(0)
                                    .inrushPeakAmps(60)
                                    .inrushHalfMillis(10));
        }

        private PlanBuilder plan() {
            return aPlan().board("B1", 0, 1)
                    .assignments(
                            anAssignment("U").at("P1", 1),
                            anAssignment("L").at("P1", 2).on("B1", 1));
        }

        @Test
        void asksNothingByDefault() {
            // 60 A in the sequence; 90 A when the mains return
            assertThat(broken("event-inrush", project(80), plan())).isEmpty();
        }

        @Test
        void isKeptAtExactlyTheLimit() {
            // 90 A at the return; 60 A at the release and in the sequence
            assertThat(broken("event-inrush", project(90, PlanEvent.RETURN, PlanEvent.RELEASE), plan()))
                    .isEmpty();
        }

        @Test
        void refusesMoreWhenTheMainsReturn() {
            assertThat(broken("event-inrush", project(89.99, PlanEvent.RETURN), plan()))
                    .containsExactly("panel 'P1' peaks at 90 A on phase A when the mains return, allowed are 89.99 A"
                            + " (inrush_limit_holds_for). Maybe move unswitched loads to other panels or"
                            + " phases, or let a board switch them.");
        }

        @Test
        void namesTheBoardWhoseFailureIsWorst() {
            // dead through a brownout, B1 leaves L connected: 90 + 60 A at the return
            assertThat(broken("event-inrush", project(149, PlanEvent.BOARD_FAILURE), plan()))
                    .singleElement()
                    .asString()
                    .startsWith("panel 'P1' peaks at 150 A on phase A when board 'B1' fails");
            assertThat(Judging.verdict(project(149, PlanEvent.BOARD_FAILURE), plan())
                            .violations()
                            .get(0)
                            .subjects())
                    .extracting(Subject::id)
                    .contains("P1", "B1");
        }

        @Test
        void countsEveryEventOfItsOwn() {
            assertThat(broken("event-inrush", project(61, PlanEvent.values()), plan()))
                    .hasSize(3);
        }
    }
}
