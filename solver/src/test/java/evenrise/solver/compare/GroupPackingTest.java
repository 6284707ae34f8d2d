package evenrise.solver.compare;

import static evenrise.model.Fixtures.aBoardType;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.project.BoardType;
import evenrise.model.project.EmergencyBy;
import evenrise.model.project.GroupSeating;
import evenrise.solver.compare.GroupPacking.Answer;
import evenrise.solver.compare.GroupPacking.Group;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class GroupPackingTest {
    private static List<Group> groups(boolean drop, int... sizes) {
        return IntStream.range(0, sizes.length)
                .mapToObj(i -> new Group((drop ? "d" : "h") + i, sizes[i], drop, i % 2))
                .toList();
    }

    private static BoardType type(int outputs) {
        return aBoardType("t" + outputs).outputs(outputs).build();
    }

    private static List<BoardType> boards(int outputs, int number) {
        return Collections.nCopies(number, type(outputs));
    }

    private static Answer answer(List<Group> groups, int singles, List<BoardType> boards) {
        return new GroupPacking(groups, singles, boards).answer();
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
        int[] free = new int[7];
        Arrays.fill(free, 10);
        int optimum = fewest(sizes, 0, free, 0);

        assertThat(answer(groups(true, sizes), 0, boards(10, optimum))).isEqualTo(Answer.FITS);
        assertThat(optimum == 1 ? Answer.FITS_NOT : answer(groups(true, sizes), 0, boards(10, optimum - 1)))
                .isEqualTo(Answer.FITS_NOT);
    }

    /** Every group on every board that may have it, whatever that leaves. */
    private static boolean fitsAnyhow(List<Group> groups, int next, List<BoardType> boards, int[] free, int[] use) {
        if (next == groups.size()) {
            return true;
        }
        Group group = groups.get(next);
        int largest = boards.stream().mapToInt(BoardType::outputs).max().orElse(0);
        int mark = group.drops() ? 2 : 1;
        if (group.size() > largest) {
            for (int set = 1; set < 1 << free.length; set++) {
                int room = 0;
                boolean isOwn = true;
                for (int i = 0; i < free.length; i++) {
                    if ((set & 1 << i) != 0) {
                        room += free[i];
                        isOwn &= use[i] == 0;
                    }
                }
                if (isOwn && room >= group.size()) {
                    int[] then = use.clone();
                    for (int i = 0; i < free.length; i++) {
                        then[i] = (set & 1 << i) != 0 ? 3 : use[i];
                    }
                    if (fitsAnyhow(groups, next + 1, boards, free, then)) {
                        return true;
                    }
                }
            }
            return false;
        }
        for (int i = 0; i < free.length; i++) {
            if (free[i] >= group.size() && (use[i] == 0 || use[i] == mark)) {
                int before = use[i];
                free[i] -= group.size();
                use[i] = mark;
                boolean fits = fitsAnyhow(groups, next + 1, boards, free, use);
                free[i] += group.size();
                use[i] = before;
                if (fits) {
                    return true;
                }
            }
        }
        return false;
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20})
    void answersAsTryingEveryWayDoes(int seed) {
        Random random = new Random(seed);
        List<Group> groups = new ArrayList<>(groups(true, random.ints(3, 1, 14).toArray()));
        groups.addAll(groups(false, random.ints(2, 1, 8).toArray()));
        List<BoardType> boards = new ArrayList<>();
        random.ints(4, 0, 3).forEach(kind -> boards.add(type(new int[] {4, 6, 10}[kind])));
        int[] free = boards.stream().mapToInt(BoardType::outputs).toArray();

        assertThat(answer(groups, 0, boards) == Answer.FITS)
                .isEqualTo(fitsAnyhow(groups, 0, boards, free, new int[free.length]));
    }

    /** Sums alone would allow them: three of 6 in two of 9; four of 4 in two of 7. */
    @ParameterizedTest
    @CsvSource({"9, 6 6 6, 3", "7, 4 4 4 4, 4", "10, 5 5 5 5, 2"})
    void sumsAreNotEnough(int outputs, String sizes, int least) {
        List<Group> groups = groups(
                true,
                Arrays.stream(sizes.split(" ")).mapToInt(Integer::parseInt).toArray());

        assertThat(answer(groups, 0, boards(outputs, least))).isEqualTo(Answer.FITS);
        assertThat(answer(groups, 0, boards(outputs, least - 1))).isEqualTo(Answer.FITS_NOT);
    }

    @Test
    void whatDropsAndWhatHoldsShareNoBoard() {
        List<Group> groups = List.of(new Group("d", 1, true, 0), new Group("h", 1, false, 0));

        assertThat(answer(groups, 0, boards(12, 1))).isEqualTo(Answer.FITS_NOT);
        assertThat(answer(groups, 0, boards(12, 2))).isEqualTo(Answer.FITS);
    }

    @Test
    void theyDoWhereEachOutputDropsByItself() {
        List<Group> groups = List.of(new Group("d", 1, true, 0), new Group("h", 1, false, 0));
        BoardType byOutput = type(12).withEmergencyBy(EmergencyBy.OUTPUT);

        assertThat(answer(groups, 0, List.of(byOutput))).isEqualTo(Answer.FITS);
    }

    @Test
    void loadsWithoutAGroupHoldAndFillWhatIsLeft() {
        List<Group> groups = groups(true, 7);

        assertThat(answer(groups, 5, boards(8, 2))).isEqualTo(Answer.FITS);
        assertThat(answer(groups, 9, boards(8, 2))).isEqualTo(Answer.FITS_NOT);
    }

    @Test
    void aLargeGroupHasBoardsOfItsOwn() {
        assertThat(answer(groups(false, 10, 2), 0, boards(8, 2))).isEqualTo(Answer.FITS_NOT);
        assertThat(answer(groups(false, 10, 2), 0, boards(8, 3))).isEqualTo(Answer.FITS);
    }

    @Test
    void boardsThatSeatGroupsAnyhowArePartOfAPool() {
        BoardType anyhow = type(8).withGroups(GroupSeating.ANY);

        assertThat(answer(groups(true, 5, 5, 5), 0, List.of(anyhow, anyhow))).isEqualTo(Answer.FITS);
        assertThat(answer(groups(true, 5, 5, 7), 0, List.of(anyhow, anyhow))).isEqualTo(Answer.FITS_NOT);
    }

    @Test
    void outputsThatStayFreeAreNotUsed() {
        BoardType spare = type(8).withSpareOutputs(2);

        assertThat(answer(groups(true, 6), 0, List.of(spare))).isEqualTo(Answer.FITS);
        assertThat(answer(groups(true, 7), 0, List.of(spare))).isEqualTo(Answer.FITS_NOT);
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10})
    void seatsWholeGroupsWithinTheirBoards(int seed) {
        Random random = new Random(seed);
        List<Group> groups = new ArrayList<>(groups(true, random.ints(4, 1, 30).toArray()));
        groups.addAll(groups(false, random.ints(4, 1, 9).toArray()));
        List<BoardType> boards = new ArrayList<>(boards(16, 6));
        boards.addAll(boards(10, 6));
        GroupPacking packing = new GroupPacking(groups, 0, boards);

        assertThat(packing.answer()).isEqualTo(Answer.FITS);

        Map<Group, Integer> seated = new HashMap<>();
        Map<Integer, Integer> used = new HashMap<>();
        packing.seats().forEach(seat -> {
            seated.merge(seat.group(), seat.loads(), Integer::sum);
            used.merge(seat.board(), seat.loads(), Integer::sum);
        });
        assertThat(groups).allSatisfy(group -> assertThat(seated.get(group)).isEqualTo(group.size()));
        used.forEach((board, loads) ->
                assertThat(loads).isLessThanOrEqualTo(boards.get(board).outputs()));
    }
}
