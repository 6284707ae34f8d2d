package evenrise.solver.browser;

import evenrise.model.Needs;
import java.io.File;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.ScriptTimeoutException;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.WindowType;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.interactions.Actions;
import org.openqa.selenium.logging.LogEntry;

/** A real Chromium without a window, and without a network. */
public final class Browser implements AutoCloseable {
    // Held, or the setting would be collected with the logger: it warns that it knows no protocol as new as the
    // browser's.
    private static final Logger CHATTER = Logger.getLogger("org.openqa.selenium");

    private final ChromeDriver driver;

    public Browser() {
        CHATTER.setLevel(Level.SEVERE);
        ChromeOptions options = new ChromeOptions();
        options.setBinary(installed("chromium"));
        // The sandbox needs rights that a build machine's container lacks; the pages are our own.
        options.addArguments("--headless=new", "--no-sandbox", "--hide-scrollbars", "--force-color-profile=srgb");
        options.setCapability("goog:loggingPrefs", Map.of("browser", "ALL", "performance", "ALL"));
        driver = new ChromeDriver(
                new ChromeDriverService.Builder()
                        .usingDriverExecutable(installed("chromedriver"))
                        .build(),
                options);
        driver.manage().timeouts().scriptTimeout(Duration.ofMinutes(2));
        driver.executeCdpCommand(
                "Network.emulateNetworkConditions",
                Map.of("offline", true, "latency", 0, "downloadThroughput", 0, "uploadThroughput", 0));
        slowedDown();
        window(1280, 900);
        scheme("light");
    }

    /** As many times as -Devenrise.slow says: what a page shows on a slow machine comes later. */
    private void slowedDown() {
        int times = Integer.getInteger("evenrise.slow", 1);
        if (times > 1) {
            driver.executeCdpCommand("Emulation.setCPUThrottlingRate", Map.of("rate", times));
        }
    }

    private static File installed(String program) {
        return Needs.Condition.find(program)
                .orElseThrow(() -> new IllegalStateException(program
                        + " is missing: install Debian's chromium and chromium-driver, or name them by"
                        + " -Devenrise.chromium and -Devenrise.chromedriver"))
                .toFile();
    }

    /** The page is ready for a hand when this returns. */
    public void open(Path page) {
        driver.manage().logs().get("performance");
        driver.get(page.toUri().toString());
        until("document.documentElement.dataset.ready === 'true'");
    }

    /** A page that this machine serves; with no network it could not be reached. */
    public void open(String address) {
        driver.executeCdpCommand(
                "Network.emulateNetworkConditions",
                Map.of("offline", false, "latency", 0, "downloadThroughput", -1, "uploadThroughput", -1));
        driver.get(address);
        until("document.documentElement.dataset.ready === 'true'");
    }

    /** A second one on the same page; it is the one that is worked in from here on. */
    void anotherWindow() {
        String address = driver.getCurrentUrl();
        driver.switchTo().newWindow(WindowType.WINDOW);
        open(address);
    }

    void firstWindow() {
        driver.switchTo().window(List.copyOf(driver.getWindowHandles()).get(0));
    }

    void anotherOpenWindow() {
        driver.switchTo().window(List.copyOf(driver.getWindowHandles()).get(1));
    }

    public void window(int width, int height) {
        driver.executeCdpCommand(
                "Emulation.setDeviceMetricsOverride",
                Map.of("width", width, "height", height, "deviceScaleFactor", 1, "mobile", false));
    }

    /** @param scheme light or dark */
    public void scheme(String scheme) {
        media("screen", scheme, "no-preference");
    }

    public void media(String type, String scheme, String motion) {
        driver.executeCdpCommand(
                "Emulation.setEmulatedMedia",
                Map.of(
                        "media",
                        type,
                        "features",
                        List.of(
                                Map.of("name", "prefers-color-scheme", "value", scheme),
                                Map.of("name", "prefers-reduced-motion", "value", motion))));
    }

    /** @param kind as Chromium's developer tools call it */
    public void visionDeficiency(String kind) {
        driver.executeCdpCommand("Emulation.setEmulatedVisionDeficiency", Map.of("type", kind));
    }

