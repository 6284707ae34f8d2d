package evenrise.solver.intake;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.project.Role;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class GearTest {
    @ParameterizedTest(name = "{1} is {2}")
    @CsvSource({
        "PROCESSING, Media server, COMPUTER",
        "PROCESSING, Netzwerk Switch, COMPUTER",
        "PROCESSING, Wireless receiver, SMALL_PROCESSING",
        "PROCESSING, Audio processor, PROCESSING",
        "AMPLIFIER, Toroid amp, TOROID_AMPLIFIER",
        "AMPLIFIER, Four-channel amplifier, AMPLIFIER",
        "AUXILIARY, motor Chain hoist, MOTOR",
        "AUXILIARY, Seilwinde, MOTOR",
        "AUXILIARY, Palan à chaîne, MOTOR",
        "AUXILIARY, Cabrestante, MOTOR",
        "AUXILIARY, Isolation transformer 5 kVA, TRANSFORMER",
        "AUXILIARY, Halogen flood, TUNGSTEN",
        "AUXILIARY, PAR 64, TUNGSTEN",
        "AUXILIARY, LED PAR 64, ELECTRONICS",
        "AUXILIARY, Dryer, HEATER",
        "AUXILIARY, Projector, ELECTRONICS"
    })
    void isToldByItsWords(Role role, String text, Gear gear) {
        assertThat(Gear.of(role, text)).isEqualTo(gear);
    }

    @Test
    void hasNoHarmonicsAsAMotorOrFilament() {
        assertThat(Gear.MOTOR.usual().thirdHarmonic()).isZero();
        assertThat(Gear.TUNGSTEN.usual().thirdHarmonic()).isZero();
        assertThat(Gear.HEATER.usual().thirdHarmonic()).isZero();
    }

    /** A motor takes its locked-rotor current until it has run up, which is no matter of milliseconds. */
    @Test
    void startsAsAMotorForManyCycles() {
        assertThat(Gear.MOTOR.usual().halfMillis()).isGreaterThanOrEqualTo(100);
    }

    /** 30 to 180 s where it starts a system, common practice. */
    @ParameterizedTest
    @EnumSource(names = {"COMPUTER", "SMALL_PROCESSING", "PROCESSING"})
    void settlesInItsOwnTime(Gear gear) {
        assertThat(gear.usual().settleSeconds()).isBetween(30.0, 180.0);
    }
}
