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
import evenrise.solver.rework.NightLimits;
import evenrise.solver.rework.OrderOfWork;
import evenrise.solver.rework.WorkOrder;
import java.util.List;
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
        return pages(BuiltPlant.of(project, built, Optional.empty()), OrderOfWork.between(project, built, plan(5), 1))
                .replaceAll("\\s+", " ");
    }

    private static String pages(BuiltPlant plant, WorkOrder order, String... notes) {
        return WorkSheetText.pages(WorkSheets.of(plant, order, List.of(notes), NightLimits.NONE));
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
                        "step 4: small back to panel P1 slot 3")
                .doesNotContain("The system stays on;");
    }

    /** Idle is what a night works at: 20 A and 2 A here, since the fixture's loads draw idle what they run at. */
    @Test
    void hasRoomForReadingsAtIdleAndAtFullUse() {
        assertThat(sheet(20))
                .contains("idle read full use allowed read at full use")
                .containsPattern("panel P1 A 20\\.0 \\(20\\.0\\) ________ 20\\.0 \\(20\\.0\\) 24\\.0 ________")
                .contains("2.0 A idle, at most 2.0 A at full use; read ______ A");
    }

    @Test
    void saysWhoIsToldBeforeAndAfter() {
        assertThat(sheet(20)).contains("before the first step and when all is on again: name", "told at", "again at");
    }

    /** From slot 3 to slot 5 of an alternating panel. */
    @Test
    void drawsThePanelWithWhatChanges() {
        assertThat(sheet(20))
                .contains("Panel P1 as this stage leaves it")
                .contains("> 3 B -, was small")
                .contains("> 5 C small, was -")
                .contains(" 1 A big ");
    }

    @Test
    void saysOnEverySheetWhatElseIsToBeKnown() {
        Project project = aProject()
                .panels(aPanel("P1"))
                .loads(aLoad("big").unswitched(), aLoad("small").unswitched())
                .build();
        BuiltPlant plant = BuiltPlant.of(project, plan(3), Optional.empty());

        assertThat(pages(plant, OrderOfWork.between(project, plan(3), plan(5), 1), "the lift hangs"))
                .contains("the lift hangs");
    }

    @Test
    void saysTheCautionsWhereNothingIsToBeDone() {
        Project project =
                aProject().panels(aPanel("P1")).loads(aLoad("big").unswitched()).build();
        Plan built = aPlan().assignments(anAssignment("big").at("P1", 1)).build();

        String sheet =
                pages(BuiltPlant.of(project, built, Optional.empty()), OrderOfWork.between(project, built, built, 1));

        assertThat(sheet)
                .startsWith("Nothing is to be done")
                .contains(Cautions.ALL.get(0).substring(0, 40));
    }
}
