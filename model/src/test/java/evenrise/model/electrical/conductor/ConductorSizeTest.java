package evenrise.model.electrical.conductor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ConductorSizeTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "12 AWG | 12 AWG",
                "#12 | 12 AWG",
                "# 12 AWG | 12 AWG",
                "12AWG | 12 AWG",
                "AWG12 | 12 AWG",
                "AWG 12 | 12 AWG",
                "no. 12 | 12 AWG",
                "12 ga | 12 AWG",
                "4/0 | 4/0 AWG",
                "4/0AWG | 4/0 AWG",
                "0000 AWG | 4/0 AWG",
                "#00 | 2/0 AWG",
                "1/0 awg | 1/0 AWG",
                "250MCM | 250 kcmil",
                "600 kcmil | 600 kcmil",
                "1,000 kcmil | 1000 kcmil",
                "2.5mm2 | 2.5 mm2",
                "2,5 mm² | 2.5 mm2",
                "16 mm^2 | 16 mm2",
                "16 sq mm | 16 mm2"
            })
    void knowsASizeInItsUsualSpellings(String written, String name) {
        assertThat(ConductorSize.of(written)).map(ConductorSize::name).hasValue(name);
    }

    /** 10 is a gauge of 5.26 mm², or ten square millimetres. */
    @ParameterizedTest
    @ValueSource(strings = {"10", "16", "250", "0", "", "12 mm", "5/0", "13 AWG", "650 kcmil", "#"})
    void knowsNoOther(String written) {
        assertThat(ConductorSize.of(written)).isEmpty();
    }

    @Test
    void namesWhatIsLarger() {
        assertThat(ConductorSize.of("750 kcmil").orElseThrow().larger())
                .extracting(ConductorSize::name)
                .isEqualTo(List.of("800 kcmil", "900 kcmil", "1000 kcmil"));
        assertThat(ConductorSize.of("300 mm2").orElseThrow().larger()).isEmpty();
    }

    /** NEC 310.10(G). */
    @Test
    void laysNothingSmallerThanOneNoughtInParallel() {
        assertThat(ConductorSize.of("1 AWG").orElseThrow().mayBeParallel()).isFalse();
        assertThat(ConductorSize.of("1/0 AWG").orElseThrow().mayBeParallel()).isTrue();
    }

    /** Practice, no source. */
    @Test
    void laysNoMetricConductorBelowFiftySquareMillimetresInParallel() {
        assertThat(ConductorSize.of("35 mm2").orElseThrow().mayBeParallel()).isFalse();
        assertThat(ConductorSize.of("50 mm2").orElseThrow().mayBeParallel()).isTrue();
    }

    /** ASTM B258: 12 AWG is 2.053 mm across, 3.309 mm²; 4/0 11.684 mm, 107.2 mm²; 250 kcmil are 126.7 mm². */
    @Test
    void hasItsCrossSection() {
        assertThat(ConductorSize.of("12 AWG").orElseThrow().squareMillimetres()).isCloseTo(3.309, within(0.001));
        assertThat(ConductorSize.of("4/0 AWG").orElseThrow().squareMillimetres())
                .isCloseTo(107.2, within(0.05));
        assertThat(ConductorSize.of("250 kcmil").orElseThrow().squareMillimetres())
                .isCloseTo(126.7, within(0.05));
        assertThat(ConductorSize.meant("650 kcmil").orElseThrow().squareMillimetres())
                .isCloseTo(329.4, within(0.05));
        assertThat(ConductorSize.meant("13 AWG").orElseThrow().squareMillimetres())
                .isCloseTo(2.624, within(0.001));
    }

    @Test
    void knowsTheNextSizeThatHasATable() {
        assertThat(ConductorSize.meant("650 kcmil")
                        .orElseThrow()
                        .orLarger()
                        .orElseThrow()
                        .name())
                .isEqualTo("700 kcmil");
        assertThat(ConductorSize.meant("13 AWG")
                        .orElseThrow()
                        .orLarger()
                        .orElseThrow()
                        .name())
                .isEqualTo("12 AWG");
        assertThat(ConductorSize.meant("16 mm2")
                        .orElseThrow()
                        .orLarger()
                        .orElseThrow()
                        .name())
                .isEqualTo("16 mm2");
        assertThat(ConductorSize.meant("400 mm2").orElseThrow().orLarger()).isEmpty();
        assertThat(ConductorSize.meant("thick")).isEmpty();
    }
}
