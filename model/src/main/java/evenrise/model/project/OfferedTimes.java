package evenrise.model.project;

import evenrise.model.contract.BareList;
import evenrise.model.contract.Contract;
import evenrise.model.contract.Decimals;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/** Times that can be set: a range in equal steps, or a list, which stands in a file as a bare list. */
@FileRecord
@BareList("listed")
public record OfferedTimes(
        @Field(meaning = "First time", min = 0, max = 86_400, optional = true)
        OptionalDouble from,

        @Field(meaning = "No time is later", min = 0, max = 86_400, optional = true)
        OptionalDouble to,

        @Field(meaning = "Between times", above = 0, max = 86_400, least = 0.001, optional = true)
        OptionalDouble by,

        @Field(
                meaning = "The times, one by one",
                min = 0,
                max = 86_400,
                least = 0.001,
                optional = true,
                atLeast = 1,
                distinct = true)
        List<Double> listed)
        implements OfferedTimesBuilder.With {

    /** Room for rounding where the last time of a range is the end of it. */
    private static final double SAME = 1e-9;

    public OfferedTimes {
        Contract.check(OfferedTimes.class, from, to, by, listed);
        listed = List.copyOf(listed);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static OfferedTimesBuilder builder() {
        return Defaults.into(OfferedTimesBuilder.unset(), OfferedTimes.class);
    }

    /** Whether it says which times: a list alone, or a whole range that does not end before it begins. */
    public boolean isWhole() {
        boolean isRange = from.isPresent() && to.isPresent() && by.isPresent();
        boolean isBare = from.isEmpty() && to.isEmpty() && by.isEmpty();
        return listed.isEmpty() ? isRange && from.getAsDouble() <= to.getAsDouble() : isBare;
    }

    /** How many times there are. */
    public int count() {
        return listed.isEmpty()
                ? (int) Math.floor((to.orElseThrow() - from.orElseThrow()) / by.orElseThrow() + SAME) + 1
                : listed.size();
    }

    /** Every time, in the order of the file. */
    public List<Double> all() {
        return listed.isEmpty()
                ? IntStream.range(0, count())
                        .mapToObj(i -> from.orElseThrow() + i * by.orElseThrow())
                        .toList()
                : listed;
    }

    /** The time offered next to {@code seconds}: of a list the first of equally near, of a range the even step. */
    public double nearestSeconds(double seconds) {
        if (listed.isEmpty()) {
            double steps = Decimals.whole((seconds - from.orElseThrow()) / by.orElseThrow());
            return from.orElseThrow() + Math.min(Math.max(steps, 0), count() - 1) * by.orElseThrow();
        }
        double nearest = listed.get(0);
        for (double each : listed) {
            nearest = Math.abs(each - seconds) < Math.abs(nearest - seconds) ? each : nearest;
        }
        return nearest;
    }
}
