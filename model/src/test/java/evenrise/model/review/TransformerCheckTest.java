package evenrise.model.review;

import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.aSupply;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.electrical.breaker.TransformerProtection;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Plan;
import evenrise.model.plan.Remark;
import evenrise.model.project.Cable;
import evenrise.model.project.Device;
import evenrise.model.project.Feeder;
import evenrise.model.project.InstantaneousRange;
import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Practice;
import evenrise.model.project.Project;
import evenrise.model.project.TransformerBuilder;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TransformerCheckTest {
    private static final Cable CABLE = Cabling.cable("350 kcmil", 3).withConductorCelsius(OptionalDouble.of(75));

    /** 75 kVA, 480 V to 208Y/120 V, at the supply; its panel runs three loads of one pole. */
    private static Project plant(TransformerBuilder transformer, Feeder before, Optional<Device> main, double amps) {
        return aProject()
                .supply(aSupply().lineToNeutralVolts(Trees.VOLTS_480))
                .electrical(Trees.stiffNetwork(Practice.NEC))
                .panels(aPanel("P"))
                .loads(load("L1", amps), load("L2", amps), load("L3", amps))
                .build()
                .withPanels(List.of(aPanel("P").build().withFedFrom(Optional.of("T"))))
                .withNodes(List.of(Trees.node("T", 225, transformer.build())
                        .feeder(Optional.of(before))
                        .main(main)
                        .build()));
    }

    private static evenrise.model.LoadBuilder load(String id, double amps) {
        return aLoad(id).unswitched().runningAmps(amps).idleAmps(1);
    }

    private static Plan plan() {
        return aPlan().assignments(
                        anAssignment("L1").at("P", 1),
                        anAssignment("L2").at("P", 3),
                        anAssignment("L3").at("P", 5))
                .build();
    }

    private static TransformerBuilder of75kva() {
        return Trees.deltaWye(Trees.VOLTS_208).ratedKva(75);
    }

    private static Feeder before(double amps) {
        return Feeder.builder().breakerAmps(amps).build();
    }

    private static Optional<Device> main(double amps) {
        return Optional.of(Device.builder().ratedAmps(amps).build());
    }

    private static List<Remark> remarks(Project project, Grade grade) {
        return Reviews.of(new TransformerCheck(), project, plan()).remarks().stream()
                .filter(each -> each.grade() == grade)
                .toList();
    }

    /** NEC table 450.3(B) worked for 480 V to 208Y/120 V; the row of 75 kVA read on hardhatmath.com, the others by hand. */
    @Nested
    class Table450 {
        @ParameterizedTest
        @CsvSource({
            "30, 36.08, 83.27, 50, 90.2, 110",
            "45, 54.13, 124.9, 70, 135.3, 175",
            "75, 90.21, 208.2, 125, 225.5, 300",
        })
        void largestDevices(double kva, double primary, double secondary, double alone, double beside, double behind) {
            Reviews reviews = Reviews.of(
                    new TransformerCheck(),
                    plant(Trees.deltaWye(Trees.VOLTS_208).ratedKva(kva), before(400), main(100), 10),
                    plan());

            assertThat(reviews.figure("T", "rated current of its primary")).isCloseTo(primary, within(0.01));
            assertThat(reviews.figure("T", "rated current of its secondary")).isCloseTo(secondary, within(0.05));
            assertThat(reviews.figure("T", "largest primary device alone")).isEqualTo(alone);
            assertThat(reviews.figure("T", "largest primary device beside one on the secondary"))
                    .isCloseTo(beside, within(0.05));
            assertThat(reviews.figure("T", "largest device on the secondary")).isEqualTo(behind);
        }

        /** 2 kVA at 480 V: 4.17 A, 167 % are 6.96; 0.5 kVA: 1.04 A, 300 % are 3.13. */
        @Test
        void smallOnesAreNotRoundedUp() {
            assertThat(TransformerProtection.primaryAloneAmps(2000 / 480.0)).isCloseTo(6.96, within(0.005));
            assertThat(TransformerProtection.primaryAloneAmps(500 / 480.0)).isCloseTo(3.125, within(0.005));
            assertThat(TransformerProtection.secondaryAmps(5)).isCloseTo(8.35, within(0.005));
        }

        /** 125 A protects 75 kVA alone; 150 A needs a secondary device of at most 300 A; 250 A is above 225.5 A. */
        @Test
        void primaryDeviceWithAndWithoutASecondaryOne() {
            assertThat(remarks(plant(of75kva(), before(125), Optional.empty(), 10), Grade.BREAKS))
                    .isEmpty();
            assertThat(remarks(plant(of75kva(), before(150), main(300), 10), Grade.BREAKS))
                    .isEmpty();
            assertThat(remarks(plant(of75kva(), before(150), main(350), 10), Grade.BREAKS))
                    .singleElement()
                    .matches(each ->
                            each.figure().getAsDouble() == 350 && each.limit().getAsDouble() == 300);
            assertThat(remarks(plant(of75kva(), before(250), main(200), 10), Grade.BREAKS))
                    .singleElement()
                    .matches(each -> each.figure().getAsDouble() == 250);
        }

        @Test
        void anUnstatedSecondaryDeviceIsNamed() {
            Project project = plant(of75kva(), before(150), Optional.empty(), 10);

            assertThat(remarks(project, Grade.NOT_CHECKED))
                    .anyMatch(each -> each.message().contains("main of the transformer"));
        }
    }

    /** 240.21(C): 75 kVA behind 225 A, 225·480/208 = 519.2 A behind it; a tenth 51.9, a third 173.1 A. */
    @Nested
    class SecondaryConductors {
        private List<Remark> breaks(Cable cable, double mainAmps) {
            return remarks(
                    plant(of75kva().secondaryCable(Optional.of(cable)), before(225), main(mainAmps), 10), Grade.BREAKS);
        }

        /** 350 kcmil at 75 °C: 310 A by table 310.16. */
        @Test
        void endInADeviceThatTheyCarry() {
            assertThat(breaks(CABLE, 300)).isEmpty();
            assertThat(breaks(Cabling.cable("300 kcmil", 3).withConductorCelsius(OptionalDouble.of(75)), 300))
                    .singleElement()
                    .matches(each ->
                            each.figure().getAsDouble() == 300 && each.limit().getAsDouble() == 285);
        }

        /** 2 AWG carries 115 A at 75 °C: enough for a tenth and a main of 100 A up to 10 ft, not for a third up to 25 ft. */
        @Test
        void needMoreWhereTheyAreLonger() {
            Cable small = Cabling.cable("2 AWG", 3).withConductorCelsius(OptionalDouble.of(75));

            assertThat(breaks(small, 100)).isEmpty();
            assertThat(breaks(small.withLengthMetres(7), 100))
                    .singleElement()
                    .matches(each -> Math.abs(each.figure().getAsDouble() - 173.08) < 0.01
                            && each.clause().contains("(C)(6)"));
        }

        @Test
        void endWithin25Feet() {
            assertThat(remarks(
                            plant(
                                    of75kva().secondaryCable(Optional.of(CABLE.withLengthMetres(12))),
                                    before(225),
                                    main(300),
                                    10),
                            Grade.EXCEEDS_RECOMMENDATION))
                    .anyMatch(each -> each.unit().equals("m"));
        }

        /** 240.4(F): 480 V to 240 V on two wires behind 20 A asks for 40 A: 8 AWG does, 12 AWG does not. */
        @Test
        void ofTwoWiresAreProtectedFromThePrimarySide() {
            TransformerBuilder single = Trees.single(PhaseSystem.SINGLE_PHASE, 240, Phase.A, Phase.B)
                    .ratedKva(10)
                    .secondaryCable(
                            Optional.of(Cabling.cable("8 AWG", 40).withConductorCelsius(OptionalDouble.of(75))));
            Project project = plant(single, before(20), Optional.empty(), 0.1);
            Project thin = project.withNodes(List.of(project.nodes()
                    .get(0)
                    .withTransformer(Optional.of(single.secondaryCable(Optional.of(
                                    Cabling.cable("12 AWG", 40).withConductorCelsius(OptionalDouble.of(75))))
                            .build()))));

            assertThat(remarks(project, Grade.NOT_CHECKED))
                    .noneMatch(each -> each.message().contains("main of the transformer"));
            assertThat(remarks(thin, Grade.NOT_CHECKED))
                    .anyMatch(each -> each.message().contains("main of the transformer"));
        }
    }

    @Nested
    class Energising {
        private Project plant(double ratedAmps) {
            return TransformerCheckTest.plant(
                    // 25 times the rated rms current in the first half-cycle (rule of relays, from memory): 2,255 A; it
                    // does not say how long
                    of75kva().inrushPeakAmps(2_255 * Math.sqrt(2)),
                    before(ratedAmps)
                            .withDevice(Optional.of(Device.builder()
                                    .instantaneous(Optional.of(InstantaneousRange.builder()
                                            .low(10)
                                            .high(10)
                                            .build()))
                                    .build())),
                    main(200),
                    10);
        }

        /** Against ten times the rating at once: 125 A trips at 1,250 A, 225 A at 2,250 A, just below; 250 A holds. */
        @Test
        void tripsASmallDevice() {
            assertThat(remarks(plant(125), Grade.BREAKS))
                    .anyMatch(each -> each.limit().getAsDouble() == 1_250);
            assertThat(remarks(plant(225), Grade.BREAKS))
                    .anyMatch(each -> each.limit().getAsDouble() == 2_250);
            assertThat(remarks(plant(226), Grade.BREAKS))
                    .noneMatch(each -> each.message().contains("energised"));
        }
    }

    @Nested
    class Loading {
        /** 75 kVA at 208 V: 208.2 A; three of 210 A exceed it by 0.9 %. */
        @Test
        void isHeldAgainstTheRatingOfALine() {
            assertThat(remarks(plant(of75kva(), before(125), Optional.empty(), 210), Grade.BREAKS))
                    .anyMatch(each -> each.figure().getAsDouble() == 210
                            && Math.abs(each.limit().getAsDouble() - 208.18) < 0.01);
            assertThat(remarks(plant(of75kva(), before(125), Optional.empty(), 208), Grade.BREAKS))
                    .isEmpty();
        }

        /** Full load with a third harmonic of 0.4 of the fundamental: (1 + 9·0.16)/(1 + 0.16) = 2.103. */
        @Test
        void kFactorOfThirdHarmonics() {
            Project full = plant(of75kva(), before(125), Optional.empty(), 208.18);
            Project project = full.withLoads(full.loads().stream()
                    .map(load -> load.withThirdHarmonic(OptionalDouble.of(0.4)))
                    .toList());

            Reviews reviews = Reviews.of(new TransformerCheck(), project, plan());

            assertThat(reviews.figure("T", "K-factor of its load, over its own current"))
                    .isCloseTo(2.103, within(0.001));
            assertThat(reviews.remarks())
                    .anyMatch(each -> each.grade() == Grade.EXCEEDS_RECOMMENDATION
                            && each.message().contains("K-factor of 2.10"))
                    .anyMatch(each ->
                            each.grade() == Grade.NOT_CHECKED && each.message().contains("harmonics above the third"));
        }

        /** At half load the same harmonics weigh a quarter: 0.526. */
        @Test
        void kFactorGoesWithTheSquareOfTheLoad() {
            Project half = plant(of75kva(), before(125), Optional.empty(), 104.09);
            Project project = half.withLoads(half.loads().stream()
                    .map(load -> load.withThirdHarmonic(OptionalDouble.of(0.4)))
                    .toList());

            assertThat(Reviews.of(new TransformerCheck(), project, plan())
                            .figure("T", "K-factor of its load, over rated current"))
                    .isCloseTo(2.103 / 4, within(0.001));
        }
    }

    @Test
    void groundingOfEachSeparatelyDerivedSystemIsListed() {
        Project project = plant(of75kva(), before(125), Optional.empty(), 10);

        assertThat(Reviews.of(new GroundingCheck(), project, plan()).remarks())
                .singleElement()
                .matches(each ->
                        each.grade() == Grade.NOT_CHECKED && each.place().equals("T"));
    }
}
