package evenrise.solver.portfolio;

import java.io.DataInputStream;
import java.io.IOException;

/** Parts of a task's bytes. */
final class TaskBytes {
    private TaskBytes() {}

    /**
     * A part that begins with its length.
     *
     * @param most bytes that there can be
     */
    static byte[] part(DataInputStream in, int most) throws IOException {
        int length = in.readInt();
        if (length < 0 || length > most) {
            throw new IOException("a part of " + length + " bytes among " + most);
        }
        return in.readNBytes(length);
    }
}
