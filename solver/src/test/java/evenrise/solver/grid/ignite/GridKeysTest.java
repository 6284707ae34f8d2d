package evenrise.solver.grid.ignite;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.solver.grid.SiteCertificates;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A worker with keys, and who wants to have it work. */
@Tag("slow")
@Timeout(300)
class GridKeysTest {
    private static final String SOFTWARE = "1";

    @TempDir
    private static Path folder;

    private static Fleet fleet;

    @BeforeAll
    static void startsAWorker() throws InterruptedException {
        new SiteCertificates(folder.resolve("site")).make(List.of("ws1", "desk"));
        new SiteCertificates(folder.resolve("other")).make(List.of("desk"));
        fleet = new Fleet(1);
        fleet.worker(0, SOFTWARE, keys("site/ws1")).await("ready");
    }

    @AfterAll
    static void ends() {
        fleet.close();
    }

    private static String keys(String name) {
        return folder.resolve(name).toString();
    }

    private static Fleet.Member asks(String keys) throws InterruptedException {
        Fleet.Member driver = fleet.driver(SOFTWARE, keys);
        driver.await("ready");
        driver.tell(folder.resolve("answers-" + keys.hashCode()) + " echo:1:- echo:2:-");
        return driver;
    }

    @Test
    void worksForWhoIsOfTheSameAuthority() throws Exception {
        Fleet.Member driver = asks(keys("site/desk"));

        driver.await("run ended");

        assertThat(driver.heard()).contains("landed echo 1 -", "landed echo 2 -");
    }

    @Test
    void refusesACertificateOfAnotherAuthority() throws Exception {
        Fleet.Member driver = asks(keys("other/desk"));

        assertThat(driver.await("run failed")).contains("does not know these keys");
    }

    @Test
    void refusesWhoHasNoCertificate() throws Exception {
        Fleet.Member driver = asks("-");

        assertThat(driver.await("run failed")).contains("does not know these keys, or has none");
    }
}
