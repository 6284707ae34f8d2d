package evenrise.model.plan;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import java.util.Optional;
import java.util.OptionalDouble;

/** One figure that the electrical review has computed, beside what it is held against. */
@FileRecord
public record Quantity(
        @Field(meaning = "Load, panel, room or supply that it is about", atLeast = 1)
        String place,

        @Field(meaning = "What it is, as named in docs/electrical.md", atLeast = 1)
        String name,

        @Field(meaning = "The figure", least = 0) double value,

        @Field(meaning = "Its unit: A, V, %, s, W, BTU/h; empty where there is none", byDefault = "\"\"")
        String unit,

        @Field(meaning = "How it comes about, or what was assumed", atLeast = 1, optional = true)
        Optional<String> how,

        @Field(meaning = "The check that computes it, as named in docs/electrical.md", byDefault = "\"\"")
        String check,

        @Field(
                meaning = "What it is held against, in the same unit; not there where nothing limits it, or where what"
                        + " limits it is not stated",
                optional = true,
                least = 0)
        OptionalDouble limit,

        @Field(meaning = "On which side of the limit it stays", byDefault = "\"at-most\"")
        HeldTo heldTo,

        @Field(
                meaning = "Clause of the practice that sets the limit, as a pointer to look it up, or what else does",
                byDefault = "\"\"")
        String clause)
        implements QuantityBuilder.With {
    /** Rounding of sums of currents. */
    private static final double ROUNDING = 1e-6;

    public Quantity {
        Contract.check(Quantity.class, place, name, value, unit, how, check, limit, heldTo, clause);
    }

    /** One whose name says how it comes about, held against nothing. */
    public Quantity(String place, String name, double value, String unit) {
        this(place, name, value, unit, Optional.empty());
    }

    /** Held against nothing. */
    public Quantity(String place, String name, double value, String unit, Optional<String> how) {
        this(place, name, value, unit, how, "", OptionalDouble.empty(), HeldTo.AT_MOST, "");
    }

    /** The same, to be no more than that; held against nothing where that is without limit. */
    public Quantity atMost(double most, String by) {
        return held(most, HeldTo.AT_MOST, by);
    }

    /** The same, to be no more than that where it is stated. */
    public Quantity atMost(OptionalDouble most, String by) {
        return most.isPresent() ? atMost(most.getAsDouble(), by) : this;
    }

    /** The same, to be no less than that; held against nothing where that is without limit. */
    public Quantity atLeast(double least, String by) {
        return held(least, HeldTo.AT_LEAST, by);
    }

    private Quantity held(double against, HeldTo side, String by) {
        return Double.isFinite(against)
                ? with().limit(against).heldTo(side).clause(by).build()
                : this;
    }

    /** How much of the limit is used, 100 % at the limit; none where it is held against nothing. */
    public OptionalDouble usedPercent() {
        if (limit.isEmpty()) {
            return OptionalDouble.empty();
        }
        double used = heldTo == HeldTo.AT_MOST ? value : limit.getAsDouble();
        double whole = heldTo == HeldTo.AT_MOST ? limit.getAsDouble() : value;
        if (used <= 0) {
            return OptionalDouble.of(0);
        }
        return OptionalDouble.of(whole <= 0 ? Double.POSITIVE_INFINITY : 100 * used / whole);
    }

    /** What is left to the limit, below zero where it is passed; none where it is held against nothing. */
    public OptionalDouble left() {
        return limit.isEmpty()
                ? OptionalDouble.empty()
                : OptionalDouble.of(
                        heldTo == HeldTo.AT_MOST ? limit.getAsDouble() - value : value - limit.getAsDouble());
    }

    /** Whether it is on the wrong side of its limit. */
    public boolean isPassed() {
        return left().orElse(0) < -ROUNDING;
    }

    /** Begins with what a file gives that leaves everything out. */
    public static QuantityBuilder builder() {
        return Defaults.into(QuantityBuilder.unset(), Quantity.class);
    }
}
