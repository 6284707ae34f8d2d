package evenrise.solver.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.check.ProjectChecks;
import evenrise.model.intake.Mapping;
import evenrise.model.project.Load;
import evenrise.model.project.Project;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

@DisplayName("Notations of the trade")
class NotationsTest {
    @TempDir
    private Path folder;

    private EquipmentList read(String csv) throws IOException {
        return EquipmentList.read(Files.writeString(folder.resolve("list.csv"), csv), Mapping.USUAL, "Test");
    }

    private Load only(String csv) throws IOException {
        EquipmentList list = read(csv);
        assertThat(list.problems()).isEmpty();
        Project project = list.project().orElseThrow();
        assertThat(ProjectChecks.errors(project)).isEmpty();
        assertThat(project.loads()).hasSize(1);
        return project.loads().get(0);
    }

    @Nested
    class OfWhatAPieceDraws {
        @ParameterizedTest(name = "''{0}'': {1} A, {2}")
        @CsvSource({
            "10 A, 10, stated",
            "~10 A, 10, guessed",
            "≈ 10 A, 10, guessed",
            "ca. 10 A, 10, guessed",
            "approx 10, 10, guessed",
            "about 10, 10, guessed",
            "etwa 10 A, 10, guessed",
            "10?, 10, guessed",
            "10 A (TBC), 10, guessed",
            "10 A est., 10, guessed",
            "8-10 A, 10, guessed",
            "8 to 10, 10, guessed",
            "1.2 kW, 10, stated",
            "1200 W, 10, stated",
            "2 x 600 W, 10, stated",
            "1.2 kVA, 10, stated"
        })
        void areRead(String written, double amps, String how) throws IOException {
            Load load = only("Name,Amps,PF\nLamp,\"" + written + "\",1\n");

            assertThat(load.runningAmps()).isEqualTo(amps);
            assertThat(load.guessed().contains("running_a")).isEqualTo(how.equals("guessed"));
        }

        /** Whatever is read among words is a guess, and on the safe side where there are several. */
        @ParameterizedTest(name = "''{0}'': {1} A on {2} poles")
        @CsvSource({
            "1200 W max, 10, 1",
            "max. 1200 W, 10, 1",
            "1200W ea, 10, 1",
            "'1,200 W each, 400 W standby', 10, 1",
            "1200 W / 300 W avg, 10, 1",
            "it says 10A on the back, 10, 1",
            "600 W x 2, 10, 1",
            "2x 600W lamps, 10, 1",
            "900 W + 300 W, 10, 1",
            "10 A (1000 W), 10, 1",
            "10A 120V, 10, 1",
            "10A @ 208V, 10, 2",
            "10A 208V 3ph, 10, 3",
            "3ph 10A, 10, 3",
            "1200 W 100-240V, 10, 1"
        })
        void areFoundAmongWords(String written, double amps, int poles) throws IOException {
            Load load = only("Name,Power,PF\nLamp,\"" + written + "\",1\n");

            assertThat(load.runningAmps()).isEqualTo(amps);
            assertThat(load.poles()).isEqualTo(poles);
            assertThat(load.guessed()).contains("running_a");
        }

        /** NEC table 430.248 at 115 V: 13.8 A for ¾ hp, 20 A for 1½ hp. */
        @ParameterizedTest(name = "''{0}'' and ''{1}'': {2} A")
        @CsvSource({
            "3/4, , 13.8",
            "1-1/2, , 20",
            "1 1/2 HP, , 20",
            "1.5, , 20",
            ", 3/4 hp, 13.8",
            ", '1,5 hp', 20",
            ", 1.5 hp motor, 20"
        })
        void areAMotorsWhereTheyAreInHorsepower(String shaft, String power, double amps) throws IOException {
            Load load = only("Name,HP,Power\nScreen," + (shaft == null ? "" : shaft) + ",\""
                    + (power == null ? "" : power) + "\"\n");

            assertThat(load.runningAmps()).isEqualTo(amps);
            assertThat(load.isMotor()).isTrue();
        }

