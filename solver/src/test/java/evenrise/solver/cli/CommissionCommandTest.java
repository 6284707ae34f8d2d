package evenrise.solver.cli;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.file.ProjectFile;
import evenrise.model.project.Load;
import evenrise.solver.table.TextTable;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Sheets that 'report' writes of the lantern yard, filled in, and read again. */
class CommissionCommandTest {
    private static final Path YARD = Path.of("../datasets/lantern-yard");
    private static final String PROJECT = YARD.resolve("project.json").toString();
    private static final String PLAN = YARD.resolve("built.plan.json").toString();

    @TempDir
    private static Path folder;

    @BeforeAll
    static void writeTheSheets() {
        Shell.Result result =
                run("report", PROJECT, PLAN, "-o", folder.resolve("documents").toString(), "--format", "csv,xlsx");
        assertThat(result.err()).isEmpty();
    }

    private static Shell.Result run(String... arguments) {
        return new Shell(SmallHall.sound()).run(arguments);
    }

    private static Shell.Result commission(Path sheet, String... rest) {
        return run(Stream.concat(Stream.of("commission", PROJECT, PLAN, sheet.toString()), Stream.of(rest))
                .toArray(String[]::new));
    }

    interface Filling {
        /** What stands in a measured cell, beside the planned figure of its row; empty for a blank. */
        String of(String load, String header, String planned);
    }

    /** The table as it was written, with what {@code filling} says in its blanks. */
    private static Path filled(String name, Filling filling) throws IOException {
        String text = Files.readString(folder.resolve("documents").resolve(name + ".csv"));
        List<List<String>> rows = new ArrayList<>();
        TextTable.of(text, 100_000)
                .table()
                .rows()
                .forEach(row -> rows.add(new ArrayList<>(
                        row.cells().stream().map(each -> each.text()).toList())));
        List<String> header = rows.get(0);
        for (List<String> row : rows.subList(1, rows.size())) {
            for (int i = 0; i < header.size(); i++) {
                int planned = header.indexOf(header.get(i)
                        .replace("Idle measured, A", "Planned idle, A")
                        .replace("Running measured, A", "Planned running, A")
                        .replace("On measured, s", "On planned, s")
                        .replace(" measured ", " planned "));
                if (row.get(i).isEmpty()) {
                    row.set(
                            i,
                            filling.of(row.get(name.equals("commissioning") ? 3 : 0), header.get(i), row.get(planned)));
                }
            }
        }
        StringBuilder out = new StringBuilder();
        for (List<String> row : rows) {
            out.append(CSVFormat.RFC4180.format(row.toArray())).append("\r\n");
        }
        return Files.writeString(Files.createTempFile(folder, name, ".csv"), out);
    }

    /** As planned, but for what meters and hands add. */
    private static Filling sound(long seed) {
        Random chance = new Random(seed);
        return (load, header, planned) -> switch (header) {
            case "Idle measured, A" ->
                String.format(
                        java.util.Locale.ROOT,
                        "%.3f",
                        Double.parseDouble(planned) * (1 + 0.05 * chance.nextGaussian()));
            case "On measured, s" ->
                planned.equals("always on")
                        ? ""
                        : String.format(java.util.Locale.ROOT, "%.1f", Double.parseDouble(planned) + 0.1);
            case "Date" -> "2026-03-14";
            default -> "";
        };
    }

    private static Filling but(Filling filling, String load, String header, String value) {
        return (each, column, planned) ->
                each.equals(load) && column.equals(header) ? value : filling.of(each, column, planned);
    }

    @Test
    void saysThatAPlantIsAsPlanned() throws IOException {
        Shell.Result result = commission(filled("commissioning", sound(1)));

        assertThat(result.err()).isEmpty();
        assertThat(result.out()).contains("Measured: as planned", "28 of 28 loads have readings");
        assertThat(result.code()).isEqualTo(ExitCode.DONE);
    }

    @Test
    void readsTheWorkbookThatReportWrites() throws IOException {
        // Filled by hand in a spreadsheet; here its blanks stay, and are told.
        Shell.Result result = commission(folder.resolve("documents/plan.xlsx"));

        assertThat(result.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(result.err()).contains("the sheets are blank");
    }

    @Test
    void namesADeadLoadWithWhatToLookAt() throws IOException {
        Shell.Result result =
                commission(filled("commissioning", but(sound(2), "hazer", "Idle measured, A", "0.0")), "--all");

        assertThat(result.out().replaceAll("\\s+", " "))
                .contains("Measured: differs", "fault: idle current, A", "it does not draw");
        assertThat(result.code()).isEqualTo(ExitCode.RULES_BROKEN);
    }

    @Test
    void takesWholePanelsFromTheirOwnTable() throws IOException {
        Path tests = filled("tests", (panel, header, planned) -> switch (header) {
            case "Measured A to neutral, V", "Measured B to neutral, V", "Measured C to neutral, V" -> "231";
            case "Idle measured A, A", "Idle measured B, A", "Idle measured C, A" ->
                Double.toString(0.97 * Double.parseDouble(planned));
            case "Phase rotation" -> "right";
            case "Insulation, MΩ" -> "> 200";
            default -> "";
        });

        Shell.Result result = commission(tests);

        assertThat(result.err()).isEmpty();
        assertThat(result.out()).contains("Measured: as planned");
    }

    @Test
    void writesTheProjectWithWhatWasMeasured() throws IOException {
        Path into = folder.resolve("measured.json");

        Shell.Result result = commission(
                filled("commissioning", but(sound(3), "main-1", "Idle measured, A", "2.0")), "--into", into.toString());

        assertThat(result.err()).isEmpty();
        Load main = ProjectFile.read(into).value().orElseThrow().loads().stream()
                .filter(each -> each.id().equals("main-1"))
                .findFirst()
                .orElseThrow();
        // 3 % of 2 A and 0.05 A on top, as of a meter of which nothing is known
        assertThat(main.idleAmps()).isEqualTo(2.11);
        assertThat(main.measured())
                .singleElement()
                .satisfies(each -> assertThat(each.stated()).isEqualTo(1.6));
        assertThat(run("audit", into.toString(), PLAN).code()).isNotEqualTo(ExitCode.BAD_INPUT);
    }

    @Test
    void isTakenByAReworkAsItIs() throws IOException {
        Path sheet = filled("commissioning", but(sound(4), "main-1", "Idle measured, A", "2.0"));

        Shell.Result result = run(
                "rework",
                PROJECT,
                PLAN,
                "--measured",
                sheet.toString(),
                "--max-moves",
                "0",
                "--moves",
                "10",
                "-o",
                folder.resolve("rework").toString());

        assertThat(result.err()).doesNotContain("line");
        assertThat(folder.resolve("rework/project-as-measured.json")).content().contains("\"idle_a\": 2,");
    }

    @Test
    void refusesALoadToConfirmThatIsNone() throws IOException {
        Shell.Result result = commission(filled("commissioning", sound(5)), "--confirm", "nobody");

        assertThat(result.code()).isEqualTo(ExitCode.USAGE);
        assertThat(result.err()).contains("no load 'nobody' to confirm");
    }
}
