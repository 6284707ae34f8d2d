package evenrise.solver.portfolio;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

class PlanTaskTest {
    private final PlanTask task = new PlanTask("1.0", "hall.project.json", new byte[] {1, 2, 3}, 7, 1000);

    @Test
    void comesBackFromItsBytes() throws IOException {
        PlanTask back = PlanTask.of(task.bytes());

        assertThat(back.softwareVersion()).isEqualTo("1.0");
        assertThat(back.name()).isEqualTo("hall.project.json");
        assertThat(back.project()).containsExactly(1, 2, 3);
        assertThat(back.seed()).isEqualTo(7);
        assertThat(back.moves()).isEqualTo(1000);
        assertThat(back.key()).isEqualTo(task.key()).matches("[0-9a-f]{64}");
    }

    @Test
    void hasAnotherKeyWithWhateverIsAnother() {
        assertThat(new PlanTask("1.1", "hall.project.json", new byte[] {1, 2, 3}, 7, 1000).key())
                .isNotEqualTo(task.key());
        assertThat(new PlanTask("1.0", "hall.project.yaml", new byte[] {1, 2, 3}, 7, 1000).key())
                .isNotEqualTo(task.key());
        assertThat(new PlanTask("1.0", "hall.project.json", new byte[] {1, 2, 4}, 7, 1000).key())
                .isNotEqualTo(task.key());
        assertThat(new PlanTask("1.0", "hall.project.json", new byte[] {1, 2, 3}, 8, 1000).key())
                .isNotEqualTo(task.key());
        assertThat(new PlanTask("1.0", "hall.project.json", new byte[] {1, 2, 3}, 7, 1001).key())
                .isNotEqualTo(task.key());
    }

    @Test
    void refusesWhatIsNoTask() {
        assertThatThrownBy(() -> PlanTask.of(new byte[] {0, 1, 'x'})).isInstanceOf(IOException.class);
        byte[] bytes = task.bytes();
        assertThatThrownBy(() -> PlanTask.of(Arrays.copyOf(bytes, 10))).isInstanceOf(IOException.class);
    }
}
