package evenrise.solver.report;

import evenrise.model.contract.Words;
import evenrise.model.plan.Metrics;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.List;

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
            if (!areSame(before, now)) {
                different.add(new StatedFigure(Words.key(component.getName()), before, now));
            }
        }
        return different;
    }

    private static boolean areSame(Object before, Object now) {
        if (before instanceof Double a && now instanceof Double b) {
            return Math.abs(a - b) <= TOLERANCE * Math.max(1, Math.max(Math.abs(a), Math.abs(b)));
        }
        return before.equals(now);
    }

    static String text(Object value) {
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
