package evenrise.solver.observation;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.observation.ExpectedStart;
import evenrise.model.observation.Observation;
import evenrise.model.observation.ObservedStart;
import evenrise.model.observation.ObservedStart.Finding;
import evenrise.model.observation.Observer;
import evenrise.model.plan.BoardSetting;
import evenrise.model.plan.MadeBy;
import evenrise.model.project.Phase;
import evenrise.model.rules.Layout;
import evenrise.model.rules.PlanFinisher;
import evenrise.solver.observation.PlantedFault.Planted;
import evenrise.solver.sample.Sample;
import evenrise.solver.sample.Venue;
import evenrise.solver.sample.VenueSize;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Drawn venues that start with planted faults, recorded by physics of their own at 50 samples a second. */
@Tag("random")
class ObserverTest {
    private static final int PLANTS = Integer.getInteger("evenrise.observed", 1);
    private static final int FIRST = Integer.getInteger("evenrise.observed.first", 1);
    private static final double INTERVAL = 0.02;
    private static final double SIGMA = 0.02;
    /** With what a clamp that rounds to 10 mA adds: an even spread over that, whose deviation is its width over √12. */
    private static final double NOISE = Math.hypot(SIGMA, 0.01 / Math.sqrt(12));

    private static final double SPREAD = 0.05;
    private static final double OFFSET = 100;
    private static final double RATE = 1.0002;

    /** Of one to twelve panels, some 20 to 300 loads. */
    static Layout layout(long seed) {
        return layout(seed, 1 + (int) ((seed - 1) % 12));
    }

    static Layout layout(long seed, int panels) {
        Venue venue = Sample.venue(seed, VenueSize.ofPanels(panels));
        MadeBy madeBy = MadeBy.builder()
                .softwareVersion("test")
                .projectSha256("0")
                .seed(1)
                .threads(1)
                .build();
        return Layout.of(venue.project(), PlanFinisher.signed(venue.project(), venue.layout(), madeBy));
    }

    static SimulatedStart start(Layout layout, long seed) {
        return new SimulatedStart(layout, 0, SPREAD, new Random(seed));
    }

    static Observation observed(Layout layout, SimulatedStart start) {
        return Observer.of(layout, 0, Optional.empty(), start.recorded(INTERVAL, SIGMA, OFFSET, RATE));
    }

    private static List<ExpectedStart> distinguishable(List<ExpectedStart> all) {
        return all.stream()
                .filter(each -> PlantedFault.isDistinguishable(each, all, NOISE, INTERVAL))
                .toList();
    }

    @Test
    void raisesNoAlarmAtSoundPlantsAndFindsWhatIsPlanted() {
        int alarms = 0;
        int starts = 0;
        int open = 0;
        int clear = 0;
        int[][] counts = new int[PlantedFault.values().length][3];
        for (long seed = FIRST; seed < FIRST + PLANTS; seed++) {
            Layout layout = layout(seed);
            Observation sound = observed(layout, start(layout, seed));
            List<ExpectedStart> all =
                    sound.starts().stream().map(ObservedStart::expected).toList();
            alarms += sound.isAsPlanned() ? 0 : 1;
            if (!sound.isAsPlanned()) {
                System.out.println("seed " + seed + ": false alarm: " + sound.channels() + sound.scales()
                        + sound.settings() + sound.unknown()
                        + sound.starts().stream()
                                .filter(each -> each.finding().isDifference())
                                .toList());
            }
            List<ExpectedStart> distinguishable = distinguishable(all);
            starts += all.size();
            clear += distinguishable.size();
            open += (int) sound.starts().stream()
                    .filter(each -> distinguishable.contains(each.expected()) && each.finding() != Finding.AS_PLANNED)
                    .count();
            assertThat(sound.isRecognised()).isTrue();
            assertThat(sound.clock().offsetSeconds()).isBetween(OFFSET - 0.02, OFFSET + 0.02);
            for (PlantedFault kind : PlantedFault.values()) {
                SimulatedStart start = start(layout, seed);
                Optional<Planted> planted = kind.plant(start, distinguishable, all, new Random(seed));
                if (planted.isPresent()) {
                    Observation seen = observed(layout, start);
                    int[] count = counts[kind.ordinal()];
                    count[0]++;
                    count[1] += planted.get().isFound(seen) ? 1 : 0;
                    if (!planted.get().isFound(seen)) {
                        System.out.println("seed " + seed + ": " + planted.get() + " told as "
                                + planted.get().finding(seen));
                    }
                    count[2] += planted.get().finding(seen) == Finding.CANNOT_TELL ? 1 : 0;
                }
            }
        }

        System.out.printf(
                "%d sound plants, alarms at %d; %d starts, %d of them distinguishable, of which %d not told%n",
                PLANTS, alarms, starts, clear, open);
        for (PlantedFault kind : PlantedFault.values()) {
            int[] count = counts[kind.ordinal()];
            System.out.printf("%s: %d planted, %d found, %d cannot be told%n", kind, count[0], count[1], count[2]);
        }
        assertThat(alarms).as("alarms").isLessThanOrEqualTo(PLANTS / 100);
        assertThat(open).as("cannot be told").isLessThanOrEqualTo(clear / 50);
        for (PlantedFault kind : PlantedFault.values()) {
            int[] count = counts[kind.ordinal()];
            assertThat(count[1]).as(kind + " found").isGreaterThanOrEqualTo(count[0] - count[0] / 100);
        }
    }

