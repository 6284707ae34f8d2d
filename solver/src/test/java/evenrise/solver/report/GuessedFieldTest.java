package evenrise.solver.report;

import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aProject;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.project.Load;
import evenrise.model.project.Project;
import java.util.List;
import org.junit.jupiter.api.Test;

class GuessedFieldTest {
    private static Project project(Load... loads) {
        return aProject().panels(aPanel("P1")).loads(aLoad("x")).build().withLoads(List.of(loads));
    }

    private static Load load(String id, String... guessed) {
        return aLoad(id)
                .build()
                .with()
                .powerFactor(0.95)
                .guessed(List.of(guessed))
                .build();
    }

    @Test
    void areCountedWithTheirLoads() {
        Project project = project(load("a", "power_factor", "switched"), load("b"), load("c", "power_factor"));

        assertThat(GuessedField.counted(project)).contains("3 figures of 2 loads");
        assertThat(GuessedField.counted(project(load("a")))).isEmpty();
    }

    @Test
    void areListedWithTheirValues() {
        assertThat(GuessedField.of(project(load("a", "power_factor", "switched", "curve", "role"))))
                .extracting(field -> field.field() + " " + field.value())
                .startsWith("power_factor 0.95", "switched true")
                .hasSize(4);
    }

    @Test
    void ofEqualValueStandTogetherOnAScreen() {
        Project project = project(load("a", "power_factor"), load("b", "power_factor"));

        assertThat(GuessedText.lines(project, false, Paint.NONE))
                .anySatisfy(line -> assertThat(line).contains("0.95: 2 loads (a, b)"));
    }
}
