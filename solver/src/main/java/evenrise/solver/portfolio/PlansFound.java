package evenrise.solver.portfolio;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What a search of a task found, as bytes.
 *
 * @param plans bytes of each plan's file, JSON, in the order of the search
 * @param moves tried
 * @param provenObjective what no plan can stay below; 0 where nothing is proven
 */
public record PlansFound(List<byte[]> plans, long moves, double provenObjective) {
    private static final int MAGIC = 0x65_76_70_31;

    public PlansFound {
        plans = List.copyOf(plans);
    }

    public byte[] bytes() {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (DataOutputStream out = new DataOutputStream(bytes)) {
            out.writeInt(MAGIC);
            out.writeLong(moves);
            out.writeDouble(provenObjective);
            out.writeInt(plans.size());
            for (byte[] plan : plans) {
                out.writeInt(plan.length);
                out.write(plan);
            }
        } catch (IOException e) {
            throw new IllegalStateException("memory takes what is written", e);
        }
        return bytes.toByteArray();
    }

    /** Empty where the bytes are none of these, or not all of them. */
    public static Optional<PlansFound> of(byte[] bytes) {
        try (DataInputStream in = new DataInputStream(new ByteArrayInputStream(bytes))) {
            if (in.readInt() != MAGIC) {
                return Optional.empty();
            }
            long moves = in.readLong();
            double proven = in.readDouble();
            int count = in.readInt();
            List<byte[]> plans = new ArrayList<>();
            for (int i = 0; i < count; i++) {
                byte[] plan = new byte[Math.min(in.readInt(), bytes.length)];
                in.readFully(plan);
                plans.add(plan);
            }
            return Optional.of(new PlansFound(plans, moves, proven));
        } catch (IOException | NegativeArraySizeException e) {
            return Optional.empty();
        }
    }
}
