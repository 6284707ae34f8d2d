package evenrise.model.measured;

import evenrise.model.measured.FieldChange.Kind;
import evenrise.model.observation.OneMore;
import evenrise.model.project.Load;
import evenrise.model.project.MeasuredValue;
import evenrise.model.project.Project;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What several of one kind were measured at says something of others of that kind whose figures were guessed: the upper
 * end of a prediction for one more (normal, one-sided, 95 %: mean + t·s·√(1 + 1/n)), as a part of what was stated. It only
 * ever raises a guess, and the guess stays one.
 */
final class ClassLearning {
    /** Of fewer nothing is concluded. */
    private static final int FEWEST = 3;

    private final List<FieldChange> changes;
    private final Map<String, List<FieldChange>> byClass = new LinkedHashMap<>();

    private ClassLearning(List<FieldChange> changes) {
        this.changes = new ArrayList<>(changes);
    }

    /**
     * @param stated before anything was measured
     * @param measured with what was measured of each load itself
     */
    static Refitted of(Project stated, Project measured, List<FieldChange> changes) {
        ClassLearning it = new ClassLearning(changes);
        Map<String, Load> byId = new LinkedHashMap<>();
        stated.loads().forEach(load -> byId.put(load.id(), load));
        for (FieldChange each : changes) {
            it.byClass
                    .computeIfAbsent(key(byId.get(each.load()), each.field()), any -> new ArrayList<>())
                    .add(each);
        }
        List<Load> loads = new ArrayList<>();
        for (Load load : measured.loads()) {
            loads.add(it.learnt(it.learnt(load, MeasuredValue.IDLE), MeasuredValue.RUNNING));
        }
        return new Refitted(measured.withLoads(loads), it.changes);
    }

    /** Its kind where it states one, else all that its plate says. */
    private static String key(Load load, String field) {
        return field + " "
                + load.kind()
                        .orElseGet(() -> load.role() + " " + load.poles() + " " + load.breakerAmps() + " "
                                + load.runningAmps() + " " + load.idleAmps() + " " + load.inrushPeakAmps());
    }

    private Load learnt(Load load, String field) {
        boolean isMeasured =
                load.measured().stream().anyMatch(each -> each.field().equals(field));
        double guess = field.equals(MeasuredValue.IDLE) ? load.idleAmps() : load.runningAmps();
        double[] parts = parts(byClass.getOrDefault(key(load, field), List.of()));
        if (isMeasured || parts.length < FEWEST || !load.guessed().contains(field) || guess <= 0) {
            return load;
        }
        double likely = guess * OneMore.staysBelow(parts);
        boolean isRaised = likely > guess;
        changes.add(new FieldChange(
                isRaised ? Kind.RAISED_BY_CLASS : Kind.KEPT_BESIDE_CLASS,
                load.id(),
                field,
                guess,
                isRaised ? likely : guess,
                true,
                guess * OneMore.mean(parts),
                likely - guess * OneMore.mean(parts),
                Optional.empty(),
                parts.length + " of its kind were measured at " + Math.round(100 * OneMore.mean(parts))
                        + " % of what is stated; another one stays below " + Math.round(100 * OneMore.staysBelow(parts))
                        + " % with 95 %"));
        if (!isRaised) {
            return load;
        }
        return field.equals(MeasuredValue.IDLE)
                ? load.with()
                        .idleAmps(likely)
                        .runningAmps(Math.max(likely, load.runningAmps()))
                        .build()
                : load.withRunningAmps(likely);
    }

    /** Of each load once, however often it was visited: its greatest reading as a part of what was stated at first. */
    private static double[] parts(List<FieldChange> others) {
        Map<String, Double> stated = new LinkedHashMap<>();
        Map<String, Double> greatest = new LinkedHashMap<>();
        for (FieldChange each : others) {
            stated.putIfAbsent(each.load(), each.before());
            greatest.merge(each.load(), each.measured() + each.spread(), Math::max);
        }
        return stated.keySet().stream()
                .filter(each -> stated.get(each) > 0)
                .mapToDouble(each -> greatest.get(each) / stated.get(each))
                .toArray();
    }
}
