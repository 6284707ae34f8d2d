package evenrise.solver.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import evenrise.model.file.FieldColumn;
import evenrise.model.file.ProjectFile;
import evenrise.model.file.ProjectTree;
import evenrise.model.file.Reading;
import evenrise.model.project.Project;
import evenrise.solver.exchange.EditedCells;
import evenrise.solver.exchange.EditedCells.Edit;
import evenrise.solver.exchange.EditedCells.Misfit;
import evenrise.solver.exchange.GridSheet;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Objects of which there is one, lists without ids and lists within entries, edited cell by cell. */
class FurtherListsTest {
    private static final String PROJECT = """
        {"format": "evenrise-project/1", "name": "Hall",
         "supply": {"system": "three-phase", "line_to_neutral_v": 120, "frequency_hz": 60, "rated_a": 400},
         "panels": [{"id": "P1", "slots": 12, "rated_a": 225}],
         "loads": [{"id": "a", "role": "amplifier", "breaker_a": 20, "running_a": 8, "switched": false}],
         "scenes": [{"id": "show"}, {"id": "night", "use": [{"role": "amplifier", "factor": 0.2}]}],
         "catalogue": {"currency": "EUR", "breakers": [{"poles": 1, "up_to_a": 20, "price": 30}]}}
        """;

    private final Reading<Project> read = ProjectFile.read(PROJECT.getBytes(StandardCharsets.UTF_8), "project.json");
    private final ProjectTree tree = ProjectTree.of(read.value().orElseThrow(), read.notes());

    private EditedCells edited(String list, Edit... edits) {
        return EditedCells.of(tree, list, List.of(), List.of(edits));
    }

    private static Project project(EditedCells edited) {
        assertThat(edited.misfits()).isEmpty();
        return edited.read().orElseThrow().value().orElseThrow();
    }

    @Test
    void everyOneOfThemIsShownAsATable() {
        for (String list : FieldColumn.FURTHER) {
            assertThat(GridSheet.of(tree, list).columns().get(0).path())
                    .as(list)
                    .isEqualTo("id");
        }
        assertThat(GridSheet.of(tree, "supply").rows()).hasSize(1);
        assertThat(GridSheet.of(tree, "catalogue.breakers").rows())
                .extracting(row -> row.get(0))
                .containsExactly("#1");
        assertThat(GridSheet.of(tree, "scenes.use").rows())
                .extracting(row -> row.get(0))
                .containsExactly("night #1");
    }

    @Test
    void theRatingOfTheSupplyIsEdited() {
        assertThat(project(edited("supply", new Edit("supply", "rated_a", "630")))
                        .supply()
                        .ratedAmps())
                .isEqualTo(630);
    }

    @Test
    void theNameOfTheWholeIsEdited() {
        assertThat(project(edited("project", new Edit("project", "name", "New hall")))
                        .name())
                .isEqualTo("New hall");
    }

    @Test
    void anObjectThatIsNotThereBeginsWithItsFirstFieldAndEndsWithItsLast() {
        Project with = project(edited("spare", new Edit("spare", "slots", "4")));
        assertThat(with.spare().orElseThrow().slots()).isEqualTo(4);

        ProjectTree then = ProjectTree.of(with, read.notes());
        List<Edit> emptied = GridSheet.of(then, "spare").columns().stream()
                .filter(column -> !column.path().equals("id"))
                .map(column -> new Edit("spare", column.path(), ""))
                .toList();
        assertThat(project(EditedCells.of(then, "spare", List.of(), emptied)).spare())
                .isEmpty();
    }

    @Test
    void aRowIsAddedToAListWithoutIds() {
        Project with = project(edited(
                "catalogue.breakers",
                new Edit("#2", "poles", "3"),
                new Edit("#2", "up_to_a", "63"),
                new Edit("#2", "price", "90")));

        assertThat(with.catalogue().orElseThrow().breakers()).hasSize(2);
        assertThat(with.catalogue().orElseThrow().breakers().get(1).upToAmps()).isEqualTo(63);
    }

    @Test
    void aRowIsTakenOutOfAListWithoutIds() {
        EditedCells out = EditedCells.of(tree, "catalogue.breakers", List.of("#1"), List.of());

        assertThat(project(out).catalogue().orElseThrow().breakers()).isEmpty();
    }

    @Test
    void aUseIsAddedToTheSceneThatItsRowNames() {
        Project with = project(edited("scenes.use", new Edit("show", "loads", "a"), new Edit("show", "factor", "0.5")));

        assertThat(with.scenes().get(0).use()).hasSize(1);
        assertThat(with.scenes().get(0).use().get(0).factor()).isEqualTo(0.5);
        assertThat(with.scenes().get(1).use()).hasSize(1);
    }

    @Test
    void aUseOfNoSceneIsToldInItsRow() {
        assertThat(edited("scenes.use", new Edit("matinee", "factor", "1")).misfits())
                .extracting(Misfit::id)
                .containsExactly(Optional.of("matinee"));
    }

    @Test
    void whatDoesNotFitIsToldInItsCell() {
        assertThat(edited("catalogue.breakers", new Edit("#1", "price", "-5")).misfits())
                .extracting(Misfit::id, Misfit::column)
                .containsExactly(tuple(Optional.of("#1"), Optional.of("price")));
        assertThat(edited("scenes.use", new Edit("night #1", "factor", "3")).misfits())
                .extracting(Misfit::id, Misfit::column)
                .containsExactly(tuple(Optional.of("night #1"), Optional.of("factor")));
        assertThat(edited("supply", new Edit("supply", "rated_a", "much")).misfits())
                .extracting(Misfit::column)
                .containsExactly(Optional.of("rated_a"));
    }
}
