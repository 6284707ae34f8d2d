package evenrise.solver.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.answer.HandMove;
import evenrise.model.plan.Plan;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Referee;
import evenrise.model.rules.Verdict;
import evenrise.solver.desk.DeskAnswers.PlaceView;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class HangingTest {
    private final Layout layout = Hall.layout();
    private final Verdict verdict = Referee.judge(layout);

    private List<PlaceView> places(String load) {
        return new Hanging(layout, verdict, load).freePlaces(Set.of("P1", "P2"));
    }

    /** Each slot of a kind, too, not only the one that was judged. */
    @ParameterizedTest
    @ValueSource(strings = {"dsp", "amp-1", "amp-2", "hoist", "lamp"})
    void whatAPlacePromisesIsWhatPuttingTheLoadDownThereGives(String load) {
        HandMove hand = new HandMove(layout, load);

        assertThat(places(load)).isNotEmpty().allSatisfy(place -> {
            if (place.panel().isPresent()) {
                place.slots()
                        .forEach(slot -> isKept(place, hand.toSlot(place.panel().get(), slot)));
            } else {
                isKept(
                        place,
                        hand.toOutput(
                                place.board().orElseThrow(), place.output().getAsInt()));
            }
        });
    }

    private void isKept(PlaceView promised, Plan plan) {
        Verdict then = Referee.judge(Layout.of(layout.index(), plan));

        assertThat(then.violations()).hasSize(promised.breaks());
        assertThat(then.metrics().objective() - verdict.metrics().objective())
                .isCloseTo(promised.objectiveChange(), within(1e-9));
        assertThat(then.metrics().peakInrushAmps() - verdict.metrics().peakInrushAmps())
                .isCloseTo(promised.peakChangeAmps(), within(1e-9));
    }

    @Test
    void everyFreeSlotIsAPlace() {
        long slots = places("amp-1").stream()
                .filter(place -> place.panel().equals(Optional.of("P2")))
                .mapToLong(place -> place.slots().size())
                .sum();

        // Twelve, less that of the other amplifier; its own counts.
        assertThat(slots).isEqualTo(11);
    }

    @Test
    void aPlaceThatBreaksARuleSaysWhich() {
        assertThat(places("amp-1"))
                .filteredOn(place -> place.panel().equals(Optional.of("P1")))
                .isNotEmpty()
                .allSatisfy(place -> {
                    assertThat(place.breaks()).isEqualTo(1);
                    assertThat(place.words().get(0)).contains("B2");
                });
    }
}
