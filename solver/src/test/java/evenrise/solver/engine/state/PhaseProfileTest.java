package evenrise.solver.engine.state;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.solver.sample.Sample;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class PhaseProfileTest {
    private final CompiledProject compiled = new CompiledProject(Sample.venue(1, 3));
    private final int[] switchedLoads = IntStream.range(0, compiled.loadCount())
            .filter(load -> compiled.switched[load])
            .toArray();

    private record On(int load, int from) {}

    private int units(List<On> all, int instant) {
        return all.stream()
                .filter(on -> on.from <= instant)
                .mapToInt(on -> compiled.envelopes.units(on.load, on.from, instant))
                .sum();
    }

    @Test
    void isAtEveryInstantTheSumOfWhatIsOn() {
        SplittableRandom random = new SplittableRandom(1);
        PhaseProfile profile = new PhaseProfile(compiled);
        List<On> all = new ArrayList<>();

        for (int i = 0; i < 300; i++) {
            if (all.size() > 20 || (!all.isEmpty() && random.nextInt(3) == 0)) {
                On gone = all.remove(random.nextInt(all.size()));
                profile.add(compiled.envelopes, gone.load, gone.from, -1);
            } else {
                On come = new On(
                        switchedLoads[random.nextInt(switchedLoads.length)], random.nextInt(compiled.instants.size()));
                all.add(come);
                profile.add(compiled.envelopes, come.load, come.from, 1);
            }
            profile.refresh();

            int[] sums = IntStream.range(0, compiled.instants.size())
                    .map(instant -> units(all, instant))
                    .toArray();
            assertThat(IntStream.range(0, sums.length).map(profile::units).toArray())
                    .isEqualTo(sums);
            assertThat(profile.peakUnits()).isEqualTo(IntStream.of(sums).max().orElseThrow());
        }
    }
}
