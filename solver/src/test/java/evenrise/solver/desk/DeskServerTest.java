package evenrise.solver.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import evenrise.solver.desk.Wire.Answer;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.NetworkInterface;
import java.net.Socket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Nobody gets in but the window that the one-time address opened, whatever is sent. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class DeskServerTest {
    private static final String MOVE = "{\"load\": \"lamp\"}";

    @TempDir
    private static Path folder;

    private OpenDesk desk;
    private Wire wire;
    private Answer opened;
    private String address;

    @BeforeAll
    void open() {
        desk = OpenDesk.on(Hall.in(folder), 0, Hall.JOBS);
        address = desk.address();
        wire = new Wire(address);
        opened = wire.open();
    }

    @AfterAll
    void close() {
        desk.close();
    }

    private String ours() {
        return "Host: 127.0.0.1:" + wire.port;
    }

    private void isUntouched() {
        assertThat(wire.get("/api/desk").body()).contains("\"revision\":1,");
    }

    @Nested
    class TheAddress {
        @Test
        void givesACookieThatNoOtherPageAndNoScriptCanUse() {
            assertThat(opened.code()).isEqualTo(303);
            assertThat(opened.head()).contains("HttpOnly", "SameSite=Strict", "Location: /");
            assertThat(opened.head()).doesNotContain(address.replaceFirst(".*token=", ""));
        }

        @Test
        void opensOnce() {
            Answer again = new Wire(address).open();
            Answer blank = wire.send("GET /?token= HTTP/1.1", "", ours());

            assertThat(List.of(again.code(), blank.code())).containsOnly(403);
            assertThat(again.body()).contains("opened once");
        }

        @Test
        void opensNothingWithAnotherToken() {
            assertThat(wire.send("GET /?token=" + "0".repeat(64) + " HTTP/1.1", "", ours())
                            .code())
                    .isEqualTo(403);
        }
    }

    @Nested
    class WithoutTheCookie {
        @ParameterizedTest
        @ValueSource(strings = {"/", "/desk.js", "/api/desk", "/api/events", "/api/openapi.json"})
        void nothingIsShown(String path) {
            Answer answer = wire.send("GET " + path + " HTTP/1.1", "", ours());

            assertThat(answer.code()).isEqualTo(403);
            assertThat(answer.body()).doesNotContain("Small hall");
        }

        @Test
        void nothingIsChanged() {
            assertThat(wire.post("/api/move", MOVE, ours(), "Origin: http://127.0.0.1:" + wire.port)
                            .code())
                    .isEqualTo(403);
            isUntouched();
        }
    }

    @Nested
    class AnotherPage {
        @ParameterizedTest
        @ValueSource(strings = {"http://evil.example", "null", "http://127.0.0.1:1", "https://127.0.0.1"})
        void changesNothing(String origin) {
            assertThat(wire.post("/api/move", MOVE, ours(), "Origin: " + origin, "Cookie: " + wire.cookie())
                            .code())
                    .isEqualTo(403);
            isUntouched();
        }

        @Test
        void changesNothingBySayingNotWhereItComesFrom() {
            assertThat(wire.post("/api/move", MOVE, ours(), "Cookie: " + wire.cookie())
                            .code())
                    .isEqualTo(403);
            isUntouched();
        }

        /** What a form of another page can send without being asked first. */
        @Test
        void changesNothingByAForm() {
            assertThat(wire.send(
                                    "POST /api/move HTTP/1.1",
                                    MOVE,
                                    ours(),
                                    "Origin: http://127.0.0.1:" + wire.port,
                                    "Content-Type: text/plain",
                                    "Cookie: " + wire.cookie())
                            .code())
                    .isEqualTo(403);
            isUntouched();
        }
    }

    /** A name that is made to lead to this machine (DNS rebinding) makes its page and the desk one origin. */
    @ParameterizedTest
    @ValueSource(strings = {"evil.example", "evil.example:PORT", "127.0.0.1", "127.0.0.1:1", "[::1]:PORT", ""})
    void anotherHostIsRefused(String host) {
        String named = host.replace("PORT", Integer.toString(wire.port));

        Answer answer = wire.send("GET /api/desk HTTP/1.1", "", "Host: " + named, "Cookie: " + wire.cookie());

        assertThat(answer.code()).isIn(400, 403);
        assertThat(answer.body()).doesNotContain("Small hall");
    }

    @Test
    void twoHostsAreRefused() {
        assertThat(wire.send("GET /api/desk HTTP/1.1", "", ours(), "Host: evil.example", "Cookie: " + wire.cookie())
                        .code())
                .isIn(400, 403);
    }

    @Test
    void noOtherAddressOfThisMachineIsServed() throws IOException {
        List<InetAddress> others = NetworkInterface.networkInterfaces()
                .flatMap(NetworkInterface::inetAddresses)
                .filter(each -> !each.isLoopbackAddress() && !each.isLinkLocalAddress())
                .toList();

        assertThat(others)
                .allSatisfy(address -> assertThatThrownBy(() -> new Socket(address, wire.port).close())
                        .isInstanceOf(IOException.class));
        assertThat(wire.get("/api/desk").code()).isEqualTo(200);
    }

    @Test
    void everyAnswerForbidsWhatAPageOfOursDoesNotNeed() {
        for (Answer answer : List.of(wire.get("/"), wire.get("/api/desk"), wire.get("/nothing"))) {
            assertThat(answer.head().toLowerCase(Locale.ROOT))
                    .contains(
                            "content-security-policy: default-src 'none'; script-src 'self'; style-src 'self'",
                            "frame-ancestors 'none'",
                            "x-content-type-options: nosniff",
                            "referrer-policy: no-referrer",
                            "cache-control: no-store")
                    .doesNotContain("unsafe-inline", "unsafe-eval", "access-control-allow");
        }
    }

    @Test
    void thePageHoldsNoInlineScriptStyleOrForeignAddress() {
        String page = wire.get("/").body();

        assertThat(page).contains("<script type=\"module\" src=\"/desk.js\"></script>");
        assertThat(page)
                .doesNotContain(" style=", " onclick", "http://", "https://")
                .doesNotContainPattern("<script>");
        for (String script : scripts()) {
            assertThat(wire.get("/" + script).body())
                    .as(script)
                    .isNotEmpty()
                    .doesNotContain(
                            "innerHTML", "insertAdjacentHTML", "document.write", "eval(", "new Function", "https:")
                    .doesNotContainPattern("http:(?!//www\\.w3\\.org/2000/svg)");
        }
    }

    private static List<String> scripts() {
        try (Stream<Path> files = Files.list(Path.of("src/main/resources/evenrise/desk"))) {
            List<String> scripts = files.map(each -> each.getFileName().toString())
                    .filter(each -> each.endsWith(".js"))
                    .toList();
            assertThat(scripts).contains("desk.js", "views.js");
            return scripts;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"/../project.json", "/%2e%2e/project.json", "//etc/passwd", "/desk.js/..", "/api/list/secret"})
    void noPathLeadsToAFile(String path) {
        Answer answer = wire.get(path);

        assertThat(answer.code()).isIn(400, 404);
        assertThat(answer.body()).doesNotContain("Small hall", "root:");
    }

    @Test
    void moreThanEightMebibytesAtOnceAreNotTaken() {
        Answer answer = wire.post("/api/list", "{\"text\": \"" + "x".repeat(DeskServer.MOST_BODY_BYTES) + "\"}");

        assertThat(answer.code()).isEqualTo(413);
        assertThat(answer.body()).contains("8 MiB");
    }
}
