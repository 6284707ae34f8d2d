package evenrise.solver.compare;

import static evenrise.model.Fixtures.aBoardType;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.project.BoardType;
import evenrise.solver.compare.GroupPacking.Answer;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class PackingMemoryTest {
    private static final BoardType FOUR = aBoardType("four").outputs(4).build();
    private static final BoardType SIX = aBoardType("six").outputs(6).build();

    private int searches;

    private Answer ask(PackingMemory memory, List<GroupPacking.Group> groups, List<BoardType> boards) {
        return memory.answer(boards, most -> {
            searches++;
            return new GroupPacking(groups, 0, boards, most);
        });
    }

    private static GroupPacking.Group group(int number, int size) {
        return new GroupPacking.Group("g" + number, size, false, 0);
    }

    private static List<GroupPacking.Group> threes(int count) {
        return IntStream.range(0, count).mapToObj(i -> group(i, 3)).toList();
    }

    @Test
    void whatFitsSomeBoardsFitsMoreOfThem() {
        PackingMemory memory = new PackingMemory();

        assertThat(ask(memory, threes(2), Collections.nCopies(2, FOUR))).isEqualTo(Answer.FITS);
        assertThat(ask(memory, threes(2), List.of(FOUR, SIX, FOUR))).isEqualTo(Answer.FITS);
        assertThat(searches).isEqualTo(1);
    }

    /** Three groups of three on two boards of four and one of six fit; on three of four, too, on two of four they do not. */
    @Test
    void whatDoesNotFitSomeBoardsDoesNotFitFewer() {
        PackingMemory memory = new PackingMemory();

        assertThat(ask(memory, threes(3), Collections.nCopies(2, FOUR))).isEqualTo(Answer.FITS_NOT);
        assertThat(ask(memory, threes(3), List.of(FOUR))).isEqualTo(Answer.FITS_NOT);
        assertThat(searches).isEqualTo(1);
        assertThat(ask(memory, threes(3), List.of(FOUR, SIX))).isEqualTo(Answer.FITS);
    }

    /** The same answers as without a memory, whatever was asked before. */
    @Test
    void neverSaysAnotherThingThanAPackingOfItsOwn() {
        Random chance = new Random(5);
        for (int round = 0; round < 40; round++) {
            List<GroupPacking.Group> groups = IntStream.range(0, 3 + chance.nextInt(4))
                    .mapToObj(i -> group(i, 1 + chance.nextInt(6)))
                    .toList();
            PackingMemory memory = new PackingMemory();
            for (int asked = 0; asked < 20; asked++) {
                List<BoardType> boards = new java.util.ArrayList<>(Collections.nCopies(chance.nextInt(5), FOUR));
                boards.addAll(Collections.nCopies(1 + chance.nextInt(4), SIX));

                assertThat(ask(memory, groups, boards))
                        .as("%s on %s", groups, boards)
                        .isEqualTo(new GroupPacking(groups, 0, boards).answer());
            }
        }
    }

    /** Thirty groups of 3 to 7 loads on boards of 10 with not one output to spare are hard; each asks for a little only. */
    @Test
    void allPackingsTogetherTryNoMoreThanTheyMay() {
        Random chance = new Random(3);
        List<GroupPacking.Group> groups = IntStream.range(0, 30)
                .mapToObj(i -> group(i, 3 + chance.nextInt(5)))
                .toList();
        int all = groups.stream().mapToInt(GroupPacking.Group::size).sum();
        BoardType ten = aBoardType("ten").outputs(10).build();
        long limit = 4_000;
        PackingMemory memory = new PackingMemory(limit);
        long[] tries = {0};

        for (int eights = 0; eights < 12; eights++) {
            List<BoardType> boards = new java.util.ArrayList<>(
                    Collections.nCopies(eights, aBoardType("seven").outputs(7).build()));
            boards.addAll(Collections.nCopies((all - 7 * eights + 9) / 10, ten));
            GroupPacking[] made = {null};
            memory.answer(boards, most -> made[0] = new GroupPacking(groups, 0, boards, most));
            tries[0] += made[0] == null ? 0 : made[0].tries();
        }

        assertThat(tries[0]).isLessThan(limit + 12 * 70);
    }
}
