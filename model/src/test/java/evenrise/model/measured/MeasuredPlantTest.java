package evenrise.model.measured;

import static evenrise.model.measured.OnSite.idle;
import static evenrise.model.measured.OnSite.on;
import static evenrise.model.measured.OnSite.place;
import static evenrise.model.measured.OnSite.places;
import static evenrise.model.measured.OnSite.poles;
import static evenrise.model.measured.OnSite.running;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.measured.Discrepancy.Weight;
import evenrise.model.plan.BrokenRule;
import evenrise.model.project.Phase;
import evenrise.model.rules.Layout;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** What readings say beside the plan of {@link OnSite}. */
class MeasuredPlantTest {
    private final Layout layout = OnSite.layout();

    private MeasuredPlant measured(SiteReadings readings) {
        return MeasuredPlant.of(layout, readings, load -> false);
    }

    private List<Discrepancy> found(SiteReadings readings) {
        return measured(readings).discrepancies();
    }

    private double onSeconds(String load) {
        return layout.placement(load).orElseThrow().onSeconds().orElseThrow();
    }

    @Nested
    class ALoad {
        @Test
        void isAsPlannedWithinModelAndMeter() {
            // 24 % of 2 A and 2 % of 2.5 A: 0.48 + 0.05 A
            assertThat(found(poles(idle("one", Phase.A, 2.5)))).isEmpty();
        }

        @Test
        void differsBeyondThem() {
            assertThat(found(poles(idle("one", Phase.A, 2.6)))).singleElement().satisfies(each -> {
                assertThat(each.weight()).isEqualTo(Weight.DIFFERS);
                assertThat(each.tolerance()).isEqualTo(0.48 + 0.052);
                assertThat(each.cause()).isEqualTo("its idle_a as stated is not what it draws");
            });
        }

        @Test
        void wasGuessedWhereItSaysSo() {
            assertThat(found(poles(idle("two", Phase.B, 5.5))))
                    .extracting(Discrepancy::cause)
                    .containsExactly("its idle_a was guessed");
        }

        @Test
        void doesNotDraw() {
            assertThat(found(poles(idle("one", Phase.A, 0)))).singleElement().satisfies(each -> {
                assertThat(each.weight()).isEqualTo(Weight.FAULT);
                assertThat(each.cause()).isEqualTo("it does not draw");
            });
        }

        @Test
        void hasADeadPole() {
            assertThat(found(poles(idle("three", Phase.A, 1), idle("three", Phase.B, 0.02), idle("three", Phase.C, 1))))
                    .singleElement()
                    .satisfies(each -> {
                        assertThat(each.phase()).contains(Phase.B);
                        assertThat(each.cause()).isEqualTo("one pole is dead while others carry current");
                    });
        }

        @Test
        void drawsTwiceAsMuch() {
            assertThat(found(poles(idle("one", Phase.A, 4))))
                    .extracting(Discrepancy::cause)
                    .containsExactly("twice as much");
        }

        @Test
        void isOnAnotherPhase() {
            assertThat(found(poles(idle("one", Phase.C, 2)))).singleElement().satisfies(each -> {
                assertThat(each.quantity()).isEqualTo(MeasuredQuantity.PHASE);
                assertThat(each.cause()).isEqualTo("read on phase C, planned on A");
            });
        }

        @Test
        void isUnsafeWhereTheMeterCannotRuleOutItsBreakersRating() {
            // 2 % of 15.8 A is 0.316 A: up to 16.116 A behind 16 A
            assertThat(found(poles(running("one", 15.8))))
                    .extracting(Discrepancy::weight)
                    .containsExactly(Weight.UNSAFE);
            assertThat(found(poles(running("one", 15.6))))
                    .extracting(Discrepancy::weight)
                    .containsExactly(Weight.DIFFERS);
        }

        @Test
        void drawsLessThanItsPlateWhichIsNoDifference() {
            MeasuredPlant plant = measured(poles(running("one", 3)));

            assertThat(plant.discrepancies()).extracting(Discrepancy::weight).containsExactly(Weight.LESS);
            assertThat(plant.wrongPlates()).isEmpty();
            assertThat(plant.verdict()).isEqualTo(SiteVerdict.NOT_ENOUGH);
        }
    }

    @Nested
    class Times {
        @Test
        void areKeptWithinToleranceAndMeter() {
            assertThat(found(poles(on("one", onSeconds("one") + 0.09)))).isEmpty();
        }

        @Test
        void tellSwappedOutputs() {
            assertThat(found(poles(on("one", onSeconds("two")), on("two", onSeconds("one")))))
                    .extracting(Discrepancy::cause)
                    .containsExactlyInAnyOrder(
                            "it and two come on at each other's time", "it and one come on at each other's time");
        }

        @Test
        void tellABoardThatStartsLate() {
            assertThat(found(poles(
                            on("one", onSeconds("one") + 0.5),
                            on("two", onSeconds("two") + 0.5),
                            on("three", onSeconds("three") + 0.5))))
                    .extracting(Discrepancy::cause)
                    .containsOnly("all of board B1 is 0.50 s late");
        }

        @Test
        void tellABoardThatStepsSlower() {
            assertThat(found(poles(
                            on("one", onSeconds("one")),
                            on("two", onSeconds("two") + 1),
                            on("three", onSeconds("three") + 2))))
                    .extracting(Discrepancy::cause)
                    .containsOnly("board B1 steps faster or slower than planned");
        }
    }

