package evenrise.solver.cli;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.electrical.Lag;
import evenrise.model.electrical.LineCurrents;
import evenrise.model.file.PlanFile;
import evenrise.model.file.ProjectFile;
import evenrise.model.project.Load;
import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Project;
import evenrise.model.project.Scene;
import evenrise.model.rules.Layout;
import evenrise.solver.table.TextTable;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
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
        assertThat(result.err()).doesNotContain("evenrise: ");
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
                String.format(Locale.ROOT, "%.3f", Double.parseDouble(planned) * (1 + 0.05 * chance.nextGaussian()));
            case "On measured, s" ->
                planned.equals("always on")
                        ? ""
                        : String.format(Locale.ROOT, "%.1f", Double.parseDouble(planned) + 0.1);
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

        assertThat(result.err()).doesNotContain("evenrise: ");
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
    void readsTablesThatKeysHead() throws IOException {
        Path keys = folder.resolve("keys");
        run("report", PROJECT, PLAN, "-o", keys.toString(), "--format", "csv", "--csv-keys");
        String head = Files.readAllLines(keys.resolve("commissioning.csv")).get(0);
        String tests = Files.readAllLines(keys.resolve("tests.csv")).get(0);
        Path loads = Files.writeString(
                folder.resolve("by-keys.csv"),
                head + "\n"
                        + Stream.of(head.split(","))
                                .map(key -> switch (key) {
                                    case "load" -> "main-1";
                                    case "idle_measured" -> "0.01";
                                    default -> "";
                                })
                                .collect(Collectors.joining(",")));
        Path panels = Files.writeString(
                folder.resolve("panels-by-keys.csv"),
                tests + "\n"
                        + Stream.of(tests.split(","))
                                .map(key -> switch (key) {
                                    case "panel" -> "hall";
                                    case "voltage_a" -> "280";
                                    default -> "";
                                })
                                .collect(Collectors.joining(",")));

        String out = commission(loads, panels.toString()).out().replaceAll("\\s+", " ");

        assertThat(out).contains("it does not draw", "unsafe: voltage");
    }

    /** What the commissioning page saves, of another plan than this. */
    private static Path saved(String lists) throws IOException {
        return Files.writeString(
                Files.createTempFile(folder, "hall", ".readings.json"),
                "{\"format\": \"evenrise-readings/1\", \"project_sha256\": \"" + "0".repeat(64)
                        + "\", \"plan_sha256\": \"" + "0".repeat(64) + "\", " + lists + "}");
    }

    @Test
    void readsWhatThePageHasSaved() throws IOException {
        Shell.Result result =
                commission(saved("\"poles\": [{\"load\": \"main-1\", \"idle_a\": 0.01, \"date\": \"2026-03-14\","
                        + " \"meter\": \"M1\"}], \"places\": [{\"place\": \"hall\", \"phases\": [{\"phase\": \"A\","
                        + " \"to_neutral_v\": 280}], \"rotation_right\": false, \"insulation_megohm\": 0.2}],"
                        + " \"devices\": [{\"place\": \"hall\", \"protects\": \"panel hall\", \"rated_ma\": 30,"
                        + " \"tripped_at_ma\": 33}], \"meters\": [{\"meter\": \"M1\", \"of_reading_pct\": 2}]"));

        assertThat(result.out().replaceAll("\\s+", " "))
                .contains(
                        "it does not draw",
                        "unsafe: voltage",
                        "unsafe: insulation",
                        "another order than planned",
                        "it trips above its rated residual current");
        assertThat(result.err()).contains("was made of a plan that places or sets something else");
        assertThat(result.code()).isEqualTo(ExitCode.RULES_BROKEN);
    }

    @Test
    void namesWhatIsWrongWithASavedFile() throws IOException {
        Shell.Result unknown = commission(saved("\"poles\": [{\"load\": \"main-l\", \"idle_a\": 1}]"));
        Shell.Result negative = commission(saved("\"poles\": [{\"load\": \"main-1\", \"idle_a\": -1}]"));

        assertThat(unknown.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(unknown.err()).contains("load 'main-l' is not in the project", "Maybe it is 'main-1'");
        assertThat(negative.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(negative.err()).contains("idle_a");
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

        assertThat(result.err()).doesNotContain("evenrise: ");
        assertThat(result.out()).contains("Measured: as planned");
    }

    @Test
    void writesTheProjectWithWhatWasMeasured() throws IOException {
        Path into = folder.resolve("measured.json");

        Shell.Result result = commission(
                filled("commissioning", but(sound(3), "main-1", "Idle measured, A", "2.0")), "--into", into.toString());

        assertThat(result.err()).doesNotContain("evenrise: ");
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

    /** Of the yard's start, fifty times a second, without inrush; nothing of the load that is dead. */
    private static Path recorded(String dead) throws IOException {
        Project project = ProjectFile.read(Path.of(PROJECT)).value().orElseThrow();
        Layout layout =
                Layout.of(project, PlanFile.read(Path.of(PLAN), project).value().orElseThrow());
        Random chance = new Random(1);
        StringBuilder lines = new StringBuilder("time_s,A,B,C\n");
        for (int i = 0; i < 50 * 36; i++) {
            double now = i / 50.0 - 3;
            LineCurrents all = new LineCurrents(PhaseSystem.THREE_PHASE);
            layout.placements().stream()
                    .filter(each -> !each.id().equals(dead))
                    .filter(each -> !each.isSequenced() || each.onSeconds().orElseThrow() <= now)
                    .forEach(each -> all.add(each.phases(), each.load().idleAmps(), Lag.of(each.load())));
            lines.append(String.format(Locale.ROOT, "%.3f", 50 + now));
            for (Phase phase : Phase.values()) {
                lines.append(
                        String.format(Locale.ROOT, ",%.3f", all.line(phase).length() + 0.01 * chance.nextGaussian()));
            }
            lines.append('\n');
        }
        return Files.writeString(Files.createTempFile(folder, "start", ".csv"), lines);
    }

    @Test
    void writesTheRecordOfThePlantAsBuilt() throws IOException {
        Path record = folder.resolve("as-built");

        Shell.Result result = commission(
                filled("commissioning", sound(6)),
                "--recording",
                recorded("mixer").toString(),
                "--date",
                "2026-03-14",
                "-o",
                record.toString());

        assertThat(result.err()).doesNotContain("evenrise: ");
        assertThat(result.out()).contains("does not come on");
        assertThat(record.resolve("commissioning.html"))
                .content()
                .contains("Commissioning report: Lantern Yard", "measured 2026-03-14", "Tested by, date, signature")
                .contains("Phase B, recorded over planned", "class=\"recorded\" d=\"M")
                .contains("mixer");
        try (PDDocument pdf = Loader.loadPDF(record.resolve("commissioning.pdf").toFile())) {
            assertThat(new PDFTextStripper().getText(pdf))
                    .contains("Commissioning report: Lantern Yard", "Open points", "Handed over to");
        }
        assertThat(record.resolve("open-points.csv")).content().contains("without voltage, rotation or insulation");
        assertThat(record.resolve("documents/plan.xlsx")).isNotEmptyFile();
        Shell.Result audit = run(
                "audit",
                record.resolve("project-as-built.json").toString(),
                record.resolve("plan-as-built.json").toString());
        assertThat(audit.out()).doesNotContain("is not the one the plan was made from");
    }

    @Test
    void tellsADriftBesideTheRecordOfThePlantAsBuilt() throws IOException {
        Path into = folder.resolve("first.json");
        commission(filled("commissioning", sound(7)), "--into", into.toString());

        Shell.Result later = run(
                "commission",
                into.toString(),
                PLAN,
                filled("commissioning", but(sound(7), "main-1", "Idle measured, A", "2.4"))
                        .toString());

        assertThat(later.out()).contains("it has changed since");
    }

    @Test
    void overwritesNoRecordOfOthers() throws IOException {
        Path record = Files.createDirectories(folder.resolve("taken"));
        Files.writeString(record.resolve("commissioning.html"), "somebody's");

        Shell.Result result = commission(filled("commissioning", sound(8)), "-o", record.toString());

        assertThat(result.code()).isEqualTo(ExitCode.NOT_WRITTEN);
        assertThat(result.err()).contains("--force to overwrite");
    }

    @Test
    void refusesALoadToConfirmThatIsNone() throws IOException {
        Shell.Result result = commission(filled("commissioning", sound(5)), "--confirm", "nobody");

        assertThat(result.code()).isEqualTo(ExitCode.USAGE);
        assertThat(result.err()).contains("no load 'nobody' to confirm");
    }

    /** Two rehearsals: the amplifier read 4 A and 4.4 A of its 9.5 A, with 3 % and 0.05 A on top. */
    @Test
    void aUseThatTwoVisitsReadBecomesASceneBesideFullUse() throws IOException {
        Path list = Files.writeString(
                Files.createTempFile(folder, "use", ".csv"),
                "load,phase,running_a,date\n"
                        + "main-1,A,4.0,2026-03-14\n"
                        + "main-1,A,4.4,2026-03-21\n"
                        + "mixer,B,1.0,2026-03-14\n");
        Path into = folder.resolve("with-rehearsal.project.json");

        Shell.Result result = commission(list, "--use", "rehearsal", "--into", into.toString());
        Shell.Result again = run("commission", into.toString(), PLAN, list.toString(), "--use", "rehearsal");

        Project project = ProjectFile.read(into).value().orElseThrow();
        assertThat(project.scenes()).extracting(Scene::id).containsExactly("full-use", "rehearsal");
        assertThat(project.scenes().get(1).use()).singleElement().satisfies(use -> {
            assertThat(use.loads()).contains(List.of("main-1"));
            // (4.4 + 0.05 + 0.132) / 9.5 = 0.48231…, rounded up
            assertThat(use.factor()).isEqualTo(0.4824);
        });
        assertThat(result.out()).contains("main-1 48.2 % of running_a: 4.00 to 4.40 A were read on 2 visits.");
        assertThat(commission(list, "--use", " ").err()).contains("the use has no name");
        assertThat(again.code()).isEqualTo(ExitCode.USAGE);
        assertThat(again.err()).contains("the project has a scene 'rehearsal' already");
    }
}
