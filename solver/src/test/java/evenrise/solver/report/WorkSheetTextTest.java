package evenrise.solver.report;

import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.plan.Cautions;
import evenrise.model.plan.Plan;
import evenrise.model.project.Phase;
import evenrise.model.project.Project;
import evenrise.solver.rework.BuiltPlant;
import evenrise.solver.rework.OrderOfWork;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class WorkSheetTextTest {
    /** Of 30 A a phase may carry 0.8 · 30 A = 24 A; "big" alone draws {@code amps}. */
    private static String sheet(double amps) {
        Project project = aProject()
                .panels(aPanel("P1").ratedAmps(30))
                .loads(
                        aLoad("big").unswitched().runningAmps(amps).breakerAmps(40),
                        aLoad("small").unswitched().runningAmps(2))
                .build();
        Plan built = plan(3);
        return WorkSheetText.pages(
                        BuiltPlant.of(project, built, Optional.empty()),
                        OrderOfWork.between(project, built, plan(5), 1))
                .replaceAll("\\s+", " ");
    }

    private static Plan plan(int slot) {
        return aPlan().assignments(
                        anAssignment("big").at("P1", 1, Phase.A),
                        anAssignment("small").at("P1", slot, slot == 3 ? Phase.B : Phase.C))
                .build();
    }

    @Test
    void saysThatThePlantIsWholeOnlyWhereEveryLimitHolds() {
        assertThat(sheet(20)).contains("The plant is whole and may run").doesNotContain("NOT whole");
    }

    @Test
    void namesTheLimitThatIsBrokenAtTheEndOfAStage() {
        assertThat(sheet(28))
                .contains("The plant is NOT whole", "rating: ", "phase A runs at 28", "of 30", "which is 24")
                .doesNotContain("may run.", "may run;");
    }

    @Test
    void holdsEveryTestAndTheWayBack() {
        assertThat(sheet(20))
                .contains("ISOLATED: panel P1", "Test that no voltage is there", "proven before and after")
                .contains("torque", "insulation", "covers on", "people clear")
                .contains(
                        "Function test of small",
                        "Change the labels",
                        "If a step fails",
                        "small: panel P1 slot 3, phase B")
                .doesNotContain("The system stays on;");
    }

    @Test
    void saysTheCautionsWhereNothingIsToBeDone() {
        Project project =
                aProject().panels(aPanel("P1")).loads(aLoad("big").unswitched()).build();
        Plan built = aPlan().assignments(anAssignment("big").at("P1", 1)).build();

        String sheet = WorkSheetText.pages(
                BuiltPlant.of(project, built, Optional.empty()), OrderOfWork.between(project, built, built, 1));

        assertThat(sheet)
                .startsWith("Nothing is to be done")
                .contains(Cautions.ALL.get(0).substring(0, 40));
    }
}