    /** Long tails, shoulders and two parts: what they leave of a surge is no other current, no exchange and no scale. */
    @ParameterizedTest
    @ValueSource(longs = {6001, 6013})
    void raisesNoAlarmAtASoundPlantWhoseSurgesDecayAsNoExponentialDoes(long seed) {
        Layout layout = layout(seed);

        Observation seen = observed(layout, new SimulatedStart(layout, 0, SPREAD, new Random(seed), true));

        assertThat(seen.isRecognised()).isTrue();
        assertThat(seen.starts()).noneMatch(each -> each.finding().isDifference());
        assertThat(seen.unknown()).isEmpty();
        assertThat(seen.scales()).isEmpty();
        assertThat(seen.channels()).isEmpty();
    }

    /**
     * Of two that are exchanged a slow surge hides the one; something comes on at a missing load's time on other phases; a
     * load that is unknown stands between two that are planned; a step elsewhere stands for a dead load; and a late load
     * follows upon another's surge.
     */
    @ParameterizedTest
    @CsvSource({"617, SWAPPED", "653, TURNED", "658, UNKNOWN", "809, DEAD", "601, LATE"})
    void findsWhatStepsAloneDoNotTell(long seed, PlantedFault kind) {
        Layout layout = layout(seed);
        List<ExpectedStart> all = observed(layout, start(layout, seed)).starts().stream()
                .map(ObservedStart::expected)
                .toList();
        SimulatedStart start = start(layout, seed);
        Planted planted =
                kind.plant(start, distinguishable(all), all, new Random(seed)).orElseThrow();

        Observation seen = observed(layout, start);

        assertThat(planted.isFound(seen)).as("%s", planted).isTrue();
        assertThat(seen.starts().stream()
                        .filter(each -> each.finding().isDifference())
                        .flatMap(each -> each.expected().loads().stream()))
                .as("what is said of others")
                .allMatch(load -> planted.truth(load) != Finding.AS_PLANNED);
    }

    @Test
    void findsSwappedClamps() {
        Layout layout = layout(1);
        SimulatedStart start = start(layout, 1);
        start.swapClamps(0, 1);

        assertThat(observed(layout, start).channels())
                .containsExactlyInAnyOrderEntriesOf(Map.of(Phase.A, Phase.B, Phase.B, Phase.A));
    }

    @Test
    void findsAClampInAnotherRange() {
        Layout layout = layout(1);
        SimulatedStart start = start(layout, 1);
        start.scale(2, 0.5);

        Map<Phase, Double> scales = observed(layout, start).scales();

        assertThat(scales.keySet()).containsExactly(Phase.C);
        assertThat(scales.get(Phase.C)).isBetween(1.8, 2.2);
    }

    @Test
    void findsABoardThatIsSetOtherwise() {
        int planted = 0;
        int found = 0;
        for (long seed = FIRST; seed < FIRST + PLANTS; seed++) {
            Layout layout = layout(seed);
            Optional<BoardSetting> other = otherSetting(layout, new Random(seed));
            if (other.isPresent()) {
                SimulatedStart start = start(layout, seed);
                set(start, layout, other.get());
                planted++;
                found += observed(layout, start).settings().equals(List.of(other.get())) ? 1 : 0;
            }
        }

        System.out.printf("boards set otherwise: %d planted, %d found%n", planted, found);
        assertThat(planted).isPositive();
        assertThat(found).isGreaterThanOrEqualTo(planted - planted / 100);
    }

    private static void set(SimulatedStart start, Layout layout, BoardSetting other) {
        List<BoardSetting> boards = layout.plan().boards().stream()
                .map(each -> each.id().equals(other.id()) ? other : each)
                .toList();
        Layout really =
                Layout.of(layout.project(), layout.plan().with().boards(boards).build());
        Set<String> loads = new HashSet<>();
        really.placements().stream()
                .filter(each -> each.onSeconds().isPresent())
                .forEach(each -> loads.add(each.id()));
        start.shift(
                loads, load -> really.placement(load).orElseThrow().onSeconds().orElseThrow());
    }

    /** Of a board with four loads or more that no other follows. */
    private static Optional<BoardSetting> otherSetting(Layout layout, Random chance) {
        List<BoardSetting> others = new ArrayList<>();
        layout.project().boards().forEach(board -> {
            boolean isFollowed = layout.project().boards().stream()
                    .anyMatch(each -> each.after().filter(board.id()::equals).isPresent());
            if (layout.outputs(board.id()).size() >= 4 && !isFollowed) {
                layout.project().boardTypes().stream()
                        .filter(type -> type.id().equals(board.type()))
                        .forEach(type -> type.stepSeconds().forEach(step -> {
                            BoardSetting planned = layout.setting(board);
                            if (planned.stepSeconds().isPresent() && step != planned.betweenSeconds()) {
                                others.add(new BoardSetting(board.id(), planned.delaySeconds(), step));
                            }
                        }));
            }
        });
        return others.isEmpty() ? Optional.empty() : Optional.of(others.get(chance.nextInt(others.size())));
    }

    @Test
    void takesNoRecordingOfSomethingElseForTheStart() {
        Observation seen =
                Observer.of(layout(1), 0, Optional.empty(), start(layout(4), 3).recorded(INTERVAL, SIGMA, OFFSET, 1));

        assertThat(seen.isAsPlanned()).isFalse();
    }
}
