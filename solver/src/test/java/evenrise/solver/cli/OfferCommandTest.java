package evenrise.solver.cli;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.file.Format;
import evenrise.model.file.ProjectFile;
import evenrise.model.file.SideNotes;
import evenrise.model.project.Project;
import evenrise.model.project.QuantityRange;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class OfferCommandTest {
    private static final String MILL = "../datasets/copper-mill/project.json";

    @TempDir
    private Path folder;

    private Shell.Result run(String... arguments) {
        return new Shell(SmallHall.sound()).run(arguments);
    }

    private String at(String name) {
        return folder.resolve(name).toString();
    }

    /** The mill as it is and as its least price has it. */
    private Shell.Result offered() {
        run(
                "compare",
                MILL,
                "-o",
                at("estimate"),
                "--panels",
                "2..3",
                "--boards",
                "3",
                "--moves",
                "1500",
                "--tries",
                "1");
        return run(
                "offer",
                "--title",
                "Copper <Mill>",
                "--alternate",
                "Two panels",
                at("estimate/p2-b3-usual.project.json"),
                at("estimate/p2-b3-usual.plan.json"),
                "--alternate",
                "Three <panels>",
                at("estimate/p3-b3-usual.project.json"),
                at("estimate/p3-b3-usual.plan.json"),
                "-o",
                at("offer"));
    }

    @Test
    void comparesAlternatesOnScreenPageAndSheet() throws IOException {
        Shell.Result result = offered();

        assertThat(result.code()).as(result.err()).isIn(ExitCode.DONE, ExitCode.LIMITS_BROKEN);
        assertThat(result.out()).contains("Price, EUR", "Peak inrush, A", "Two panels:", "Not included in any price");
        String page = Files.readString(folder.resolve("offer/offer.html"));
        assertThat(page)
                .contains(
                        "Copper &lt;Mill&gt;",
                        "Three &lt;panels&gt;",
                        "Not included in any price",
                        "licensed professional")
                .doesNotContain("<script", "labour");
        assertThat(Files.readString(folder.resolve("offer/offer.csv")))
                .startsWith("figure,Two panels,Three <panels>")
                .contains("# Note: Not included in any price");
        try (PDDocument pdf = Loader.loadPDF(folder.resolve("offer/offer.pdf").toFile())) {
            assertThat(new PDFTextStripper().getText(pdf))
                    .contains("Copper <Mill>", "Peak inrush, A", "Not included in any price", "licensed professional");
        }
    }

    @Test
    void showsTheRangeOfPricesWhereQuantitiesAreOpen() throws IOException {
        Project mill = ProjectFile.read(Path.of(MILL)).value().orElseThrow();
        Project open = mill.withQuantities(List.of(QuantityRange.builder()
                .name("Core switches")
                .loads(List.of("core-network-switch-b-1"))
                .low(1)
                .high(4)
                .build()));
        ProjectFile.write(open, SideNotes.NONE, folder.resolve("open.json"), Format.JSON);
        run("plan", at("open.json"), "--moves", "500", "-o", at("plan.json"));

        Shell.Result result = run(
                "offer",
                "--draws",
                "8",
                "--alternate",
                "A",
                at("open.json"),
                at("plan.json"),
                "--alternate",
                "B",
                at("open.json"),
                at("plan.json"),
                "-o",
                at("offer"));

        assertThat(result.out()).contains("A, B, where quantities are open", "P90");
        assertThat(Files.readString(folder.resolve("offer/offer.html")))
                .contains(
                        "Where quantities are open",
                        "<svg",
                        "Core switches",
                        "Nine tenths at most (P90)",
                        "own panels and boards");
    }

    @Test
    void refusesTwoAlternatesOfOneName() {
        Shell.Result result =
                run("offer", "--alternate", "A", MILL, MILL, "--alternate", "A", MILL, MILL, "-o", at("offer"));

        assertThat(result.code()).isEqualTo(ExitCode.USAGE);
        assertThat(result.err()).contains("a name of its own");
    }
}
