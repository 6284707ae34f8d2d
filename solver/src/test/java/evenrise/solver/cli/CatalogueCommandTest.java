package evenrise.solver.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CatalogueCommandTest {
    private static final String MILL = "../datasets/copper-mill/project.json";

    @TempDir
    private Path folder;

    private static Shell.Result run(String... arguments) {
        return new Shell(SmallHall.sound()).run(arguments);
    }

    private String at(String name) {
        return folder.resolve(name).toString();
    }

    @Test
    void aBillAtTheProjectsOwnPricesIsTheSame() {
        assertThat(run("catalogue", MILL, "-o", at("prices.xlsx")).code()).isEqualTo(ExitCode.DONE);

        String own = run("bill", MILL).out();
        String shared = run("bill", MILL, "--catalogue", at("prices.xlsx")).out();

        assertThat(shared).contains("Prices are those of prices.xlsx.");
        assertThat(shared.replaceAll("\\s+", " ").replace("Prices are those of prices.xlsx. ", ""))
                .isEqualTo(own.replaceAll("\\s+", " "));
    }

    @Test
    void anotherPriceIsAnotherBill() throws IOException {
        run("catalogue", MILL, "-o", at("prices.csv"));
        Path prices = folder.resolve("prices.csv");
        Files.writeString(prices, Files.readString(prices).replaceAll("(?m)^(work,board,.*?),[0-9]+,", "$1,9999,"));

        assertThat(run("bill", MILL, "--catalogue", prices.toString()).out()).contains("9999.00");
    }

    @Test
    void writesATemplate() {
        assertThat(run("catalogue", "--template", at("t.csv")).code()).isEqualTo(ExitCode.DONE);
        assertThat(folder.resolve("t.csv"))
                .content()
                .startsWith("kind,name,slots")
                .contains("example panel,p42,42");
    }

    @Test
    void refusesATableThatHoldsNoPrices() throws IOException {
        Path file = Files.writeString(folder.resolve("list.csv"), "Name,Amps\nDesk,1\n");

        Shell.Result result = run("bill", MILL, "--catalogue", file.toString());

        assertThat(result.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(result.err()).contains("list.csv", "no table of prices");
        assertThat(run("catalogue").code()).isEqualTo(ExitCode.USAGE);
    }
}
