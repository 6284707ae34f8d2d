package evenrise.solver.bench;

import evenrise.solver.browser.Browser;
import evenrise.solver.browser.DrawnPages;
import evenrise.solver.rendering.HtmlPage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * How the page feels: until it can be used after it is opened, and frames a second while a scripted hand drags the time to
 * and fro. Also how long the page's own scripts take of each frame while it scrubs and while it zooms. Measured inside the browser, which shows at most 60 frames a second; drawn by the processor alone where there
 * is no graphics card.
 */
final class PageBenchmark {
    private static final List<String> USUAL = List.of("meridian-hall", "drawn:42", "drawn:417");
    private static final long MOVES = 2000;
    private static final int TIMES_OPENED = 3;
    private static final String NOTE_WHEN_USABLE = "document.addEventListener('DOMContentLoaded', () =>"
            + " requestAnimationFrame(() => requestAnimationFrame(() => { window.usable = performance.now(); })));";
    /** Script time frame by frame: all callbacks of one frame have its time. */
    private static final String NOTE_TIME_SPENT = "window.spent = new Map(); const ask = window.requestAnimationFrame;"
            + "window.requestAnimationFrame = call => ask(frame => { const begin = performance.now(); call(frame);"
            + " spent.set(frame, (spent.get(frame) || 0) + performance.now() - begin); });";

    private static final String SLOWEST = "const all = Array.from(spent.values()).sort((a, b) => a - b); spent.clear();"
            + " return all[Math.floor(all.length * 0.95)] || 0";
    /** Where the drawing lies is asked once: what a hand sends carries its place, and asking would count layout as script. */
    private static final String ZOOM =
            "const millis = 1000 * arguments[0], done = arguments[1], begin = performance.now();"
                    + "const drawing = document.getElementById('drawing'); drawing.scrollIntoView(); const box = drawing.getBoundingClientRect();"
                    + "function frame(now) { if (now - begin > millis) { document.getElementById('whole').click(); done(); return; }"
                    + " drawing.dispatchEvent(new WheelEvent('wheel', { ctrlKey: true, bubbles: true, cancelable: true,"
                    + " clientX: box.left + box.width * 0.6, deltaY: 30 * Math.cos((now - begin) / 700) }));"
                    + " requestAnimationFrame(frame); } requestAnimationFrame(frame);";

    private static final String DRAG =
            "const millis = 1000 * arguments[0], done = arguments[2], hand = document.getElementById('time');"
                    + "document.getElementById(arguments[1]).scrollIntoView();"
                    + "const begin = performance.now(), gaps = []; let last = begin;"
                    + "function frame(now) { gaps.push(now - last); last = now;"
                    + " if (now - begin > millis) { gaps.shift(); gaps.sort((a, b) => a - b);"
                    + "  done({ frames: 1000 * gaps.length / (now - begin), slow: gaps[Math.floor(gaps.length * 0.95)] }); return; }"
                    + " hand.value = hand.max * (0.5 - 0.5 * Math.cos((now - begin) / 1500));"
                    + " hand.dispatchEvent(new Event('input', { bubbles: true })); requestAnimationFrame(frame); }"
                    + "requestAnimationFrame(frame);";

    private PageBenchmark() {}

    static void print(BenchSettings settings) throws IOException {
        double seconds = Math.min(settings.seconds(), 8);
        System.out.printf(
                Locale.ROOT,
                "The page in Chromium, window of 1280 by 900: best of %d openings; %.0f s of scrubbing at each place.%n",
                TIMES_OPENED,
                seconds);
        BenchTable table = new BenchTable(
                "project",
                "loads",
                "size MB",
                "usable after s",
                "frames/s at the curve",
                "at the panels",
                "at the shares",
                "slowest 5 % ms",
                "script ms, 95 % below: scrubbing",
                "zooming");
        table.head(System.out);
        boolean isChosen = !System.getProperty("bench.projects", "").isBlank();
        for (String name : isChosen ? settings.projects() : USUAL) {
            DrawnPages.Planned planned = DrawnPages.of(BenchProjects.read(name), MOVES);
            Path page = Files.createTempFile("bench", ".html");
            Files.writeString(page, HtmlPage.of(planned.document()));
            try (Browser browser = new Browser()) {
                table.row(System.out, row(name, planned, page, browser, seconds));
            }
            Files.delete(page);
        }
    }

    private static List<String> row(String name, DrawnPages.Planned planned, Path page, Browser browser, double seconds)
            throws IOException {
        browser.beforeEveryPage(NOTE_WHEN_USABLE);
        browser.beforeEveryPage(NOTE_TIME_SPENT);
        double usableMillis = Double.MAX_VALUE;
        for (int i = 0; i < TIMES_OPENED; i++) {
            browser.open(page);
            browser.until("window.usable");
            usableMillis = Math.min(usableMillis, number(browser.script("return window.usable")));
        }
        double slowMillis = 0;
        double[] frames = new double[3];
        browser.script(SLOWEST);
        List<String> places = List.of("sequence", "panels", "moment");
        for (int i = 0; i < places.size(); i++) {
            Map<?, ?> felt = (Map<?, ?>) browser.scriptThatWaits(DRAG, seconds, places.get(i));
            frames[i] = number(felt.get("frames"));
            slowMillis = Math.max(slowMillis, number(felt.get("slow")));
        }
        double scrubbing = number(browser.script(SLOWEST));
        browser.scriptThatWaits(ZOOM, seconds);
        double zooming = number(browser.script(SLOWEST));
        return List.of(
                BenchProjects.label(name),
                Integer.toString(planned.layout().project().loads().size()),
                String.format(Locale.ROOT, "%.1f", Files.size(page) / 1e6),
                String.format(Locale.ROOT, "%.2f", usableMillis / 1000),
                String.format(Locale.ROOT, "%.0f", frames[0]),
                String.format(Locale.ROOT, "%.0f", frames[1]),
                String.format(Locale.ROOT, "%.0f", frames[2]),
                String.format(Locale.ROOT, "%.0f", slowMillis),
                String.format(Locale.ROOT, "%.1f", scrubbing),
                String.format(Locale.ROOT, "%.1f", zooming));
    }

    private static double number(Object value) {
        return ((Number) value).doubleValue();
    }
}
