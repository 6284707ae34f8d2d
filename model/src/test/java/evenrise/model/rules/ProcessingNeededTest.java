package evenrise.model.rules;

import static evenrise.model.Fixtures.aGroup;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aProject;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.LoadBuilder;
import evenrise.model.ProjectBuilder;
import evenrise.model.project.Load;
import evenrise.model.project.Project;
import evenrise.model.project.SwitchedSystem;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** Which processing a load needs on: as docs/events.md says of needs. */
class ProcessingNeededTest {
    private static List<String> needed(ProjectBuilder project, LoadBuilder load) {
        Project made = project.loads(load).build();
        Load asked = made.loads().get(made.loads().size() - 1);
        return new Needs(made).of(asked).stream().map(Load::id).toList();
    }

    /** P1 of no group, P2 of stage, P3 of house; P4 is never switched, so nobody waits for it. */
    @Nested
    class ByGroups {
        private ProjectBuilder project() {
            return aProject()
                    .groups(aGroup("stage"), aGroup("house"))
                    .loads(
                            aLoad("P1").processing(),
                            aLoad("P2").processing().group("stage"),
                            aLoad("P3").processing().group("house"),
                            aLoad("P4").processing().unswitched());
        }

        @Test
        void anAmplifierNeedsAllOfItUnlessItStatesGroups() {
            assertThat(needed(project(), aLoad("A").amplifier())).containsExactly("P1", "P2", "P3");
        }

        @Test
        void statedGroupsAreThoseItsOwnAndThatOfNone() {
            assertThat(needed(project(), aLoad("A").amplifier().needsGroups("house")))
                    .containsExactly("P1", "P3");
            assertThat(needed(project(), aLoad("A").amplifier().group("stage").needsGroups("house")))
                    .containsExactly("P1", "P2", "P3");
            assertThat(needed(project(), aLoad("A").amplifier().group("stage").needsGroups()))
                    .containsExactly("P1", "P2");
        }

        @Test
        void anAuxiliaryNeedsWhatItStates() {
            assertThat(needed(project(), aLoad("X").auxiliary())).isEmpty();
            assertThat(needed(project(), aLoad("X").auxiliary().needsGroups("stage")))
                    .containsExactly("P1", "P2");
        }

        @Test
        void processingAndWhatIsNeverSwitchedNeedNone() {
            assertThat(needed(project(), aLoad("P5").processing())).isEmpty();
            assertThat(needed(project(), aLoad("A").amplifier().unswitched())).isEmpty();
        }
    }

    /** P1 of core, P2 of hall, which needs core, P3 of annex, in group house. */
    @Nested
    class BySystems {
        private LoadBuilder of(String id, String system) {
            return aLoad(id).with(load -> load.system(system));
        }

        private ProjectBuilder project() {
            return aProject()
                    .groups(aGroup("house"))
                    .with(made -> made.systems(Stream.of("core", "hall", "annex")
                            .map(id -> SwitchedSystem.builder()
                                    .id(id)
                                    .needs(id.equals("hall") ? List.of("core") : List.of())
                                    .build())
                            .toList()))
                    .loads(
                            of("P1", "core").processing(),
                            of("P2", "hall").processing(),
                            of("P3", "annex").processing().group("house"));
        }

        @Test
        void isThatOfItsOwnAndOfWhatThatNeeds() {
            assertThat(needed(project(), of("A", "hall").amplifier())).containsExactly("P1", "P2");
            assertThat(needed(project(), of("A", "core").amplifier())).containsExactly("P1");
            assertThat(needed(project(), of("A", "annex").amplifier())).containsExactly("P3");
        }

        @Test
        void isThatOfANamedGroupWhereverItIs() {
            assertThat(needed(project(), of("A", "hall").amplifier().needsGroups("house")))
                    .containsExactly("P1", "P2", "P3");
            assertThat(needed(project(), of("A", "core").amplifier().needsGroups("house")))
                    .containsExactly("P1", "P3");
        }
    }
}
