package evenrise.solver.compare;

import static evenrise.model.Fixtures.aBoardType;
import static evenrise.model.Fixtures.aGroup;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aProject;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.GroupBuilder;
import evenrise.model.LoadBuilder;
import evenrise.model.project.BoardType;
import evenrise.model.project.Project;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class BoardsFitTest {
    private static Project groups(boolean drop, int... sizes) {
        List<GroupBuilder> groups = new ArrayList<>();
        List<LoadBuilder> loads = new ArrayList<>();
        for (int i = 0; i < sizes.length; i++) {
            groups.add(drop ? aGroup("g" + i) : aGroup("g" + i).holds());
            for (int k = 0; k < sizes[i]; k++) {
                loads.add(aLoad("g" + i + "-" + k).group("g" + i));
            }
        }
        return aProject()
                .groups(groups.toArray(GroupBuilder[]::new))
                .loads(loads)
                .build();
    }

    private static List<BoardType> boards(int outputs, int number) {
        return Collections.nCopies(
                number, aBoardType("t" + outputs).outputs(outputs).build());
    }

    /** Fewest boards of equal size, the slow way: every group on every board. */
    private static int fewest(int[] sizes, int next, int[] free, int used) {
        if (next == sizes.length) {
            return used;
        }
        int best = Integer.MAX_VALUE;
        for (int i = 0; i <= used && i < free.length; i++) {
            if (free[i] >= sizes[next]) {
                free[i] -= sizes[next];
                best = Math.min(best, fewest(sizes, next + 1, free, Math.max(used, i + 1)));
                free[i] += sizes[next];
            }
        }
        return best;
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20})
    void leastNumberIsTheOptimumOfBinPacking(int seed) {
        Random random = new Random(seed);
        int[] sizes = random.ints(7, 1, 9).toArray();
        int optimum = fewest(sizes, 0, filled(7, 10), 0);
        Project project = groups(true, sizes);

        assertThat(BoardsFit.fits(project, boards(10, optimum))).isTrue();
        assertThat(optimum == 1 || !BoardsFit.fits(project, boards(10, optimum - 1)))
                .isTrue();
    }

    /** Sums alone would allow them: three of 6 in two of 9; four of 4 in two of 7. */
    @ParameterizedTest
    @CsvSource({"9, 6 6 6, 3", "7, 4 4 4 4, 4", "10, 5 5 5 5, 2"})
    void sumsAreNotEnough(int outputs, String sizes, int least) {
        Project project = groups(
                true,
                Arrays.stream(sizes.split(" ")).mapToInt(Integer::parseInt).toArray());

        assertThat(BoardsFit.fits(project, boards(outputs, least))).isTrue();
        assertThat(BoardsFit.fits(project, boards(outputs, least - 1))).isFalse();
    }

    @Test
    void whatDropsAndWhatHoldsShareNoBoard() {
        Project project = aProject()
                .groups(aGroup("d"), aGroup("h").holds())
                .loads(aLoad("a").group("d"), aLoad("b").group("h"))
                .build();

        assertThat(BoardsFit.fits(project, boards(12, 1))).isFalse();
        assertThat(BoardsFit.fits(project, boards(12, 2))).isTrue();
    }

    @Test
    void aLargeGroupHasBoardsOfItsOwn() {
        Project project = groups(false, 10, 2);

        assertThat(BoardsFit.fits(project, boards(8, 2))).isFalse();
        assertThat(BoardsFit.fits(project, boards(8, 3))).isTrue();
    }

    private static int[] filled(int length, int value) {
        int[] values = new int[length];
        Arrays.fill(values, value);
        return values;
    }
}
