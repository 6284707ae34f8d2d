package evenrise.model.rules;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aBoardType;
import static evenrise.model.Fixtures.aGroup;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.aSupply;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.AssignmentBuilder;
import evenrise.model.LoadBuilder;
import evenrise.model.PlanBuilder;
import evenrise.model.ProjectBuilder;
import evenrise.model.event.ConnectedLoads;
import evenrise.model.event.EventScript;
import evenrise.model.event.Happening;
import evenrise.model.event.Rehearsal;
import evenrise.model.event.ScriptEvent;
import evenrise.model.event.Trace;
import evenrise.model.event.Use;
import evenrise.model.project.Behaviour;
import evenrise.model.project.DeadBoard;
import evenrise.model.project.DeadContacts;
import evenrise.model.project.PlanEvent;
import evenrise.model.project.Project;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/**
 * Ten amplifiers on board B1 that idle at 1 A and run at 16 A, two effects spots of 4 A on board B2 that drop in an
 * emergency; one phase. Everything that comes on has lost its inrush before the next does.
 */
class EventPeaksTest {
    private Behaviour behaviour =
            Behaviour.builder().deadContacts(DeadContacts.OPEN).build();
    private final List<LoadBuilder> more = new ArrayList<>();
    private final List<AssignmentBuilder> morePlaces = new ArrayList<>();

    private ProjectBuilder project() {
        List<LoadBuilder> loads = new ArrayList<>(more);
        for (int i = 0; i < 10; i++) {
            loads.add(aLoad("amp" + i)
                    .amplifier()
                    .runningAmps(16)
                    .idleAmps(1)
                    .inrushPeakAmps(60)
                    .inrushHalfMillis(2));
        }
        for (int i = 0; i < 2; i++) {
            loads.add(aLoad("spot" + i)
                    .amplifier()
                    .group("fx")
                    .runningAmps(4)
                    .inrushPeakAmps(90)
                    .inrushHalfMillis(2));
        }
        return aProject()
                .supply(aSupply().singlePhase().ratedAmps(400))
                .panels(aPanel("P").slots(24).ratedAmps(400))
                .boardTypes(aBoardType().outputs(16).startDelaySeconds(0, 10).stepSeconds(0.5))
                .boards(aBoard("B1").in("P"), aBoard("B2").in("P"))
                .groups(aGroup("fx").drops())
                .behaviour(behaviour)
                .loads(loads.toArray(LoadBuilder[]::new));
    }

    private PlanBuilder plan() {
        PlanBuilder plan = aPlan().board("B1", 0, 0.5).board("B2", 10, 0.5);
        for (int i = 0; i < 10; i++) {
            plan.assignments(anAssignment("amp" + i).at("P", i + 1).on("B1", i + 1));
        }
        for (int i = 0; i < 2; i++) {
            plan.assignments(anAssignment("spot" + i).at("P", i + 11).on("B2", i + 1));
        }
        return plan.assignments(morePlaces.toArray(AssignmentBuilder[]::new));
    }

    private Layout layout() {
        Project built = project().build();
        return Layout.of(built, PlanFinisher.timed(built, plan().build()));
    }

    private double peakAmps(PlanEvent event) {
        return layout().eventPeaks().get(0).stream()
                .filter(each -> each.event() == event)
                .findFirst()
                .orElseThrow()
                .peakInrushAmps();
    }

    private double playedAmps(Use use, int episode, ScriptEvent... events) {
        Trace trace = Rehearsal.of(ConnectedLoads.of(layout(), use), new EventScript("test", List.of(events)));
        return trace.episodes().get(episode).peaks().get(0).boundAmps();
    }

    private static ScriptEvent at(double seconds, Happening event) {
        return ScriptEvent.of(OptionalDouble.of(seconds), event);
    }

    private void unswitched() {
        more.add(aLoad("core").unswitched().runningAmps(6).idleAmps(2).inrushPeakAmps(50));
        morePlaces.add(anAssignment("core").at("P", 20));
    }

