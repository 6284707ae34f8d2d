package evenrise.solver.report;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.rules.Layout;
import evenrise.solver.browser.DrawnPages;
import evenrise.solver.document.Plants;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

class PlantTextTest {
    private static String text(Layout layout, int most) {
        return PlantText.sections(layout, most, Paint.NONE).stream()
                .flatMap(List::stream)
                .collect(Collectors.joining("\n"));
    }

    /**
     * P1 has 12 slots and 6 poles; P2, of 8, three. P3 carries 3 A of 100·0.8 A: 3.75 %. P2's worst leg at full use, if the
     * lamp of 8 A has one leg and the others, 2 and 7 A, the other: 9 of 80 A, which is 11.25 %.
     */
    @Test
    void tellsWhatIsUsedAndWhatIsLeft() {
        Layout layout = DrawnPages.of(Plants.read(Plants.twoHalls()), 1000).layout();

        String text = text(layout, 40);

        assertThat(text)
                .containsPattern("P1 +120 .* 12 +6 +6 +2 +6")
                .containsPattern("P2 +120 +1\\d\\.\\d .* 8 +3 +5 +- +5")
                .containsPattern("P3 +120 +3\\.8 +3\\.8 +3\\.0 +8 +1 +7")
                .containsPattern("north +- +5 ")
                .containsPattern("south +north +3 ")
                .containsPattern("talk +1\\.0 .*one desk runs both")
                .containsPattern("full use +-");
        assertThat(text(layout, 2)).contains("5 others used less");
    }

    @Test
    void tellsTheLoadingAndTheSlotsOfAPlainHouse() {
        assertThat(text(DrawnPages.of("willow-chapel").layout(), 40))
                .contains("Loading: running current over what is allowed", "Taken", "Free")
                .doesNotContain("System", "Full use");
    }
}
