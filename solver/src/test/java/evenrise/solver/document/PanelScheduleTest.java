package evenrise.solver.document;

import static evenrise.model.Fixtures.aPlan;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.plan.Assignment;
import evenrise.model.project.Cable;
import evenrise.model.project.Circuit;
import evenrise.model.project.Electrical;
import evenrise.model.project.Feeder;
import evenrise.model.project.Load;
import evenrise.model.project.LoadBuilder;
import evenrise.model.project.Panel;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Practice;
import evenrise.model.project.Project;
import evenrise.model.project.Role;
import evenrise.model.project.Supply;
import evenrise.model.rules.Layout;
import evenrise.solver.browser.DrawnPages;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** A panel of 120/208 V: 10 A on one pole, 12 A on two, 6 A on three, a breaker that feeds nothing. */
class PanelScheduleTest {
    private static final Cable BRANCH =
            Cable.builder().lengthMetres(10).size("2.5 mm2").build();

    private static Panel panel() {
        return Panel.builder().id("P").slots(12).ratedAmps(100).build();
    }

    private static LoadBuilder load(String id, int poles, double breakerAmps, double runningAmps) {
        return Load.builder()
                .id(id)
                .name(id)
                .role(Role.AUXILIARY)
                .poles(poles)
                .switched(false)
                .breakerAmps(breakerAmps)
                .runningAmps(runningAmps);
    }

    private static Project hall(Panel panel) {
        return Project.builder()
                .format("evenrise-project/1")
                .name("Hall")
                .supply(Supply.builder()
                        .system(PhaseSystem.THREE_PHASE)
                        .lineToNeutralVolts(120)
                        .frequencyHertz(60)
                        .ratedAmps(100)
                        .build())
                .panels(List.of(panel))
                .loads(List.of(
                        load("one", 1, 20, 10).build(),
                        load("two", 2, 6.3, 12)
                                .circuit(Optional.of(Circuit.builder()
                                        .cable(Optional.of(BRANCH))
                                        .continuous(false)
                                        .build()))
                                .build(),
                        load("three", 3, 20, 6).build(),
                        load("none", 1, 20, 0).build()))
                .build();
    }

    private static Assignment in(String load, int slot) {
        return Assignment.builder().load(load).panel("P").slot(slot).build();
    }

    private static Schedule schedule(Project project) {
        Layout layout = Layout.of(
                project,
                aPlan().build().withAssignments(List.of(in("one", 1), in("two", 3), in("three", 2), in("none", 7))));
        return DrawnPages.of(layout).document().schedules().get(0);
    }

    private static Map<Integer, Schedule.Slot> slots(Schedule schedule) {
        return schedule.rows().stream()
                .flatMap(row -> Stream.of(row.left(), row.right()))
                .collect(Collectors.toMap(Schedule.Slot::number, Function.identity()));
    }

    private static Map<String, LoadSummary.Line> summary(Schedule schedule) {
        return schedule.summary().stream().collect(Collectors.toMap(LoadSummary.Line::name, Function.identity()));
    }

    private static Map<String, Fact> head(Schedule schedule) {
        return schedule.head().stream().collect(Collectors.toMap(Fact::name, Function.identity()));
    }

    @Nested
    class Circuits {
        private final Map<Integer, Schedule.Slot> slots = slots(schedule(hall(panel())));

        @Test
        void haveTheirRatingOverTheirPoles() {
            assertThat(slots.get(1).breaker()).isEqualTo("20/1");
            assertThat(slots.get(3).breaker()).isEqualTo("6.3/2");
            assertThat(slots.get(2).breaker()).isEqualTo("20/3");
        }

        @Test
        void haveTheVoltageThatTheirPolesAreBetween() {
            // 10 A · 120 V; 12 A · √3 · 120 V over two poles; 6 A · 3 · 120 V over three.
            assertThat(slots.get(1).power()).isEqualTo("1200");
            assertThat(slots.get(3).power()).isEqualTo("1247");
            assertThat(slots.get(5).power()).isEqualTo("1247");
            assertThat(slots.get(4).power()).isEqualTo("720");
        }

