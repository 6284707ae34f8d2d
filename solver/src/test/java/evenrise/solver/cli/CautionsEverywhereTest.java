package evenrise.solver.cli;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.file.ProjectFile;
import evenrise.model.plan.Cautions;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.solver.engine.Budget;
import evenrise.solver.engine.PlanningRequest;
import evenrise.solver.engine.search.Planner;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Every file that leaves the program says the cautions, whatever its format. */
class CautionsEverywhereTest {
    private static final String YARD = "../datasets/lantern-yard/";
    private static final String PROJECT = YARD + "project.json";
    private static final String MILL = "../datasets/copper-mill/project.json";

    /**
     * What writes no file and prints no document of a plant: a shell's completion, help, and a worker, who gives plans away.
     * OpenDeskTest asks the desk.
     */
    private static final Set<String> WITHOUT_A_PLANT = Set.of("completion", "help", "desk", "worker");

    private static Plan found;
    private static String plan;

    @TempDir
    private static Path folder;

    @BeforeAll
    static void everyCommandWrites() throws IOException {
        Project project = ProjectFile.read(Path.of(PROJECT)).value().orElseThrow();
        found = new Planner(new PlanningRequest(project, Optional.empty(), new Budget.Moves(3_000), 1, 1), any -> {})
                .plan()
                .plan();
        plan = at("hall.plan.json");
        run("plan", PROJECT, "-o", plan, "--moves", "10", "--report", at("documents"));
        run("plan", PROJECT, "-o", at("hall.plan.yaml"), "--moves", "10");
        run("report", PROJECT, plan, "-o", at("report"), "--trials", "20", "--against", plan, "--date", "2026-01-02");
        run("report", PROJECT, plan, "-o", at("labels"), "--format", "csv", "--labels", "a4-63.5x38.1");
        run("audit", PROJECT, plan, "--typical-inrush-into", at("typical.json"));
        run("pin", PROJECT, plan, "--all", "-o", at("held.json"));
        run("unpin", at("held.json"), "--all", "-o", at("free.yaml"));
        run("export", PROJECT, "--resolved", "-o", at("resolved.json"));
        run("export", PROJECT, "-o", at("tables.xlsx"));
        run("export", PROJECT, "-o", at("tables"));
        run("import", "--into", PROJECT, at("tables"), "-o", at("taken.json"));
        run("rehearse", PROJECT, plan, "--trace", at("trace.json"));
        run("rehearse", PROJECT, plan, "--trace", at("trace.csv"));
        run("rehearse", PROJECT, plan, "--trials", "20", "--trace", at("trials.json"));
        run(
                "rework",
                PROJECT,
                YARD + "built.plan.json",
                "--measured",
                YARD + "measured.csv",
                "--moves",
                "3000",
                "-o",
                at("rework"));
        run("rework", PROJECT, YARD + "built.plan.json", "--max-moves", "0", "--moves", "10", "-o", at("nothing"));
        run(
                "commission",
                PROJECT,
                YARD + "built.plan.json",
                YARD + "measured.csv",
                "--into",
                at("measured.json"),
                "-o",
                at("as-built"));
        run("compare", MILL, "-o", at("compare"), "--panels", "2", "--boards", "2", "--moves", "500");
        run("portfolio", PROJECT, "-o", at("portfolio"), "--moves", "10");
        run("offer", "--alternate", "A", PROJECT, plan, "--alternate", "B", PROJECT, plan, "-o", at("offer"));
        run("bill", MILL, "--csv", at("bill.csv"));
        run("catalogue", MILL, "-o", at("prices.csv"));
        run("catalogue", "--template", at("prices.xlsx"));
        run("import", "../datasets/juniper-hall/list.csv", "-o", at("imported.json"));
        run("import", "--template", at("template.csv"));
        run("import", "--template", at("template.xlsx"));
        run("generate", "--panels", "2", "-o", at("generated.yaml"));
    }

    private static String at(String name) {
        return folder.resolve(name).toString();
    }

    private static void run(String... arguments) {
        Shell.Result result = new Shell(found).run(arguments);
        assertThat(result.code())
                .as(String.join(" ", arguments) + "\n" + result.err())
                .isNotIn(ExitCode.USAGE, ExitCode.BAD_INPUT, ExitCode.NOT_WRITTEN);
    }

