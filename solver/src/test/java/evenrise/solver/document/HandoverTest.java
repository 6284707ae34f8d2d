package evenrise.solver.document;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.evaluation.Evaluation;
import evenrise.model.rules.Layout;
import java.util.HashSet;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Tables for who keeps the building name every thing once, and refer to nothing that is not there. */
class HandoverTest {
    private static Layout layout() {
        return Layout.of(
                aProject()
                        .boards(aBoard("B1"))
                        .loads(aLoad("one"), aLoad("two"))
                        .build(),
                aPlan().assignments(
                                anAssignment("one").at("P1", 1).on("B1", 1),
                                anAssignment("two").at("P1", 2).on("B1", 2))
                        .build());
    }

    private static List<List<String>> values(String id) {
        return Handover.of(layout()).stream()
                .filter(table -> table.id().equals(id))
                .map(DocumentTable::values)
                .findFirst()
                .orElseThrow();
    }

    private static List<String> column(String id, int column) {
        return values(id).stream().skip(1).map(row -> row.get(column)).toList();
    }

    @Test
    void namesEveryComponentOnceWithAnIdentifierThatStays() {
        List<String> names = column("handover-components", 0);

        // A board, a load and a breaker each for two loads, and at least the panel that they sit in.
        assertThat(names).contains("Board B1", "Load one", "Load two", "Breaker P1 1", "Breaker P1 2", "Panel P1");
        assertThat(new HashSet<>(names)).hasSameSizeAs(names);
        assertThat(new HashSet<>(column("handover-components", 6)))
                .hasSameSizeAs(names)
                .contains("breaker/one");
    }

    @Test
    void hasARowForEveryTypeThatAComponentIsOf() {
        assertThat(column("handover-types", 0))
                .containsAll(column("handover-components", 1))
                .doesNotHaveDuplicates();
    }

    @Test
    void putsOnlyComponentsIntoSystems() {
        assertThat(column("handover-components", 0)).containsAll(column("handover-systems", 2));
        assertThat(column("handover-systems", 0)).contains("Panel P1", "Board B1");
    }

    @Test
    void saysOfWhatIsNotStatedThatItIsNot() {
        assertThat(values("handover-spaces")).hasSize(1);
        assertThat(column("handover-components", 2)).containsOnly("n/a");
    }

    @Test
    void columnsHaveKeysAsFieldsOfAProject() {
        assertThat(DocumentTables.of(Evaluation.of(layout()), List.of(), List.of())
                        .circuits()
                        .fields())
                .contains("panel", "running_a", "breaker_a", "on_s");
    }
}
