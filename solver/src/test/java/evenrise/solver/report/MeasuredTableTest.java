package evenrise.solver.report;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import evenrise.model.file.PlanFile;
import evenrise.model.file.ProjectFile;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.solver.rework.Measured;
import evenrise.solver.rework.MeasuredCsv;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The metadata of the table says of a cell what its reader says. */
class MeasuredTableTest {
    private static final Path YARD = Path.of("..", "datasets", "lantern-yard");

    private final JsonNode columns;
    private final Project project =
            ProjectFile.read(YARD.resolve("project.json")).value().orElseThrow();
    private final Plan built =
            PlanFile.read(YARD.resolve("built.plan.json"), project).value().orElseThrow();

    MeasuredTableTest() throws IOException {
        columns = new ObjectMapper().readTree(MeasuredTable.text()).at("/tableSchema/columns");
    }

    private Measured read(String table) {
        return MeasuredCsv.read(table, project, built);
    }

    @Test
    void namesEachHeaderThatIsUnderstoodAndNoHeaderTwice() {
        List<String> all = new ArrayList<>();
        for (JsonNode column : columns) {
            for (JsonNode title : column.get("titles")) {
                all.add(title.asText());
                List<String> header = new ArrayList<>(List.of("load", "running_a"));
                List<String> row = new ArrayList<>(List.of("sub-1", "1"));
                String name = column.get("name").asText();
                int at = header.indexOf(name);
                if (at >= 0) {
                    header.set(at, title.asText());
                } else {
                    header.add(title.asText());
                    row.add(name.equals("phase") ? "C" : "1");
                }
                String table = String.join(",", header) + "\n" + String.join(",", row) + "\n";

                assertThat(read(table).problems()).as(table).isEmpty();
            }
        }

        assertThat(all).doesNotHaveDuplicates().hasSizeGreaterThan(20);
    }

    @Test
    void requiresTheLoadAlone() {
        for (JsonNode column : columns) {
            assertThat(column.get("required").asBoolean())
                    .isEqualTo(column.get("name").asText().equals("load"));
        }
        assertThat(read("load,running_a\n,1\n").problems()).isNotEmpty();
        assertThat(read("load,running_a,idle_a,phase\nsub-1,1,,\n").problems()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({
        "running_a, 12.5, true",
        "running_a, 0, true",
        "running_a, 6300, true",
        "running_a, 6300.5, false",
        "running_a, -1, false",
        "running_a, twelve, false",
        "idle_a, 1, true",
        "idle_a, 6301, false",
        "phase, c, true",
        "phase, L3, true",
        "phase, 3, true",
        "phase, D, false",
        "phase, 4, false",
        "phase, L, false"
    })
    void allowsInACellWhatTheReaderTakes(String name, String cell, boolean isRight) {
        String other = name.equals("phase") ? "running_a,1" : name.equals("idle_a") ? "running_a,6300" : "phase,C";
        String table =
                "load," + name + "," + other.split(",")[0] + "\nsub-1," + cell + "," + other.split(",")[1] + "\n";

        assertThat(read(table).problems().isEmpty()).as(table).isEqualTo(isRight);
        assertThat(allows(name, cell)).isEqualTo(isRight);
    }

    private boolean allows(String name, String cell) {
        for (JsonNode column : columns) {
            if (column.get("name").asText().equals(name)) {
                JsonNode type = column.get("datatype");
                return type.get("base").asText().equals("number")
                        ? cell.matches("-?[0-9.]+")
                                && Double.parseDouble(cell)
                                        >= type.get("minimum").asDouble()
                                && Double.parseDouble(cell)
                                        <= type.get("maximum").asDouble()
                        : !type.has("format") || cell.matches(type.get("format").asText());
            }
        }
        throw new IllegalArgumentException(name);
    }
}
