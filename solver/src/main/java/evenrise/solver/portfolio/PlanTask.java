package evenrise.solver.portfolio;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Optional;

/**
 * One plan that is to be found, as bytes: everything that decides what comes out, and nothing else.
 *
 * @param softwareVersion of who asks; another version may find another plan
 * @param name of the project's file, for messages and its format
 * @param project bytes of the project's file
 * @param seed of chance
 * @param moves that the search tries, by one thread
 * @param from bytes of an earlier plan to start at, JSON; empty for none
 * @param placesAll whether a place that breaks a rating is better than none
 */
public record PlanTask(
        String softwareVersion,
        String name,
        byte[] project,
        long seed,
        long moves,
        Optional<byte[]> from,
        boolean placesAll) {
    public static final String KIND = "evenrise-plan-task/2";
    private static final int MOST_BYTES = 1 << 30;
    private static final byte[] NONE = {};

    /** From no earlier plan, and no place that breaks a rating. */
    public PlanTask(String softwareVersion, String name, byte[] project, long seed, long moves) {
        this(softwareVersion, name, project, seed, moves, Optional.empty(), false);
    }

    public byte[] bytes() {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (DataOutputStream out = new DataOutputStream(bytes)) {
            out.writeUTF(KIND);
            out.writeUTF(softwareVersion);
            out.writeUTF(name);
            out.writeLong(seed);
            out.writeLong(moves);
            out.writeBoolean(placesAll);
            out.writeBoolean(from.isPresent());
            out.writeInt(project.length);
            out.write(project);
            out.write(from.orElse(NONE));
        } catch (IOException e) {
            throw new IllegalStateException("memory takes what is written", e);
        }
        return bytes.toByteArray();
    }

    /** @throws IOException where the bytes are no task of this version's */
    public static PlanTask of(byte[] bytes) throws IOException {
        try (DataInputStream in = new DataInputStream(new ByteArrayInputStream(bytes))) {
            String kind = in.readUTF();
            if (!kind.equals(KIND)) {
                throw new IOException("a task of kind '" + kind + "', expected " + KIND);
            }
            String version = in.readUTF();
            String name = in.readUTF();
            long seed = in.readLong();
            long moves = in.readLong();
            boolean placesAll = in.readBoolean();
            boolean hasFrom = in.readBoolean();
            int length = in.readInt();
            if (length < 0 || length > MOST_BYTES) {
                throw new IOException("a project of " + length + " bytes");
            }
            byte[] project = in.readNBytes(length);
            Optional<byte[]> from = hasFrom ? Optional.of(in.readAllBytes()) : Optional.empty();
            return new PlanTask(version, name, project, seed, moves, from, placesAll);
        }
    }

    /** SHA-256 of the bytes, in hexadecimal. */
    public String key() {
        return sha256(bytes());
    }

    static String sha256(byte[] bytes) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }
}
