package evenrise.model.scatter;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import evenrise.model.ARandomProject;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.model.project.Scatter;
import evenrise.model.rules.Layout;
import java.lang.management.ManagementFactory;
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

    /** A million values kept would take 8 MB for each place. */
    @Test
    void keepNothingOfAMillionTrialsButCounts() {
        Trials trials = Trials.none(twoLoads(), SCATTER, Optional.empty(), Optional.empty());
        trials.draw(0, 1_000, SEED, () -> false);
        long before = liveBytes();

        trials.draw(1_000, 1_000_000, SEED, () -> false);

        assertThat(liveBytes() - before).isLessThan(2_000_000);
        assertThat(trials.results())
                .isEqualTo(Trials.of(twoLoads(), SCATTER, Optional.empty(), Optional.empty(), 1_000_000, SEED, 2));
    }

    private static long liveBytes() {
        System.gc();
        return ManagementFactory.getMemoryMXBean().getHeapMemoryUsage().getUsed();
    }

    private static Layout twoLoads() {
        Project project = aProject()
                .boards(aBoard("B1"))
                .loads(aLoad("L1").inrushPeakAmps(100), aLoad("L2").inrushPeakAmps(60))
                .build();
        Plan plan = aPlan().assignments(
                        anAssignment("L1").at("P1", 1).on("B1", 1),
                        anAssignment("L2").at("P1", 2).on("B1", 2))
                .build();
        return Layout.of(project, plan);
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