    @Nested
    class OfARelease {
        @Test
        void stackOnWhatTheShowDraws() {
            // ten of √2·16 A on: 226.274; the first spot on: √2·4 = 5.657; the second comes on with 90: 321.931
            assertThat(peakAmps(PlanEvent.RELEASE)).isCloseTo(321.931, within(1e-3));
        }

        @Test
        void areWhatARehearsalDraws() {
            ScriptEvent[] script = {at(0, Happening.SYSTEM_ON), at(100, Happening.EMERGENCY), at(200, Happening.RELEASE)
            };

            assertThat(playedAmps(Use.FULL, 2, script)).isCloseTo(321.931, within(1e-3));
            // idle: ten of √2·1 A, 14.142 + 5.657 + 90
            assertThat(playedAmps(Use.IDLE, 2, script)).isCloseTo(109.799, within(1e-3));
        }

        @Test
        void breakALimitThatHeldAtIdle() {
            behaviour = behaviour.withInrushLimitHoldsFor(List.of(PlanEvent.RELEASE));

            ProjectBuilder limited =
                    project().supply(aSupply().singlePhase().ratedAmps(400).inrushLimitAmps(260));

            assertThat(Judging.broken("event-inrush", limited, plan()))
                    .singleElement()
                    .asString()
                    .startsWith("the supply peaks at 321.931 A on phase A when an emergency is released");
        }

        @Test
        void countTheIdleCurrentWhereItIsTheGreater() {
            // a lamp that warms up at 9 A and runs at 6: √2·9 = 12.728 more
            more.add(aLoad("lamp").unswitched().runningAmps(6).idleAmps(9));
            morePlaces.add(anAssignment("lamp").at("P", 20));

            assertThat(peakAmps(PlanEvent.RELEASE)).isCloseTo(334.659, within(1e-3));
        }
    }

    @Nested
    class OfAReturn {
        @Test
        void areTheSequenceWhereAllIsSwitched() {
            // everything has opened; the second spot onto all others idle: 14.142 + 5.657 + 90
            assertThat(peakAmps(PlanEvent.RETURN)).isCloseTo(109.799, within(1e-3));
        }

        @Test
        void countWhatIsUnswitchedInUseMeanwhile() {
            unswitched();

            // at once √2·6 + 50 − √2·2 = 55.657; in the sequence 109.799 + √2·6 = 118.284
            assertThat(peakAmps(PlanEvent.RETURN)).isCloseTo(118.284, within(1e-3));
        }
    }

    @Nested
    class OfADeepDip {
        @Test
        void areTheInrushBesideWhatTheShowDraws() {
            // ten of √2·16 + 60 − √2·1 = 81.213, two of √2·4 + 90 − √2·4 = 90
            assertThat(peakAmps(PlanEvent.DIP)).isCloseTo(992.132, within(1e-3));
        }
    }

    @Nested
    class OfABoard {
        @Test
        void thatWorksAgainAreAsHighAsARelease() {
            assertThat(peakAmps(PlanEvent.BOARD_FAILURE)).isCloseTo(321.931, within(1e-3));
        }

        @Test
        void thatWasDeadThroughABrownoutCountItsLoadsInUse() {
            behaviour = behaviour.withDeadContacts(DeadContacts.STAY);

            // B1 stays closed: ten of 81.213 at the return
            assertThat(peakAmps(PlanEvent.BOARD_FAILURE)).isCloseTo(812.132, within(1e-3));
        }

        @Test
        void forWhichTheOthersHaveWaitedLetAnythingComeOnBesideAllInUse() {
            behaviour = behaviour.withDeadBoard(DeadBoard.STOP);

            // all in use 226.274 + 2 · 5.657 = 237.588; the greatest excess that of one spot, 90 − 5.657 = 84.343
            assertThat(peakAmps(PlanEvent.BOARD_FAILURE)).isCloseTo(321.931, within(1e-3));
            unswitched();
            // √2·6 more, in use throughout
            assertThat(peakAmps(PlanEvent.BOARD_FAILURE)).isCloseTo(330.416, within(1e-3));
        }
    }
}
