package evenrise.model.rules;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.LoadBuilder;
import evenrise.model.plan.Assignment;
import evenrise.model.plan.Plan;
import evenrise.model.project.Load;
import evenrise.model.project.Overlap;
import evenrise.model.project.Project;
import evenrise.model.project.SwitchedBy;
import evenrise.model.project.SwitchedSystem;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** Systems core, hall, which needs core, and annex, which needs hall. Boards B1 of core, B2 of hall and B3 of annex, a step of 1 s. */
class ClocksTest {
    private static final List<SwitchedSystem> SYSTEMS =
            List.of(system("core"), system("hall", "core"), system("annex", "hall"));

    private static SwitchedSystem system(String id, String... needs) {
        return SwitchedSystem.builder().id(id).needs(List.of(needs)).build();
    }

    private static LoadBuilder of(String id, String system) {
        return aLoad(id).with(load -> load.system(system));
    }

    private static Project project(Overlap overlap) {
        return aProject()
                .boards(aBoard("B1"), aBoard("B2"), aBoard("B3"))
                .loads(
                        of("C1", "core").processing(),
                        of("C2", "core"),
                        of("H1", "hall").processing(),
                        of("H2", "hall").with(load -> load.offAfterSeconds(90).switchedBy(SwitchedBy.CONTACTOR)),
                        aLoad("H3").with(load -> load.comesWith("H2")),
                        of("A1", "annex"))
                .with(made -> made.systems(SYSTEMS).overlap(overlap))
                .build();
    }

    /** Core until 1 s, hall until 2 s, annex at 0 s. */
    private static Layout layout(Overlap overlap) {
        Plan bare = aPlan().board("B1", 0, 1)
                .board("B2", 0, 1)
                .board("B3", 0, 1)
                .assignments(
                        anAssignment("C1").at("P1", 1).on("B1", 1),
                        anAssignment("C2").at("P1", 3).on("B1", 2),
                        anAssignment("H1").at("P1", 5).on("B2", 1),
                        anAssignment("H2").at("P1", 7).on("B2", 3),
                        anAssignment("H3").at("P1", 9),
                        anAssignment("A1").at("P1", 11).on("B3", 1))
                .build();
        Project project = project(overlap);
        return Layout.of(project, PlanFinisher.timed(project, bare));
    }

    private static Stream<String> ids(List<Placement> some) {
        return some.stream().map(Placement::id);
    }

    @Test
    void whatASystemNeedsIsNeededThroughOthersToo() {
        assertThat(Clocks.needed("core", SYSTEMS)).containsExactlyInAnyOrder("core");
        assertThat(Clocks.needed("hall", SYSTEMS)).containsExactlyInAnyOrder("core", "hall");
        assertThat(Clocks.needed("annex", SYSTEMS)).containsExactlyInAnyOrder("core", "hall", "annex");
        assertThat(Clocks.needed("a", List.of(system("a", "b"), system("b", "a"))))
                .containsExactlyInAnyOrder("a", "b");
    }

    @Nested
    class Apart {
        private final Clocks clocks = layout(Overlap.ONE_AT_A_TIME).clocks();

        @Test
        void rolesTakePrecedenceWithinEachSystem() {
            assertThat(clocks.precedences())
                    .extracting(each -> each.system().orElseThrow())
                    .containsExactly("core", "hall", "annex");
            assertThat(ids(clocks.precedences().get(1).loads())).containsExactly("H1", "H2", "H3");
            assertThat(ids(clocks.precedences().get(1).processing())).containsExactly("H1");
            assertThat(ids(clocks.precedences().get(2).processing())).isEmpty();
        }

        @Test
        void eachSystemMirrorsItsOwnEnd() {
            assertThat(clocks.ends().get(Optional.of("core"))).isEqualTo(1);
            assertThat(clocks.ends().get(Optional.of("hall"))).isEqualTo(2);
            assertThat(off("C1")).isEqualTo(1);
            assertThat(off("C2")).isZero();
            assertThat(off("H1")).isEqualTo(2);
        }

        /** H2 is on at 2 s, the last of hall, and goes off 90 s later than the mirror says, with H3 behind its contactor. */
        @Test
        void whatGoesOffLateTakesWithItWhatComesWithIt() {
            assertThat(off("H2")).isEqualTo(90);
            assertThat(off("H3")).isEqualTo(90);
            assertThat(clocks.offAfterSeconds(load("H3"))).isEqualTo(90);
            assertThat(clocks.offAfterSeconds(load("H1"))).isZero();
        }
    }

    @Nested
    class Together {
        private final Clocks clocks = layout(Overlap.TOGETHER).clocks();

        @Test
        void processingOfWhatIsNeededComesFirstToo() {
            assertThat(ids(clocks.precedences().get(0).processing())).containsExactly("C1");
            assertThat(ids(clocks.precedences().get(1).processing())).containsExactly("C1", "H1");
            assertThat(ids(clocks.precedences().get(2).processing())).containsExactly("C1", "H1");
            assertThat(ids(clocks.precedences().get(2).loads())).containsExactly("A1");
        }
    }

    private static Load load(String id) {
        return project(Overlap.ONE_AT_A_TIME).loads().stream()
                .filter(each -> each.id().equals(id))
                .findFirst()
                .orElseThrow();
    }

    private static double off(String load) {
        return layout(Overlap.ONE_AT_A_TIME).plan().assignments().stream()
                .filter(each -> each.load().equals(load))
                .map(Assignment::offSeconds)
                .findFirst()
                .orElseThrow()
                .orElseThrow();
    }
}
