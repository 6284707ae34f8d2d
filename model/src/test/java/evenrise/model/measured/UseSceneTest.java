package evenrise.model.measured;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.project.Phase;
import evenrise.model.project.Project;
import evenrise.model.project.Scene;
import evenrise.model.project.SceneUse;
import evenrise.model.rules.Layout;
import evenrise.model.rules.ProjectIndex;
import evenrise.model.rules.Referee;
import evenrise.model.rules.SceneCurrents;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** "one" runs at 6 A, "two" at 8 A, "three" at 5 A on three poles; the clamp is off by 2 % of what it shows. */
class UseSceneTest {
    private static PoleReading on(String day, String load, Phase phase, double amps) {
        return OnSite.runningOn(day, load, Optional.ofNullable(phase), amps);
    }

    private static UseScene rehearsal(PoleReading... readings) {
        return UseScene.of(OnSite.project(), OnSite.poles(readings), "rehearsal");
    }

    /** The greater of 3 A and 3.3 A, 2 % on top, of 6 A: 56.1 %. */
    @Test
    void takesTheGreatestOfTwoVisitsWithAllThatItMayBeOffBy() {
        UseScene use = rehearsal(on("2026-03-14", "one", Phase.A, 3), on("2026-04-11", "one", Phase.A, 3.3));

        assertThat(use.parts()).singleElement().satisfies(part -> {
            assertThat(part.load()).isEqualTo("one");
            assertThat(part.factor()).isCloseTo(0.561, within(1e-9));
            assertThat(part.visits()).isEqualTo(2);
            assertThat(part.leastAmps()).isEqualTo(3);
            assertThat(part.greatestAmps()).isEqualTo(3.3);
        });
        assertThat(use.notTwice()).containsExactly("two", "three");
    }

    @Test
    void countsInFullWhatWasReadOnceOrTwiceOnOneDay() {
        UseScene use = rehearsal(
                on("2026-03-14", "one", Phase.A, 3),
                on("2026-03-14", "one", Phase.A, 3),
                on("2026-03-14", "two", Phase.B, 3));

        assertThat(use.parts()).isEmpty();
        assertThat(use.notTwice()).containsExactly("one", "two", "three");
    }

    @Test
    void countsInFullWhatWasNotReadOnEachPole() {
        UseScene part = rehearsal(
                on("2026-03-14", "three", Phase.A, 2),
                on("2026-03-14", "three", Phase.B, 2),
                on("2026-03-14", "three", Phase.C, 2),
                on("2026-04-11", "three", Phase.A, 2));
        UseScene whole = rehearsal(on("2026-03-14", "three", null, 2), on("2026-04-11", "three", null, 2));

        assertThat(part.notTwice()).contains("three");
        assertThat(whole.parts()).extracting(UseScene.Part::load).containsExactly("three");
    }

    /** A dead load says nothing of what it draws in use. */
    @Test
    void countsInFullWhatDidNotDraw() {
        UseScene use = rehearsal(on("2026-03-14", "one", Phase.A, 3), on("2026-04-11", "one", Phase.A, 0));

        assertThat(use.parts()).isEmpty();
        assertThat(use.dead()).containsExactly("one");
    }

    /** The clamp stood in a range of 100 A. */
    @Test
    void countsInFullWhatWasBeyondTheMetersRange() {
        UseScene use = rehearsal(on("2026-03-14", "one", Phase.A, 101), on("2026-04-11", "one", Phase.A, 3));

        assertThat(use.notTwice()).contains("one");
    }

    @Test
    void countsInFullWhatReadsAsMuchWithTheMetersError() {
        UseScene use = rehearsal(on("2026-03-14", "one", Phase.A, 5.9), on("2026-04-11", "one", Phase.A, 3));

        assertThat(use.parts()).isEmpty();
        assertThat(use.notTwice()).containsExactly("two", "three");
    }

    @Test
    void standsBesideFullUseWhereTheProjectHadNoScene() {
        UseScene use = rehearsal(on("2026-03-14", "one", Phase.A, 3), on("2026-04-11", "one", Phase.A, 3));
        Project before = OnSite.project();
        Project after = use.in(before);
        Layout was = OnSite.layout(before);

        assertThat(after.scenes()).extracting(Scene::id).containsExactly(UseScene.FULL_USE, "rehearsal");
        ProjectIndex index = new ProjectIndex(after);
        after.loads()
                .forEach(load ->
                        assertThat(SceneCurrents.of(index).mostAmps(load)).isEqualTo(load.runningAmps()));
        assertThat(SceneCurrents.of(index).scenes().get(1).runningAmps().get("one"))
                .isCloseTo(0.51 * 6, within(1e-9));
        assertThat(Referee.judge(Layout.of(after, was.plan())).violations())
                .hasSameSizeAs(Referee.judge(was).violations());
    }

    @Test
    void isNoneWhereNoLoadCountsAsLess() {
        assertThat(rehearsal(on("2026-03-14", "one", Phase.A, 3))
                        .in(OnSite.project())
                        .scenes())
                .isEmpty();
    }

    @Test
    void isAddedToTheScenesThatThereAre() {
        Scene show = Scene.builder()
                .id("show")
                .others(0.5)
                .use(List.of(
                        SceneUse.builder().group(Optional.of("none")).factor(1).build()))
                .build();
        UseScene use = rehearsal(on("2026-03-14", "one", Phase.A, 3), on("2026-04-11", "one", Phase.A, 3));

        Project after = use.in(OnSite.project().withScenes(List.of(show)));

        assertThat(after.scenes()).extracting(Scene::id).containsExactly("show", "rehearsal");
    }
}
