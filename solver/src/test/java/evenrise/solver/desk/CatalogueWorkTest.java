package evenrise.solver.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import evenrise.model.project.Catalogue;
import evenrise.model.project.PanelType;
import evenrise.solver.desk.EstimateAnswers.PriceTablesView;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CatalogueWorkTest {
    @TempDir
    private Path folder;

    private Desk desk;
    private DeskRoutes routes;

    @BeforeEach
    void open() {
        desk = PricedHall.desk(PricedHall.in(folder));
        routes = PricedHall.routes(desk, folder);
    }

    private Record asked(String path, String file) {
        return routes.of("POST", path)
                .orElseThrow()
                .answer(("{\"file\": \"" + file + "\"}").getBytes(StandardCharsets.UTF_8));
    }

    private Optional<Catalogue> catalogue() {
        return desk.state().orElseThrow().project().catalogue();
    }

    @Test
    void pricesWrittenAsATableComeBackFromItAsOneChange() throws IOException {
        Optional<Catalogue> before = catalogue();
        assertThat(((PriceTablesView) asked("/api/catalogue/write", "prices.csv")).files())
                .containsExactly("prices.csv");
        String table = Files.readString(folder.resolve("prices.csv"));
        assertThat(table).contains("700");
        Files.writeString(folder.resolve("prices.csv"), table.replace("700", "705"));

        asked("/api/catalogue/take", "prices.csv");

        assertThat(catalogue().orElseThrow().panelTypes())
                .filteredOn(each -> each.id().equals("small"))
                .extracting(PanelType::price)
                .containsExactly(705.0);
        assertThat(catalogue().orElseThrow().currency()).isEqualTo("EUR");
        desk.undo();
        assertThat(catalogue()).isEqualTo(before);
    }

    @Test
    void aTableThatIsThereIsNotWrittenOver() throws IOException {
        Files.writeString(folder.resolve("prices.csv"), "mine");

        assertThatThrownBy(() -> asked("/api/catalogue/write", "prices.csv")).hasMessageContaining("already");
        assertThat(folder.resolve("prices.csv")).hasContent("mine");
    }

    @Test
    void aTableWithoutPricesChangesNothing() throws IOException {
        Optional<Catalogue> before = catalogue();
        Files.writeString(folder.resolve("prices.csv"), "kind,name,price\npanel,small,many\n");

        assertThatThrownBy(() -> asked("/api/catalogue/take", "prices.csv")).hasMessageContaining("prices.csv");
        assertThat(catalogue()).isEqualTo(before);
    }

    @ParameterizedTest
    @ValueSource(strings = {"../prices.csv", "a/b.csv", ".csv", "project.json", "prices.xls"})
    void noOtherFileIsATableOfPrices(String file) {
        assertThatThrownBy(() -> asked("/api/catalogue/take", file)).hasMessageContaining("cannot be called");
        assertThatThrownBy(() -> asked("/api/catalogue/write", file)).hasMessageContaining("cannot be called");
    }
}
