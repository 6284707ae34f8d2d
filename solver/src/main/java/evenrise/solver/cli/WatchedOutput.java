package evenrise.solver.cli;

import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.util.Optional;

/** Remembers the first failure to write, which a print writer would swallow; what follows is dropped. */
final class WatchedOutput extends FilterOutputStream {
    private IOException failure;

    WatchedOutput(OutputStream output) {
        super(output);
    }

    Optional<IOException> failure() {
        return Optional.ofNullable(failure);
    }

    /** Whether the reader of this output went away, as {@code head} does: nobody misses what follows. */
    boolean isBrokenPipe() {
        return failure != null
                && failure.getMessage() != null
                && failure.getMessage().contains("Broken pipe");
    }

    @Override
    public void write(int b) throws IOException {
        write(new byte[] {(byte) b}, 0, 1);
    }

    @Override
    public void write(byte[] bytes, int offset, int length) throws IOException {
        if (failure == null) {
            watch(() -> out.write(bytes, offset, length));
        }
    }

    @Override
    public void flush() throws IOException {
        if (failure == null) {
            watch(out::flush);
        }
    }

    private void watch(Writing writing) throws IOException {
        try {
            writing.run();
        } catch (IOException e) {
            failure = e;
            throw e;
        }
    }

    @FunctionalInterface
    private interface Writing {
        void run() throws IOException;
    }
}
