package evenrise.solver.desk;

import com.sun.net.httpserver.Headers;
import com.sun.net.httpserver.HttpExchange;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Who may come in. A page of somebody else's can make a browser send requests here; so each has to name this very server
 * (against names that are made to lead here), every change has to come from our own page, and all have to show the cookie
 * that only whoever opened the address with its one-time token has.
 */
final class Gate {
    private static final int SECRET_BYTES = 32;
    static final String POLICY = "Content-Security-Policy";

    private static final String JSON = "application/json";

    private final int port;
    private final String cookieName;
    private final String session = secret();
    private String token = secret();

    Gate(int port) {
        this.port = port;
        // Browsers keep cookies by host without its port: two desks must not take each other's.
        this.cookieName = "evenrise-desk-" + port;
    }

    private static String secret() {
        byte[] bytes = new byte[SECRET_BYTES];
        new SecureRandom().nextBytes(bytes);
        return HexFormat.of().formatHex(bytes);
    }

    /** The address to open; its token opens once. */
    String address() {
        return "http://127.0.0.1:" + port + "/?token=" + token;
    }

    /** What every answer carries. */
    static void protect(Headers headers) {
        headers.set(
                POLICY,
                "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; connect-src 'self';"
                        + " frame-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'");
        headers.set("X-Content-Type-Options", "nosniff");
        headers.set("Referrer-Policy", "no-referrer");
        headers.set("Cross-Origin-Opener-Policy", "same-origin");
        headers.set("Cross-Origin-Resource-Policy", "same-origin");
        headers.set("Cache-Control", "no-store");
    }

    /** Why a request is turned away before anything of it is looked at; empty where it is not. */
    Optional<String> objection(HttpExchange exchange) {
        Headers headers = exchange.getRequestHeaders();
        if (!exchange.getRemoteAddress().getAddress().isLoopbackAddress()) {
            return Optional.of("only this machine is served");
        }
        List<String> hosts = headers.getOrDefault("Host", List.of());
        if (hosts.size() != 1 || !hosts().contains(hosts.get(0))) {
            return Optional.of("the address names another host");
        }
        List<String> origins = headers.getOrDefault("Origin", List.of());
        boolean isOurs = origins.equals(List.of("http://" + hosts.get(0)));
        boolean changes = !exchange.getRequestMethod().equals("GET");
        if (changes && !isOurs || !origins.isEmpty() && !isOurs) {
            return Optional.of("it comes from another page");
        }
        if (changes && !JSON.equals(headers.getFirst("Content-Type"))) {
            return Optional.of("it is no " + JSON);
        }
        return Optional.empty();
    }

    private Set<String> hosts() {
        return Set.of("127.0.0.1:" + port, "localhost:" + port);
    }

    /** Whether the request shows the cookie. */
    boolean isKnown(HttpExchange exchange) {
        return exchange.getRequestHeaders().getOrDefault("Cookie", List.of()).stream()
                .flatMap(line -> Arrays.stream(line.split(";")))
                .map(String::strip)
                .filter(each -> each.startsWith(cookieName + "="))
                .anyMatch(each -> isEqual(each.substring(cookieName.length() + 1), session));
    }

    /** @return the cookie for whoever shows the token; the token opens nothing from then on */
    synchronized Optional<String> admitted(String shown) {
        if (token.isEmpty() || !isEqual(shown, token)) {
            return Optional.empty();
        }
        token = "";
        return Optional.of(cookieName + "=" + session + "; Path=/; HttpOnly; SameSite=Strict");
    }

    private static boolean isEqual(String one, String other) {
        return MessageDigest.isEqual(one.getBytes(StandardCharsets.UTF_8), other.getBytes(StandardCharsets.UTF_8));
    }
}
