package evenrise.model.check;

import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aProject;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.project.FixedPlace;
import evenrise.model.project.Project;
import evenrise.model.project.QuantityRange;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class QuantityRangesTest {
    private static QuantityRange range(int low, int high, String... loads) {
        return QuantityRange.builder()
                .name("wash")
                .loads(List.of(loads))
                .low(low)
                .high(high)
                .build();
    }

    private static Project project() {
        return aProject().loads(aLoad("a"), aLoad("b")).build();
    }

    private static List<String> pointers(Project project, QuantityRange... ranges) {
        return ProjectChecks.errors(project.withQuantities(List.of(ranges))).stream()
                .map(Objection::pointer)
                .toList();
    }

    @Test
    void theNumberListedIsWithinTheRange() {
        assertThat(pointers(project(), range(1, 2, "a", "b"))).isEmpty();
        assertThat(pointers(project(), range(3, 4, "a", "b"))).containsExactly("/quantities/0/low");
        assertThat(pointers(project(), range(1, 1, "a", "b"))).containsExactly("/quantities/0/high");
    }

    @Test
    void loadsExistAndAreOfOneQuantity() {
        assertThat(pointers(project(), range(1, 2, "c"))).containsExactly("/quantities/0/loads/0");
        assertThat(pointers(project(), range(1, 2, "a"), range(1, 2, "a"))).containsExactly("/quantities/1/loads/0");
    }

    @Test
    void loadsAreNotBoundToAPlaceOrAContactor() {
        Project fixed = project()
                .withLoads(List.of(
                        project()
                                .loads()
                                .get(0)
                                .withFixed(FixedPlace.builder()
                                        .panel(Optional.of("P1"))
                                        .build()),
                        project().loads().get(1)));

        assertThat(pointers(fixed, range(1, 2, "a"))).contains("/quantities/0/loads/0");
    }
}
