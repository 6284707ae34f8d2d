package evenrise.solver.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.check.Feasibility;
import evenrise.model.check.ProjectChecks;
import evenrise.model.electrical.breaker.StandardRatings;
import evenrise.model.intake.Columns;
import evenrise.model.intake.Mapping;
import evenrise.model.plan.Grade;
import evenrise.model.project.Electrical;
import evenrise.model.project.Equipment;
import evenrise.model.project.Load;
import evenrise.model.project.OnEmergency;
import evenrise.model.project.Practice;
import evenrise.model.project.Project;
import evenrise.model.project.Role;
import evenrise.model.project.TripCurve;
import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.stream.Stream;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class EquipmentListTest {
    @TempDir
    private Path folder;

    private EquipmentList read(String csv) throws IOException {
        return EquipmentList.read(Files.writeString(folder.resolve("list.csv"), csv), Mapping.USUAL, "Test");
    }

    private static EquipmentList resource(String name, Mapping mapping) throws IOException {
        return EquipmentList.read(Path.of("src", "test", "resources", "intake", name), mapping, "Test");
    }

    /** Questions about places of the list, without that about its control. */
    private static List<String> aboutRows(EquipmentList list) {
        return list.questions().stream()
                .filter(question -> !question.startsWith("which control boards"))
                .toList();
    }

    private static Load only(EquipmentList list) {
        assertThat(list.problems()).isEmpty();
        assertThat(list.project().orElseThrow().loads()).hasSize(1);
        return list.project().orElseThrow().loads().get(0);
    }

    @Nested
    class CellReader {
        @Test
        void comeFromAmpere() throws IOException {
            assertThat(only(read("Name,Amps,Role\nMixer,2.5,processing\n")).runningAmps())
                    .isEqualTo(2.5);
        }

        @Test
        void comeFromWattsByPowerFactorAndVoltage() throws IOException {
            Load load = only(read("Name,Watts,Voltage,Power factor,Role\nAmp,1800,208,0.9,amplifier\n"));

            // 1800 W / (207.85 V · 0.9)
            assertThat(load.runningAmps()).isCloseTo(9.623, within(1e-3));
            assertThat(load.poles()).isEqualTo(2);
            assertThat(load.role()).isEqualTo(Role.AMPLIFIER);
        }

        @Test
        void comeInTheUnitOfTheHeaderOrOfTheCell() throws IOException {
            assertThat(only(read("Name,Power [kW],Power factor\nLamp,0.6,1\n")).runningAmps())
                    .isEqualTo(5);
            assertThat(only(read("Name,Power [kW],Power factor\nLamp,600 W,1\n"))
                            .runningAmps())
                    .isEqualTo(5);
        }

        @Test
        void ofSeveralPiecesOnOneBreakerAreSums() throws IOException {
            Load load = only(read("Qty,Name,Room,Amps,Idle,Inrush\n4,Lamp,Stage,2,1.5,20\n"));

            assertThat(load.runningAmps()).isEqualTo(8);
            assertThat(load.idleAmps()).isEqualTo(6);
            assertThat(load.inrushAmps()).isEqualTo(80);
            assertThat(load.name()).isEqualTo("Stage: 4 × Lamp");
        }
    }

    @Nested
    class Bundling {
        @Test
        void keepsRoomsRolesZonesAndFeedsApart() throws IOException {
            EquipmentList list = read("Name,Room,Role,Zone,Feed,Amps\n"
                    + "Desk,A,processing,main,,1\nDesk,B,processing,main,,1\nAmp,A,amplifier,main,,1\n"
                    + "Desk,A,processing,other,,1\nDesk,A,processing,main,A,1\nDesk,A,processing,main,B,1\n");

            assertThat(list.breakers()).isEqualTo(6);
        }

        @Test
        void putsRedundantFeedsIntoDifferentPanels() throws IOException {
            Project project = read("Name,Room,Role,Feed,Amps\nCore A,R,network,A,1\nCore B,R,network,B,1\n")
                    .project()
                    .orElseThrow();

            assertThat(project.loads().get(0).apartFrom())
                    .containsExactly(project.loads().get(1).id());
            assertThat(project.panels().size()).isGreaterThanOrEqualTo(2);
        }

        @Test
        void staysWithinTheContinuousRating() throws IOException {
            // 16 A of a breaker of 20 A: two pieces of 8 A, not three
            assertThat(read("Qty,Name,Amps,Inrush\n3,Lamp,8,12\n").breakers()).isEqualTo(2);
        }

        @Test
        void staysWithinTheTripBandForTheSummedInrush() throws IOException {
            // 5 times 20 A; a piece counts for about 45 A
            assertThat(read("Qty,Name,Amps,Idle,Inrush\n4,Server,1,1,95\n").breakers())
                    .isEqualTo(2);
        }

        @Test
        void givesALargePieceABreakerOfItsOwn() throws IOException {
            assertThat(only(read("Name,Amps,Inrush\nDimmer,30,60\n")).breakerAmps())
                    .isEqualTo(40);
        }

        @Test
        void isToldInParts() throws IOException {
            assertThat(read("Name,Power\nLamp,7.5 kg\n").findings())
                    .filteredOn(each -> each.gravity() == Grade.BREAKS)
                    .singleElement()
                    .satisfies(each -> {
                        assertThat(each.check()).isEqualTo("import");
                        assertThat(each.kind()).isEqualTo("problem");
                        assertThat(each.place()).isEqualTo("row 2, column B");
                        assertThat(each.message()).startsWith("row 2, column B: ");
                    });
        }

        @Test
        void saysThatNoBreakerHoldsAPiece() throws IOException {
            assertThat(read("Name,Amps\nFurnace,80\n").problems())
                    .singleElement()
                    .asString()
                    .contains("row 2", "'Furnace'", "80.00 A", "63 A");
        }
    }

    /** A breaker follows the load, the outlet and the cord; its inrush is a question about its curve. */
    @Nested
    class Ratings {
        private static final Mapping EUROPE =
                Mapping.builder().lineToNeutralVolts(230).frequencyHertz(50).build();
        private static final Mapping HIGH =
                Mapping.builder().lineToNeutralVolts(277).build();

        private Load load(EquipmentList list, String id) {
            return list.project().orElseThrow().loads().stream()
                    .filter(load -> load.id().equals(id))
                    .findAny()
                    .orElseThrow();
        }

        /** IEC 60364-4-43 clause 433.1: 2.75, 4.12 and 5.29 A are carried by the usual 16 A. */
        @Test
        void areNotThoseOfAnInrush() throws IOException {
            EquipmentList list = resource("two-wire-400.csv", EUROPE);

            assertThat(list.problems()).isEmpty();
            // 600 W / (230 V · 0.95), an inrush of 300 A
            assertThat(load(list, "media-server-1").runningAmps()).isEqualTo(2.746);
            assertThat(load(list, "media-server-1").breakerAmps()).isEqualTo(16);
            // 900 W / (230 V · 0.95), an inrush of 450 A
            assertThat(load(list, "toroid-amp-1").runningAmps()).isEqualTo(4.119);
            assertThat(load(list, "toroid-amp-1").breakerAmps()).isEqualTo(16);
            assertThat(load(list, "toroid-amp-1").curve()).contains(TripCurve.C);
            assertThat(aboutRows(list))
                    .hasSize(2)
                    .allSatisfy(text -> assertThat(text)
                            .contains(
                                    "No larger rating",
                                    "band that trips later",
                                    "limits the inrush",
                                    "one after another"));
        }

        /** Two wires at 400 V are two poles: 2000 W / (230 V · √3 · 0.95) = 5.285 A, not 3.05 A in each of three. */
        @Test
        void ofTwoWiresBetweenLinesAreThoseOfTwoPoles() throws IOException {
            Load mover = load(resource("two-wire-400.csv", EUROPE), "mover-1");

            assertThat(mover.poles()).isEqualTo(2);
            assertThat(mover.runningAmps()).isEqualTo(5.285);
        }

        /** At 480Y/277 V and 60 Hz ratings are those of NEC 240.6(A), which has no 16, 32 or 63 A. */
        @Test
        void areThoseOfTheSystemsCode() throws IOException {
            EquipmentList list = resource("two-wire-480.csv", HIGH);
            Project project = list.project().orElseThrow();

            assertThat(project.electrical().flatMap(Electrical::practice)).contains(Practice.NEC);
            assertThat(project.loads())
                    .allSatisfy(load -> assertThat(StandardRatings.isStandard(Practice.NEC, load.breakerAmps()))
                            .isTrue())
                    .allSatisfy(load -> assertThat(load.curve()).isEmpty());
            assertThat(StandardRatings.isStandard(Practice.NEC, project.supply().ratedAmps()))
                    .isTrue();
            assertThat(project.panels())
                    .allSatisfy(panel -> assertThat(StandardRatings.isStandard(Practice.NEC, panel.ratedAmps()))
                            .isTrue());
            // 1000 W / (277 V · 0.9)
            assertThat(load(list, "rack-a-1").runningAmps()).isEqualTo(4.011);
            // two wires: 2400 W / (277 V · √3 · 1) = 5.002 A; two of them, or one and the projector's 6.582 A
            assertThat(load(list, "odd-1").poles()).isEqualTo(2);
            // three phases, as the list says: 5000 W / (3 · 277 V · 0.85)
            assertThat(load(list, "hoist-1").poles()).isEqualTo(3);
            assertThat(load(list, "hoist-1").runningAmps()).isEqualTo(7.079);
            // NEC 430.52(C)(1): 250 % of 7.079 A is 17.7 A, the next standard rating 20 A
            assertThat(load(list, "hoist-1").breakerAmps()).isEqualTo(20);
        }

        @Test
        void ofARackFollowItsCurrent() throws IOException {
            // 9.26 A / 0.8 = 11.6 A: the usual 20 A, whatever the inrush
            assertThat(only(read("Name,Amps,Inrush\nRack,9.26,900\n")).breakerAmps())
                    .isEqualTo(20);
        }

        /** NEC 430.52(C)(1), exception 1: 250 % of 4.6 A is 11.5 A, of 16.7 A 41.75 A; the next standard ratings. */
        @Test
        void ofMotorsAreByTheirTable() throws IOException {
            EquipmentList list = read("Name,Voltage,Amps\nChain hoist,3~ 208,4.6\nWinch,3~ 208,16.7\n");

            assertThat(load(list, "chain-hoist-1").breakerAmps()).isEqualTo(15);
            assertThat(load(list, "winch-1").breakerAmps()).isEqualTo(45);
            assertThat(list.guesses())
                    .filteredOn(text -> text.contains("430.52(C)(1)"))
                    .hasSize(3)
                    .anySatisfy(text -> assertThat(text).contains("row 3", "'Winch'", "45 A"))
                    .anySatisfy(text -> assertThat(text).contains("430.6(A)(1)"));
            assertThat(load(list, "winch-1").equipment().flatMap(Equipment::motor))
                    .isPresent();
        }

        /** NEC table 430.250: 7½ hp at 208 V take 24.2 A, and 430.52(C)(1) 250 % of it, 60.5 A: 70 A. */
        @Test
        void ofMotorsInHorsepowerAreByTheTablesCurrent() throws IOException {
            Load winch = only(read("Name,Voltage,Power\nWinch,3~ 208,7.5 hp\n"));

            assertThat(winch.runningAmps()).isEqualTo(24.2);
            assertThat(winch.breakerAmps()).isEqualTo(70);
            assertThat(winch.equipment().flatMap(Equipment::motor).orElseThrow().horsepower())
                    .hasValue(7.5);
            assertThat(read("Name,Power\nLamp,7.5 hp\n").problems()).hasSize(1);
        }

        /** NEC table 450.3(B), primary alone: 125 % of 36.08 A (30 kVA at 480 V, three phases) is 45.1 A, so 50 A. */
        @Test
        void ofTransformersAreByTheirTable() throws IOException {
            Path file = Files.writeString(folder.resolve("list.csv"), "Name,Voltage,kVA\nTransformer,3~ 480,30\n");

            EquipmentList list = EquipmentList.read(file, HIGH, "Test");

            // 30 kVA / (3 · 277 V) = 36.1 A
            assertThat(only(list).breakerAmps()).isEqualTo(50);
            assertThat(list.guesses()).anySatisfy(text -> assertThat(text).contains("450.3(B)"));
        }

        /** By IEC practice a motor has the rating of its load and a band that its start does not trip. */
        @Test
        void ofMotorsByIecPracticeFollowTheLoad() throws IOException {
            Path file = Files.writeString(folder.resolve("list.csv"), "Name,Voltage,Amps\nWinde,3~ 400,10\n");

            Load motor = only(EquipmentList.read(file, EUROPE, "Test"));

            assertThat(motor.breakerAmps()).isEqualTo(16);
            assertThat(motor.curve()).contains(TripCurve.D);
        }

        /** NEC 210.21(B)(1): an outlet is rated no less than the circuit that it is on alone. */
        @Test
        void areNoMoreThanTheOutlets() throws IOException {
            assertThat(only(read("Name,Amps,Outlet\nDesk,5,15 A\n")).breakerAmps())
                    .isEqualTo(15);
            assertThat(only(read("Name,Amps,Outlet\nDesk,5,L5-30\n")).breakerAmps())
                    .isEqualTo(20);
            assertThat(only(read("Name,Amps,Outlet\nDimmer,22,30 A\n")).breakerAmps())
                    .isEqualTo(30);
            // 13 A / 0.8 = 16.25 A
            assertThat(read("Name,Amps,Outlet\nHeavy rack,13,15 A\n").problems())
                    .singleElement()
                    .asString()
                    .contains("row 2", "13.00 A", "outlet of 15 A", "20 A");
        }

        @Test
        void guessNoBandOfAmericanBreakers() throws IOException {
            assertThat(only(read("Name,Amps\nDesk,1\n")).curve()).isEmpty();
            Path file = Files.writeString(folder.resolve("list.csv"), "Name,Amps\nDesk,1\n");
            Mapping stated = Mapping.builder().curve(TripCurve.D).build();
            assertThat(only(EquipmentList.read(file, stated, "Test")).curve()).contains(TripCurve.D);
        }
    }

    @Nested
    class Voltages {
        @Test
        void ofAnotherSupplyAreProblems() throws IOException {
            // 240 V on 208 V: 13 % less; 230 V: 9.6 % less, which is asked about
            EquipmentList list = resource("other-voltages.csv", Mapping.USUAL);
            assertThat(list.problems())
                    .singleElement()
                    .asString()
                    .contains("row 3, column E", "'240'", "120 V", "208 V");
            assertThat(aboutRows(list)).singleElement().asString().contains("row 2", "'230'", "9.6 % less");

            // 277 V is 20 % and 15 % more
            EquipmentList high = resource(
                    "other-voltages.csv",
                    Mapping.builder().lineToNeutralVolts(277).build());
            assertThat(high.problems())
                    .hasSize(2)
                    .allSatisfy(text -> assertThat(text).contains("277 V"));

            // 100 V on 127 V: 27 % more
            Path file = Files.writeString(folder.resolve("list.csv"), "Name,Voltage,Amps\nMixer,100,1\n");
            Mapping mexico = Mapping.builder().lineToNeutralVolts(127).build();
            assertThat(EquipmentList.read(file, mexico, "Test").problems())
                    .singleElement()
                    .asString()
                    .contains("'100'", "127 V");
        }

        @Test
        void thatAreNoneAreProblemsWithTheirPlace() throws IOException {
            assertThat(read("Quantity,Name,Watts,Voltage\n1,Amp,100,1.2.3-240\n")
                            .problems())
                    .singleElement()
                    .asString()
                    .contains("row 2, column D", "'1.2.3-240'");
        }

        @Test
        void areReadAsPeopleWriteThem() throws IOException {
            EquipmentList list = resource("life-safety.csv", Mapping.USUAL);
            List<Load> loads = list.project().orElseThrow().loads();

            // 1200 W / (208 V · 0.95) and, in three poles, / (3 · 120 V · 0.95)
            assertThat(loads)
                    .extracting(load -> load.id() + " " + load.poles() + " " + load.runningAmps())
                    .containsExactlyInAnyOrder(
                            "amp-a-1 3 3.509",
                            "amp-a-2 3 3.509",
                            "amp-b-1 2 6.077",
                            "amp-c-1 3 3.509",
                            "amp-d-1 2 6.077",
                            // 300 W of direct current / (0.85 · 0.95 · 120 V)
                            "led-driver-1 1 3.096",
                            "winch-1 3 24.2");
            assertThat(list.rowsLeftOut()).anySatisfy(text -> assertThat(text).contains("PoE", "left out"));
            assertThat(list.questions())
                    .anySatisfy(text -> assertThat(text).contains("row 7", "'LED driver'", "'48 VDC'", "3.10 A"));
            assertThat(list.problems())
                    .anySatisfy(text -> assertThat(text).contains("row 8, column G", "'480'"))
                    .anySatisfy(text -> assertThat(text).contains("row 10, column G", "'277'"))
                    .anySatisfy(text -> assertThat(text).contains("row 13", "105.26 A"));
        }
    }

    @Nested
    class LifeSafety {
        private static final String LIST = "Name,Room,Zone,Amps,Switched,Life safety\n"
                + "Fire alarm panel,R,hall,0.5,,\nExit sign,R,hall,0.1,,\nDesk,R,hall,1,,\n";

        /** NEC 700.10(B), 760.41 and 760.121, IEC 60364-5-56: circuits of its own. */
        @Test
        void isOutsideUnlessSomebodyAsks() throws IOException {
            EquipmentList list = read(LIST);

            assertThat(list.project().orElseThrow().loads())
                    .extracting(Load::name)
                    .containsExactly("R: Desk");
            assertThat(list.outside()).hasSize(2);
            assertThat(list.outside().get(0)).contains("row 2", "'Fire alarm panel'", "760.41", "60364-5-56");
            assertThat(list.outside().get(1)).contains("row 3", "'Exit sign'", "700.10(B)");
        }

        @Test
        void isUnswitchedAndAloneWhereSomebodyAsks() throws IOException {
            Path file = Files.writeString(folder.resolve("list.csv"), LIST);
            EquipmentList list = EquipmentList.read(file, Mapping.USUAL.withPlacesLifeSafety(true), "Test");
            List<Load> loads = list.project().orElseThrow().loads();

            assertThat(loads).extracting(Load::switched).containsExactly(false, false, true);
            assertThat(loads.get(0).name()).contains("Fire alarm panel", "life safety", "NEC 760.41");
            assertThat(loads.get(0).shutdownGroup()).isEmpty();
            assertThat(list.outside()).isEmpty();
            assertThat(aboutRows(list)).hasSize(2);
            assertThat(ProjectChecks.errors(list.project().orElseThrow())).isEmpty();
        }

        @Test
        void mayBeSaidByAColumn() throws IOException {
            EquipmentList list = read("Name,Amps,Switched,Life safety\n"
                    + "Relay rack,1,,yes\nSign rack,1,life safety,\nDoor rack,1,,place\nFire alarm demo,1,,no\n"
                    + "Clock,1,no,\nUPS amplifier,2,yes,\n");

            assertThat(list.problems()).isEmpty();
            assertThat(list.outside()).hasSize(2);
            assertThat(list.project().orElseThrow().loads())
                    .extracting(load -> load.id() + " " + load.switched())
                    .containsExactlyInAnyOrder(
                            "door-rack-1 false", "fire-alarm-demo-1 true", "clock-1 false", "ups-amplifier-1 true");
            assertThat(read("Name,Amps,Switched\nDesk,1,perhaps\n").problems())
                    .singleElement()
                    .asString()
                    .contains("row 2, column C", "'perhaps'");
        }

        @Test
        void isToldByWordsOfRemarks() throws IOException {
            EquipmentList list = read("Name,Amps,Notes\nRack,1,Brandmeldeanlage\nClock,1,always on\n");

            assertThat(list.outside()).hasSize(1);
            assertThat(only(list).switched()).isFalse();
        }

        @Test
        void needsNoFigures() throws IOException {
            EquipmentList list = read("Name,Amps\nFire alarm panel,\nDesk,1\n");

            assertThat(list.problems()).isEmpty();
            assertThat(list.outside()).hasSize(1);
        }

        @Test
        void isNotMixedUpWithWhatIsAskedAbout() throws IOException {
            EquipmentList list = read("Name,Amps\nUPS 3 kVA,20\nCore switch,1\nDesk,1\n");

            assertThat(aboutRows(list))
                    .hasSize(2)
                    .anySatisfy(text -> assertThat(text).contains("row 2", "'UPS 3 kVA'", "battery"))
                    .anySatisfy(text -> assertThat(text).contains("row 3", "'Core switch'", "network"));
            assertThat(list.project().orElseThrow().loads())
                    .filteredOn(load -> !load.switched())
                    .hasSize(2)
                    .allSatisfy(load -> assertThat(load.guessed()).contains("switched"));
        }
    }

    @Nested
    class Guesses {
        @Test
        void stayInTheProject() throws IOException {
            assertThat(only(read("Name,Amps\nBox,1\n")).guessed())
                    .containsExactly(
                            "breaker_a",
                            "idle_a",
                            "inrush_half_ms",
                            "inrush_peak_a",
                            "poles",
                            "power_factor",
                            "role",
                            "third_harmonic");
            assertThat(only(read("Name,Role,Voltage,Amps,Idle,Inrush,PF\nBox,processing,120,1,1,9,0.9\n"))
                            .guessed())
                    .containsExactly("breaker_a", "inrush_half_ms", "settle_s", "third_harmonic");
        }

        @Test
        void fitTheKindOfGear() throws IOException {
            Load winch = only(read("Name,Voltage,Amps\nWinch,3~ 208,5\n"));
            assertThat(winch.harmonicRatio()).isZero();
            assertThat(winch.inrushHalfMillis()).isEqualTo(300);

            Load lamp = only(read("Name,Amps\nHalogen lamp,5\n"));
            assertThat(lamp.harmonicRatio()).isZero();
            assertThat(lamp.powerFactor()).isEqualTo(1);

            assertThat(only(read("Name,Amps\nMedia server,5\n")).settleSeconds())
                    .isEqualTo(120);
        }

        /** Amplifiers wait for the slowest processing; a board of one delay and steps up to 2 s must reach past it. */
        @Test
        void ofSettlingAreReachedByTheSketchedBoards() throws IOException {
            Project project = read("Qty,Name,Room,Amps\n6,Media server,A,12\n6,Amplifier,B,12\n")
                    .project()
                    .orElseThrow();

            assertThat(Feasibility.impossible(project)).isEmpty();
            assertThat(Collections.max(project.boardTypes().get(0).startDelaySeconds()))
                    .isGreaterThanOrEqualTo(120 + 6 * 2);
        }
    }

    @Nested
    class Mappings {
        private EquipmentList read(String csv, Mapping mapping) throws IOException {
            return EquipmentList.read(Files.writeString(folder.resolve("list.csv"), csv), mapping, "Test");
        }

        private static Mapping watts(String header) {
            return Mapping.builder()
                    .columns(Columns.builder().watts(header).build())
                    .build();
        }

        @Test
        void thatNameAColumnInVainAreErrorsWithTheHeaders() throws IOException {
            EquipmentList list = read("Qty,Name,Amps,Power\n1,Desk,1,100\n", watts("Leistung"));

            assertThat(list.project()).isEmpty();
            assertThat(list.problems())
                    .singleElement()
                    .asString()
                    .contains("row 1", "watts", "'Leistung'", "'Qty', 'Name', 'Amps', 'Power'");
        }

        @Test
        void areErrorsWhereNoHeaderIsFoundForThem() throws IOException {
            Mapping mapping = Mapping.builder()
                    .columns(Columns.builder().name("Geraet").build())
                    .build();

            assertThat(read("Was,Strom\nPult,1\n", mapping).problems())
                    .singleElement()
                    .asString()
                    .contains("'Geraet'", "'Was', 'Strom'");
        }

        @Test
        void nameSheetsThatAreThere() throws IOException {
            Path file = folder.resolve("list.xlsx");
            try (Workbook workbook = new Workbook(Files.newOutputStream(file), "test", null)) {
                workbook.newWorksheet("Gear").value(0, 0, "Qty");
            }

            Mapping mapping = Mapping.builder().sheet("Equipment").build();

            assertThat(EquipmentList.read(file, mapping, "Test").problems())
                    .singleElement()
                    .asString()
                    .contains("'Equipment'", "'Gear'");
        }

        @Test
        void leaveColumnsThatAreListed() throws IOException {
            assertThat(read("Name,Amps,Colour,Supplier\nDesk,1,red,me\n", Mapping.USUAL)
                            .notRead())
                    .containsExactly("row 1: column C 'Colour'", "row 1: column D 'Supplier'");
        }
    }

    @Nested
    class Groups {
        @Test
        void dropAmplifiersAndHoldTheRest() throws IOException {
            Project project = read("Name,Role,Zone,Amps\nAmp,amplifier,hall,2\nDesk,processing,hall,2\n")
                    .project()
                    .orElseThrow();

            assertThat(project.shutdownGroups())
                    .extracting(group -> group.id() + " " + group.onEmergency())
                    .containsExactly("hall-drop " + OnEmergency.DROP, "hall-hold " + OnEmergency.HOLD);
        }
    }

    @Nested
    class DirtySheets {
        @Test
        void haveTheirProblemsListedInOnePassWithTheirPlaces() throws IOException {
            EquipmentList list =
                    read("Concert hall,,\n\nQty,Name,Watts\nx,Amp,100\n2,Amp,many\n3,Desk,\n1,Desk,5 bananas\n");

            assertThat(list.problems()).hasSize(4);
            assertThat(list.problems().get(0)).contains("row 4, column A", "'x'");
            assertThat(list.problems().get(1)).contains("row 5, column C", "'many'");
            assertThat(list.problems().get(2)).contains("row 6", "'Desk'", "neither watts");
            assertThat(list.problems().get(3)).contains("row 7, column C", "'bananas'");
        }

        @Test
        void mayHaveTitlesSumsAndBlankRows() throws IOException {
            EquipmentList list = read("Hall 3\n\n,Qty,Name,Room,Amps\n,,,,\n,2,Desk,Booth,1\n,1,Desk,,1\n,,Total,,3\n");

            assertThat(list.problems()).isEmpty();
            assertThat(list.pieces()).isEqualTo(3);
            assertThat(list.rowsLeftOut()).anySatisfy(text -> assertThat(text).contains("'Total'", "left out"));
            assertThat(list.guesses()).anySatisfy(text -> assertThat(text).contains("empty room goes on"));
        }

        @Test
        void mayBeSeparatedBySemicolonsWithDecimalCommas() throws IOException {
            Path file = folder.resolve("list.csv");
            Files.write(file, "Bezeichnung;Strom\nVerstärker;2,5\n".getBytes(Charset.forName("windows-1252")));

            EquipmentList list = EquipmentList.read(file, Mapping.USUAL, "Test");

            assertThat(only(list).runningAmps()).isEqualTo(2.5);
            assertThat(only(list).role()).isEqualTo(Role.AMPLIFIER);
        }

        @Test
        void areNotReadMoreWidelyThanTheySay() throws IOException {
            assertThat(only(read("Name,Voltage,Amps\nSwitch,100-240V,1\n")).poles())
                    .isEqualTo(1);
            assertThat(only(read("Name,Voltage,Amps\nHoist,120/208,1\n")).poles())
                    .isEqualTo(3);
            assertThat(read("Name,Amps,PF\nLamp,1,2\n").problems()).hasSize(1);
            assertThat(read("Name,Amps,Idle\nLamp,1,-1\n").problems()).hasSize(1);
            assertThat(read("Qty,Name,Room,Amps\n5,,R1,\n1,Lamp,R1,1\n").problems())
                    .hasSize(1);
            assertThat(read("Name,Amps\nSumming mixer,1\n").pieces()).isEqualTo(1);
        }

        @Test
        void sayWhereNoHeaderIsFound() throws IOException {
            assertThat(read("1,2,3\n4,5,6\n").problems())
                    .singleElement()
                    .asString()
                    .contains("--map", "--template");
        }

        @Test
        void mayBeWorkbooksWithFormulasDatesAndErrors() throws IOException {
            Path file = folder.resolve("list.xlsx");
            try (Workbook workbook = new Workbook(Files.newOutputStream(file), "test", null)) {
                Worksheet sheet = workbook.newWorksheet("Gear");
                sheet.value(0, 0, "Qty");
                sheet.value(0, 1, "Name");
                sheet.value(0, 2, "Amps");
                sheet.value(1, 0, 2);
                sheet.value(1, 1, "Desk");
                sheet.value(1, 2, 1.5);
                sheet.value(2, 1, "Lamp");
                sheet.formula(2, 2, "1+1");
                sheet.value(3, 1, "Server");
                sheet.value(3, 2, java.time.LocalDate.of(2026, 5, 1));
                sheet.style(3, 2).format("yyyy-mm-dd").set();
            }

            EquipmentList list = EquipmentList.read(file, Mapping.USUAL, "Test");

            assertThat(list.pieces()).isEqualTo(2);
            assertThat(list.problems()).hasSize(2);
            assertThat(list.problems().get(0)).contains("sheet 'Gear', row 3, column C", "formula");
            assertThat(list.problems().get(1)).contains("sheet 'Gear', row 4, column C", "date");
        }

        @Test
        void areRefusedWhereTheyAreNoWholeWorkbook() throws IOException {
            Path file = Files.write(folder.resolve("torn.xlsx"), new byte[] {'P', 'K', 3, 4, 0, 0, 1, 2, 3});

            assertThatThrownBy(() -> EquipmentList.read(file, Mapping.USUAL, "Test"))
                    .isInstanceOf(IOException.class);
        }

        /** Nothing is lost in silence: every piece is on a breaker, or its row is among the problems. */
        @ParameterizedTest
        @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20, 21, 22, 23, 24, 25})
        void loseNothingInSilence(int seed) throws IOException {
            Random random = new Random(seed);
            String[] quantities = {"1", "2", "3", "", "x", "2,5", "-1", " 4 ", "1e1", "#REF!"};
            String[] currents = {"1", "2.5", "2,5 A", "", "n/a", "12 kA", "300 mA", "abc", "0", "9999999", "\u202e7"};
            String[] names = {
                "Amp",
                "Desk",
                "",
                "<script>",
                "=cmd|x",
                "Total",
                "Fire alarm",
                "UPS",
                "Winch",
                "\u202eevil",
                "😀",
                "a".repeat(10_000)
            };
            String[] volts = {
                "", "120", "208", "1.2.3-240", "3~ 208", "230", "48 VDC", "PoE", "\u202e0-1", "Y/", "#REF!"
            };
            String[] switched = {"", "", "yes", "no", "life safety", "perhaps"};
            StringBuilder csv = new StringBuilder("Qty,Name,Room,Amps,Voltage,Switched,Colour\n");
            int rows = 60;
            for (int i = 0; i < rows; i++) {
                csv.append('"')
                        .append(pick(random, quantities))
                        .append("\",\"")
                        .append(pick(random, names))
                        .append("\",R")
                        .append(random.nextInt(3))
                        .append(",\"")
                        .append(pick(random, currents))
                        .append("\",\"")
                        .append(pick(random, volts))
                        .append("\",\"")
                        .append(pick(random, switched))
                        .append("\",\"red\"\n");
            }

            EquipmentList list = read(csv.toString());

            Set<String> told = new java.util.TreeSet<>();
            Stream.of(list.problems().stream(), list.outside().stream(), list.rowsLeftOut().stream())
                    .flatMap(texts -> texts)
                    .forEach(text -> told.add(text.replaceAll("(?s)^row (\\d+).*", "$1")));
            assertThat(told.size() + list.rows()).isEqualTo(rows);
            assertThat(list.pieces() + list.leftOut()).isEqualTo(list.listed());
            list.project().ifPresent(project -> {
                assertThat(ProjectChecks.errors(project)).isEmpty();
                assertThat(project.loads()).hasSize(list.breakers());
            });
        }

        private String pick(Random random, String[] of) {
            return of[random.nextInt(of.length)];
        }
    }

    @Test
    void makesAProjectThatCanBePlanned() throws IOException {
        StringBuilder csv = new StringBuilder("Qty,Name,Room,Role,Zone,Feed,Voltage,Amps\n");
        for (int room = 0; room < 6; room++) {
            csv.append("3,Desk,R")
                    .append(room)
                    .append(",processing,z")
                    .append(room % 2)
                    .append(",A,120,1.5\n");
            csv.append("3,Desk,R")
                    .append(room)
                    .append(",processing,z")
                    .append(room % 2)
                    .append(",B,120,1.5\n");
            csv.append("9,Amp,R")
                    .append(room)
                    .append(",amplifier,z")
                    .append(room % 2)
                    .append(",,208,7.5\n");
            csv.append("5,Screen,R").append(room).append(",display,,,120,4\n");
        }

        Project project = read(csv.toString()).project().orElseThrow();

        assertThat(ProjectChecks.errors(project)).isEmpty();
        assertThat(Feasibility.impossible(project)).isEmpty();
    }

    @Test
    void readsItsOwnTemplates() throws IOException {
        Path csv = Files.write(folder.resolve("t.csv"), Template.csv());
        Path workbook = Files.write(folder.resolve("t.xlsx"), Template.workbook());

        for (Path file : List.of(csv, workbook)) {
            EquipmentList list = EquipmentList.read(file, Mapping.USUAL, "Test");
            assertThat(list.guesses().stream().filter(text -> text.contains("is read as")))
                    .hasSize(27);
            assertThat(list.rowsLeftOut().stream().filter(text -> text.contains("example")))
                    .hasSize(2);
        }
        assertThat(new String(Template.csv(), StandardCharsets.UTF_8)).startsWith("Tag,Quantity,Name");
    }
}
