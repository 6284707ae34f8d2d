package evenrise.solver.intake;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.project.PhaseSystem;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class OtherSystemTest {
    private static Connection at(double phaseVolts, String text) {
        return Connection.of(text, "v", PhaseSystem.THREE_PHASE, phaseVolts);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "120/240 3ph",
                "240/120 V 3~",
                "120/240V three-phase",
                "240 V high leg",
                "High-Leg 240",
                "208 wild leg",
                "240 open delta",
                "240V Open-Delta 3ph",
                "480 corner grounded",
                "480 V corner-grounded delta",
                "240 4W delta",
                "240 delta service",
                "480 V ungrounded",
                "IT",
                "400 V IT",
                "230 IT",
                "400 V IT system",
                "IT-Netz 400 V"
            })
    void areRefusedByName(String written) {
        Connection connection = at(120, written);

        assertThat(connection.poles()).isZero();
        assertThat(connection.problem()).contains(written, "star of four wires");
    }

    /** Stars, split-phase and motors that can be joined in two ways are none of these. */
    @ParameterizedTest
    @ValueSource(
            strings = {"208Y/120", "120/208 3ph", "120/240", "120/240 1ph", "208-230/460 3ph", "230/460 3ph", "3~"})
    void leavesOthersAlone(String written) {
        assertThat(at(120, written).problem()).doesNotContain("star of four wires");
    }
}
