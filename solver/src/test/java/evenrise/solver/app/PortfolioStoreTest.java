package evenrise.solver.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import evenrise.solver.report.PortfolioText;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What a portfolio wrote is read again as it was written, and nothing else is taken for it. */
class PortfolioStoreTest {
    private static final String KEY = "ab".repeat(32);
    private static final String HEADER =
            String.join(",", PortfolioText.values(List.of()).get(0));

    @TempDir
    private Path folder;

    private PortfolioStore store(String... rows) throws IOException {
        Files.writeString(folder.resolve(PortfolioStore.TABLE), HEADER + "\r\n" + String.join("\r\n", rows) + "\r\n");
        return PortfolioStore.in(folder);
    }

    @Test
    void hasEveryFigureOfARow() throws IOException {
        PortfolioStore.Row row = store("Hall,light,7,,12.5,3.25,100,1,2,4.5,0,1,0," + KEY + ",")
                .rows()
                .get(0);

        assertThat(row.project()).isEqualTo("Hall");
        assertThat(row.variant()).isEqualTo("light");
        assertThat(row.seed()).isEqualTo(7);
        assertThat(row.price()).isEmpty();
        assertThat(row.objective()).hasValue(12.5);
        assertThat(row.gapPercent()).hasValue(3.25);
        assertThat(row.peakInrushAmps()).hasValue(100);
        assertThat(row.durationSeconds()).hasValue(4.5);
        assertThat(row.limitsBroken()).hasValue(1);
        assertThat(row.key()).contains(KEY);
        assertThat(row.failure()).isEmpty();
    }

    @Test
    void tellsWhyThereIsNoPlan() throws IOException {
        PortfolioStore.Row row = store("Hall,light,7,,,,,,,,,,,,no room").rows().get(0);

        assertThat(row.failure()).contains("no room");
        assertThat(row.objective()).isEmpty();
        assertThat(row.key()).isEmpty();
    }

    @Test
    void hasThePlanOfAKeyThatIsInTheTable() throws IOException {
        Files.createDirectories(folder.resolve("answers"));
        Files.writeString(folder.resolve("answers").resolve(KEY + ".plan.json"), "{}");

        assertThat(store("Hall,light,7,,12.5,3.25,100,1,2,4.5,0,1,0," + KEY + ",")
                        .plan(KEY))
                .asString()
                .isEqualTo("{}");
    }

    @ParameterizedTest
    @ValueSource(strings = {"../secret", "cdcdcdcdcdcdcdcd", "", "..\\x"})
    void noOtherKeyLeadsAnywhere(String key) throws IOException {
        Files.createDirectories(folder.resolve("answers"));
        Files.writeString(folder.resolve("secret.plan.json"), "{}");
        Files.writeString(folder.resolve("answers/cdcdcdcdcdcdcdcd.plan.json"), "{}");
        PortfolioStore store = store(
                "Hall,light,7,,12.5,3.25,100,1,2,4.5,0,1,0," + KEY + ",",
                "Hall,light,8,,12.5,3.25,100,1,2,4.5,0,1,0,../secret,");

        assertThatThrownBy(() -> store.plan(key)).isInstanceOf(JobFailed.class);
    }

    @ParameterizedTest
    @ValueSource(strings = {"a,b\r\n1,2\r\n", "\r\n", ""})
    void anotherTableIsRefused(String text) throws IOException {
        Files.writeString(folder.resolve(PortfolioStore.TABLE), text);

        assertThatThrownBy(() -> PortfolioStore.in(folder)).isInstanceOf(JobFailed.class);
    }

    @Test
    void aNumberThatIsNoneIsRefused() {
        assertThatThrownBy(() -> store("Hall,light,seven,,12.5,3.25,100,1,2,4.5,0,1,0," + KEY + ","))
                .hasMessageContaining("number");
    }
}
