package evenrise.solver.browser;

import evenrise.solver.app.Jobs;
import evenrise.solver.desk.OpenDesk;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collection;
import java.util.List;
import org.openqa.selenium.By;
import org.openqa.selenium.WebElement;

/** A desk on a folder of its own, with a window on it. */
final class DeskWindow implements AutoCloseable {
    final Browser browser;
    final Path folder;
    final OpenDesk desk;

    private DeskWindow(Browser browser, Path folder, OpenDesk desk) {
        this.browser = browser;
        this.folder = folder;
        this.desk = desk;
    }

    /** On a dataset with a plan kept beside the tests, where there is one. */
    static DeskWindow on(Browser browser, String dataset, Path parent) {
        return on(browser, dataset, Path.of("src/test/resources/pictures", dataset + ".plan.json"), parent);
    }

    /** On a dataset with its plan as built. */
    static DeskWindow asBuilt(Browser browser, String dataset, Path parent) {
        return on(browser, dataset, Path.of("../datasets", dataset, "built.plan.json"), parent);
    }

    private static DeskWindow on(Browser browser, String dataset, Path plan, Path parent) {
        Path folder = parent.resolve(dataset);
        try {
            Files.createDirectory(folder);
            Files.copy(Path.of("../datasets", dataset, "project.json"), folder.resolve("project.json"));
            if (Files.exists(plan)) {
                Files.copy(plan, folder.resolve("project.plan.json"));
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return onFolder(browser, folder);
    }

    static DeskWindow onFolder(Browser browser, Path folder) {
        OpenDesk desk = OpenDesk.on(folder, 0, new Jobs());
        browser.open(desk.address());
        return new DeskWindow(browser, folder, desk);
    }

    /** Turns to a view and waits until its part of the page is there. */
    void turnTo(String view, String part) {
        browser.script("location.hash = arguments[0]", "#" + view);
        browser.until("document.querySelector('" + part + "')");
        untilAnswered();
    }

    WebElement slot(String panel, int slot) {
        return browser.element("[data-panel=\"" + panel + "\"][data-slot=\"" + slot + "\"]");
    }

    WebElement output(String board, int output) {
        return browser.element("[data-board=\"" + board + "\"][data-output=\"" + output + "\"]");
    }

    void click(String selector) {
        browser.element(selector).click();
    }

    /** Until nothing that was asked of the desk is still to be answered. */
    void untilAnswered() {
        browser.until("document.documentElement.dataset.asking === '0'");
    }

    /** Until there is nothing to take back. */
    void takeEverythingBack() {
        untilAnswered();
        while (browser.element("#undo").isEnabled()) {
            takeBack();
        }
    }

    void takeBack() {
        Object revision = browser.script("return document.documentElement.dataset.revision");
        browser.element("#undo").click();
        browser.until("document.documentElement.dataset.revision !== '" + revision + "'");
        untilAnswered();
    }

    String said() {
        return browser.text("#said");
    }

    /** Waits until what is told begins so. */
    void untilSaid(String words) {
        try {
            browser.until("document.getElementById('said').textContent.includes('" + words.replace("'", "\\'") + "')");
        } catch (AssertionError e) {
            throw new AssertionError("said instead: " + said(), e);
        }
    }

    List<String> texts(String selector) {
        return ((Collection<?>) browser.script(
                        "return Array.from(document.querySelectorAll(arguments[0]), each => each.textContent)",
                        selector))
                .stream().map(String.class::cast).toList();
    }

    WebElement button(String words) {
        return browser.element(By.xpath("//button[normalize-space()='" + words + "']"));
    }

    /** Takes one of what a list of choices offers. */
    void choose(String selector, String value) {
        browser.script(
                "const choice = document.querySelector(arguments[0]); choice.value = arguments[1];"
                        + "choice.dispatchEvent(new Event('change', { bubbles: true }))",
                selector,
                value);
    }

    /** What the checker axe-core finds in the view that is shown: WCAG 2.1, levels A and AA. */
    List<String> barriers() {
        return Barriers.of(browser);
    }

    @Override
    public void close() {
        desk.close();
    }
}
