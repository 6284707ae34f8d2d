package evenrise.solver.report;

import evenrise.model.contract.Words;
import evenrise.model.plan.Metrics;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** A figure that a plan file states and that its own assignments do not give. */
public record StatedFigure(String figure, Object stated, Object recomputed) {
    /** Two figures that differ by no more than this part of the larger (or this much, below 1) are the same. */
    private static final double TOLERANCE = 1e-6;

    /** The figures that differ, in the order of the file. */
    static List<StatedFigure> differences(Metrics stated, Metrics recomputed) {
        List<StatedFigure> different = new ArrayList<>();
        for (RecordComponent component : Metrics.class.getRecordComponents()) {
            Object before = value(component, stated);
            Object now = value(component, recomputed);
            boolean isAgainstAnother = component.getName().startsWith("moved") && isNone(now);
            if (!isAgainstAnother && !areSame(before, now)) {
                different.add(new StatedFigure(Words.key(component.getName()), before, now));
            }
        }
        return different;
    }

    private static boolean areSame(Object before, Object now) {
        if (before instanceof Double a && now instanceof Double b) {
            return Math.abs(a - b) <= TOLERANCE * Math.max(1, Math.max(Math.abs(a), Math.abs(b)));
        }
        if (before instanceof OptionalDouble a && now instanceof OptionalDouble b && a.isPresent() && b.isPresent()) {
            return areSame(a.getAsDouble(), b.getAsDouble());
        }
        return before.equals(now);
    }

    /** Of moves nothing is said where nobody gave the earlier plan. */
    private static boolean isNone(Object value) {
        return value.equals(OptionalInt.empty()) || value.equals(OptionalDouble.empty());
    }

    static String text(Object value) {
        if (isNone(value)) {
            return Numbers.NONE;
        }
        if (value instanceof OptionalDouble number) {
            return Numbers.fixed(number.getAsDouble(), 6);
        }
        if (value instanceof OptionalInt number) {
            return Integer.toString(number.getAsInt());
        }
        return value instanceof Double number ? Numbers.fixed(number, 6) : value.toString();
    }

    private static Object value(RecordComponent component, Metrics metrics) {
        try {
            return component.getAccessor().invoke(metrics);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException("metrics." + component.getName() + " cannot be read", e);
        }
    }
}
