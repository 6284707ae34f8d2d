package evenrise.model.file;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aGroup;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aProject;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.event.EventScript;
import evenrise.model.event.Happening;
import evenrise.model.event.ScriptEvent;
import evenrise.model.project.DistributionNode;
import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Project;
import evenrise.model.project.Secondary;
import evenrise.model.project.SwitchedBy;
import evenrise.model.project.SwitchedSystem;
import evenrise.model.project.Transformer;
import evenrise.model.project.TransformerConnection;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ScriptFileTest {
    private static final Project HALL = aProject()
            .boards(aBoard("B1"))
            .groups(aGroup("stage"))
            .loads(aLoad("amp").group("stage"), aLoad("outlet").unswitched())
            .build();

    private static Reading<EventScript> read(String events) {
        String text = "{\"format\": \"evenrise-script/1\", \"name\": \"day\", \"events\": [" + events + "]}";
        return ScriptFile.read(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)), "day.json", HALL);
    }

    @Test
    void readsWhatHappensInOrder() {
        Reading<EventScript> read = read("{\"at_s\": 1, \"event\": \"system-on\"},"
                + "{\"event\": \"mains\", \"voltage_pct\": 0, \"phases\": [\"B\"]},"
                + "{\"event\": \"late\", \"load\": \"amp\", \"by_s\": 2}");

        assertThat(read.problems()).isEmpty();
        assertThat(read.value().orElseThrow().events())
                .containsExactly(
                        ScriptEvent.of(OptionalDouble.of(1), Happening.SYSTEM_ON),
                        ScriptEvent.of(OptionalDouble.empty(), Happening.MAINS).voltage(0, List.of(Phase.B)),
                        ScriptEvent.of(OptionalDouble.empty(), Happening.LATE).late("amp", 2));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "'event': 'group-off'|/events/0/group|missing",
                "'event': 'group-off', 'group': 'stag'|/events/0/group|Maybe 'stage'",
                "'event': 'board-dead', 'board': 'B2'|/events/0/board|the id of one of the boards",
                "'event': 'stays-open', 'load': 'outlet'|/events/0/load|one of the switched loads",
                "'event': 'mains'|/events/0/voltage_pct|missing",
                "'event': 'mains', 'voltage_pct': -1|/events/0/voltage_pct|at least 0",
                "'event': 'late', 'load': 'amp'|/events/0/by_s|missing",
                "'event': 'system-on', 'group': 'stage'|/events/0/group|nothing with this event",
                "'event': 'system-on', 'voltage_pct': 5|/events/0/voltage_pct|nothing with this event",
                "'event': 'system-on', 'phases': ['A']|/events/0/phases|nothing with this event",
                "'event': 'sytem-on'|/events/0/event|system-on",
                "'event': 'lock'}, {'at_s': 3, 'event': 'lock'}, {'at_s': 2, 'event': 'lock'|/events/2/at_s|at least 3",
            })
    void reportsWhatIsWrongWithItsPlace(String event, String place, String words) {
        Reading<EventScript> read = read("{" + event.replace('\'', '"') + "}");

        assertThat(read.value()).isEmpty();
        assertThat(read.problems()).anySatisfy(problem -> {
            assertThat(problem.pointer()).isEqualTo(place);
            assertThat(problem.message()).contains(words.replace("Maybe '", "Maybe '"));
        });
    }

    @Test
    void refusesAFileOfAnotherKind() {
        String plan = "{\"format\": \"evenrise-plan/1\", \"boards\": [], \"assignments\": []}";

        Reading<EventScript> read =
                ScriptFile.read(new ByteArrayInputStream(plan.getBytes(StandardCharsets.UTF_8)), "day.json", HALL);

        assertThat(read.problems())
                .singleElement()
                .satisfies(problem -> assertThat(problem.message()).contains("evenrise-script/1"));
    }

    /** P1 hangs on T, of one phase, from M; core and hall have commands of their own. */
    private static final Project CAMPUS = aProject()
            .panels(aPanel("P1").with(panel -> panel.fedFrom("T")))
            .boards(aBoard("B1"))
            .loads(
                    aLoad("amp").with(load -> load.system("hall").switchedBy(SwitchedBy.CONTACTOR)),
                    aLoad("sub").with(load -> load.comesWith("amp")),
                    aLoad("outlet").unswitched())
            .with(project -> project.systems(List.of(
                            SwitchedSystem.builder().id("core").build(),
                            SwitchedSystem.builder().id("hall").build()))
                    .nodes(List.of(
                            DistributionNode.builder().id("M").ratedAmps(100).build(),
                            DistributionNode.builder()
                                    .id("T")
                                    .fedFrom("M")
                                    .ratedAmps(100)
                                    .transformer(Transformer.builder()
                                            .connection(TransformerConnection.SINGLE)
                                            .secondary(Secondary.builder()
                                                    .system(PhaseSystem.SINGLE_PHASE)
                                                    .lineToNeutralVolts(100)
                                                    .build())
                                            .build())
                                    .build())))
            .build();

    private static Reading<EventScript> campus(String event) {
        String text = "{\"format\": \"evenrise-script/1\", \"name\": \"day\", \"events\": [{" + event.replace('\'', '"')
                + "}]}";
        return ScriptFile.read(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)), "day.json", CAMPUS);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "'event': 'system-on', 'system': 'hall'",
                "'event': 'emergency', 'system': 'core'",
                "'event': 'mains', 'voltage_pct': 0, 'node': 'M'",
                "'event': 'mains', 'voltage_pct': 0, 'node': 'T', 'phases': ['C']",
                "'event': 'trip', 'load': 'outlet'",
                "'event': 'reset', 'node': 'supply'",
                "'event': 'neutral-lost', 'node': 'P1'",
            })
    void readsWhatHappensInAPlant(String event) {
        assertThat(campus(event).problems()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "'event': 'system-on', 'system': 'hal'|/events/0/system|Maybe 'hall'",
                "'event': 'lock', 'system': 'hall'|/events/0/system|nothing with this event",
                "'event': 'mains', 'voltage_pct': 0, 'node': 'N'|/events/0/node|one of the panels and nodes",
                "'event': 'mains', 'voltage_pct': 0, 'node': 'P1', 'phases': ['B']|/events/0/phases|what feeds 'P1': A",
                "'event': 'trip'|/events/0/load|missing",
                "'event': 'trip', 'load': 'amp', 'node': 'M'|/events/0/node|nothing beside a load",
                "'event': 'transfer', 'node': 'M'|/events/0/node|with an alternate_fed_from",
                "'event': 'neutral-lost'|/events/0/node|missing",
                "'event': 'lock', 'node': 'M'|/events/0/node|nothing with this event",
                "'event': 'late', 'load': 'sub', 'by_s': 1|/events/0/load|Maybe 'amp', whose contactor it is behind",
            })
    void reportsWhatIsWrongInAPlant(String event, String place, String words) {
        Reading<EventScript> read = campus(event);

        assertThat(read.problems()).anySatisfy(problem -> {
            assertThat(problem.pointer()).isEqualTo(place);
            assertThat(problem.message()).contains(words);
        });
    }
}
