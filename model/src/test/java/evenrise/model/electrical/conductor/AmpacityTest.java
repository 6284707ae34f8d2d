package evenrise.model.electrical.conductor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.project.ConductorMaterial;
import evenrise.model.project.ReferenceMethod;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Single values of the tables as published copies print them; whole examples stand in the validation tables. */
class AmpacityTest {
    private static ConductorSize size(String name) {
        return ConductorSize.of(name).orElseThrow();
    }

    @Test
    void hasNoColumnBetweenTheTables() {
        assertThat(Ampacity.american(size("12 AWG"), ConductorMaterial.COPPER, 75))
                .hasValue(25);
        assertThat(Ampacity.american(size("12 AWG"), ConductorMaterial.COPPER, 60))
                .hasValue(20);
        assertThat(Ampacity.american(size("12 AWG"), ConductorMaterial.COPPER, 90))
                .hasValue(30);
        assertThat(Ampacity.american(size("12 AWG"), ConductorMaterial.COPPER, 75.5))
                .isEmpty();
        assertThat(Ampacity.american(size("12 AWG"), ConductorMaterial.COPPER, 105))
                .isEmpty();
    }

    /** NEC table 310.16 begins with 12 AWG in aluminium. */
    @Test
    void hasNoAluminiumOfFourteenGauge() {
        assertThat(Ampacity.american(size("14 AWG"), ConductorMaterial.ALUMINIUM, 75))
                .isEmpty();
        assertThat(Ampacity.american(size("12 AWG"), ConductorMaterial.ALUMINIUM, 75))
                .hasValue(20);
        assertThat(Ampacity.american(size("1000 kcmil"), ConductorMaterial.ALUMINIUM, 75))
                .hasValue(445);
    }

    /** IEC 60364-5-52 table B.52.2 and B.52.4, PVC and copper: 2.5 mm² by method C, two loaded 27 A, three 24 A. */
    @Test
    void tellsTwoLoadedConductorsFromThree() {
        assertThat(Ampacity.metric(size("2.5 mm2"), ConductorMaterial.COPPER, ReferenceMethod.C, 2))
                .hasValue(27);
        assertThat(Ampacity.metric(size("2.5 mm2"), ConductorMaterial.COPPER, ReferenceMethod.C, 3))
                .hasValue(24);
        assertThat(Ampacity.metric(size("2.5 mm2"), ConductorMaterial.COPPER, ReferenceMethod.B1, 2))
                .hasValue(24);
        assertThat(Ampacity.metric(size("2.5 mm2"), ConductorMaterial.COPPER, ReferenceMethod.B1, 3))
                .hasValue(21);
    }

    @Test
    void endsWhereTheSourcesDoAndHasNoMetricAluminium() {
        assertThat(Ampacity.metric(size("120 mm2"), ConductorMaterial.COPPER, ReferenceMethod.B1, 3))
                .hasValue(239);
        assertThat(Ampacity.metric(size("150 mm2"), ConductorMaterial.COPPER, ReferenceMethod.B1, 3))
                .isEmpty();
        assertThat(Ampacity.metric(size("240 mm2"), ConductorMaterial.COPPER, ReferenceMethod.C, 2))
                .hasValue(461);
        assertThat(Ampacity.metric(size("16 mm2"), ConductorMaterial.ALUMINIUM, ReferenceMethod.C, 3))
                .isEmpty();
    }

    /**
     * NEC table 310.15(B)(1)(1) as published copies print it: 75 °C 0.94 at 31–35, 0.82 at 41–45, 1.05 at 21–25; 90 °C 0.91 at
     * 36–40. Table B.52.14, PVC: 0.94 at 35, 0.87 at 40. At 32 °C by the formula: √(38/40) = 0.97.
     */
    @ParameterizedTest
    @CsvSource({
        "75, 31, true, 0.94",
        "75, 35, true, 0.94",
        "75, 41, true, 0.82",
        "75, 25, true, 1.05",
        "75, 21, true, 1.05",
        "90, 36, true, 0.91",
        "75, 30, true, 1",
        "70, 35, false, 0.94",
        "70, 40, false, 0.87",
        "70, 32, false, 0.97",
        "60, 60, false, 0",
        "60, 75, true, 0"
    })
    void correctsForAirThatIsWarmerOrCooler(double conductor, double ambient, boolean inSteps, double factor) {
        assertThat(Ampacity.ambientFactor(conductor, ambient, inSteps)).isCloseTo(factor, within(1e-9));
    }

    /** The tables begin at 10 °C: √((75 − 10)/45) = 1.20, and colder air is given no more. */
    @Test
    void givesColdAirNoMoreThanTheTablesDo() {
        assertThat(Ampacity.ambientFactor(75, 10, true)).isEqualTo(1.2);
        assertThat(Ampacity.ambientFactor(75, -20, true)).isEqualTo(1.2);
    }

    /** NEC table 310.15(C)(1), each end of each row. */
    @ParameterizedTest
    @CsvSource({
        "1, 1",
        "3, 1",
        "4, 0.8",
        "6, 0.8",
        "7, 0.7",
        "9, 0.7",
        "10, 0.5",
        "20, 0.5",
        "21, 0.45",
        "30, 0.45",
        "31, 0.4",
        "40, 0.4",
        "41, 0.35",
        "100, 0.35"
    })
    void adjustsForManyConductors(int conductors, double factor) {
        assertThat(Ampacity.americanGroupFactor(conductors)).isEqualTo(factor);
    }

    /** IEC 60364-5-52 table B.52.17, first row: 1 to 9 circuits, 12, 16, 20. */
    @ParameterizedTest
    @CsvSource({
        "1, 1",
        "2, 0.8",
        "3, 0.7",
        "4, 0.65",
        "9, 0.5",
        "10, 0.45",
        "12, 0.45",
        "13, 0.41",
        "16, 0.41",
        "17, 0.38",
        "20, 0.38"
    })
    void groupsCircuits(int circuits, double factor) {
        assertThat(Ampacity.metricGroupFactor(circuits)).isEqualTo(factor);
    }

    /** IEC 60364-5-52 table E.52.1: 15, 33 and 45 % belong to the lower band; above 45 % the neutral alone counts. */
    @ParameterizedTest
    @CsvSource({
        "15, 1, 100, false",
        "15.1, 0.86, 100, false",
        "33, 0.86, 100, false",
        "33.1, 0.86, 99.3, true",
        "45, 0.86, 135, true",
        "45.1, 1, 135.3, true"
    })
    void isReducedByThirdHarmonics(double percent, double factor, double governing, boolean byNeutral) {
        HarmonicReduction reduction = HarmonicReduction.of(100, percent);

        assertThat(reduction.factor()).isEqualTo(factor);
        assertThat(reduction.governingAmps()).isCloseTo(governing, within(1e-9));
        assertThat(reduction.isByNeutral()).isEqualTo(byNeutral);
        assertThat(reduction.neededAmps()).isCloseTo(governing / factor, within(1e-9));
    }
}
