package evenrise.solver.cli;

import evenrise.model.plan.Plan;
import evenrise.solver.app.Jobs;
import evenrise.solver.app.StandIns;
import evenrise.solver.engine.PlanningRequest;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.concurrent.atomic.AtomicReference;
import java.util.regex.Pattern;

/** Runs commands as a shell would and keeps what they print. In the engine's place stands a search that knows its plan. */
final class Shell {
    /** A line of progress begins with the minutes and seconds that have passed. */
    private static final Pattern PROGRESS = Pattern.compile("\\s*\\d+:\\d{2}  .*");

    /** What a command printed and how it ended. */
    record Result(int code, String out, String err) {
        String all() {
            return out + err;
        }

        /** What was said beside the answer, without how far a job has come: a slow machine has that said, a fast one not. */
        List<String> remarks() {
            return err.lines().filter(line -> !PROGRESS.matcher(line).matches()).toList();
        }
    }

    /** The last request that a command made. */
    final AtomicReference<PlanningRequest> asked = new AtomicReference<>();

    private final Plan found;
    private byte[] input = {};
    private OutputStream brokenOut;
    private boolean isScreen;
    private boolean isEndless;

    /** @param found what every search finds */
    Shell(Plan found) {
        this.found = found;
    }

    Shell input(String text) {
        input = text.getBytes(StandardCharsets.UTF_8);
        return this;
    }

    /** Standard output fails with this message. */
    Shell outFailsWith(String message) {
        brokenOut = new OutputStream() {
            @Override
            public void write(int b) throws IOException {
                throw new IOException(message);
            }
        };
        return this;
    }

    /** Every search goes on until it is stopped. */
    Shell endless() {
        isEndless = true;
        return this;
    }

    /** Both outputs are terminals that show colour. */
    Shell onAScreen() {
        isScreen = true;
        return this;
    }

    Result run(String... arguments) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        Terminal terminal = new Terminal(
                new ByteArrayInputStream(input),
                brokenOut == null ? out : brokenOut,
                err,
                StandardCharsets.UTF_8,
                isScreen,
                isScreen,
                isScreen);
        Jobs jobs = isEndless ? StandIns.endless(found) : StandIns.finding(found, asked::set);
        int code = Evenrise.run(terminal, jobs, arguments);
        return new Result(code, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    }
}
