package evenrise.solver.cli;

import evenrise.solver.app.Jobs;
import evenrise.solver.app.StandIns;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;

/** The program as it is delivered, its engine included, inside this process. */
public final class WholeProgram {
    private WholeProgram() {}

    /** What a command printed and how it ended. */
    public record Ended(int code, String out, String err) {}

    /** @param isProving whether the exact solver works beside the search, which takes most of the time */
    public static Ended run(boolean isProving, String... arguments) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        Terminal terminal = new Terminal(
                new ByteArrayInputStream(new byte[0]), out, err, StandardCharsets.UTF_8, false, false, false);
        int code = Evenrise.run(terminal, isProving ? new Jobs() : StandIns.withoutProofs(), arguments);
        return new Ended(code, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    }
}
