package evenrise.solver.browser;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import evenrise.model.Needs;
import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/**
 * A real Firefox without a window. It is spoken to by Marionette, the protocol that it has built in and that its WebDriver
 * program translates to: Debian has the browser and not that program.
 */
final class Firefox implements AutoCloseable {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final String SETTINGS = """
        user_pref("marionette.port", 0);
        user_pref("app.update.enabled", false);
        user_pref("browser.shell.checkDefaultBrowser", false);
        user_pref("datareporting.policy.dataSubmissionEnabled", false);
        user_pref("network.captive-portal-service.enabled", false);
        user_pref("network.connectivity-service.enabled", false);
        """;

    private final Process process;
    private final Socket socket;
    private final InputStream in;
    private int commands;

    /** @param profile an empty folder */
    Firefox(Path profile) throws IOException {
        Files.writeString(profile.resolve("user.js"), SETTINGS);
        String program = Needs.Condition.find("firefox-esr").orElseThrow().toString();
        ProcessBuilder builder = new ProcessBuilder(
                program, "--headless", "--marionette", "--no-remote", "--profile", profile.toString());
        builder.environment().put("HOME", profile.toString());
        process = builder.redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .start();
        socket = new Socket(InetAddress.getLoopbackAddress(), port(profile.resolve("MarionetteActivePort")));
        in = new BufferedInputStream(socket.getInputStream());
        answer();
        command("WebDriver:NewSession", Map.of("capabilities", Map.of()));
        command("WebDriver:SetTimeouts", Map.of("script", 120_000, "pageLoad", 120_000));
    }

    /** Firefox writes it when it listens. */
    private int port(Path file) throws IOException {
        while (process.isAlive()) {
            if (Files.exists(file) && Files.size(file) > 0) {
                return Integer.parseInt(Files.readString(file).trim());
            }
            Thread.onSpinWait();
        }
        throw new IOException("Firefox ended before it listened");
    }

    void open(String address) {
        command("WebDriver:Navigate", Map.of("url", address));
        until("document.documentElement.dataset.ready === 'true'");
    }

    /** A script's value as text; empty for none. */
    String script(String script) {
        return command("WebDriver:ExecuteScript", Map.of("script", script, "args", List.of()))
                .path("value")
                .asText("");
    }

    /** Until a condition of the page holds; fails when it does not within two minutes. */
    void until(String condition) {
        command(
                "WebDriver:ExecuteAsyncScript",
                Map.of(
                        "script",
                        "const done = arguments[0]; (function look() { if (" + condition
                                + ") done(true); else setTimeout(look, 20); })();",
                        "args",
                        List.of()));
    }

    void click(String selector) {
        command("WebDriver:ElementClick", Map.of("id", element(selector)));
    }

    /** Types into what has the focus. */
    void press(String keys) {
        command(
                "WebDriver:ElementSendKeys",
                Map.of("id", reference(command("WebDriver:GetActiveElement", Map.of())), "text", keys));
    }

    private String element(String selector) {
        return reference(command("WebDriver:FindElement", Map.of("using", "css selector", "value", selector)));
    }

    private static String reference(JsonNode found) {
        return found.path("value").elements().next().asText();
    }

    private JsonNode command(String name, Map<String, Object> parameters) {
        try {
            byte[] text = JSON.writeValueAsBytes(List.of(0, ++commands, name, parameters));
            socket.getOutputStream().write((text.length + ":").getBytes(StandardCharsets.US_ASCII));
            socket.getOutputStream().write(text);
            socket.getOutputStream().flush();
            JsonNode answer = answer();
            if (!answer.path(2).isNull()) {
                throw new AssertionError(name + " " + parameters + ": "
                        + answer.path(2).path("message").asText());
            }
            return answer.path(3);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Its length, a colon, then so many bytes of JSON. */
    private JsonNode answer() throws IOException {
        int length = 0;
        for (int next = in.read(); next != ':'; next = in.read()) {
            if (next < 0) {
                throw new IOException("Firefox ended");
            }
            length = length * 10 + next - '0';
        }
        return JSON.readTree(in.readNBytes(length));
    }

    /** Returns when nothing writes to the profile any more. */
    @Override
    public void close() {
        List<ProcessHandle> all = Stream.concat(process.descendants(), Stream.of(process.toHandle()))
                .toList();
        try {
            command("Marionette:Quit", Map.of("flags", List.of("eForceQuit")));
            socket.close();
        } catch (IOException | UncheckedIOException e) {
            all.forEach(ProcessHandle::destroyForcibly);
        }
        all.forEach(each -> each.onExit().join());
    }
}
