package evenrise.solver.grid;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Optional;

/** An answer on its way from one process to another; or word that there is none, since the worker was stopped. */
public final class AnswerBytes {
    private static final int STOPPED = 0;
    private static final int DONE = 1;
    private static final int FAILED = 2;

    private AnswerBytes() {}

    public static byte[] ofStopped() {
        return new byte[] {STOPPED};
    }

    public static byte[] of(GridAnswer answer) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (DataOutputStream out = new DataOutputStream(bytes)) {
            if (answer instanceof GridAnswer.Failed failed) {
                out.write(FAILED);
                out.writeUTF(failed.cause().name());
                out.write(failed.words().getBytes(StandardCharsets.UTF_8));
            } else {
                out.write(DONE);
                out.write(((GridAnswer.Done) answer).output());
            }
        } catch (IOException e) {
            throw new IllegalStateException("memory takes what is written", e);
        }
        return bytes.toByteArray();
    }

    /** Empty where the worker was stopped before it had done the job. */
    public static Optional<GridAnswer> read(byte[] bytes) {
        try (DataInputStream in = new DataInputStream(new ByteArrayInputStream(bytes))) {
            return switch (in.readUnsignedByte()) {
                case STOPPED -> Optional.empty();
                case DONE -> Optional.of(new GridAnswer.Done(in.readAllBytes()));
                case FAILED -> {
                    GridAnswer.Cause cause = GridAnswer.Cause.valueOf(in.readUTF());
                    yield Optional.of(
                            new GridAnswer.Failed(cause, new String(in.readAllBytes(), StandardCharsets.UTF_8)));
                }
                default -> throw new IllegalArgumentException("no answer");
            };
        } catch (IOException e) {
            throw new IllegalArgumentException("no answer", e);
        }
    }
}
