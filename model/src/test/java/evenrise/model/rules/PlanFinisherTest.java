package evenrise.model.rules;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.ProjectBuilder;
import evenrise.model.plan.Assignment;
import evenrise.model.plan.BrokenRule;
import evenrise.model.plan.Cautions;
import evenrise.model.plan.Plan;
import evenrise.model.project.Phase;
import evenrise.model.project.Project;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class PlanFinisherTest {
    private final ProjectBuilder project = aProject()
            .boards(aBoard("B1"))
            .loads(aLoad("L1").twoPole(), aLoad("L2"), aLoad("L3").unswitched());
    private final Plan bare = aPlan().board("B1", 0.5, 0.25)
            .assignments(
                    anAssignment("L1").at("P1", 3).on("B1", 1),
                    anAssignment("L2").at("P1", 2).on("B1", 4),
                    anAssignment("L3").at("P1", 8).offSeconds(9))
            .build();

    @Test
    void fillsInPhasesInTheOrderOfTheSlots() {
        assertThat(finish(bare).assignments().get(0).phases()).containsExactly(Phase.B, Phase.C);
    }

    @Test
    void fillsInTimes() {
        Assignment first = finish(bare).assignments().get(0);

        // on at 0.5 s; the last, output 4, at 0.5 + 3·0.25 = 1.25 s
        assertThat(first.onSeconds()).hasValue(0.5);
        assertThat(first.offSeconds()).hasValue(0.75);
    }

    @Test
    void clearsTheTimesOfAnUnswitchedLoad() {
        Assignment unswitched = finish(bare).assignments().get(2);

        assertThat(unswitched.onSeconds()).isEmpty();
        assertThat(unswitched.offSeconds()).isEmpty();
    }

    @Test
    void givesTheRefereesFiguresAndNoViolation() {
        Plan finished = finish(bare);

        assertThat(finished.metrics())
                .contains(Referee.judge(project.build(), finished).metrics());
        assertThat(finished.violations()).isEmpty();
    }

    @Test
    void carriesCautionsAndOrigin() {
        Plan finished = finish(bare);

        assertThat(finished.cautions()).isEqualTo(Cautions.ALL);
        assertThat(String.join(" ", finished.cautions()))
                .contains(
                        "licensed professional", "lock out", "no life-safety system", "authority having jurisdiction");
        assertThat(finished.madeBy()).contains(Judging.MADE_BY);
    }

    @Test
    void saysWhatIsBrokenAndLeavesItAsItIs() {
        Plan wrong = aPlan().board("B1", 0.5, 0.25)
                .assignments(
                        anAssignment("L1").at("P1", 42).on("B1", 1),
                        anAssignment("L2").at("P1", 2).on("B1", 99),
                        anAssignment("L3").at("P1", 8))
                .build();

        Plan finished = finish(wrong);

        assertThat(finished.violations()).extracting(BrokenRule::rule).containsExactly("output", "slot");
        assertThat(finished.assignments().get(0).slot()).isEqualTo(42);
        assertThat(finished.assignments().get(0).phases()).isEmpty();
        assertThat(finished.assignments().get(1).output()).hasValue(99);
        assertThat(finished.assignments().get(1).onSeconds()).isEqualTo(OptionalDouble.empty());
    }

    @Test
    void changesNothingTheSecondTime() {
        Plan once = finish(bare);

        assertThat(finish(once)).isEqualTo(once);
    }

    private Plan finish(Plan plan) {
        Project built = project.build();
        return PlanFinisher.finish(built, plan, Judging.MADE_BY, Judging.NOTHING_PROVEN);
    }
}
