package evenrise.model.scatter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import evenrise.model.ARandomProject;
import evenrise.model.project.Scatter;
import evenrise.model.rules.Layout;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TrialShardsTest {
    private static final int TRIALS = 100_000;
    private static final long SEED = 3;
    private static final ARandomProject.Planted PLANTED = ARandomProject.planted(1);
    private static final Layout LAYOUT = Layout.of(PLANTED.project(), PLANTED.plan());
    private static final Scatter SCATTER = Scatter.USUAL;
    /** Of one place: every step that a tally counts, as 12 bytes, with what stands around them. */
    private static final int MOST_BYTES = 30_001 * 12 + 12;

    private static Trials none() {
        return Trials.none(LAYOUT, SCATTER, Optional.empty(), Optional.empty());
    }

    private static byte[] shard(int from, int to) {
        Trials trials = none();
        trials.draw(from, to, SEED, () -> false);
        return trials.bytes();
    }

    /** Bytes hold every count and every greatest value in full, so that equal bytes are equal to the last bit. */
    @ParameterizedTest
    @ValueSource(ints = {1, 7, 64})
    void addUpToTheSameAsOneRunInWhateverOrder(int shards) {
        List<byte[]> parts = new ArrayList<>();
        for (int i = 0; i < shards; i++) {
            parts.add(shard((int) ((long) TRIALS * i / shards), (int) ((long) TRIALS * (i + 1) / shards)));
        }
        Collections.shuffle(parts, new Random(shards));
        Trials merged = none();
        parts.forEach(merged::add);

        assertThat(merged.bytes()).isEqualTo(shard(0, TRIALS));
        assertThat(merged.results())
                .isEqualTo(Trials.of(LAYOUT, SCATTER, Optional.empty(), Optional.empty(), TRIALS, SEED, 2));
    }

    @Test
    void areOtherTrialsWithAnotherSeedOrRange() {
        assertThat(shard(0, 1000)).isNotEqualTo(shard(1000, 2000));
    }

    @Test
    void takeNoMoreRoomForMoreTrials() {
        int nodes = none().results().size();

        assertThat(shard(0, TRIALS).length).isBetween(2 * nodes, 2 * nodes * MOST_BYTES);
    }

    @Test
    void endSoonWhenTheyAreStopped() {
        Trials trials = none();
        trials.draw(0, Integer.MAX_VALUE, SEED, () -> true);

        assertThat(trials.bytes()).isEqualTo(none().bytes());
    }

    @Test
    void refuseBytesThatAreNone() {
        assertThatThrownBy(() -> none().add(new byte[3])).hasMessage("no trials of this plan");
    }
}
