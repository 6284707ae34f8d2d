package evenrise.model.electrical.conductor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.electrical.Impedance;
import evenrise.model.project.ConductorMaterial;
import evenrise.model.project.Conduit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ConductorImpedanceTest {
    private static final double OHMS_PER_KILOFOOT = 0.3048;

    private static double ohms(String size, ConductorMaterial material, Conduit conduit, double celsius) {
        return perKilometre(size, material, conduit, celsius).resistanceOhms();
    }

    private static Impedance perKilometre(String size, ConductorMaterial material, Conduit conduit, double celsius) {
        return ConductorImpedance.perKilometre(ConductorSize.of(size).orElseThrow(), material, conduit, celsius);
    }

    /** NEC chapter 9 table 9, read in an open-source copy: Ω per 1000 ft at 75 °C. */
    @ParameterizedTest
    @CsvSource({
        "500 kcmil, NONMETALLIC, 0.043",
        "500 kcmil, ALUMINIUM, 0.048",
        "500 kcmil, STEEL, 0.045",
        "4/0 AWG, ALUMINIUM, 0.11",
        "1 AWG, STEEL, 0.25",
        "600 kcmil, ALUMINIUM, 0.041",
        "1000 kcmil, NONMETALLIC, 0.023"
    })
    void takesAluminiumByItsConduit(String size, Conduit conduit, double expected) {
        assertThat(OHMS_PER_KILOFOOT * ohms(size, ConductorMaterial.ALUMINIUM, conduit, 75))
                .isCloseTo(expected, within(1e-9));
    }

    /** The straight line between 0.023 at 600 and 0.019 at 750 kcmil; by table 8, 0.0184 to direct current. */
    @Test
    void putsSizesThatTheTableLeavesOutOnTheLine() {
        assertThat(OHMS_PER_KILOFOOT * ohms("700 kcmil", ConductorMaterial.COPPER, Conduit.NONMETALLIC, 75))
                .isBetween(0.0184, 0.0204 + 1e-9);
    }

    /** 1 + 0.00393·55 = 1.21615, so 0.8223 from 75 to 20 °C; 1 + 0.00403·50 = 1.2015. */
    @Test
    void followsTheTemperature() {
        double warm = ohms("1/0 AWG", ConductorMaterial.COPPER, Conduit.STEEL, 75);
        assertThat(ohms("1/0 AWG", ConductorMaterial.COPPER, Conduit.STEEL, 20) / warm)
                .isCloseTo(0.8223, within(1e-4));
        assertThat(ohms("16 mm2", ConductorMaterial.COPPER, Conduit.NONMETALLIC, 20))
                .isEqualTo(1.15);
        assertThat(ohms("16 mm2", ConductorMaterial.COPPER, Conduit.NONMETALLIC, 70))
                .isCloseTo(1.15 * 1.1965, within(1e-9));
        assertThat(ohms("95 mm2", ConductorMaterial.ALUMINIUM, Conduit.NONMETALLIC, 70))
                .isCloseTo(0.320 * 1.2015, within(1e-9));
    }

    @Test
    void leavesTheReactanceAlone() {
        assertThat(OHMS_PER_KILOFOOT
                        * perKilometre("600 kcmil", ConductorMaterial.ALUMINIUM, Conduit.STEEL, 20)
                                .reactanceOhms())
                .isCloseTo(0.048, within(1e-9));
    }
}
