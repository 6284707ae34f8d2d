package evenrise.solver.engine;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aBoardType;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aProject;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.model.rules.Referee;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What the first plan must not do, however little room there is; the search never mends what it never breaks. */
class FirstPlanTest {
    private static Plan plan(Project project, long moves) {
        PlanningRequest request = new PlanningRequest(project, Optional.empty(), new Budget.Moves(moves), 1, 1);
        return Plans.finished(
                project, new Planner(request, progress -> {}).plan().plan());
    }

    @Test
    void looksForABoardThatHasTheFixedOutput() {
        Project project = aProject()
                .panels(aPanel("P1"))
                .boardTypes(aBoardType("two").outputs(2), aBoardType("six").outputs(6))
                .boards(aBoard("small").type("two"), aBoard("long").type("six"))
                .loads(aLoad("early").fixedBoard("small"), aLoad("late").fixedOutput(5))
                .build();

        Plan plan = plan(project, 1);

        assertThat(Referee.judge(project, plan).violations()).isEmpty();
    }

    @Test
    void givesOneOutputToOneOfTwoLoadsThatAreFixedToItsNumber() {
        Project project = aProject()
                .panels(aPanel("P1"))
                .boardTypes(aBoardType("four").outputs(4))
                .boards(aBoard("B1").type("four"), aBoard("B2").type("four"))
                .loads(aLoad("one").fixedOutput(3), aLoad("other").fixedOutput(3), aLoad("free"))
                .build();

        Plan first = plan(project, 1);
        Plan found = plan(project, 2_000);

        assertThat(Referee.judge(project, first).violations())
                .extracting(violation -> violation.rule())
                .doesNotContain("fixed");
        assertThat(Referee.judge(project, found).violations()).isEmpty();
    }

    /** Nothing is switched: no boards, no outputs, no instants but the first. */
    @Test
    void plansAProjectWithoutABoard() {
        Project project = aProject()
                .panels(aPanel("P1"))
                .loads(aLoad("clock").unswitched(), aLoad("exit").unswitched())
                .build();

        Plan plan = plan(project, 500);

        assertThat(Referee.judge(project, plan).violations()).isEmpty();
    }
}
