package evenrise.model.check;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is proposed for a conductor that no table has is never smaller. */
class CablesTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "650 kcmil | 1 | 700 kcmil",
                "13 AWG | 1 | 12 AWG",
                "3 mm2 | 1 | 4 mm2",
                "280 mm2 | 1 | 300 mm2",
                // 1250 = 2 · 625, 2000 = 2 · 1000, 2500 = 3 · 833; two of 1500 are three of 1000
                "1250 kcmil | 1 | 2 sets of '700 kcmil'",
                "2000 kcmil | 1 | 2 sets of '1000 kcmil'",
                "2500MCM | 1 | 3 sets of '900 kcmil'",
                "1500 kcmil | 2 | 3 sets of '1000 kcmil'",
                "400 mm2 | 1 | 2 sets of '240 mm2'",
                "600 kcml | 1 | 600 kcmil",
                "12 AGW | 1 | 12 AWG"
            })
    void proposesAtLeastAsMuchMetal(String size, int sets, String cure) {
        assertThat(Cables.cure(size, sets)).contains(cure);
    }

    @Test
    void proposesNoSizeForABareNumber() {
        assertThat(Cables.cure("650 kcml", 1)).isEqualTo("Maybe the unit is missing: AWG, kcmil or mm2.");
        assertThat(Cables.cure("10", 1)).isEqualTo("Maybe the unit is missing: AWG, kcmil or mm2.");
        assertThat(Cables.cure("99999999999999 kcmil", 1)).contains("several cables");
    }
}
