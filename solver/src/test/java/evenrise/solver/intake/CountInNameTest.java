package evenrise.solver.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.OptionalInt;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CountInNameTest {
    @ParameterizedTest
    @CsvSource({
        "4 lamps, 4",
        "2 speakers (on poles), 2",
        "12 x LED par, 12",
        "3x amplifier, 3",
        "heaters under pews x 12, 12",
        "TVs (4), 4",
        "lamps (6 off), 6"
    })
    void readsHowManyANameSpeaksOf(String name, int count) {
        assertThat(CountInName.of(name)).isEqualTo(OptionalInt.of(count));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "lamp",
                "1T chain hoist",
                "8-way controller",
                "16 ch mixer",
                "24 port switch",
                "3 kVA UPS",
                "500 W lamp",
                "85 inch display",
                "2.5 kW heater",
                "amp 4",
                "rack 12U",
                "console 48ch"
            })
    void takesNoPropertyForACount(String name) {
        assertThat(CountInName.of(name)).isEmpty();
    }
}
