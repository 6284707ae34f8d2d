package evenrise.model.file;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.portfolio.ValueChange;
import evenrise.model.project.Project;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class ChangedProjectTest {
    private final Project project = Samples.read(Samples.PROJECT).value().orElseThrow();

    private static ValueChange number(String at, double value) {
        return new ValueChange(at, OptionalDouble.of(value), Optional.empty(), OptionalDouble.empty());
    }

    private static ValueChange text(String at, String value) {
        return new ValueChange(at, OptionalDouble.empty(), Optional.of(value), OptionalDouble.empty());
    }

    private static ValueChange factor(String at, double value) {
        return new ValueChange(at, OptionalDouble.empty(), Optional.empty(), OptionalDouble.of(value));
    }

    private Project changed(ValueChange... changes) {
        ChangedProject.Changed changed = ChangedProject.of(project, List.of(changes));
        assertThat(changed.misses()).isEmpty();
        Reading<Project> read = ProjectFile.read(changed.bytes(), "changed.json");
        assertThat(read.problems()).isEmpty();
        return read.value().orElseThrow();
    }

    @Test
    void isTheSameWithoutAChange() {
        Project changed = changed();

        assertThat(changed).isEqualTo(project.withCautions(changed.cautions()));
    }

    @Test
    void takesAnotherNumberByPlaceAndById() {
        String id = project.loads().get(1).id();

        assertThat(changed(number("/supply/rated_a", 123)).supply().ratedAmps()).isEqualTo(123);
        assertThat(changed(number("/loads/" + id + "/running_a", 1.25))
                        .loads()
                        .get(1)
                        .runningAmps())
                .isEqualTo(1.25);
        assertThat(changed(number("/loads/1/running_a", 1.25)).loads().get(1).runningAmps())
                .isEqualTo(1.25);
    }

    @Test
    void takesAFieldThatWasNotStated() {
        assertThat(changed(number("/supply/inrush_limit_a", 5000)).supply().inrushLimitAmps())
                .hasValue(5000);
    }

    @Test
    void takesAnotherText() {
        assertThat(changed(text("/name", "Another")).name()).isEqualTo("Another");
    }

    @Test
    void multipliesEveryEntryThatStatesANumber() {
        Project all = changed(factor("/loads/*/running_a", 0.5));

        for (int i = 0; i < project.loads().size(); i++) {
            assertThat(all.loads().get(i).runningAmps())
                    .isEqualTo(project.loads().get(i).runningAmps() / 2);
        }
    }

    @Test
    void saysWhatHasNoPlace() {
        assertThat(ChangedProject.of(
                                project,
                                List.of(
                                        number("/loads/nobody/running_a", 1),
                                        factor("/loads/*/nothing", 2),
                                        number("/supply/deep/er", 1),
                                        factor("/name", 2)))
                        .misses())
                .containsExactly(
                        "nothing to change at '/loads/nobody/running_a': there is no 'nobody'.",
                        "nothing to change at '/loads/*/nothing': there is no number to multiply.",
                        "nothing to change at '/supply/deep/er': there is no 'deep'.",
                        "nothing to change at '/name': there is no number to multiply.");
    }
}
