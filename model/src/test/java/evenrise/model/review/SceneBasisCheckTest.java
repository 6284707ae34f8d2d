package evenrise.model.review;

import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.plan.Grade;
import evenrise.model.plan.Plan;
import evenrise.model.plan.Remark;
import evenrise.model.project.Project;
import evenrise.model.project.Scene;
import evenrise.model.project.SceneUse;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class SceneBasisCheckTest {
    /** Two loads of 9 A on phase A of a panel that may run at 16 A (20 A, 80 %); each scene has one of them. */
    private static Project plant(Optional<String> basis) {
        return aProject()
                .panels(aPanel("P").ratedAmps(20))
                .loads(
                        aLoad("L1").unswitched().runningAmps(9),
                        aLoad("L2").unswitched().runningAmps(9))
                .build()
                .withScenes(List.of(scene("cooling", "L1", basis), scene("heating", "L2", basis)));
    }

    private static Scene scene(String id, String off, Optional<String> basis) {
        return Scene.builder()
                .id(id)
                .use(List.of(SceneUse.builder()
                        .loads(Optional.of(List.of(off)))
                        .factor(0)
                        .build()))
                .basis(basis)
                .build();
    }

    private static Plan plan() {
        return aPlan().assignments(
                        anAssignment("L1").at("P", 1), anAssignment("L2").at("P", 7))
                .build();
    }

    private static List<Remark> remarks(Project project) {
        return Reviews.of(new SceneBasisCheck(), project, plan()).remarks();
    }

    @Test
    void aPanelThatScenesAloneKeepIsAFinding() {
        assertThat(remarks(plant(Optional.empty())))
                .singleElement()
                .matches(each -> each.grade() == Grade.EXCEEDS_RECOMMENDATION
                        && each.place().equals("P")
                        && each.figure().getAsDouble() == 18
                        && each.limit().getAsDouble() == 16
                        && each.message().contains("9.00 A in the scenes"));
    }

    @Test
    void withABasisItIsNamedWithThat() {
        assertThat(remarks(plant(Optional.of("one machine heats or cools"))))
                .singleElement()
                .matches(each -> each.grade() == Grade.NOTE && each.message().contains("one machine heats or cools"));
    }

    @Test
    void whatKeepsItsRatingAnyhowNeedsNone() {
        Project project = plant(Optional.empty());

        assertThat(remarks(project.withPanels(List.of(aPanel("P").ratedAmps(23).build()))))
                .isEmpty();
    }

    @Test
    void theConnectedLoadStandsBesideTheScenes() {
        Reviews reviews = Reviews.of(new SceneBasisCheck(), plant(Optional.empty()), plan());

        assertThat(reviews.figure("P", "connected load at factor 1")).isEqualTo(18);
    }
}