        /** 80 % of the 20 A that is usual, and of the outlet's rating where that is stated. */
        @ParameterizedTest
        @ValueSource(
                strings = {
                    "TBC",
                    "tba",
                    "TBD",
                    "t.b.c.",
                    "?",
                    "??",
                    "n/a",
                    "N.A.",
                    "by others",
                    "BY OTHERS",
                    "(TBC)",
                    "unknown",
                    "to be confirmed",
                    "bauseits",
                    "à confirmer",
                    "por definir"
                })
        void keepABreakerFreeWhereTheListLeavesThemOpen(String written) throws IOException {
            Load load = only("Name,Watts\nLamp," + written + "\n");
            assertThat(load.runningAmps()).isEqualTo(16);
            assertThat(load.breakerAmps()).isEqualTo(20);
            assertThat(load.guessed()).contains("running_a", "idle_a", "inrush_peak_a");

            assertThat(only("Name,Watts,Outlet\nLamp," + written + ",30 A\n").runningAmps())
                    .isEqualTo(24);
            assertThat(read("Name,Watts\nLamp," + written + "\n").questions())
                    .anySatisfy(text -> assertThat(text).contains("row 2", "'Lamp'", "16.0 A", "20 A", "no bound"));
        }

        @Test
        void areOpenOnlyWhereNoOtherColumnSaysThem() throws IOException {
            assertThat(only("Name,Watts,Amps\nLamp,TBC,3\n").runningAmps()).isEqualTo(3);
        }

        @Test
        void areAProblemWhereACellIsEmptyOrSaysSomethingElse() throws IOException {
            assertThat(read("Name,Watts\nLamp,\n").problems()).hasSize(1);
            assertThat(read("Name,Watts\nLamp,lots\n").problems()).hasSize(1);
            assertThat(read("Name,Watts\nLamp,12 V\n").problems()).hasSize(1);
        }

        @ParameterizedTest(name = "''{0}'' with ''{1}'': {2} A")
        @CsvSource({
            "Load [kW], 1.2, 10",
            "Load (W), 1200, 10",
            "Load kW, 1.2, 10",
            "Max load [kVA], 1.2, 10",
            "Power (kVA), 1.2, 10",
            "Power W, 1200, 10",
            "Connected load (A), 10, 10",
            "Demand [A], 10, 10",
            "Current mA, 10000, 10",
            "Anschlusswert (kW), 1.2, 10"
        })
        void standUnderHeadersWithUnits(String header, String written, double amps) throws IOException {
            assertThat(only("Description," + header + ",PF\nLamp," + written + ",1\n")
                            .runningAmps())
                    .isEqualTo(amps);
        }
    }

    @Nested
    class OfStandby {
        /** 45 W at 120 V and a power factor of 0.9: 0.417 A. */
        @ParameterizedTest(name = "''{0}'' with ''{1}'': {2} A")
        @CsvSource({
            "Standby (W), 45, 0.417, guessed",
            "Standby, 45 W, 0.417, guessed",
            "Idle power W, 45, 0.417, guessed",
            "Standby, 45 VA, 0.375, stated",
            "Standby, 0.4 A, 0.4, stated",
            "Idle, 0.4, 0.4, stated"
        })
        void arePowersOrCurrents(String header, String written, double amps, String how) throws IOException {
            Load load = only("Name,Amps,PF," + header + "\nLamp,5,0.9," + written + "\n");

            assertThat(load.idleAmps()).isCloseTo(amps, within(0.0005));
            assertThat(load.guessed().contains("idle_a")).isEqualTo(how.equals("guessed"));
        }
    }

    @Nested
    class OfCounts {
        @ParameterizedTest(name = "''{0}'': {1}")
        @CsvSource({"~3, 3", "3?, 3", "2-3, 3", "about 3, 3", "3 pcs, 3", "3x, 3", "TBC, 1", "?, 1"})
        void areRead(String written, int pieces) throws IOException {
            EquipmentList list = read("Qty,Name,Amps\n" + written + ",Lamp,1\n");

            assertThat(list.problems()).isEmpty();
            assertThat(list.pieces()).isEqualTo(pieces);
        }

        @Test
        void thatAreLeftOpenAreAskedFor() throws IOException {
            assertThat(read("Qty,Name,Amps\nTBC,Lamp,1\n").questions())
                    .anySatisfy(text -> assertThat(text).contains("row 2", "how many"));
        }
    }

    @Nested
    class OfMotors {
        /** NEC tables 430.250 and 430.248; 5.5 kW are 7.376 hp, between 16.7 A at 5 hp and 24.2 A at 7½ hp. */
        @ParameterizedTest(name = "{0} at {1}: {2} A")
        @CsvSource({
            "7.5 hp, 3~ 208, 24.2",
            "5 HP, 3~ 208, 16.7",
            "5.5 kW, 3~ 208, 23.83",
            "1 hp, 120, 16",
            "3 hp, 208/1/60, 18.7"
        })
        void areByTheTablesForTheirPowerOnTheShaft(String power, String volts, double amps) throws IOException {
            Load motor = only("Name,Voltage,Power\nWinch," + volts + "," + power + "\n");

            assertThat(motor.runningAmps()).isCloseTo(amps, within(0.005));
            assertThat(motor.guessed()).doesNotContain("running_a");
        }

