package evenrise.solver.report;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.solver.rework.OrderCost;
import evenrise.solver.rework.WorkOrder;
import java.util.List;
import org.junit.jupiter.api.Test;

class OrderTextTest {
    private static String proven(OrderCost cost, OrderCost least, boolean isProven) {
        return OrderText.proven(new WorkOrder(List.of(), cost, least, isProven, List.of(), List.of()));
    }

    @Test
    void saysThatEveryOrderWasLookedAt() {
        OrderCost cost = new OrderCost(1, 2, 3, 4, 2);

        assertThat(proven(cost, cost, true))
                .startsWith("No order of these changes")
                .endsWith("every one was looked at.");
    }

    /** The number of stages comes last, and nothing is said of it. */
    @Test
    void saysThatNoneIsCheaperWhereEachFigureIsTheLeastThereIs() {
        assertThat(proven(new OrderCost(1, 2, 3, 4, 2), new OrderCost(1, 2, 3, 4, 1), false))
                .contains("proven by what each change takes off by itself: no order of these changes")
                .contains("fewer outages.");
    }

    @Test
    void saysWhatIsProvenBesideWhatWasFound() {
        assertThat(proven(new OrderCost(3, 5, 3, 9, 4), new OrderCost(2, 4, 1, 7, 2), false))
                .contains("a better order may exist")
                .contains("in stages as short: at least 2 stages with a system off (here 3), 4 isolations of panels and"
                        + " boards (here 5), 7 outages of groups (here 9).");
    }

    /** How many loads are locked out at once is proven only of orders that are as good before. */
    @Test
    void saysHowManyLoadsAreLockedOutAtLeastWhereItHolds() {
        assertThat(proven(new OrderCost(1, 4, 3, 9, 4), new OrderCost(1, 4, 2, 7, 1), false))
                .contains("where the first two are as few, at least 2 loads locked out at once (here 3).");
    }
}
