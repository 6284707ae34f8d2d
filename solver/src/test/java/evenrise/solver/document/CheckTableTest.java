package evenrise.solver.document;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.plan.Grade;
import evenrise.model.plan.HeldTo;
import evenrise.model.plan.Quantity;
import evenrise.model.plan.Review;
import evenrise.model.review.ElectricalReview;
import evenrise.model.rules.Layout;
import evenrise.solver.browser.DrawnPages;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;

/** Nothing that the review computes is thrown away, and nothing in the sheet is computed anew. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class CheckTableTest {
    private Layout layout;
    private Review review;
    private DocumentTable<Quantity> table;

    @BeforeAll
    void plan() {
        DrawnPages.Planned planned = DrawnPages.of("meridian-hall");
        layout = planned.layout();
        review = ElectricalReview.of(layout);
        table = planned.document().tables().checks();
    }

    @Test
    void hasEveryFigureOfTheReviewOnce() {
        assertThat(table.rows()).containsExactlyInAnyOrderElementsOf(review.quantities());
        assertThat(review.quantities()).hasSizeGreaterThan(1000);
    }

    @Test
    void theTightestFirstThenWhatNothingLimits() {
        List<Quantity> held =
                table.rows().stream().filter(each -> each.limit().isPresent()).toList();

        assertThat(table.rows().subList(0, held.size())).isEqualTo(held);
        assertThat(held)
                .isSortedAccordingTo((one, other) -> Double.compare(
                        other.usedPercent().orElseThrow(), one.usedPercent().orElseThrow()));
        assertThat(held).hasSizeGreaterThan(500);
    }

    @Test
    void saysWhichCheckAndWhichClause() {
        assertThat(table.rows()).allSatisfy(each -> assertThat(each.check()).isNotEmpty());
        assertThat(table.rows())
                .filteredOn(each -> each.limit().isPresent())
                .allSatisfy(each -> assertThat(each.clause()).isNotEmpty());
    }

    /** Of a plan that breaks nothing electrical no row may say so, and each that passes a limit says how it is taken. */
    @Test
    void takesWhatPassesALimitAsTheFindingsDo() {
        assertThat(review.count(Grade.BREAKS)).isZero();
        assertThat(told(Quantity::isPassed)).isNotEmpty().isSubsetOf("note", "exceeds a recommendation");
        assertThat(told(each -> !each.isPassed())).containsOnly("");
    }

    private List<String> told(java.util.function.Predicate<Quantity> which) {
        Column<Quantity> column = table.columns().stream()
                .filter(each -> each.key().equals("told"))
                .findFirst()
                .orElseThrow();
        return table.rows().stream()
                .filter(which)
                .map(each -> String.valueOf(column.of(each)))
                .toList();
    }

    @Test
    void aFigureMayBeAtItsLimitOnEitherSide() {
        Quantity drop = new Quantity("L", "voltage drop of the branch", 3, "%").atMost(3, "NEC 210.19(A)");
        Quantity cable = new Quantity("L", "ampacity", 20, "A").atLeast(25, "NEC 210.19(A)");

        assertThat(drop.isPassed()).isFalse();
        assertThat(drop.usedPercent()).hasValue(100);
        assertThat(drop.withValue(3.1).isPassed()).isTrue();
        assertThat(cable.heldTo()).isEqualTo(HeldTo.AT_LEAST);
        assertThat(cable.isPassed()).isTrue();
        assertThat(cable.left()).hasValue(-5);
        assertThat(cable.usedPercent().orElseThrow()).isCloseTo(125, within(1e-9));
        assertThat(cable.withValue(25).isPassed()).isFalse();
    }

    @Test
    void whatNothingLimitsIsHeldAgainstNothing() {
        Quantity heat = new Quantity("room", "heat at idle", 800, "W");

        assertThat(heat.atMost(Double.POSITIVE_INFINITY, "no device")).isEqualTo(heat);
        assertThat(heat.atMost(OptionalDouble.empty(), "not stated")).isEqualTo(heat);
        assertThat(heat.isPassed()).isFalse();
        assertThat(heat.left()).isEmpty();
    }
}