    @Nested
    class APanel {
        @Test
        void isHeldAgainstItsRatingWithTheMetersError() {
            // 80 % of 25 A is 20 A, and 2 % of 19.7 A are 0.394 A
            assertThat(found(places(place(Map.of(), Map.of(), Map.of(Phase.A, 19.7), Optional.empty()))))
                    .extracting(Discrepancy::weight)
                    .containsExactly(Weight.UNSAFE);
            assertThat(found(places(place(Map.of(), Map.of(), Map.of(Phase.A, 19.6), Optional.empty()))))
                    .isEmpty();
        }

        @Test
        void carriesMoreThanItsLoadsAsMeasured() {
            SiteReadings loads = poles(idle("one", Phase.A, 2), idle("three", Phase.A, 1));
            SiteReadings panel = places(place(Map.of(), Map.of(Phase.A, 5.0), Map.of(), Optional.empty()));

            assertThat(found(loads.and(panel)))
                    .extracting(Discrepancy::cause)
                    .containsExactly("2.00 A more than its loads as measured one by one");
        }

        @Test
        void hasAVoltageOutsideWhatIsAllowed() {
            // 120 V ± 10 %
            assertThat(found(places(place(Map.of(Phase.A, 132.5), Map.of(), Map.of(), Optional.empty()))))
                    .extracting(Discrepancy::weight)
                    .containsExactly(Weight.UNSAFE);
            assertThat(found(places(place(Map.of(Phase.A, 107.5), Map.of(), Map.of(), Optional.empty()))))
                    .extracting(Discrepancy::weight)
                    .containsExactly(Weight.DIFFERS);
            assertThat(found(places(place(Map.of(Phase.A, 131.5), Map.of(), Map.of(), Optional.empty()))))
                    .isEmpty();
        }

        @Test
        void turnsTheWrongWay() {
            assertThat(found(places(place(Map.of(), Map.of(), Map.of(), Optional.of(false)))))
                    .extracting(Discrepancy::quantity)
                    .containsExactly(MeasuredQuantity.ROTATION);
        }

        @Test
        void isUnsafeBelowAMegohm() {
            PlaceReading poor = new PlaceReading(
                    "P1",
                    Map.of(),
                    Map.of(),
                    Map.of(),
                    Map.of(),
                    OptionalDouble.empty(),
                    Optional.empty(),
                    OptionalDouble.of(0.9),
                    Optional.empty(),
                    OnSite.VISIT);

            assertThat(measured(places(poor)).verdict()).isEqualTo(SiteVerdict.UNSAFE);
        }
    }

    @Nested
    class TheVerdict {
        @Test
        void isAsPlannedWhereEnoughWasMeasured() {
            MeasuredPlant plant = measured(poles(
                    idle("one", Phase.A, 2),
                    idle("two", Phase.B, 4),
                    idle("three", Phase.A, 1),
                    idle("three", Phase.B, 1),
                    idle("three", Phase.C, 1)));

            assertThat(plant.verdict()).isEqualTo(SiteVerdict.AS_PLANNED);
            assertThat(plant.coverage().missing()).isEmpty();
        }

        @Test
        void namesWhatWasNotMeasuredTheGreatestFirst() {
            MeasuredPlant plant = measured(poles(idle("three", Phase.A, 1)));

            assertThat(plant.verdict()).isEqualTo(SiteVerdict.NOT_ENOUGH);
            assertThat(plant.coverage().missing()).containsExactly("two", "one");
        }

        @Test
        void isUnsafeWhereARatingIsBrokenByWhatWasMeasured() {
            // On A: 15 A and 2 % of it, beside 5 A of the load on three poles: 20.3 A of 20 A
            MeasuredPlant plant = measured(poles(running("one", 15)));

            assertThat(plant.broken()).extracting(BrokenRule::rule).containsExactly("rating");
            assertThat(plant.verdict()).isEqualTo(SiteVerdict.UNSAFE);
        }

        @Test
        void puzzlesNobodyWithWhatMattersLeastFirst() {
            assertThat(found(poles(running("one", 3), idle("two", Phase.B, 5.5), idle("one", Phase.A, 0))))
                    .extracting(Discrepancy::weight)
                    .containsExactly(Weight.FAULT, Weight.DIFFERS, Weight.LESS);
        }
    }

    @Test
    void aResidualCurrentDeviceThatTripsTooLateOrTooHighIsUnsafe() {
        DeviceReading slow = new DeviceReading(
                "P1",
                "one",
                OptionalDouble.of(30),
                OptionalDouble.of(9.5),
                OptionalDouble.of(31),
                OptionalDouble.of(301),
                Optional.empty(),
                "line 2");

        assertThat(found(new SiteReadings(List.of(), List.of(), List.of(slow))))
                .extracting(Discrepancy::quantity, Discrepancy::weight)
                .containsExactlyInAnyOrder(
                        org.assertj.core.groups.Tuple.tuple(MeasuredQuantity.LEAKAGE, Weight.DIFFERS),
                        org.assertj.core.groups.Tuple.tuple(MeasuredQuantity.TRIP_CURRENT, Weight.UNSAFE),
                        org.assertj.core.groups.Tuple.tuple(MeasuredQuantity.TRIP_TIME, Weight.UNSAFE));
    }
}
