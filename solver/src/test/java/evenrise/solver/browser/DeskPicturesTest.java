package evenrise.solver.browser;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.Needs;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.openqa.selenium.Keys;

/**
 * Every view of the desk fits its window, complains of nothing, has no barrier that a checker sees, and is kept as a picture
 * for eyes.
 */
@Tag("slow")
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@Needs({"chromium", "chromedriver"})
class DeskPicturesTest {
    private static final Path FIGURES = Path.of("../docs/figures");

    private enum View {
        LISTS("loads", ".grid .body .row", 1280, "light"),
        PLAN("plan", ".panel", 1440, "light"),
        PLAN_DARK("plan", ".panel", 1440, "dark"),
        PLAN_NARROW("plan", ".panel", 390, "light"),
        TIME("time", "svg.lanes", 1280, "light"),
        SEARCH("search", "#begin", 1280, "light"),
        QUESTIONS("why", "#answer", 1280, "light"),
        KEPT("kept", "table", 1280, "light");

        private final String hash;
        private final String part;
        private final int width;
        private final String scheme;

        View(String hash, String part, int width, String scheme) {
            this.hash = hash;
            this.part = part;
            this.width = width;
            this.scheme = scheme;
        }

        private String file() {
            return "desk-" + name().toLowerCase(Locale.ROOT).replace('_', '-') + ".png";
        }
    }

    @TempDir
    private static Path folder;

    private Browser browser;
    private DeskWindow window;

    @BeforeAll
    void openADesk() {
        browser = new Browser();
        window = DeskWindow.on(browser, "meridian-hall", folder);
    }

    @AfterAll
    void closeIt() {
        window.close();
        browser.close();
    }

    @ParameterizedTest
    @EnumSource(View.class)
    void fitsItsWindow(View view) throws IOException {
        browser.window(view.width, 900);
        browser.media("screen", view.scheme, "reduce");
        window.turnTo(view.hash, view.part);
        if (view == View.PLAN) {
            browser.script("document.querySelector('.panel .cell.taken').click()");
            window.button("Pick up").click();
            browser.until("document.querySelector('.cell.fits')");
        }
        byte[] picture = browser.picture();
        browser.press(Keys.ESCAPE);
        if (Boolean.getBoolean("evenrise.refresh")) {
            Files.write(FIGURES.resolve(view.file()), picture);
        }

        assertThat(browser.script("return document.documentElement.scrollWidth"))
                .isEqualTo((long) view.width);
        assertThat(browser.complaints()).isEmpty();
        assertThat(window.barriers()).isEmpty();
        assertThat(FIGURES.resolve(view.file())).exists();
    }
}
