package evenrise.solver.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.groups.Tuple.tuple;

import evenrise.model.check.ProjectChecks;
import evenrise.model.intake.Mapping;
import evenrise.model.project.Load;
import evenrise.model.project.Project;
import evenrise.model.project.TripCurve;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

@DisplayName("Circuits and breakers that a list states")
class ListedCircuitsTest {
    private static final Mapping EUROPE =
            Mapping.builder().lineToNeutralVolts(230).frequencyHertz(50).build();

    @TempDir
    private Path folder;

    private EquipmentList read(String csv, Mapping mapping) throws IOException {
        return EquipmentList.read(Files.writeString(folder.resolve("list.csv"), csv), mapping, "Test");
    }

    private List<Load> loads(String csv, Mapping mapping) throws IOException {
        EquipmentList list = read(csv, mapping);
        assertThat(list.problems()).isEmpty();
        Project project = list.project().orElseThrow();
        assertThat(ProjectChecks.errors(project)).isEmpty();
        assertThat(list.listed()).isEqualTo(list.pieces() + list.leftOut());
        return project.loads();
    }

    private Load only(String csv, Mapping mapping) throws IOException {
        List<Load> loads = loads(csv, mapping);
        assertThat(loads).hasSize(1);
        return loads.get(0);
    }

    @Nested
    class BreakersOf {
        @ParameterizedTest(name = "''{0}'' with ''{1}'': {2} A, {3} poles, band {4}")
        @CsvSource({
            "20, 120, 20, 1, none",
            "20A, 120, 20, 1, none",
            "20/1, 120, 20, 1, none",
            "20/2, 208, 20, 2, none",
            "20A/2P, 208, 20, 2, none",
            "20A-2P, 208, 20, 2, none",
            "2P-20A, 208, 20, 2, none",
            "2P 20A, 208, 20, 2, none",
            "2-pole 30A, 208, 30, 2, none",
            "30A 2-pole, 208, 30, 2, none",
            "30A 2 pole, 208, 30, 2, none",
            "16 A/3P, 3~ 208, 16, 3, none",
            "2 x 16A, 208, 16, 2, none",
            "3 x 16 A, 3~ 208, 16, 3, none",
            "3 x 16 A, , 16, 3, none",
            "20/2, , 20, 2, none",
            "20/3, 208, 20, 3, none",
            "20/1, 120/208, 20, 1, none",
            "20/2, 120/208, 20, 2, none",
            "20/2, 100-240, 20, 2, none",
            "20/1, 100-240, 20, 1, none",
            "20/2, 120/240, 20, 2, none",
            "B16, 120, 16, 1, B",
            "C20/2P, 208, 20, 2, C",
            "C20/2, 208, 20, 2, C",
            "16A C, 120, 16, 1, C",
            "16 A type C, 120, 16, 1, C",
            "MCB 16A C, 120, 16, 1, C",
            "D 16, 120, 16, 1, D",
            "K16, 120, 16, 1, none",
            "20A GFCI, 120, 20, 1, none",
            "20 A circuit breaker, 120, 20, 1, none"
        })
        void anAmericanListAreKept(String written, String volts, double amps, int poles, String band)
                throws IOException {
            Load load = only(
                    "Name,Amps,Voltage,Breaker\nLamp,1," + (volts == null ? "" : volts) + ",\"" + written + "\"\n",
                    Mapping.USUAL);

            assertThat(load.breakerAmps()).isEqualTo(amps);
            assertThat(load.poles()).isEqualTo(poles);
            assertThat(load.curve().map(TripCurve::name).orElse("none")).isEqualTo(band);
            assertThat(load.guessed()).doesNotContain("breaker_a", "curve");
        }

