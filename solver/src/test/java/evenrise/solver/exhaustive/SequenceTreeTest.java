package evenrise.solver.exhaustive;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aBoardType;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aProject;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.LoadBuilder;
import evenrise.solver.exhaustive.Timetable.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What the proofs beside every plan of tiny projects hardly come upon. */
class SequenceTreeTest {
    private static final Steps ENOUGH = new Steps(1_000_000, () -> false);
    private static final int ON_A = 1;

    private static SmallProject project(LoadBuilder... loads) {
        return new SmallProject(aProject()
                .panels(aPanel("P").slots(12))
                .boardTypes(aBoardType("T").outputs(3).startDelaySeconds(0).stepSeconds(1))
                .boards(aBoard("B1").type("T").in("P"), aBoard("B2").type("T").in("P"))
                .loads(loads)
                .build());
    }

    private static Instant on(double seconds, int board, int output) {
        return new Instant(Math.round(seconds * 1e6), board, output, false);
    }

    @Test
    void whatFailsWithoutTheSecondOutputOfAMomentMayDoWithIt() {
        SequenceTree tree =
                new SequenceTree(project(aLoad("a"), aLoad("b"), aLoad("c").fixedBoard("B2")), ENOUGH);
        List<Instant> all = List.of(on(0, 0, 1), on(1, 0, 2), on(2, 0, 3), on(2, 1, 1));
        int[] tails = new Tails().of(all);

        assertThat(tree.find(all, 3, tails)).isEmpty();
        assertThat(tree.find(all, 4, tails)).isPresent();
    }

    @Test
    void whatFailsBelowALowLimitMayDoBelowAHigherOne() {
        SmallProject project = project(
                aLoad("a").runningAmps(1).inrushPeakAmps(50),
                aLoad("b").runningAmps(1).inrushPeakAmps(50));
        SequenceTree tree = new SequenceTree(project, new int[] {ON_A, ON_A}, ON_A, ENOUGH);
        List<Instant> all = List.of(on(0, 0, 1), on(1, 0, 2));
        int[] tails = new Tails().of(all);
        double second = Math.sqrt(2) + 50;

        assertThat(tree.find(all, 2, tails, second - 0.001)).isEmpty();
        assertThat(tree.find(all, 2, tails, second + 0.001)).isPresent();
        assertThat(tree.find(all, 2, tails, second - 0.001))
                .as("what was found is no failure, and what failed is one still")
                .isEmpty();
    }

    @Test
    void anOutputThatAnotherBoardBeginsWithIsUsed() {
        SequenceTree tree = new SequenceTree(project(aLoad("a").fixedBoard("B2")), ENOUGH);
        List<Instant> all = List.of(new Instant(0, 0, 1, true), on(1, 1, 1));

        assertThat(tree.find(all, 2, new Tails().of(all))).isEmpty();
    }

    @Test
    void timetablesThatEndAlikeHaveTheSameTail() {
        Tails tails = new Tails();
        int[] one = tails.of(List.of(on(0, 0, 1), on(2, 1, 1), on(3, 1, 2)));
        int[] other = tails.of(List.of(on(1, 0, 1), on(2, 1, 1), on(3, 1, 2)));

        assertThat(one[1]).isEqualTo(other[1]);
        assertThat(one[2]).isEqualTo(other[2]);
        assertThat(one[0]).isNotEqualTo(other[0]);
    }
}
