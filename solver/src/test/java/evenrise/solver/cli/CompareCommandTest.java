package evenrise.solver.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CompareCommandTest {
    private static final String MILL = "../datasets/copper-mill/project.json";

    @TempDir
    private Path folder;

    private Shell.Result run(String... arguments) {
        return new Shell(SmallHall.sound()).run(arguments);
    }

    @Test
    void showsTheLeastPriceAndWritesTableChartAndPlans() throws IOException {
        Path out = folder.resolve("estimate");

        Shell.Result result =
                run("compare", MILL, "-o", out.toString(), "--panels", "2", "--boards", "2..3", "--moves", "3000");

        assertThat(result.code()).isEqualTo(ExitCode.DONE);
        assertThat(result.out())
                .contains(
                        "Least price, proven: 12164.00",
                        "Spare: 2 slots a panel",
                        "Not included in any price",
                        "lock out");
        assertThat(Files.readString(out.resolve("scenarios.csv"))).startsWith("scenario,panels,boards,aim,price");
        assertThat(Files.readString(out.resolve("make-ups.csv")))
                .startsWith("number,price,panels,boards,unpriced,standing,why,files");
        assertThat(Files.readString(out.resolve("estimate.html")))
                .contains(
                        "Estimate for",
                        "What it is built up of",
                        "Make-ups by price",
                        "Not included in any price",
                        "licensed professional",
                        "<svg")
                .doesNotContain("<script");
        assertThat(out.resolve("estimate.pdf")).isNotEmptyFile();
        assertThat(Files.readString(out.resolve("front.svg")))
                .startsWith("<svg")
                .contains("Copper Mill", "Not included in any price");
        assertThat(out.resolve("p2-b2-usual.plan.json")).isRegularFile();
    }

    @Test
    void leavesTheSpareThatIsAskedForAndNoOther() {
        Path out = folder.resolve("estimate");

        Shell.Result result = run(
                "compare",
                MILL,
                "-o",
                out.toString(),
                "--least-only",
                "--spare-slots",
                "0",
                "--moves",
                "500",
                "--tries",
                "1");

        assertThat(result.out())
                .contains("Spare: at least 0 slots a panel, 0 outputs a board")
                .doesNotContain("Numbers");
        assertThat(out.resolve("least-usual.plan.json")).isRegularFile();
    }

    @Test
    void tellsTheRangeOfPricesWhereQuantitiesAreOpen() throws IOException {
        String open = Files.readString(Path.of(MILL))
                .replaceFirst(
                        "\\{",
                        "{ \"quantities\": [{\"name\": \"open ones\", \"loads\": [\"" + "four-channel-amplifier-1"
                                + "\"], \"low\": 1, \"high\": 4}],");
        Path project = Files.writeString(folder.resolve("open.json"), open);
        Path out = folder.resolve("estimate");

        Shell.Result result = run(
                "compare",
                project.toString(),
                "-o",
                out.toString(),
                "--least-only",
                "--tries",
                "1",
                "--moves",
                "500",
                "--draws",
                "20");

        assertThat(result.out())
                .contains("Price where quantities are open", "(P50)", "open ones", "without a plan of its own");
        assertThat(Files.readAllLines(out.resolve("draws.csv")))
                .hasSizeGreaterThan(21)
                .startsWith("draw,open ones,price");
    }

    @Test
    void refusesToDrawWhereNothingIsOpen() {
        Shell.Result result = run("compare", MILL, "-o", folder.resolve("x").toString(), "--draws", "20");

        assertThat(result.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(result.err()).contains("nothing to draw");
    }

    @Test
    void refusesSpareThatIsNone() {
        assertThat(run("compare", MILL, "-o", "unused", "--spare-percent", "100")
                        .code())
                .isEqualTo(ExitCode.USAGE);
    }

    @Test
    void saysWhatAProjectLacks() throws IOException {
        Path project = Files.writeString(folder.resolve("hall.json"), SmallHall.PROJECT);

        Shell.Result result =
                run("compare", project.toString(), "-o", folder.resolve("out").toString());

        assertThat(result.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(result.err()).contains("panel_types");
    }

    @Test
    void refusesARangeThatIsNone() {
        assertThat(run("compare", MILL, "-o", "unused", "--boards", "9..3").code())
                .isEqualTo(ExitCode.USAGE);
        assertThat(run("compare", MILL, "-o", "unused", "--boards", "many").err())
                .contains("6..14");
    }

    @Test
    void billDoesNotWriteOverItsProject() throws IOException {
        Path project = Files.writeString(folder.resolve("hall.json"), SmallHall.PROJECT);

        Shell.Result result = run("bill", project.toString(), "--csv", project.toString());

        assertThat(result.code()).isEqualTo(ExitCode.USAGE);
        assertThat(result.err()).contains("would overwrite");
        assertThat(project).hasContent(SmallHall.PROJECT);
    }

    @Test
    void billListsEverythingWithPrices() throws IOException {
        Path csv = folder.resolve("bill.csv");

        Shell.Result result = run("bill", MILL, "--csv", csv.toString());

        assertThat(result.code()).isEqualTo(ExitCode.DONE);
        assertThat(result.out())
                .contains(
                        "Bill of materials for Copper Mill, in EUR",
                        "control lead",
                        "Total",
                        "Not included in any price",
                        "lock out");
        assertThat(Files.readString(csv)).startsWith("Item,Quantity,\"Price, EUR\",\"Sum, EUR\",Kind\r\n");
    }
}
