package evenrise.solver.portfolio;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;

/**
 * A search around a plan as built, as bytes: everything that decides what comes out.
 *
 * @param softwareVersion of who asks
 * @param project bytes of the project's file, JSON
 * @param held bytes of the same project with everything fixed that is not to be moved, JSON
 * @param from bytes of the plan that a search as good as new starts at, JSON
 * @param built bytes of the plan as built, without what goes, JSON
 * @param seed of chance
 * @param moves that each of its two searches tries, by one thread
 */
public record ReworkTask(
        String softwareVersion, byte[] project, byte[] held, byte[] from, byte[] built, long seed, long moves) {
    public static final String KIND = "evenrise-rework-task/1";

    public byte[] bytes() {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (DataOutputStream out = new DataOutputStream(bytes)) {
            out.writeUTF(KIND);
            out.writeUTF(softwareVersion);
            out.writeLong(seed);
            out.writeLong(moves);
            out.writeInt(project.length);
            out.write(project);
            out.writeInt(held.length);
            out.write(held);
            out.writeInt(from.length);
            out.write(from);
            out.write(built);
        } catch (IOException e) {
            throw new IllegalStateException("memory takes what is written", e);
        }
        return bytes.toByteArray();
    }

    /** @throws IOException where the bytes are no task of this kind */
    public static ReworkTask of(byte[] bytes) throws IOException {
        try (DataInputStream in = new DataInputStream(new ByteArrayInputStream(bytes))) {
            String kind = in.readUTF();
            if (!kind.equals(KIND)) {
                throw new IOException("a task of kind '" + kind + "', expected " + KIND);
            }
            String version = in.readUTF();
            long seed = in.readLong();
            long moves = in.readLong();
            byte[] project = TaskBytes.part(in, bytes.length);
            byte[] held = TaskBytes.part(in, bytes.length);
            byte[] from = TaskBytes.part(in, bytes.length);
            return new ReworkTask(version, project, held, from, in.readAllBytes(), seed, moves);
        }
    }

    /** SHA-256 of the bytes, in hexadecimal. */
    public String key() {
        return PlanTask.sha256(bytes());
    }
}
