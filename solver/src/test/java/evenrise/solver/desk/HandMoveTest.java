package evenrise.solver.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import evenrise.model.answer.HandMove;
import evenrise.model.answer.HandRefused;
import evenrise.model.plan.Assignment;
import evenrise.model.plan.Plan;
import evenrise.model.project.Phase;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Referee;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class HandMoveTest {
    private final Layout layout = Hall.layout();

    private HandMove hand(String load) {
        return new HandMove(layout, load);
    }

    private static Assignment of(Plan plan, String load) {
        return plan.assignments().stream()
                .filter(each -> each.load().equals(load))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void beginsAtAPlanThatKeepsEveryRule() {
        assertThat(Referee.judge(layout).violations()).isEmpty();
    }

    @Nested
    class ToASlot {
        @Test
        void movesTheBreakerAndFollowsThePhase() {
            Assignment moved = of(hand("amp-1").toSlot("P2", 3), "amp-1");

            assertThat(moved.slot()).isEqualTo(3);
            assertThat(moved.phases()).containsExactly(Phase.B);
            assertThat(moved.board()).contains("B2");
            assertThat(moved.output()).hasValue(1);
        }

        @Test
        void thatAnotherHasExchangesTheBreakersAndLeavesTheLeads() {
            Plan plan = hand("amp-1").toSlot("P2", 5);

            assertThat(of(plan, "amp-1").slot()).isEqualTo(5);
            assertThat(of(plan, "amp-2").slot()).isEqualTo(1);
            assertThat(of(plan, "amp-1").output()).hasValue(1);
            assertThat(of(plan, "amp-2").output()).hasValue(2);
        }

        @Test
        void takenByABreakerOfMorePolesIsRefusedWithTheCure() {
            assertThatThrownBy(() -> hand("dsp").toSlot("P1", 4))
                    .isInstanceOf(HandRefused.class)
                    .hasMessage("slot 4 of panel 'P1' is taken by 'hoist' of 3 poles, which cannot change places with a"
                            + " load of 1 pole. Lift it off first.");
        }

        @Test
        void belowWhichThePolesDoNotFitIsRefused() {
            assertThatThrownBy(() -> hand("hoist").toSlot("P1", 9))
                    .hasMessage("a breaker of 3 poles does not fit at slot 9 of panel 'P1'.");
        }

        @Test
        void whereARuleBreaksIsAllowedAndShown() {
            Plan plan = hand("amp-1").toSlot("P1", 5);

            assertThat(Referee.judge(Layout.of(layout.index(), plan)).violations())
                    .extracting(each -> each.rule())
                    .containsExactly("reach");
        }
    }

    @Nested
    class ToAnOutput {
        @Test
        void movesTheLeadAndFollowsTheTime() {
            Assignment moved = of(hand("amp-1").toOutput("B2", 4), "amp-1");

            assertThat(moved.onSeconds()).hasValue(4 + 3 * 0.5);
            assertThat(moved.slot()).isEqualTo(1);
        }

        @Test
        void thatSwitchesAnotherExchangesTheLeads() {
            Plan plan = hand("amp-1").toOutput("B2", 2);

            assertThat(of(plan, "amp-1").onSeconds()).hasValue(4.5);
            assertThat(of(plan, "amp-2").onSeconds()).hasValue(4);
        }

        @Test
        void thatTheBoardDoesNotHaveIsRefused() {
            assertThatThrownBy(() -> hand("amp-1").toOutput("B2", 5)).hasMessage("board 'B2' has outputs 1 to 4.");
        }
    }

    @Nested
    class WithoutAPlace {
        private final Layout without = Layout.of(layout.index(), hand("amp-2").away());

        @Test
        void aLoadIsNowhereInThePlan() {
            assertThat(without.placement("amp-2")).isEmpty();
        }

        @Test
        void aLoadThatIsPutInASlotTakesTheFreeOutputThatBreaksLeast() {
            Assignment placed = of(new HandMove(without, "amp-2").toSlot("P2", 3), "amp-2");

            // B1 does not reach P2; output 1 of B2 has its load still.
            assertThat(placed.board()).isEqualTo(Optional.of("B2"));
            assertThat(placed.output()).isEqualTo(OptionalInt.of(2));
        }

        @Test
        void anOutputIsRefusedUntilThereIsASlot() {
            assertThatThrownBy(() -> new HandMove(without, "amp-2").toOutput("B2", 2))
                    .hasMessage("load 'amp-2' has no slot yet. Put it in a panel first.");
        }
    }
}
