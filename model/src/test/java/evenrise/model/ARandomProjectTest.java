package evenrise.model;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.project.Load;
import evenrise.model.project.Project;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;

class ARandomProjectTest {
    @Test
    void isTheSameForTheSameSeed() {
        assertThat(ARandomProject.planted(7)).isEqualTo(ARandomProject.planted(7));
    }

    @Test
    void assignsEveryLoadOfEverySeed() {
        assertThat(LongStream.range(0, 200)).allSatisfy(seed -> {
            ARandomProject.Planted it = ARandomProject.planted(seed);
            assertThat(it.project().loads())
                    .extracting(Load::id)
                    .containsExactlyElementsOf(
                            it.plan().assignments().stream().map(a -> a.load()).toList());
        });
    }

    @Test
    void coversWhatAFileCanSay() {
        assertThat(LongStream.range(0, 200).mapToObj(ARandomProject::of))
                .anyMatch(p -> p.maxDurationSeconds().isPresent())
                .anyMatch(p -> p.supply().inrushLimitAmps().isPresent())
                .anyMatch(p -> p.panels().stream()
                        .anyMatch(panel -> panel.switchedSlots().isPresent()))
                .anyMatch(
                        p -> p.boards().stream().anyMatch(board -> board.after().isPresent()))
                .anyMatch(p -> p.boards().isEmpty())
                .anyMatch(p -> any(p, load -> load.shutdownGroup().isPresent()))
                .anyMatch(p -> any(p, load -> !load.comesAfter().isEmpty()))
                .anyMatch(p -> any(p, load -> !load.apartFrom().isEmpty()))
                .anyMatch(p -> any(p, load -> !load.samePhaseAs().isEmpty()))
                .anyMatch(p -> any(p, load -> !load.panels().isEmpty()))
                .anyMatch(p -> any(p, load -> load.fixed().board().isPresent()))
                .anyMatch(p -> any(p, load -> load.poles() == 3));
    }

    private static boolean any(Project project, java.util.function.Predicate<Load> what) {
        return project.loads().stream().anyMatch(what);
    }
}
