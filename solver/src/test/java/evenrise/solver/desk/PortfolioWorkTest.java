package evenrise.solver.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import evenrise.solver.desk.PortfolioAnswers.OpenedPlan;
import evenrise.solver.desk.PortfolioAnswers.StoreView;
import evenrise.solver.desk.PortfolioAnswers.StoresView;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Portfolios that lie in the folder are looked at; a plan of one comes onto the desk as what it is. */
class PortfolioWorkTest {
    private static final String KEY = "ab".repeat(32);
    private static final String TABLE =
            "project,variant,seed,price,objective,gap_pct,peak_inrush_a,supply_imbalance_pct,worst_panel_imbalance_pct,"
                    + "duration_s,hard_rules_broken,limits_broken,checks_not_made,answer,failure\r\nSmall hall,as-is,1,,12.5,,"
                    + "100,1,1,2,0,0,0," + KEY + ",\r\n";

    @TempDir
    private Path folder;

    private DeskRoutes routes;

    @BeforeEach
    void open() throws IOException {
        routes = Hall.routes(Hall.in(folder));
        Files.createDirectories(folder.resolve("night/answers"));
        Files.writeString(folder.resolve("night/portfolio.csv"), TABLE);
        plan(Hall.PLAN.replace("\"slot\": 3", "\"slot\": 9"));
    }

    private void plan(String text) throws IOException {
        Files.writeString(folder.resolve("night/answers").resolve(KEY + ".plan.json"), text);
    }

    private Record asked(String path, String body) {
        return routes.of("POST", path).orElseThrow().answer(body.getBytes(StandardCharsets.UTF_8));
    }

    private OpenedPlan opened(boolean isConfirmed) {
        return (OpenedPlan) asked(
                "/api/portfolio/open",
                "{\"store\": \"night\", \"key\": \"" + KEY + "\", \"confirmed\": " + isConfirmed + "}");
    }

    private String desk() {
        return routes.of("GET", "/api/desk").orElseThrow().answer(new byte[0]).toString();
    }

    @Test
    void areFoundWithTheirPlans() {
        StoresView stores =
                (StoresView) routes.of("GET", "/api/portfolios").orElseThrow().answer(new byte[0]);
        StoreView store = (StoreView) asked("/api/portfolio", "{\"store\": \"night\"}");

        assertThat(stores.stores()).containsExactly("night");
        assertThat(store.plans()).singleElement().satisfies(each -> {
            assertThat(each.objective()).hasValue(12.5);
            assertThat(each.key()).contains(KEY);
        });
    }

    /** Without a word of whose plan it is, it comes only where that is wanted. */
    @Test
    void aPlanOfAProjectThatIsNotThereIsJudgedByTheOneOnTheDeskOnceThatIsSaid() {
        String before = desk();

        OpenedPlan asked = opened(false);
        String between = desk();
        OpenedPlan done = opened(true);

        assertThat(asked.isOpened()).isFalse();
        assertThat(asked.choice()).isEqualTo("Open it by this project");
        assertThat(between).isEqualTo(before);
        assertThat(done.isOpened()).isTrue();
        assertThat(desk()).isNotEqualTo(before);
    }

    @Test
    void aPlanThatMakesNoSenseHereIsRefused() throws IOException {
        plan(Hall.PLAN.replace("\"amp-1\"", "\"another\""));

        assertThatThrownBy(() -> opened(true)).hasMessageContaining("places load 'another'");
    }

    @ParameterizedTest
    @ValueSource(strings = {"..", "/etc", "night/..", "elsewhere", ""})
    void noOtherFolderIsLookedInto(String store) {
        assertThatThrownBy(() -> asked("/api/portfolio", "{\"store\": \"" + store + "\"}"))
                .hasMessageContaining("no portfolio");
    }
}