    @Test
    void sayThemInEachFile() throws IOException {
        Set<String> without = new TreeSet<>();
        Set<String> endings = new TreeSet<>();
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.filter(Files::isRegularFile)
                    .filter(each -> !each.getFileName().toString().startsWith("."))
                    .toList()) {
                String text = letters(text(file));
                endings.add(file.toString().replaceFirst(".*\\.", ""));
                if (!Cautions.ALL.stream().allMatch(each -> text.contains(letters(each)))) {
                    without.add(folder.relativize(file).toString());
                }
            }
        }

        assertThat(without).isEmpty();
        assertThat(endings).containsExactly("csv", "dxf", "html", "json", "pdf", "svg", "txt", "xlsx", "yaml");
    }

    @Test
    void sayThemOnStandardOutput() throws IOException {
        for (List<String> arguments : List.of(
                List.of("schema", "project"),
                List.of("schema", "plan"),
                List.of("schema", "script"),
                List.of("audit", PROJECT, plan),
                List.of("audit", PROJECT, plan, "--json"),
                List.of("whatif", PROJECT, plan, "--add", "1", "--moves", "50"),
                List.of("diff", YARD + "built.plan.json", plan),
                List.of("explain", PROJECT, plan, "--peak"),
                List.of("explain", PROJECT, plan, "--rule", "rating"),
                List.of("explain", PROJECT, plan, found.assignments().get(0).load()),
                List.of("explain", PROJECT, plan, found.assignments().get(0).load(), "--json"),
                List.of("size", PROJECT, plan),
                List.of("generate", "--panels", "2", "-o", "-"),
                List.of("rehearse", PROJECT, plan),
                List.of("observe", PROJECT, plan, recording()),
                List.of("commission", PROJECT, YARD + "built.plan.json", YARD + "measured.csv"),
                List.of("bill", MILL))) {
            String out = letters(
                    new Shell(found).run(arguments.toArray(String[]::new)).out());

            assertThat(Cautions.ALL).as(String.join(" ", arguments)).allMatch(each -> out.contains(letters(each)));
        }
    }

    /** Of a plant that nobody switches on; no file of the program's own. */
    private static String recording() throws IOException {
        Path file = folder.resolve(".recording.csv");
        StringBuilder lines = new StringBuilder("time_s,A,B,C\n");
        for (int i = 0; i < 40; i++) {
            lines.append(i).append(i % 2 == 0 ? ",1,1,1\n" : ",1.01,1,1\n");
        }
        return Files.writeString(file, lines).toString();
    }

    /** A command that is new must be tried above. */
    @Test
    void areAskedOfEveryCommand() throws IOException {
        String here = Files.readString(Path.of("src/test/java/evenrise/solver/cli/CautionsEverywhereTest.java"));
        String help = new Shell(found).run("--help").out();
        List<String> commands = help.lines()
                .dropWhile(line -> !line.startsWith("Commands:"))
                .skip(1)
                .takeWhile(line -> !line.isBlank())
                .filter(line -> line.matches("  [a-z]+ .*"))
                .map(line -> line.strip().split(" ")[0])
                .toList();

        assertThat(commands).hasSizeGreaterThan(9);
        assertThat(commands)
                .allMatch(each -> WITHOUT_A_PLANT.contains(each)
                        || here.contains("run(\"" + each + "\"")
                        || here.contains("List.of(\"" + each + "\""));
    }

    /** The table of blanks that a list begins with is read again without a word about them. */
    @Test
    void areSkippedWhereAListIsRead() {
        for (String template : List.of("template.csv", "template.xlsx")) {
            String out = new Shell(found)
                    .run("import", at(template), "-o", at("again.json"))
                    .all();

            assertThat(letters(out)).doesNotContain(letters("sheet 'Cautions'"));
            assertThat(out).doesNotContain("# Caution");
        }
    }

    private static String text(Path file) throws IOException {
        byte[] bytes = Files.readAllBytes(file);
        if (file.toString().endsWith(".pdf")) {
            try (PDDocument pdf = Loader.loadPDF(bytes)) {
                return new PDFTextStripper().getText(pdf);
            }
        }
        return file.toString().endsWith(".xlsx")
                ? unpacked(file)
                : new String(bytes, StandardCharsets.UTF_8)
                        .replace("&#39;", "'")
                        .replaceAll("</text>\\s*<text[^>]*>", " ");
    }

    private static String unpacked(Path file) throws IOException {
        StringBuilder text = new StringBuilder();
        try (ZipFile zip = new ZipFile(file.toFile())) {
            for (ZipEntry each : zip.stream().toList()) {
                text.append(new String(zip.getInputStream(each).readAllBytes(), StandardCharsets.UTF_8));
            }
        }
        return text.toString();
    }

    /** Lines break where a format has them break. */
    private static String letters(String text) {
        return text.replaceAll("[^A-Za-z]", "");
    }
}
