package evenrise.model.event;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aBoardType;
import static evenrise.model.Fixtures.aGroup;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.LoadBuilder;
import evenrise.model.project.Behaviour;
import evenrise.model.project.NeededGroup;
import evenrise.model.project.OnEmergency;
import evenrise.model.project.Project;
import evenrise.model.rules.Layout;
import evenrise.model.rules.PlanFinisher;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/**
 * A hall (dsp, hall-1, hall-2) beside a rehearsal room (room-dsp, room-amp), each a group of its own, one board each; all
 * processing before all amplifiers.
 */
class NeedsTest {
    private Behaviour behaviour =
            Behaviour.builder().neededGroup(NeededGroup.TAKE_ALONG).build();
    private boolean isStated = true;
    private OnEmergency room = OnEmergency.HOLD;

    private Layout layout() {
        Project project = aProject()
                .behaviour(behaviour)
                .boardTypes(aBoardType().startDelaySeconds(0, 1, 2, 3, 5).stepSeconds(1))
                .boards(aBoard("H"), aBoard("R"), aBoard("HA"), aBoard("RA"))
                .groups(
                        aGroup("hall").holds(),
                        room == OnEmergency.DROP
                                ? aGroup("room").drops()
                                : aGroup("room").holds())
                .loads(
                        aLoad("dsp").processing().group("hall"),
                        aLoad("room-dsp").processing().group("room"),
                        hall("hall-1"),
                        hall("hall-2"),
                        aLoad("room-amp").amplifier().group("room"))
                .build();
        return Layout.of(
                project,
                PlanFinisher.timed(
                        project,
                        aPlan().board("H", 0, 1)
                                .board("R", 1, 1)
                                .board("HA", 2, 1)
                                .board("RA", 5, 1)
                                .assignments(
                                        anAssignment("dsp").at("P1", 1).on("H", 1),
                                        anAssignment("room-dsp").at("P1", 2).on("R", 1),
                                        anAssignment("hall-1").at("P1", 3).on("HA", 1),
                                        anAssignment("hall-2").at("P1", 4).on("HA", 2),
                                        anAssignment("room-amp").at("P1", 5).on("RA", 1))
                                .build()));
    }

    private LoadBuilder hall(String id) {
        LoadBuilder load = aLoad(id).amplifier().group("hall");
        return isStated ? load.needsGroups("hall") : load;
    }

    private static ScriptEvent at(double seconds, Happening event) {
        return ScriptEvent.of(OptionalDouble.of(seconds), event);
    }

    private Trace play(ScriptEvent... events) {
        return Rehearsal.of(ConnectedLoads.of(layout()), new EventScript("test", List.of(events)));
    }

    private Trace roomOff() {
        return play(at(0, Happening.SYSTEM_ON), at(20, Happening.GROUP_OFF).withGroup("room"));
    }

    private static List<String> opened(Trace trace) {
        return trace.steps().stream()
                .filter(step -> step.kind() == EntryKind.OPENS)
                .map(step -> step.atSeconds() + " " + step.load().orElseThrow())
                .toList();
    }

    @Nested
    class OfAPartialCommand {
        @Test
        void leaveTheHallOnThatDoesNotNeedTheRoom() {
            // the room in reverse: its amplifier, at 5 s in the plan, at once, its processing, at 1 s, 4 s later
            assertThat(opened(roomOff())).containsExactly("20.0 room-amp", "24.0 room-dsp");
            assertThat(roomOff().findings()).isEmpty();
        }

        @Test
        void sayWhoGoesAlongWhereNoAmplifierStatesThem() {
            isStated = false;

            assertThat(opened(roomOff())).contains("22.0 hall-2", "23.0 hall-1");
            assertThat(roomOff().findings())
                    .extracting(found -> found.rule() + ": " + found.text())
                    .containsExactly(
                            "taken-along: taking off group room takes along 2 loads of other groups or of none"
                                    + " (hall-1, hall-2), which need what is in it; 2 amplifiers of them state no"
                                    + " needs_groups, so that all processing counts as needed",
                            "group-half-on: group hall is half on: 1 of 3 loads");
        }

        @Test
        void refuseWhereTheProjectSaysSo() {
            behaviour = Behaviour.DEFAULT;
            isStated = false;

            assertThat(roomOff().findings())
                    .extracting(EventFinding::text)
                    .containsExactly("group room off is refused: hall-1, hall-2 need it");
            isStated = true;
            assertThat(roomOff().onAtEnd()).containsExactly("dsp", "hall-1", "hall-2");
        }

        @Test
        void bringTheRoomBackWithoutAWordOfTheHall() {
            Trace trace = play(
                    at(0, Happening.SYSTEM_ON),
                    at(20, Happening.GROUP_OFF).withGroup("room"),
                    at(40, Happening.GROUP_ON).withGroup("room"));

            assertThat(trace.findings()).isEmpty();
            assertThat(trace.onAtEnd()).hasSize(5);
        }
    }

    @Nested
    class OfAnEmergency {
        @Test
        void leaveTheHallOutOfIt() {
            room = OnEmergency.DROP;

            Trace trace = play(at(0, Happening.SYSTEM_ON), at(20, Happening.EMERGENCY));

            assertThat(opened(trace)).containsExactly("20.0 room-dsp", "20.0 room-amp");
            assertThat(trace.findings()).isEmpty();
        }

        @Test
        void sayWhatIsLeftOnWithoutProcessing() {
            room = OnEmergency.DROP;
            isStated = false;

            assertThat(play(at(0, Happening.SYSTEM_ON), at(20, Happening.EMERGENCY))
                            .findings())
                    .extracting(EventFinding::text)
                    .containsExactly("2 amplifiers are on without processing room-dsp, which the project drops on an"
                            + " emergency");
        }
    }
}