        /** At 230 V to neutral a second or fourth pole is the neutral's. */
        @ParameterizedTest(name = "''{0}'' with ''{1}'': {2} A, {3} poles, band {4}")
        @CsvSource({
            "B16, 230, 16, 1, B",
            "C16 2P, 230, 16, 1, C",
            "C16 2P, , 16, 1, C",
            "16A 1P+N, 230, 16, 1, C",
            "C32 4P, 3~ 400, 32, 3, C",
            "C32 3P+N, 400V 3~, 32, 3, C",
            "'3x32A', 400V 3N~, 32, 3, C",
            "LS C16, 230, 16, 1, C",
            "disjoncteur 16A courbe D, 230, 16, 1, D",
            "'6,3 A', 230, 6.3, 1, C"
        })
        void aEuropeanListAreKept(String written, String volts, double amps, int poles, String band)
                throws IOException {
            Load load = only(
                    "Name,Amps,Voltage,Breaker\nLamp,1," + (volts == null ? "" : volts) + ",\"" + written + "\"\n",
                    EUROPE);

            assertThat(load.breakerAmps()).isEqualTo(amps);
            assertThat(load.poles()).isEqualTo(poles);
            assertThat(load.curve().map(TripCurve::name).orElse("none")).isEqualTo(band);
        }

        @Test
        void eachPieceAreItsOwn() throws IOException {
            assertThat(loads("Qty,Name,Amps,Breaker\n3,Lamp,1,20/1\n2,Desk,1,\n", Mapping.USUAL))
                    .extracting(Load::breakerAmps, Load::runningAmps)
                    .containsExactly(tuple(20.0, 1.0), tuple(20.0, 1.0), tuple(20.0, 1.0), tuple(20.0, 2.0));
        }

        /** 1200 W at 120 V in two halves of 5 A; nothing tells which share each has. */
        @Test
        void onePieceAreSeveralWhereItsVoltageHasNotTheirPoles() throws IOException {
            String csv = "Name,Watts,PF,Voltage,Breaker\nRack,1200,1,120,2 x 16A\n";

            assertThat(loads(csv, Mapping.USUAL))
                    .extracting(Load::breakerAmps, Load::runningAmps)
                    .containsExactly(tuple(16.0, 5.0), tuple(16.0, 5.0));
            assertThat(read(csv, Mapping.USUAL).pieces()).isEqualTo(1);
            assertThat(read(csv, Mapping.USUAL).questions())
                    .anySatisfy(text -> assertThat(text).contains("row 2", "2 breakers feed one piece"));
        }

        @Test
        void tooFewPolesAreAProblem() throws IOException {
            assertThat(read("Name,Amps,Voltage,Breaker\nAmp,1,208,20/1\n", Mapping.USUAL)
                            .problems())
                    .singleElement()
                    .asString()
                    .contains("row 2, column D", "'20/1'", "one pole", "asks for 2");
        }

        /** 600 W at 120 V draw 5 A, and nothing tells that they are shared between two poles. */
        @Test
        void morePolesThanTheVoltageAsksForAreAskedAbout() throws IOException {
            String csv = "Name,Watts,PF,Voltage,Breaker\nAmp,600,1,120,20/2\n";

            assertThat(only(csv, Mapping.USUAL).runningAmps()).isEqualTo(5);
            assertThat(only(csv, Mapping.USUAL).poles()).isEqualTo(2);
            assertThat(read(csv, Mapping.USUAL).questions())
                    .anySatisfy(text -> assertThat(text).contains("row 2", "'20/2'", "2 poles"));
        }

        /** 80 % of 30 A. */
        @Test
        void whatDrawsNobodyKnowsWhatTellHowMuchIsReserved() throws IOException {
            Load load = only("Name,Watts,Breaker\nDimmer,,30/1\n", Mapping.USUAL);

            assertThat(load.runningAmps()).isEqualTo(24);
            assertThat(load.guessed()).contains("running_a").doesNotContain("breaker_a");
        }

        @Test
        void moreThanTheyMayCarryAreKeptAndAskedAbout() throws IOException {
            String csv = "Name,Amps,Breaker\nLamp,18,20/1\n";

            assertThat(only(csv, Mapping.USUAL).breakerAmps()).isEqualTo(20);
            assertThat(read(csv, Mapping.USUAL).questions())
                    .anySatisfy(text -> assertThat(text).contains("18.00 A", "20 A", "80 %"));
        }

        @ParameterizedTest
        @ValueSource(strings = {"see plan", "0/1", "20/5", "9999999", "x", "20 A 30 A", "P1-20"})
        void noKindAreSaidAndSizedByWhatTheyCarry(String written) throws IOException {
            String csv = "Name,Amps,Breaker\nLamp,1," + written + "\n";

            assertThat(only(csv, Mapping.USUAL).guessed()).contains("breaker_a");
            assertThat(read(csv, Mapping.USUAL).guesses())
                    .anySatisfy(text -> assertThat(text).contains("breaker '" + written + "' tells no rating"));
        }
    }

