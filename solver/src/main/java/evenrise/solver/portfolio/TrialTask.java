package evenrise.solver.portfolio;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;

/**
 * Some of the trials of a plan, as bytes: everything that decides what comes out.
 *
 * @param softwareVersion of who asks
 * @param project bytes of the project's file, JSON
 * @param plan bytes of the plan's file, JSON
 * @param from number of the first trial
 * @param to number after the last
 * @param seed of all
 */
public record TrialTask(String softwareVersion, byte[] project, byte[] plan, int from, int to, long seed) {
    public static final String KIND = "evenrise-trial-task/1";

    public byte[] bytes() {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (DataOutputStream out = new DataOutputStream(bytes)) {
            out.writeUTF(KIND);
            out.writeUTF(softwareVersion);
            out.writeInt(from);
            out.writeInt(to);
            out.writeLong(seed);
            out.writeInt(project.length);
            out.write(project);
            out.write(plan);
        } catch (IOException e) {
            throw new IllegalStateException("memory takes what is written", e);
        }
        return bytes.toByteArray();
    }

    /** @throws IOException where the bytes are no task of this kind */
    public static TrialTask of(byte[] bytes) throws IOException {
        try (DataInputStream in = new DataInputStream(new ByteArrayInputStream(bytes))) {
            String kind = in.readUTF();
            if (!kind.equals(KIND)) {
                throw new IOException("a task of kind '" + kind + "', expected " + KIND);
            }
            String version = in.readUTF();
            int from = in.readInt();
            int to = in.readInt();
            long seed = in.readLong();
            int length = in.readInt();
            if (from < 0 || to < from || length < 0 || length > bytes.length) {
                throw new IOException("trials " + from + " to " + to + " of a project of " + length + " bytes");
            }
            return new TrialTask(version, in.readNBytes(length), in.readAllBytes(), from, to, seed);
        }
    }

    /** SHA-256 of the bytes, in hexadecimal. */
    public String key() {
        return PlanTask.sha256(bytes());
    }
}
