package evenrise.model.review;

import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.aSupply;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.plan.Plan;
import evenrise.model.project.Cable;
import evenrise.model.project.Electrical;
import evenrise.model.project.Equipment;
import evenrise.model.project.Feeder;
import evenrise.model.project.Motor;
import evenrise.model.project.Panel;
import evenrise.model.project.Phase;
import evenrise.model.project.Project;
import evenrise.model.rules.Layout;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class NextLoadTest {
    private static Project project(double neutralFactor, double... amps) {
        List<evenrise.model.LoadBuilder> loads = new ArrayList<>();
        for (int i = 0; i < amps.length; i++) {
            loads.add(aLoad("L" + (i + 1)).unswitched().runningAmps(amps[i]));
        }
        return aProject()
                .supply(aSupply().ratedAmps(400))
                .panels(aPanel("P1").slots(6).ratedAmps(100).neutralFactor(neutralFactor))
                .loads(loads)
                .build();
    }

    private static final Plan ONE_EACH = aPlan().assignments(
                    anAssignment("L1").at("P1", 1),
                    anAssignment("L2").at("P1", 3),
                    anAssignment("L3").at("P1", 5))
            .build();

    @Test
    void offersTheFreeSlotWithMostRoomFirst() {
        List<NextLoad.Place> places = NextLoad.places(Layout.of(project(1, 70, 60, 75), ONE_EACH), 1);

        assertThat(places).extracting(NextLoad.Place::slots).containsExactly(List.of(4), List.of(2), List.of(6));
        assertThat(places.get(0).phases()).containsExactly(Phase.B);
        assertThat(places.get(0).amps()).isCloseTo(20, within(1e-9));
    }

    @Test
    void takesAllPhasesOfAMultiPoleBreakerTogether() {
        List<NextLoad.Place> places = NextLoad.places(Layout.of(project(1, 70, 60, 75), ONE_EACH), 3);

        assertThat(places).singleElement().satisfies(place -> {
            assertThat(place.slots()).containsExactly(2, 4, 6);
            assertThat(place.amps()).isCloseTo(5, within(1e-9));
        });
    }

    @Test
    void offersNothingWhereAPhaseIsFull() {
        assertThat(NextLoad.places(Layout.of(project(1, 80, 60, 75), ONE_EACH), 3))
                .isEmpty();
    }

    /** 20 A on A, B and C, 30 A allowed: with x more on A, and B and C off, 20 + x; so 10 A, though all on would allow 30. */
    @Test
    void stopsWhereTheWorstUseOfTheNeutralIsFull() {
        Layout layout = Layout.of(project(0.3, 20, 20, 20), ONE_EACH);

        assertThat(NextLoad.places(layout, 1)).allSatisfy(place -> {
            assertThat(place.amps()).isCloseTo(10, within(1e-6));
            assertThat(place.limit()).isEqualTo("the panel's neutral");
        });
        assertThat(NextLoad.places(layout, 2).get(0).amps()).isCloseTo(60, within(1e-9));
    }

    @Nested
    class ByTheFeeder {
        /** 56 A on each line of a panel of 225 A. */
        private static Project fed(Electrical electrical, Feeder feeder, double third) {
            return aProject()
                    .supply(aSupply().ratedAmps(400).neutralFactor(2))
                    .panels(aPanel("P1").slots(12).ratedAmps(225).feeder(feeder))
                    .loads(
                            aLoad("L1").unswitched().runningAmps(56).thirdHarmonic(third),
                            aLoad("L2").unswitched().runningAmps(56).thirdHarmonic(third),
                            aLoad("L3").unswitched().runningAmps(56).thirdHarmonic(third))
                    .electrical(electrical)
                    .build();
        }

        private static Feeder feeder(String size, double breakerAmps) {
            Cable cable = Cabling.cable(size, 10);
            boolean isMetric = size.endsWith("mm2");
            return Cabling.feeder(
                    isMetric ? cable : Cabling.insulated(cable.withConductorCelsius(OptionalDouble.of(75))),
                    breakerAmps);
        }

        private static void isRoom(Project project, int poles, double amps, String limit) {
            assertThat(NextLoad.places(Layout.of(project, ONE_EACH), poles))
                    .isNotEmpty()
                    .allSatisfy(place -> {
                        assertThat(place.amps()).isCloseTo(amps, within(1e-6));
                        assertThat(place.limit()).isEqualTo(limit);
                    });
        }

        @Test
        void theDeviceAllowsItsRatingOverOnePointTwoFive() {
            // NEC 215.3: 80 A / 1.25 = 64 A, less 56 A; the panel's rating alone would leave 124 A.
            for (int poles = 1; poles <= 3; poles++) {
                isRoom(fed(Cabling.NEC, feeder("4 AWG", 80), 0), poles, 8, "the feeder's device");
            }
            // With no practice stated the least of both counts.
            isRoom(fed(Electrical.UNKNOWN, feeder("4 AWG", 80), 0), 2, 8, "the feeder's device");
        }

        @Test
        void theCableAllowsItsColumnOverOnePointTwoFive() {
            // NEC table 310.16: 4 AWG copper, 75 °C, 85 A; 215.2(A): 85 / 1.25 = 68 A, less 56 A.
            isRoom(fed(Cabling.NEC, feeder("4 AWG", 125), 0), 2, 12, "the feeder's cable");
        }

        @Test
        void iecPracticeHasNoSuchFactor() {
            // IEC 60364-4-43 clause 433.1: Ib up to In of 63 A; table B.52.4: 16 mm², method B1, three loaded, 68 A.
            isRoom(fed(Cabling.IEC, feeder("16 mm2", 63), 0), 3, 7, "the feeder's device");
            isRoom(fed(Cabling.IEC, feeder("16 mm2", 80), 0), 3, 12, "the feeder's cable");
        }

        @Test
        void aNeutralThatIsFullTakesNoOnePoleLoad() {
            // 3·0.7·56/√1.49 = 96.3 A in a neutral for 95 A × 0.8 (four conductors) = 76 A.
            Project project = fed(Cabling.NEC, feeder("4 AWG", 80), 0.7);

            assertThat(NextLoad.places(Layout.of(project, ONE_EACH), 1)).isEmpty();
            isRoom(project, 2, 8, "the feeder's device");
        }
    }

    /** 5 hp at 208 V: 16.7 A by NEC table 430.250, though it runs at 12 A; 100 A · 0.8 − 16.7 A. */
    @Test
    void countsAMotorByTheFullLoadThatItsCircuitIsSizedBy() {
        Motor motor = Motor.builder().horsepower(OptionalDouble.of(5)).build();
        Project project = aProject()
                .supply(aSupply().ratedAmps(400))
                .panels(aPanel("P1").slots(12).ratedAmps(100))
                .loads(aLoad("L1")
                        .unswitched()
                        .threePole()
                        .runningAmps(12)
                        .equipment(Equipment.builder().motor(Optional.of(motor)).build()))
                .electrical(Cabling.NEC)
                .build();
        Plan plan = aPlan().assignments(anAssignment("L1").at("P1", 1)).build();

        assertThat(NextLoad.places(Layout.of(project, plan), 3).get(0).amps()).isCloseTo(63.3, within(1e-6));
    }

    @Test
    void aPanelThatIsSilentIsJudgedAtEightyPercentByNec() {
        Project project = project(1, 70, 70, 70)
                .withSupply(aSupply().ratedAmps(400).continuousFraction(1).build());

        double byNec = most(project.withElectrical(Optional.of(Cabling.NEC)));
        double byIec = most(project.withElectrical(Optional.of(Cabling.IEC)));
        Panel stating = project.panels().get(0).withContinuousFraction(OptionalDouble.of(0.9));
        double byItself = most(project.withElectrical(Optional.of(Cabling.NEC)).withPanels(List.of(stating)));

        assertThat(byNec).isCloseTo(10, within(1e-9));
        assertThat(byIec).isCloseTo(30, within(1e-9));
        assertThat(byItself).isCloseTo(20, within(1e-9));
    }

    private static double most(Project project) {
        return NextLoad.places(Layout.of(project, ONE_EACH), 3).get(0).amps();
    }
}
