package evenrise.solver.desk;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import evenrise.model.file.Json;
import evenrise.solver.app.JobFailed;
import evenrise.solver.desk.DeskAnswers.DeskSheet;
import evenrise.solver.desk.DeskAnswers.Refusal;
import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicInteger;

/** Serves windows of this machine and nobody else. */
final class DeskServer implements AutoCloseable {
    static final int MOST_BODY_BYTES = 8 << 20;

    /** The revision that a window shows. */
    static final String SHOWN = "Desk-Revision";

    private static final int MOST_WINDOWS = 32;
    private static final int OK = 200;
    private static final int SEE_OTHER = 303;
    private static final int REFUSED = 403;
    private static final int NOT_FOUND = 404;
    private static final int TOO_LARGE = 413;
    private static final int NOT_DONE = 422;
    private static final int TOO_MANY = 429;
    private static final int BUG = 500;

    static {
        // Without it an answer of two packets waits for the first to be confirmed, some 40 ms (JDK's own server).
        System.setProperty("sun.net.httpserver.nodelay", "true");
    }

    private final HttpServer server;
    private final Gate gate;
    private final DeskFace face = new DeskFace();
    private final DeskRoutes routes;
    private final Desk desk;
    private final AtomicInteger windows = new AtomicInteger();
    private final ExecutorService threads = Executors.newCachedThreadPool(task -> {
        Thread thread = new Thread(task, "desk");
        thread.setDaemon(true);
        return thread;
    });
    private volatile boolean isClosed;

    /** @param port 0 for a free one */
    DeskServer(int port, Desk desk, DeskRoutes routes) {
        this.desk = desk;
        this.routes = routes;
        try {
            this.server = HttpServer.create(new InetSocketAddress(InetAddress.getByName("127.0.0.1"), port), 0);
        } catch (IOException e) {
            throw new JobFailed(
                    JobFailed.Reason.REQUEST,
                    "port " + port + " cannot be had. Maybe another program has it: leave --port out for a free one.");
        }
        this.gate = new Gate(server.getAddress().getPort());
        server.setExecutor(threads);
        server.createContext("/", this::serve);
    }

    void start() {
        server.start();
    }

    String address() {
        return gate.address();
    }

    @Override
    public void close() {
        isClosed = true;
        server.stop(0);
        threads.shutdownNow();
    }

    private void serve(HttpExchange exchange) throws IOException {
        try (exchange) {
            Gate.protect(exchange.getResponseHeaders());
            Optional<String> objection = gate.objection(exchange);
            String path = exchange.getRequestURI().getPath();
            String query = exchange.getRequestURI().getRawQuery();
            if (objection.isPresent()) {
                refuse(exchange, REFUSED, "this request is refused: " + objection.get() + ".");
            } else if (path.equals("/") && query != null && query.startsWith("token=")) {
                admit(exchange, query.substring("token=".length()));
            } else if (!gate.isKnown(exchange)) {
                refuse(
                        exchange,
                        REFUSED,
                        "this address opened once and does not again. Use the window that it opened, or start the desk"
                                + " anew.");
            } else {
                answer(exchange, path);
            }
        }
    }

    private void admit(HttpExchange exchange, String token) throws IOException {
        Optional<String> cookie = gate.admitted(token);
        if (cookie.isEmpty() && !gate.isKnown(exchange)) {
            refuse(
                    exchange,
                    REFUSED,
                    "this address opened once and does not again. Use the window that it opened, or start the desk"
                            + " anew.");
            return;
        }
        cookie.ifPresent(each -> exchange.getResponseHeaders().set("Set-Cookie", each));
        exchange.getResponseHeaders().set("Location", "/");
        exchange.sendResponseHeaders(SEE_OTHER, -1);
    }

    private void answer(HttpExchange exchange, String path) throws IOException {
        String method = exchange.getRequestMethod();
        Optional<DeskFace.Piece> piece =
                method.equals("GET") ? face.piece(path).or(() -> routes.piece(path)) : Optional.empty();
        Optional<DeskRoutes.Route<?, ?>> route = routes.of(method, path);
        if (piece.isPresent()) {
            piece.get()
                    .policy()
                    .ifPresent(policy -> exchange.getResponseHeaders().set(Gate.POLICY, policy));
            send(exchange, OK, piece.get().type(), piece.get().bytes());
        } else if (method.equals("GET") && path.equals("/api/events")) {
            tell(exchange);
        } else if (method.equals("GET") && path.equals("/api/openapi.json")) {
            json(exchange, OK, Interface.text(routes));
        } else if (route.isPresent()) {
            work(exchange, route.get());
        } else {
            refuse(exchange, NOT_FOUND, "there is nothing here.");
        }
    }

    private void tell(HttpExchange exchange) throws IOException {
        if (windows.incrementAndGet() > MOST_WINDOWS) {
            windows.decrementAndGet();
            refuse(exchange, TOO_MANY, "too many windows are open on this desk. Close some.");
            return;
        }
        try {
            exchange.getResponseHeaders().set("Content-Type", "text/event-stream; charset=utf-8");
            exchange.sendResponseHeaders(OK, 0);
            new EventStream(desk).send(exchange, () -> isClosed);
        } finally {
            windows.decrementAndGet();
        }
    }

    private void work(HttpExchange exchange, DeskRoutes.Route<?, ?> route) throws IOException {
        byte[] body;
        try (InputStream in = exchange.getRequestBody()) {
            body = in.readNBytes(MOST_BODY_BYTES + 1);
        }
        if (body.length > MOST_BODY_BYTES) {
            refuse(exchange, TOO_LARGE, "more than " + (MOST_BODY_BYTES >> 20) + " MiB at once are not taken.");
            return;
        }
        try {
            json(exchange, OK, Json.compact(asShown(exchange, route.answer(body))));
        } catch (JobFailed e) {
            json(exchange, NOT_DONE, Json.compact(new Refusal(e.messages())));
        } catch (RuntimeException e) {
            // Whatever it is, the desk stands: nothing was changed, and the next request is answered.
            refuse(exchange, BUG, "this should not have happened, and nothing was changed: " + e + ". It is a bug.");
        }
    }

    /** Of what lies on the desk a window that says what it shows is told the differences. */
    private Record asShown(HttpExchange exchange, Record answer) {
        String earlier = exchange.getRequestHeaders().getFirst(SHOWN);
        return answer instanceof DeskSheet sheet && earlier != null && earlier.matches("[0-9]{1,15}")
                ? desk.since(Long.parseLong(earlier), sheet)
                : answer;
    }

    private static void refuse(HttpExchange exchange, int code, String why) throws IOException {
        json(exchange, code, Json.compact(new Refusal(List.of(why))));
    }

    private static void json(HttpExchange exchange, int code, String text) throws IOException {
        send(exchange, code, "application/json", text.getBytes(StandardCharsets.UTF_8));
    }

    private static void send(HttpExchange exchange, int code, String type, byte[] bytes) throws IOException {
        exchange.getResponseHeaders().set("Content-Type", type);
        exchange.sendResponseHeaders(code, bytes.length);
        exchange.getResponseBody().write(bytes);
    }
}
