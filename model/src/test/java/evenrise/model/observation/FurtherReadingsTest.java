package evenrise.model.observation;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aBoardType;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.observation.ObservedStart.Finding;
import evenrise.model.project.Phase;
import evenrise.model.project.Project;
import evenrise.model.rules.Layout;
import evenrise.model.rules.PlanFinisher;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Two panels whose boards step together: at the supply each start is two loads, at a panel it is one. */
class FurtherReadingsTest {
    private static final double INTERVAL = 0.02;
    private static final Map<Phase, Double> NOISE = Map.of(Phase.A, 0.02, Phase.B, 0.02, Phase.C, 0.02);

    private static Layout layout(double smallAmps) {
        Project project = aProject()
                .panels(aPanel("P1").ratedAmps(25), aPanel("P2").ratedAmps(25))
                .boardTypes(aBoardType())
                .boards(aBoard("B1"), aBoard("B2").in("P2"))
                .loads(
                        aLoad("one").auxiliary().idleAmps(1),
                        aLoad("two").auxiliary().idleAmps(1),
                        aLoad("three").auxiliary().idleAmps(1),
                        aLoad("four").auxiliary().idleAmps(1),
                        aLoad("small").auxiliary().idleAmps(smallAmps))
                .build();
        return Layout.of(
                project,
                PlanFinisher.timed(
                        project,
                        aPlan().board("B1", 0, 1)
                                .board("B2", 0, 1)
                                .assignments(
                                        anAssignment("one").at("P1", 1).on("B1", 1),
                                        anAssignment("two").at("P1", 3).on("B1", 2),
                                        anAssignment("three").at("P2", 1).on("B2", 1),
                                        anAssignment("four").at("P2", 3).on("B2", 2),
                                        anAssignment("small").at("P2", 5).on("B2", 3))
                                .build()));
    }

    /** With every start that one of these is in left open. */
    private static FurtherReadings further(Layout layout, String... open) {
        Sight sight = new Sight(0, Optional.empty(), Set.of(Phase.values()), INTERVAL, INTERVAL);
        List<ObservedStart> starts = sight.expected(layout).stream()
                .map(each -> new ObservedStart(
                        each,
                        each.loads().stream().anyMatch(List.of(open)::contains)
                                ? Finding.CANNOT_TELL
                                : Finding.AS_PLANNED,
                        Finding.AS_PLANNED,
                        Optional.empty(),
                        OptionalDouble.empty(),
                        0.5,
                        Optional.empty()))
                .toList();
        return FurtherReadings.of(layout, sight, NOISE, starts);
    }

    @Test
    void asksForOneMoreStartAtTwoPanelsRatherThanForFourLoadsAlone() {
        FurtherReadings further = further(layout(1), "one", "two", "three", "four");

        assertThat(further.places())
                .containsExactly(
                        new FurtherReadings.Place("panel 'P1'", List.of("one", "two")),
                        new FurtherReadings.Place("panel 'P2'", List.of("three", "four")));
        assertThat(further.alone()).isEmpty();
        assertThat(further.isLeast()).isTrue();
    }

    @Test
    void asksForALoadAloneWhereAPanelWouldTellNoOther() {
        FurtherReadings further = further(layout(1), "small");

        assertThat(further.places()).isEmpty();
        assertThat(further.alone()).containsExactly("small");
    }

    @Test
    void tellsAtAPanelWhatJumpsByFiveStandardDeviationsAndNothingSmaller() {
        // 5 · 0.02 A
        assertThat(further(layout(0.1), "two", "small").alone()).containsExactly("two");
        assertThat(further(layout(0.099), "two", "small").alone()).contains("small");
    }

    @Test
    void asksForNothingWhereNothingIsOpen() {
        FurtherReadings further = further(layout(1));

        assertThat(further.count()).isZero();
        assertThat(further.isLeast()).isTrue();
    }
}