    @Nested
    class Circuits {
        @Test
        void shareABreakerWhateverTheirRooms() throws IOException {
            List<Load> loads = loads(
                    "Circuit,Name,Room,Amps,Breaker\n12,Lamp,Stage,1,20/1\n12,Lamp,Loft,2,20/1\n14,Lamp,Loft,2,\n",
                    Mapping.USUAL);

            assertThat(loads).extracting(Load::runningAmps).containsExactly(3.0, 2.0);
            assertThat(loads).extracting(Load::breakerAmps).containsExactly(20.0, 20.0);
        }

        @Test
        void ofTwoPanelsAreTwo() throws IOException {
            assertThat(loads("Panel,Circuit,Name,Amps\nP1,1,Lamp,1\nP2,1,Lamp,1\n", Mapping.USUAL))
                    .extracting(load -> load.panels().get(0))
                    .containsExactly("P1", "P2");
        }

        @ParameterizedTest(name = "{0} pieces on ''{1}'' at {2} V: {3} breakers")
        @CsvSource({
            "4, 1-4, 120, 4",
            "3, '1, 3, 5', 120, 3",
            "1, '1,3', 208, 1",
            "2, '1,3', 208, 1",
            "2, '1,3,5,7', 208, 2",
            "4, 7, 120, 1",
            "1, LP1-12, 120, 1"
        })
        void areOneForEachPieceWhereTheyAreAsMany(int pieces, String circuit, String volts, int breakers)
                throws IOException {
            assertThat(loads(
                            "Qty,Circuit,Name,Voltage,Amps\n" + pieces + ",\"" + circuit + "\",Lamp," + volts + ",1\n",
                            Mapping.USUAL))
                    .hasSize(breakers);
        }

        @Test
        void areIdsWhereTheyHaveLettersAndNotesAnyhow() throws IOException {
            EquipmentList list = read("Circuit,Name,Amps\nLP1-12,Lamp,1\n7,Lamp,1\n", Mapping.USUAL);

            assertThat(list.project().orElseThrow().loads())
                    .extracting(Load::id)
                    .containsExactly("LP1-12", "lamp-1");
            assertThat(list.notes())
                    .containsEntry("LP1-12", "circuit LP1-12 in the list")
                    .containsEntry("lamp-1", "circuit 7 in the list");
        }

        /** What is switched with what must not be is left on. */
        @Test
        void ofWhatMustNotBeSwitchedAreUnswitchedAndAskedAbout() throws IOException {
            String csv = "Circuit,Name,Amps,Switched\n1,Lamp,1,yes\n1,Desk,1,no\n";

            assertThat(only(csv, Mapping.USUAL).switched()).isFalse();
            assertThat(read(csv, Mapping.USUAL).questions())
                    .anySatisfy(text -> assertThat(text).contains("circuit '1'", "unswitched"));
        }

        @Test
        void ofDifferentPolesAreAProblem() throws IOException {
            EquipmentList list = read("Circuit,Name,Amps,Voltage\n1,Lamp,1,120\n1,Amp,1,208\n", Mapping.USUAL);

            assertThat(list.problems()).singleElement().asString().contains("row 3", "circuit '1'");
            assertThat(list.listed()).isEqualTo(2);
            assertThat(list.pieces()).isEqualTo(1);
            assertThat(list.leftOut()).isEqualTo(1);
        }
    }

    /** 5.5 kW over 0.7, 0.8 and three times 230 V: 14.23 A; the list's breaker stays. */
    @Test
    void aMotorsBreakerStaysAsTheListHasIt() throws IOException {
        Load motor = only("Name,Voltage,Power,Breaker\nWinde,400V 3~,\"5,5 kW\",D16/3P\n", EUROPE);

        assertThat(motor.breakerAmps()).isEqualTo(16);
        assertThat(motor.runningAmps()).isCloseTo(14.23, within(0.01));
        assertThat(motor.curve()).contains(TripCurve.D);
    }
}
