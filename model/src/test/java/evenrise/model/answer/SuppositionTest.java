package evenrise.model.answer;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.answer.Supposition.Added;
import evenrise.model.answer.Supposition.Full;
import evenrise.model.answer.Supposition.Limited;
import evenrise.model.answer.Supposition.Without;
import evenrise.model.plan.Plan;
import evenrise.model.project.Board;
import evenrise.model.project.FixedPlace;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.Project;
import evenrise.model.project.Role;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** Boards B1 and B3 in P1, B2 in P2; B3 follows B2, which follows B1. The amplifier sits in slot 1 of P2. */
class SuppositionTest {
    private final Project project = aProject()
            .panels(aPanel("P1").slots(6), aPanel("P2").slots(6).reservedSlots(6))
            .boards(
                    aBoard("B1").in("P1"),
                    aBoard("B2").in("P2").with(board -> board.after("B1")),
                    aBoard("B3").in("P1").with(board -> board.after("B2").reaches(List.of("P1", "P2"))))
            .loads(
                    aLoad("amp")
                            .amplifier()
                            .panels("P1", "P2")
                            .fixed(FixedPlace.NONE
                                    .withPanel(Optional.of("P2"))
                                    .withSlot(OptionalInt.of(1))
                                    .withBoard(Optional.of("B2"))),
                    aLoad("fan").unswitched())
            .build();
    private final Plan plan = aPlan().assignments(
                    anAssignment("amp").at("P2", 1).on("B2", 1),
                    anAssignment("fan").at("P1", 2))
            .build();

    private static Load load(Project project, String id) {
        return project.loads().stream()
                .filter(each -> each.id().equals(id))
                .findFirst()
                .orElseThrow();
    }

    @Nested
    class WithoutAPanel {
        private final Project left = new Without("P2").in(project, plan);

        @Test
        void itsBoardsAreGoneAndWhatFollowedThemFollowsWhatTheyFollowed() {
            assertThat(left.panels()).extracting(Panel::id).containsExactly("P1");
            assertThat(left.boards()).extracting(Board::id).containsExactly("B1", "B3");
            assertThat(left.boards().get(1).after()).contains("B1");
            assertThat(left.boards().get(1).reaches()).containsExactly("P1");
        }

        @Test
        void whatWasFixedThereIsFree() {
            assertThat(load(left, "amp").fixed()).isEqualTo(FixedPlace.NONE);
            assertThat(load(left, "amp").panels()).containsExactly("P1");
        }

        @Test
        void loadsThatMaySitNowhereElseStandInTheWay() {
            Project bound = project.withLoads(List.of(load(project, "fan").withPanels(List.of("P2"))));

            assertThat(new Without("P2").obstacles(bound, plan))
                    .containsExactly("1 load may sit in no other panel: 'fan'");
            assertThat(new Without("P2").obstacles(project, plan)).isEmpty();
            assertThat(new Without("P9").obstacles(project, plan)).containsExactly("the project has no panel 'P9'");
        }
    }

    @Test
    void aFullPanelHasRoomForWhatIsThereAlone() {
        Project full = new Full("P2").in(project, plan);

        assertThat(full.panels().get(1).reservedSlots()).containsExactly(2, 3, 4, 5, 6);
        assertThat(full.panels().get(0).reservedSlots()).isEmpty();
    }

    @Test
    void oneLoadMoreHasAnIdThatNobodyHas() {
        Project once = new Added(16, 2, Optional.of(Role.AMPLIFIER)).in(project, plan);
        Project twice = new Added(5, 1, Optional.empty()).in(once, plan);

        assertThat(load(once, "one-more").switched()).isTrue();
        assertThat(load(once, "one-more").poles()).isEqualTo(2);
        assertThat(load(twice, "one-more-2").switched()).isFalse();
        assertThat(load(twice, "one-more-2").runningAmps()).isEqualTo(5);
    }

    @Test
    void aLimitIsThatOfTheSupplyOrOfAPanel() {
        assertThat(new Limited("supply", 250).in(project, plan).supply().inrushLimitAmps())
                .hasValue(250);
        assertThat(new Limited("P2", 90).in(project, plan).panels().get(1).inrushLimitAmps())
                .hasValue(90);
        assertThat(new Limited("P9", 90).obstacles(project, plan)).isNotEmpty();
    }
}
