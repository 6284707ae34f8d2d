package evenrise.model.review;

import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.electrical.breaker.TapConductor;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Remark;
import evenrise.model.project.Cable;
import evenrise.model.project.Device;
import evenrise.model.project.DistributionNode;
import evenrise.model.project.Electrical;
import evenrise.model.project.Feeder;
import evenrise.model.project.FeederTap;
import evenrise.model.project.Project;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** Examples of 240.21(B) by hand: a third of 800 A are 266.7 A, of 400 A 133.3 A; ampacities of table 310.16 at 75 °C. */
class TapCheckTest {
    private static final double TEN_FEET = 3.048;
    private static final double TWENTY_FIVE_FEET = 7.62;
    private static final FeederTap IN_RACEWAY =
            FeederTap.builder().inRaceway(Optional.of(true)).build();

    private static Cable cable(String size, double metres) {
        return Cabling.cable(size, metres).withConductorCelsius(OptionalDouble.of(75));
    }

    private static Optional<Device> main(double amps) {
        return Optional.of(Device.builder().ratedAmps(amps).build());
    }

    private static Feeder before(double amps) {
        return Feeder.builder().breakerAmps(amps).build();
    }

    private static Feeder tap(Cable cable, FeederTap tap) {
        return Feeder.builder().cable(Optional.of(cable)).tap(Optional.of(tap)).build();
    }

    private static Feeder tap(Cable cable) {
        return tap(cable, IN_RACEWAY);
    }

    /** Panel P, rated 225 A, taps the feeder of node N. */
    private static Project plant(Electrical electrical, Feeder ofNode, Feeder ofPanel, Optional<Device> main) {
        return aProject()
                .electrical(electrical)
                .panels(aPanel("P"))
                .loads(aLoad("L").unswitched().runningAmps(10).idleAmps(1))
                .build()
                .withPanels(List.of(aPanel("P")
                        .build()
                        .withFedFrom(Optional.of("N"))
                        .withFeeder(Optional.of(ofPanel))
                        .withMain(main)))
                .withNodes(List.of(DistributionNode.builder()
                        .id("N")
                        .ratedAmps(800)
                        .feeder(Optional.of(ofNode))
                        .build()));
    }

    private static List<Remark> remarks(Project project, Grade grade) {
        return Reviews.of(
                        new TapCheck(),
                        project,
                        aPlan().assignments(anAssignment("L").at("P", 1)).build())
                .remarks()
                .stream()
                .filter(each -> each.grade() == grade)
                .toList();
    }

    private static List<Remark> breaks(Feeder ofNode, Feeder ofPanel, Optional<Device> main) {
        return remarks(plant(Cabling.NEC, ofNode, ofPanel, main), Grade.BREAKS);
    }

    private static List<String> unchecked(Feeder ofNode, Feeder ofPanel, Optional<Device> main) {
        return remarks(plant(Cabling.NEC, ofNode, ofPanel, main), Grade.NOT_CHECKED).stream()
                .map(Remark::message)
                .toList();
    }

    private static void isOf(Remark remark, String kind, double figure, double limit, String clause) {
        assertThat(remark.kind()).isEqualTo(kind);
        assertThat(remark.figure().orElseThrow()).isCloseTo(figure, within(0.05));
        assertThat(remark.limit().orElseThrow()).isCloseTo(limit, within(0.05));
        assertThat(remark.clause()).isEqualTo(clause);
    }

    @Test
    void needsATenthUpToTenFeetAndAThirdBeyond() {
        assertThat(TapConductor.leastAmps(800, TEN_FEET)).isEqualTo(80);
        assertThat(TapConductor.leastAmps(800, 3.05)).isCloseTo(266.7, within(0.05));
        assertThat(TapConductor.leastAmps(400, TWENTY_FIVE_FEET)).isCloseTo(133.3, within(0.05));
    }

    @Nested
    class UpToTwentyFiveFeet {
        /** 300 kcmil carry 285 A, 250 kcmil 255 A. */
        @Test
        void carriesAThirdOfTheDeviceBefore() {
            assertThat(breaks(before(800), tap(cable("300 kcmil", TWENTY_FIVE_FEET)), main(250)))
                    .isEmpty();
            assertThat(breaks(before(800), tap(cable("250 kcmil", TWENTY_FIVE_FEET)), main(250)))
                    .singleElement()
                    .satisfies(it -> isOf(it, "tap-below-its-beginning", 266.7, 255, "NEC 240.21(B)(2)"));
        }

        /** 1/0 AWG carries 150 A, 1 AWG 130 A. */
        @Test
        void takesTheNextSizeOnBothSidesOfTheLimit() {
            assertThat(breaks(before(400), tap(cable("1/0 AWG", 7)), main(150))).isEmpty();
            assertThat(breaks(before(400), tap(cable("1 AWG", 7)), main(125)))
                    .singleElement()
                    .satisfies(it -> isOf(it, "tap-below-its-beginning", 133.3, 130, "NEC 240.21(B)(2)"));
        }

