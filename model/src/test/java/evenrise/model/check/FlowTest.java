package evenrise.model.check;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class FlowTest {
    private static BitSet to(int... receivers) {
        BitSet set = new BitSet();
        for (int receiver : receivers) {
            set.set(receiver);
        }
        return set;
    }

    @Test
    void reroutesWhatWasSentFirst() {
        Flow flow = new Flow(List.of(1, 1), List.of(to(0, 1), to(0)), new int[] {1, 1});

        assertThat(flow.left()).isZero();
        assertThat(flow.crowded().isEmpty()).isTrue();
    }

    @Test
    void namesThoseThatCompete() {
        Flow flow = new Flow(List.of(2, 2, 5), List.of(to(0), to(0, 1), to(2)), new int[] {2, 1, 9});

        assertThat(flow.left()).isEqualTo(1);
        assertThat(flow.crowded()).isEqualTo(to(0, 1));
    }

    /** Hall's theorem: what is left over is the greatest excess of any set of senders over all they may send to. */
    @Test
    void leavesWhatHallsTheoremSays() {
        Random random = new Random(3);
        for (int n = 0; n < 500; n++) {
            int senders = 1 + random.nextInt(6);
            int[] room = random.ints(1 + random.nextInt(5), 0, 5).toArray();
            List<Integer> supply = new ArrayList<>();
            List<BitSet> ways = new ArrayList<>();
            for (int s = 0; s < senders; s++) {
                supply.add(random.nextInt(5));
                ways.add(BitSet.valueOf(new long[] {random.nextInt(1 << room.length)}));
            }

            int greatest = 0;
            for (int set = 0; set < 1 << senders; set++) {
                BitSet all = new BitSet();
                int excess = 0;
                for (int s = 0; s < senders; s++) {
                    if ((set >> s & 1) == 1) {
                        excess += supply.get(s);
                        all.or(ways.get(s));
                    }
                }
                greatest = Math.max(
                        greatest, excess - all.stream().map(r -> room[r]).sum());
            }

            assertThat(new Flow(supply, ways, room).left()).isEqualTo(greatest);
        }
    }

    @Test
    void isFastWhereEverySenderIsDifferent() {
        Random random = new Random(5);
        List<BitSet> ways = new ArrayList<>();
        for (int s = 0; s < 3000; s++) {
            ways.add(to(random.ints(3, 0, 300).toArray()));
        }
        int[] ten = new int[300];
        java.util.Arrays.fill(ten, 10);

        assertThat(new Flow(Collections.nCopies(3000, 1), ways, ten).left()).isLessThan(300);
    }
}
