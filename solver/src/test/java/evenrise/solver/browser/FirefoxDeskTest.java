package evenrise.solver.browser;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.Needs;
import evenrise.solver.app.Jobs;
import evenrise.solver.desk.OpenDesk;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The desk in the other family of browsers: every view comes, a load is moved, a cell is edited, all of it is taken back. */
@Tag("slow")
@Timeout(240)
@Needs("firefox-esr")
class FirefoxDeskTest {
    private static final String ENTER = "\uE007";

    @TempDir
    private static Path profile;

    @TempDir
    private Path folder;

    @Test
    void isWorkedInFirefox() throws IOException {
        Files.copy(Path.of("../datasets/meridian-hall/project.json"), folder.resolve("project.json"));
        Files.copy(Path.of("src/test/resources/pictures/meridian-hall.plan.json"), folder.resolve("project.plan.json"));
        try (OpenDesk desk = OpenDesk.on(folder, 0, new Jobs());
                Firefox browser = new Firefox(profile)) {
            browser.open(desk.address());
            seesEveryView(browser);
            movesALoad(browser);
            editsACell(browser);
            takesItBack(browser);
        }
    }

    private static void turnTo(Firefox browser, String view, String part) {
        browser.script("location.hash = '#" + view + "'");
        browser.until("document.querySelector('" + part + "')");
    }

    private static void seesEveryView(Firefox browser) {
        int views = Integer.parseInt(browser.script("return document.querySelectorAll('nav a').length"));
        for (int view = 0; view < views; view++) {
            browser.script("document.querySelectorAll('nav a')[" + view + "].click()");
            browser.until("document.querySelectorAll('nav a')[" + view + "].getAttribute('aria-current') === 'page'"
                    + " && document.querySelector('#work section')");
        }
        assertThat(views).isGreaterThan(6);
    }

    private static void movesALoad(Firefox browser) {
        turnTo(browser, "plan", ".panel");
        browser.click("[data-panel='amp-left'][data-slot='1']");
        browser.script("[...document.querySelectorAll('#holding button')]"
                + ".find(each => each.textContent === 'Pick up').click()");
        browser.until("document.querySelector('.cell.fits')");
        browser.click("[data-panel='amp-left'][data-slot='38']");
        browser.until("document.getElementById('said').textContent.includes('front-fill is at amp-left, slot 38')");
        assertThat(browser.script("return document.getElementById('figures').textContent"))
                .contains("all kept");
    }

    private static void editsACell(Firefox browser) {
        turnTo(browser, "loads", "[data-r=\"0\"][data-c=\"7\"]");
        browser.script("document.querySelector('.grid').focus()");
        browser.press("\uE014".repeat(7) + "2.5" + ENTER);
        browser.until("document.getElementById('said').textContent.includes('1 cell taken in.')");
        assertThat(browser.script("return document.querySelector('[data-r=\"0\"][data-c=\"7\"]').textContent"))
                .isEqualTo("2.5");
    }

    private static void takesItBack(Firefox browser) {
        browser.click("#undo");
        browser.until("document.getElementById('undo').title.includes('front-fill')");
        browser.click("#undo");
        browser.until("document.getElementById('undo').disabled");
    }
}