        /** The next size up, 300 A for 285 A, is for conductors that begin at their device. */
        @Test
        void endsInADeviceThatItCarries() {
            assertThat(breaks(before(800), tap(cable("300 kcmil", 7)), main(300)))
                    .singleElement()
                    .satisfies(it -> isOf(it, "tap-below-its-end", 300, 285, "NEC 240.21(B)(2)"));
        }

        @Test
        void askForTheDeviceThatItEndsIn() {
            assertThat(unchecked(before(800), tap(cable("300 kcmil", 7)), Optional.empty()))
                    .singleElement()
                    .satisfies(it -> assertThat(it).contains("main, the one device"));
        }

        @Test
        void endsThere() {
            assertThat(breaks(before(800), tap(cable("300 kcmil", 7.7)), main(250)))
                    .singleElement()
                    .satisfies(it -> isOf(it, "tap-too-long", 7.7, 7.62, "NEC 240.21(B)(2)"));
        }
    }

    @Nested
    class UpToTenFeet {
        /** 3 AWG carries 100 A, 80 of 800 A are a tenth; of 1200 A 120 A would be. */
        @Test
        void carriesATenthOfTheDeviceBeforeWhereItLeavesItsEnclosure() {
            assertThat(breaks(before(800), tap(cable("3 AWG", TEN_FEET)), main(100)))
                    .isEmpty();
            assertThat(breaks(before(1200), tap(cable("3 AWG", TEN_FEET)), main(100)))
                    .singleElement()
                    .satisfies(it -> isOf(it, "tap-below-its-beginning", 120, 100, "NEC 240.21(B)(1)"));
            assertThat(breaks(
                            before(1200),
                            tap(cable("3 AWG", TEN_FEET), IN_RACEWAY.withLeavesEnclosure(false)),
                            main(100)))
                    .isEmpty();
        }

        /** The panel is rated 225 A; 4/0 AWG carries 230 A, 3/0 AWG 200 A. */
        @Test
        void carriesWhatGearWithoutAMainIsRatedFor() {
            assertThat(breaks(before(800), tap(cable("4/0 AWG", 3)), Optional.empty()))
                    .isEmpty();
            assertThat(breaks(before(800), tap(cable("3/0 AWG", 3)), Optional.empty()))
                    .singleElement()
                    .satisfies(it -> isOf(it, "tap-below-its-end", 225, 200, "NEC 240.21(B)(1)"));
        }
    }

    @Test
    void mayNotBeTapped() {
        assertThat(breaks(tap(cable("500 kcmil", 3)), tap(cable("300 kcmil", 3)), main(250)))
                .filteredOn(it -> it.place().equals("P"))
                .singleElement()
                .satisfies(it -> assertThat(it.kind()).isEqualTo("tap-of-a-tap"));
    }

    @Test
    void isProtectedFromDamage() {
        Feeder bare = tap(
                cable("300 kcmil", 7),
                FeederTap.builder().inRaceway(Optional.of(false)).build());
        Feeder unknown = tap(cable("300 kcmil", 7), FeederTap.builder().build());

        assertThat(breaks(before(800), bare, main(250)))
                .singleElement()
                .satisfies(it -> assertThat(it.kind()).isEqualTo("tap-in-the-open"));
        assertThat(unchecked(before(800), unknown, main(250)))
                .singleElement()
                .satisfies(it -> assertThat(it).contains("feeder.tap.in_raceway"));
    }

    @Test
    void asksForTheDeviceBefore() {
        assertThat(unchecked(Feeder.builder().build(), tap(cable("300 kcmil", 7)), main(250)))
                .singleElement()
                .satisfies(it -> assertThat(it).contains("the device before the tap"));
    }

    @Test
    void isHeldAgainstNecAlone() {
        Project project = plant(Cabling.IEC, before(800), tap(cable("300 kcmil", 7)), main(250));

        assertThat(remarks(project, Grade.NOT_CHECKED))
                .singleElement()
                .satisfies(it -> assertThat(it.message()).contains("electrical.practice nec"));
    }

    /** No device of its own is compared with others, and its cable is protected by the one that it ends in. */
    @Test
    void hasNoDeviceWhereItBegins() {
        Project project = plant(Cabling.NEC, before(800), tap(cable("300 kcmil", 7)), main(250));
        List<Remark> conductors = Reviews.of(
                        new ConductorCheck(),
                        project,
                        aPlan().assignments(anAssignment("L").at("P", 1)).build())
                .remarks();

        assertThat(conductors)
                .noneMatch(it -> it.grade() == Grade.BREAKS && it.place().equals("P"));
    }
}