    /**
     * Two fingers of a hand on a screen that takes touches, side by side.
     *
     * @param first how far each is from the middle of the element when they touch it, in pixels
     * @param last the same when they leave it
     */
    public void pinch(String element, int first, int last) {
        List<?> middle = (List<?>) script(
                "const element = document.querySelector(arguments[0]); element.scrollIntoView({ block: 'center' });"
                        + " const box = element.getBoundingClientRect();"
                        + " return [box.left + box.width / 2, box.top + box.height / 2]",
                element);
        double x = ((Number) middle.get(0)).doubleValue();
        double y = ((Number) middle.get(1)).doubleValue();
        touch("touchStart", fingers(x, y, first));
        int steps = 8;
        for (int i = 1; i <= steps; i++) {
            touch("touchMove", fingers(x, y, first + (double) (last - first) * i / steps));
        }
        touch("touchEnd", List.of());
    }

    private void touch(String type, List<Map<String, Object>> points) {
        driver.executeCdpCommand("Input.dispatchTouchEvent", Map.of("type", type, "touchPoints", points));
    }

    private static List<Map<String, Object>> fingers(double x, double y, double apart) {
        return List.of(Map.of("x", x - apart, "y", y, "id", 1), Map.of("x", x + apart, "y", y, "id", 2));
    }

    public Object script(String script, Object... arguments) {
        return driver.executeScript(script, arguments);
    }

    /** A script that calls its last argument when it is done. */
    public Object scriptThatWaits(String script, Object... arguments) {
        return driver.executeAsyncScript(script, arguments);
    }

    /** Runs before the scripts of every page that is opened from now on. */
    public void beforeEveryPage(String script) {
        driver.executeCdpCommand("Page.addScriptToEvaluateOnNewDocument", Map.of("source", script));
    }

    /** What stands in a part of a page that is framed in this one. */
    String framed(String frame, By part) {
        driver.switchTo().frame(element(frame));
        try {
            return driver.findElement(part).getText();
        } finally {
            driver.switchTo().defaultContent();
        }
    }

    public String text(String selector) {
        return element(selector).getText();
    }

    public long count(String selector) {
        return (Long) script("return document.querySelectorAll(arguments[0]).length", selector);
    }

    public WebElement element(String selector) {
        return element(By.cssSelector(selector));
    }

    WebElement element(By place) {
        return FoundAgain.in(driver, place);
    }

    public WebElement focused() {
        return driver.switchTo().activeElement();
    }

    public void press(CharSequence... keys) {
        new Actions(driver).sendKeys(String.join("", keys)).perform();
    }

    public void pressShiftTab() {
        new Actions(driver)
                .keyDown(Keys.SHIFT)
                .sendKeys(Keys.TAB)
                .keyUp(Keys.SHIFT)
                .perform();
    }

    public Actions hand() {
        return new Actions(driver);
    }

    /** Until a condition of the page holds, looked at in every frame; fails when it does not within two minutes. */
    public void until(String condition) {
        try {
            driver.executeAsyncScript("const done = arguments[0]; (function look() {" + " if (" + condition
                    + ") done(true); else requestAnimationFrame(look); })();");
        } catch (ScriptTimeoutException e) {
            throw new AssertionError("never came: " + condition, e);
        }
    }

    public boolean showsADialog() {
        try {
            driver.switchTo().alert();
            return true;
        } catch (org.openqa.selenium.NoAlertPresentException none) {
            return false;
        }
    }

    /** What the page complained about since this was last asked. */
    public List<String> complaints() {
        return driver.manage().logs().get("browser").getAll().stream()
                .map(LogEntry::toString)
                .toList();
    }

    /** Addresses that were asked for since the page was opened, other than the page itself and what stands in an address whole. */
    public List<String> requests(Path page) {
        return driver.manage().logs().get("performance").getAll().stream()
                .map(LogEntry::getMessage)
                .filter(message -> message.contains("\"Network.requestWillBeSent\""))
                .map(message -> message.replaceAll("(?s).*?\"request\":\\{.*?\"url\":\"([^\"]*)\".*", "$1"))
                .filter(address -> !address.equals(page.toUri().toString()) && !address.startsWith("data:"))
                .toList();
    }

    public byte[] picture() {
        return decoded(driver.executeCdpCommand("Page.captureScreenshot", Map.of("format", "png")));
    }

    public byte[] print() {
        return decoded(driver.executeCdpCommand(
                "Page.printToPDF", Map.of("preferCSSPageSize", true, "generateTaggedPDF", false)));
    }

    private static byte[] decoded(Map<String, Object> answer) {
        return Base64.getDecoder().decode((String) answer.get("data"));
    }

    @Override
    public void close() {
        driver.quit();
    }
}
