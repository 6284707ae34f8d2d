package evenrise.model.review;

import static evenrise.model.Fixtures.aGroup;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.LoadBuilder;
import evenrise.model.plan.Remark;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A room whose processing drops, beside a hall of which nothing does. */
class EmergencyNeedsCheckTest {
    private static List<Remark> remarks(LoadBuilder... hall) {
        return Reviews.of(
                        new EmergencyNeedsCheck(),
                        aProject()
                                .groups(aGroup("room").drops(), aGroup("core").holds())
                                .loads(
                                        aLoad("room-dsp").processing().group("room"),
                                        aLoad("dsp").processing().group("core"))
                                .loads(hall)
                                .build(),
                        aPlan().build())
                .remarks();
    }

    @Test
    void namesWhatIsLeftOnWithoutProcessing() {
        assertThat(remarks(aLoad("amp").amplifier()))
                .singleElement()
                .satisfies(remark -> assertThat(remark.message())
                        .startsWith("1 load ('amp') holds in an emergency that drops processing which it needs"
                                + " ('room-dsp')")
                        .contains("1 of them states no needs_groups"));
    }

    @Test
    void saysNothingOfWhatNeedsOtherGroups() {
        assertThat(remarks(aLoad("amp").amplifier().needsGroups("core"))).isEmpty();
    }

    @Test
    void saysNothingOfWhatDropsItself() {
        assertThat(remarks(aLoad("amp").amplifier().group("room"))).isEmpty();
    }
}