        @Test
        void tellABreakerThatFeedsNothingFromASlotWithoutOne() {
            assertThat(slots.get(7).state()).isEqualTo("spare");
            assertThat(slots.get(8).state()).isEqualTo("space");
        }

        @Test
        void nameTheirConductorsWhereThoseAreStated() {
            assertThat(slots.get(3).wire()).isEqualTo("2.5 mm²");
            assertThat(slots.get(1).wire()).isEmpty();
        }
    }

    @Nested
    class Sums {
        @Test
        void addUpEachPhase() {
            LoadSummary.Line connected = summary(schedule(hall(panel()))).get("Connected");

            // A: 1200 + 720; B: 1247.1 + 720; C: the same; the line that carries most: 12 + 6 A.
            assertThat(connected.voltAmps()).containsExactly("1920", "1967", "1967");
            assertThat(connected.total()).isEqualTo("5854");
            assertThat(connected.amps()).isEqualTo("18.00 A");
        }

        @Test
        void countWhatIsContinuousAQuarterMore() {
            LoadSummary.Line continuous = summary(schedule(hall(panel()))).get("Continuous at 125 %");

            // B: 12 A that are not continuous, and 6 A that are: 12 + 7.5; A: 1.25 · (10 + 6) = 20.
            assertThat(continuous.amps()).isEqualTo("20.00 A");
            assertThat(continuous.voltAmps().get(0)).isEqualTo("2400");
            assertThat(continuous.isBad()).isFalse();
        }

        @Test
        void sayWhereTheDeviceIsTooSmallForThat() {
            Panel tight = panel().withFeeder(Optional.of(
                    Feeder.builder().breakerAmps(OptionalDouble.of(19)).build()));
            Panel enough = panel().withFeeder(Optional.of(
                    Feeder.builder().breakerAmps(OptionalDouble.of(20)).build()));

            assertThat(summary(schedule(hall(tight))).get("Continuous at 125 %").isBad())
                    .isTrue();
            assertThat(summary(schedule(hall(enough)))
                            .get("Continuous at 125 %")
                            .isBad())
                    .isFalse();
        }

        @Test
        void haveNoSuchFactorByIecPractice() {
            Project project = hall(panel())
                    .withElectrical(Optional.of(Electrical.builder()
                            .practice(Optional.of(Practice.IEC))
                            .build()));

            assertThat(summary(schedule(project)))
                    .doesNotContainKey("Continuous at 125 %")
                    .containsKey("Allowed to run");
        }
    }

    @Nested
    class Heads {
        @Test
        void leaveRoomForWhatNobodyStates() {
            Map<String, Fact> head = head(schedule(hall(panel())));

            assertThat(List.of("Location", "Mounting", "Enclosure", "Interrupting rating", "Feeder"))
                    .allSatisfy(name -> assertThat(head.get(name).value()).isEmpty());
            assertThat(head.get("Available fault").value()).isEqualTo("not calculated");
            assertThat(head.get("Voltage").value()).isEqualTo("120/208 V, 3-phase, 4-wire");
        }

        @Test
        void haveWhatTheProjectStates() {
            Map<String, Fact> head = head(schedule(hall(panel().with()
                    .location(Optional.of("Stage left, level 1"))
                    .mounting(Optional.of("surface"))
                    .enclosure(Optional.of("NEMA 1"))
                    .interruptingAmps(OptionalDouble.of(14_000))
                    .build())));

            assertThat(head.get("Location").value()).isEqualTo("Stage left, level 1");
            assertThat(head.get("Mounting").value()).isEqualTo("surface");
            assertThat(head.get("Enclosure").value()).isEqualTo("NEMA 1");
            assertThat(head.get("Interrupting rating").value()).isEqualTo("14 kA");
        }
    }
}
