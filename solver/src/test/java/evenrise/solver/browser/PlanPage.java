package evenrise.solver.browser;

import evenrise.solver.document.Document;
import evenrise.solver.rendering.HtmlPage;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collection;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.openqa.selenium.WebElement;

/** The page of a plan in a browser: what can be seen on it, and the hands that work it. */
final class PlanPage {
    final Browser browser;
    final Path file;

    private PlanPage(Browser browser, Path file) {
        this.browser = browser;
        this.file = file;
    }

    static PlanPage open(Browser browser, Document document, Path folder) {
        try {
            Path file = Files.writeString(folder.resolve("plan.html"), HtmlPage.of(document));
            browser.open(file);
            return new PlanPage(browser, file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** As exactly as the slider knows it. */
    double seconds() {
        return number(browser.script("return Number(document.getElementById('time').value)"));
    }

    /** As a hand on the slider does; shown when this returns. */
    void scrubTo(double seconds) {
        browser.script(
                "const time = document.getElementById('time'); time.value = arguments[0];"
                        + " time.dispatchEvent(new Event('input', { bubbles: true }))",
                seconds);
        frame();
    }

    /** Waits for two pictures, in which what was asked for is drawn. */
    void frame() {
        browser.scriptThatWaits(
                "const done = arguments[0]; requestAnimationFrame(() => requestAnimationFrame(() => done()))");
    }

    /** Loads whose lamps are lit in the panels. */
    Set<String> lit() {
        return loads(".slots button.on");
    }

    /** Loads of the elements that a selector finds. */
    Set<String> loads(String selector) {
        Collection<?> found = (Collection<?>) browser.script(
                "return Array.from(document.querySelectorAll(arguments[0]), each => each.dataset.load)", selector);
        Set<String> loads = new TreeSet<>();
        found.forEach(each -> loads.add((String) each));
        return loads;
    }

    /** What the player shows for each phase. */
    List<Double> amps() {
        return amps("#meters .amps");
    }

    /** What a panel's card shows for each phase. */
    List<Double> ampsOfPanel(int panel) {
        browser.script("document.querySelectorAll('.board')[arguments[0]].scrollIntoView()", panel);
        String values = "#house > :nth-child(" + (panel + 1) + ") dd.amps";
        browser.until("document.querySelector('" + values + "').textContent !== ''");
        return amps(values);
    }

    private List<Double> amps(String selector) {
        Collection<?> texts = (Collection<?>) browser.script(
                "return Array.from(document.querySelectorAll(arguments[0]), each => each.textContent)", selector);
        return texts.stream()
                .map(text -> Double.valueOf(((String) text).replace(" A", "")))
                .toList();
    }

    /** @param place 0 for the supply, then the panels */
    void chooseNode(int place) {
        choose("node", place);
    }

    void choose(String select, Object value) {
        browser.script(
                "const select = document.getElementById(arguments[0]); select.value = arguments[1];"
                        + " select.dispatchEvent(new Event('input', { bubbles: true }))",
                select,
                String.valueOf(value));
    }

    WebElement the(String selector) {
        return browser.element(selector);
    }

    private static double number(Object value) {
        return ((Number) value).doubleValue();
    }
}
