package evenrise.solver.portfolio;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/**
 * One scenario of a comparison that is to be planned, as bytes: everything that decides what comes out.
 *
 * @param softwareVersion of who asks
 * @param projectSha256 hash of the scenario's file, which the plan names
 * @param projects bytes of the project's file, then of those with groups' boards fixed, JSON
 * @param seed of chance
 * @param moves that the search tries, by one thread
 * @param isSoundEnough whether a plan that keeps every rule is all that is sought
 */
public record ScenarioTask(
        String softwareVersion,
        String projectSha256,
        List<byte[]> projects,
        long seed,
        long moves,
        boolean isSoundEnough) {
    public static final String KIND = "evenrise-scenario-task/1";

    public ScenarioTask {
        projects = List.copyOf(projects);
    }

    public byte[] bytes() {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (DataOutputStream out = new DataOutputStream(bytes)) {
            out.writeUTF(KIND);
            out.writeUTF(softwareVersion);
            out.writeUTF(projectSha256);
            out.writeLong(seed);
            out.writeLong(moves);
            out.writeBoolean(isSoundEnough);
            out.writeInt(projects.size());
            for (byte[] project : projects) {
                out.writeInt(project.length);
                out.write(project);
            }
        } catch (IOException e) {
            throw new IllegalStateException("memory takes what is written", e);
        }
        return bytes.toByteArray();
    }

    /** @throws IOException where the bytes are no task of this kind */
    public static ScenarioTask of(byte[] bytes) throws IOException {
        try (DataInputStream in = new DataInputStream(new ByteArrayInputStream(bytes))) {
            String kind = in.readUTF();
            if (!kind.equals(KIND)) {
                throw new IOException("a task of kind '" + kind + "', expected " + KIND);
            }
            String version = in.readUTF();
            String sha256 = in.readUTF();
            long seed = in.readLong();
            long moves = in.readLong();
            boolean isSoundEnough = in.readBoolean();
            int count = in.readInt();
            List<byte[]> projects = new ArrayList<>();
            for (int i = 0; i < count; i++) {
                projects.add(TaskBytes.part(in, bytes.length));
            }
            return new ScenarioTask(version, sha256, projects, seed, moves, isSoundEnough);
        }
    }

    /** SHA-256 of the bytes, in hexadecimal. */
    public String key() {
        return PlanTask.sha256(bytes());
    }
}
