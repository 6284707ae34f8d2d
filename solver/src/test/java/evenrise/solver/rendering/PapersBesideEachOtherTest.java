package evenrise.solver.rendering;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** Two papers are drawn at once only where both fit into memory. */
class PapersBesideEachOtherTest {
    private static final long GIGABYTE = 1_000_000_000;

    /** A thousand loads are about 70 parts, ten thousand about 480. */
    @Test
    void smallSetsAreDrawnAtOnceAndLargeOnesOneAfterAnother() {
        assertThat(PrintedSet.isRoomFor(2, 70, GIGABYTE)).isTrue();
        assertThat(PrintedSet.isRoomFor(2, 480, GIGABYTE)).isTrue();
        assertThat(PrintedSet.isRoomFor(2, 480, GIGABYTE / 2)).isFalse();
        assertThat(PrintedSet.isRoomFor(2, 10_000, GIGABYTE)).isFalse();
    }
}
