package evenrise.solver.cli;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.file.PlanFile;
import evenrise.model.file.ProjectFile;
import evenrise.model.project.Project;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PortfolioCommandTest {
    private static final String FILE = """
        {"format": "evenrise-portfolio/1",
         "projects": ["halls"],
         "seeds": 2,
         "moves": 50,
         "variants": [
           {"name": "as-is"},
           {"name": "harder", "changes": [{"at": "/loads/amp/inrush_peak_a", "factor": 1.5}]},
           {"name": "lower", "changes": [{"at": "/supply/inrush_limit_a", "number": 250}]}]}
        """;

    @TempDir
    private Path folder;

    private final Shell shell = new Shell(SmallHall.sound());

    @BeforeEach
    void twoHalls() throws IOException {
        Files.createDirectories(folder.resolve("halls/west"));
        Files.writeString(folder.resolve("halls/east.project.json"), SmallHall.PROJECT);
        Files.writeString(folder.resolve("halls/west/project.json"), SmallHall.PROJECT.replace("Small hall", "West"));
    }

    private Shell.Result run(String... arguments) {
        List<String> all = new ArrayList<>(List.of("portfolio"));
        all.addAll(List.of(arguments));
        return shell.run(all.toArray(String[]::new));
    }

    private String at(String name) {
        return folder.resolve(name).toString();
    }

    @Test
    void plansEveryProjectBelowAFolderByEverySeed() throws IOException {
        Shell.Result result = run(at("halls"), "-o", at("out"), "--seeds", "3..5", "--moves", "50");

        assertThat(result.code()).as(result.err()).isEqualTo(ExitCode.DONE);
        assertThat(result.out()).contains("6 plans asked for", "east", "west", "3/3", "lock out");
        assertThat(Files.readAllLines(folder.resolve("out/portfolio.csv")).stream()
                        .filter(line -> line.matches("(east|west),as-is,[345],.*")))
                .hasSize(6);
        assertThat(PlanFile.read(folder.resolve("out/east.as-is.plan.json")).value())
                .isPresent();
        assertThat(folder.resolve("out/portfolio.html"))
                .content()
                .contains("Portfolio of plans", "<circle class=\"sound\"");
        assertThat(folder.resolve("out/portfolio.xlsx")).isNotEmptyFile();
    }

    @Test
    void plansTheVariantsOfAPortfolioFile() throws IOException {
        Path file = Files.writeString(folder.resolve("chain.portfolio.json"), FILE);

        Shell.Result result = run(file.toString(), "-o", at("out"));

        assertThat(result.err()).doesNotContain("expected");
        assertThat(result.out()).contains("12 plans asked for", "harder", "lower");
        Project harder = ProjectFile.read(folder.resolve("out/east.harder.project.json"))
                .value()
                .orElseThrow();
        assertThat(harder.loads().get(1).inrushPeakAmps()).hasValue(150);
        Project lower = ProjectFile.read(folder.resolve("out/east.lower.project.json"))
                .value()
                .orElseThrow();
        assertThat(lower.supply().inrushLimitAmps()).hasValue(250);
        assertThat(folder.resolve("out/east.as-is.project.json")).doesNotExist();
    }

    /** A table of prices changes prices and no plan: what was found without it is found again. */
    @Test
    void pricesAreThoseOfASharedCatalogue() throws IOException {
        Path prices = Files.writeString(
                folder.resolve("prices.csv"),
                "kind,name,slots,up to A,price\ncurrency,EUR,,,\npanel,any,12,225,4321\n");
        run(at("halls"), "-o", at("out"), "--moves", "50");
        assertThat(Files.readString(folder.resolve("out/portfolio.csv"))).doesNotContain("4321");

        Shell.Result priced = run(at("halls"), "-o", at("out"), "--moves", "50", "--catalogue", prices.toString());

        assertThat(priced.out()).contains("2 plans asked for, 2 of them from earlier runs");
        assertThat(Files.readString(folder.resolve("out/portfolio.csv"))).contains("4321", "Not included in any price");
    }

    @Test
    void findsNothingTwice() throws IOException {
        run(at("halls"), "-o", at("out"), "--seeds", "1..2", "--moves", "50");
        Map<String, byte[]> before = files();
        shell.asked.set(null);

        Shell.Result again = run(at("halls"), "-o", at("out"), "--seeds", "1..2", "--moves", "50");

        assertThat(shell.asked.get()).isNull();
        assertThat(again.out()).contains("4 plans asked for, 4 of them from earlier runs");
        assertThat(files().keySet()).isEqualTo(before.keySet());
        assertThat(files().get("answers")).isEqualTo(before.get("answers"));
    }

    @Test
    void findsAgainWhatHasChanged() throws IOException {
        run(at("halls"), "-o", at("out"), "--moves", "50");
        Files.writeString(
                folder.resolve("halls/east.project.json"),
                SmallHall.PROJECT.replace("\"running_a\": 20", "\"running_a\": 21"));

        Shell.Result again = run(at("halls"), "-o", at("out"), "--moves", "50");

        assertThat(again.out()).contains("2 plans asked for, 1 of them from earlier runs");
    }

    @Test
    void namesWhatIsWrongAndPlansTheRest() throws IOException {
        Files.writeString(
                folder.resolve("halls/bad.project.json"),
                SmallHall.PROJECT.replace("\"poles\"", "\"pole\"").replace("\"amplifier\"", "\"loud\""));

        Shell.Result result = run(at("halls"), "-o", at("out"), "--moves", "50");

        assertThat(result.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(result.err()).contains("bad: ", "'loud'");
        assertThat(result.out()).contains("Not planned", "bad, as-is, seed 1: ", "1/1");
        assertThat(folder.resolve("out/east.as-is.plan.json")).exists();
    }

    @Test
    void namesAChangeThatHasNoPlace() throws IOException {
        Path file = Files.writeString(
                folder.resolve("chain.portfolio.json"), FILE.replace("/loads/amp/", "/loads/amplifier/"));

        Shell.Result result = run(file.toString(), "-o", at("out"));

        assertThat(result.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(result.err()).contains("nothing to change at '/loads/amplifier/inrush_peak_a'");
    }

    @Test
    void listsEverythingThatIsWrongWithAPortfolioFile() throws IOException {
        Path file = Files.writeString(folder.resolve("chain.portfolio.json"), """
                {"format": "evenrise-portfolio/1", "projects": ["halls"],
                 "variants": [{"name": "a b"}, {"name": "x", "changes": [{"at": "loads", "number": 1, "factor": 2}]}, {"name": "X"}]}
                """);

        Shell.Result result = run(file.toString(), "-o", at("out"));

        assertThat(result.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(result.err()).contains("'a b'", "'X' again", "begins with /", "one of number, text, factor");
    }

    @Test
    void overwritesNothingThatIsNotItsOwn() throws IOException {
        Files.createDirectories(folder.resolve("out"));
        Files.writeString(folder.resolve("out/portfolio.csv"), "mine");

        Shell.Result result = run(at("halls"), "-o", at("out"), "--moves", "50");

        assertThat(result.code()).isEqualTo(ExitCode.NOT_WRITTEN);
        assertThat(result.err()).contains("portfolio.csv");
        assertThat(folder.resolve("out/portfolio.csv")).hasContent("mine");
    }

    @Test
    void saysWhereThereIsNoProject() throws IOException {
        Files.createDirectories(folder.resolve("empty"));

        assertThat(run(at("empty"), "-o", at("out")).code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(run(at("nowhere.json"), "-o", at("out")).err()).contains("there is no '");
        assertThat(run(at("halls"), "-o", at("out"), "--seeds", "5..3").code()).isEqualTo(ExitCode.USAGE);
        assertThat(run(at("halls"), "-o", at("out"), "--moves", "0").code()).isEqualTo(ExitCode.USAGE);
    }

    @Test
    void showsAPortfolioFileThatItsPageDescribes() throws IOException {
        String page = Files.readString(Path.of("../docs/portfolio.md"));
        String json = page.substring(page.indexOf("```json\n") + 8);
        Path file = Files.writeString(folder.resolve("chain.portfolio.json"), json.substring(0, json.indexOf("```")));

        Shell.Result result = run(file.toString(), "-o", at("out"), "--moves", "50");

        assertThat(result.err()).doesNotContain("portfolio.json: ", "nothing to change");
        assertThat(result.out()).contains("plans asked for");
    }

    private Map<String, byte[]> files() throws IOException {
        Map<String, byte[]> files = new TreeMap<>();
        try (Stream<Path> all = Files.walk(folder.resolve("out"))) {
            for (Path each : all.filter(Files::isRegularFile).toList()) {
                files.put(folder.relativize(each).toString(), Files.readAllBytes(each));
            }
        }
        return files;
    }
}