        /** 2.2 kW / 0.7 / 0.8 / (3 · 230 V) = 5.69 A; tables have no column for 400 V. */
        @Test
        void areByAnEfficiencyWhereNoTableHasThem() throws IOException {
            Path file = Files.writeString(folder.resolve("list.csv"), "Name,Voltage,Power\nWinde,3~ 400,2.2 kW\n");
            Mapping europe =
                    Mapping.builder().lineToNeutralVolts(230).frequencyHertz(50).build();

            Load motor = EquipmentList.read(file, europe, "Test")
                    .project()
                    .orElseThrow()
                    .loads()
                    .get(0);

            assertThat(motor.runningAmps()).isCloseTo(5.694, within(0.001));
            assertThat(motor.guessed()).contains("running_a");
        }

        /** 2 kW / (3 · 120 V · 0.85). */
        @Test
        void areElectricalWhereAPowerFactorIsStated() throws IOException {
            assertThat(only("Name,Voltage,Power,PF\nWinch,3~ 208,2 kW,0.85\n").runningAmps())
                    .isCloseTo(6.536, within(0.001));
        }
    }

    @Nested
    class OfDirectCurrent {
        /** 40 W over 0.85, 0.95 and 120 V: 0.4128 A a piece; 2 A at 48 V are 96 W. */
        @ParameterizedTest(name = "''{0}'' and ''{1}'': {2} A")
        @CsvSource({"48 VDC, 40 W, 0.413", "48 VDC, 2 A, 0.991", "24-48 V DC, 2 A, 0.991", "DC 24V, 96 VA, 0.991"})
        void areKeptBehindASupplyThatNobodyNamed(String volts, String power, double amps) throws IOException {
            Load hub = only("Name,Voltage,Watts\nHub," + volts + "," + power + "\n");

            assertThat(hub.runningAmps()).isCloseTo(amps, within(0.0005));
            assertThat(hub.switched()).isFalse();
            assertThat(hub.guessed()).contains("running_a", "idle_a", "switched", "poles");
        }

        @Test
        void areAskedAboutByName() throws IOException {
            EquipmentList list = read("Qty,Name,Voltage,Watts\n3,Hub,48 VDC,40\n1,Lamp,120,60\n");

            assertThat(list.problems()).isEmpty();
            assertThat(list.pieces()).isEqualTo(4);
            assertThat(list.notes().values())
                    .anySatisfy(text -> assertThat(text).contains("direct current"));
            assertThat(list.questions())
                    .anySatisfy(
                            text -> assertThat(text).contains("row 2", "3 × 'Hub'", "'48 VDC'", "0.41 A", "no bound"));
        }

        @Test
        void areAProblemWhereNothingTellsWhatTheyDraw() throws IOException {
            assertThat(read("Name,Voltage,Watts\nHub,48 VDC,\n").problems()).hasSize(1);
        }
    }

    @Test
    void namesOfTheDrawingsAreIds() throws IOException {
        EquipmentList list = read("Tag,Qty,Name,Room,Amps\nAMP-1,1,Amp,A,9\nAMP-2,1,Amp,B,9\nL-1,1,Lamp,C,2\n"
                + "L-2,1,Lamp,C,2\nAMP-2,1,Amp,D,9\n,1,Lamp,E,2\nM-1,2,Amp,F,12\n");

        assertThat(list.problems()).isEmpty();
        assertThat(list.project().orElseThrow().loads())
                .extracting(Load::id)
                .containsExactly("AMP-1", "AMP-2", "L-1+L-2", "AMP-2-1", "lamp-1", "M-1", "M-1-1");
    }

    @Test
    void whetherItIsSwitchedIsAskedWhereItIsLeftOpen() throws IOException {
        Load load = only("Name,Amps,Switched,Life safety\nLamp,1,TBC,\n");
        assertThat(load.switched()).isFalse();
        assertThat(load.guessed()).contains("switched");
        assertThat(only("Name,Amps,Switched,Life safety\nLamp,1,,TBC\n").switched())
                .isFalse();
    }
}
