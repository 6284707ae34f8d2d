package evenrise.solver.grid.ignite;

import evenrise.solver.grid.GridWork;
import evenrise.solver.grid.StopSignal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;

/** Work by words: a verb, a number, and a file. */
final class FleetWork implements GridWork {
    /** Its process ends at once, as after a fault of the machine. */
    static final String HALT = "halt";
    /** Waits for the file to be there. */
    static final String HOLD = "hold";
    /** Asks for more memory than there is. */
    static final String MEMORY = "memory";

    /** Answers so many bytes. */
    static final String BULK = "bulk";

    static final String THROW = "throw";
    static final String INVALID = "invalid";
    /** Keeps a processor busy. */
    static final String SPIN = "spin";

    private static final int CODE = 9;
    private static final int MILLIS_BETWEEN_LOOKS = 50;

    private static volatile long spun;

    private final Consumer<String> said;

    FleetWork(Consumer<String> said) {
        this.said = said;
    }

    @Override
    public byte[] output(byte[] input, StopSignal stop) throws InvalidInput {
        String[] words = new String(input, StandardCharsets.UTF_8).split(" ");
        switch (words[0]) {
            case HALT -> Runtime.getRuntime().halt(CODE);
            case HOLD -> hold(Path.of(words[2]), stop);
            case MEMORY -> throw new IllegalStateException("there were " + new long[Integer.MAX_VALUE / 2].length);
            case THROW -> throw new AssertionError("thrown");
            case SPIN -> spin(Long.parseLong(words[2]));
            case BULK -> {
                return new byte[Integer.parseInt(words[2])];
            }
            case INVALID -> throw new InvalidInput("no project");
            default -> {
                // It echoes.
            }
        }
        return ("did " + words[0] + " " + words[1]).getBytes(StandardCharsets.UTF_8);
    }

    /** What comes out is kept where everybody may look, so that no turn is left out. */
    static void spin(long turns) {
        long state = turns;
        for (long i = 0; i < turns; i++) {
            state ^= state << 13;
            state ^= state >>> 7;
            state ^= state << 17;
        }
        spun = state;
    }

    private void hold(Path file, StopSignal stop) {
        said.accept("holding");
        CountDownLatch stopped = new CountDownLatch(1);
        stop.during(
                () -> {
                    try {
                        boolean isStopped = false;
                        while (!isStopped && !Files.exists(file)) {
                            isStopped = stopped.await(MILLIS_BETWEEN_LOOKS, TimeUnit.MILLISECONDS);
                        }
                        said.accept(isStopped ? "hold stopped" : "hold done");
                    } catch (InterruptedException e) {
                        said.accept("hold stopped");
                    }
                },
                stopped::countDown);
    }
}
