package evenrise.solver.desk;

import com.sun.net.httpserver.HttpExchange;
import evenrise.model.file.Json;
import evenrise.solver.desk.DeskAnswers.DeskEvent;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;

/** Tells one window what happens, as server-sent events (HTML Living Standard), until the window or the desk closes. */
final class EventStream {
    private static final int MOST_WAITING = 200;
    private static final long LOOK_MILLIS = 500;
    /** Lines that say nothing show whether the window is still there. */
    private static final int LOOKS_BETWEEN_SIGNS = 20;

    private final BlockingQueue<DeskEvent> waiting = new ArrayBlockingQueue<>(MOST_WAITING);
    private final Desk desk;

    EventStream(Desk desk) {
        this.desk = desk;
    }

    /** Returns when the window has gone, or the desk is closed. */
    void send(HttpExchange exchange, BooleanSupplier isClosed) throws IOException {
        // A window that does not keep up asks anew when it does; what is dropped here it does not miss.
        Runnable stop = desk.listen(waiting::offer);
        try (OutputStream out = exchange.getResponseBody()) {
            write(out, ": the desk\n\n");
            int silent = 0;
            while (!isClosed.getAsBoolean()) {
                DeskEvent event = waiting.poll(LOOK_MILLIS, TimeUnit.MILLISECONDS);
                if (event != null) {
                    write(out, "event: " + event.kind() + "\ndata: " + Json.compact(event) + "\n\n");
                    silent = 0;
                } else if (++silent % LOOKS_BETWEEN_SIGNS == 0) {
                    write(out, ":\n\n");
                }
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        } finally {
            stop.run();
        }
    }

    private static void write(OutputStream out, String text) throws IOException {
        out.write(text.getBytes(StandardCharsets.UTF_8));
        out.flush();
    }
}
