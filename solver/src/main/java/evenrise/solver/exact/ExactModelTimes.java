package evenrise.solver.exact;

import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import evenrise.model.project.Load;
import evenrise.model.project.Project;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.NavigableSet;
import java.util.TreeMap;
import java.util.TreeSet;

/** When loads come on in the exact model, in microseconds: one literal for each time that one of its outputs can reach. */
final class ExactModelTimes {
    private final CpModel model;
    private final Map<String, NavigableMap<Long, BoolVar>> instants = new LinkedHashMap<>();
    private final Map<String, IntVar> ons = new LinkedHashMap<>();
    private final NavigableSet<Long> all = new TreeSet<>();

    ExactModelTimes(CpModel model, Project project, ReachableTimes reachable, long latestMicros) {
        this.model = model;
        LoadWindows windows = new LoadWindows(project, reachable, latestMicros);
        Map<Long, List<BoolVar>> byTime = new TreeMap<>();
        for (Load load : project.loads()) {
            if (load.switched()) {
                give(load, windows.of(load));
                instants(load)
                        .forEach((time, literal) -> byTime.computeIfAbsent(time, any -> new ArrayList<>())
                                .add(literal));
            }
        }
        all.addAll(byTime.keySet());
        byTime.forEach((time, literals) -> {
            int outputs = reachable.outputsThatReach(time);
            if (outputs < literals.size()) {
                model.addLessOrEqual(ExactModelUnits.sum(literals), outputs);
            }
        });
    }

    private void give(Load load, NavigableSet<Long> times) {
        if (times.isEmpty()) {
            throw new NoTime("load " + load.id() + " has no output that it can use in time");
        }
        NavigableMap<Long, BoolVar> own = new TreeMap<>();
        times.forEach(time -> own.put(time, model.newBoolVar("")));
        model.addExactlyOne(own.values().toArray(BoolVar[]::new));
        instants.put(load.id(), own);
        IntVar on = model.newIntVar(times.first(), times.last(), "");
        LinearExprBuilder sum = LinearExpr.newBuilder();
        own.forEach((time, literal) -> sum.addTerm(literal, time));
        model.addEquality(sum, on);
        ons.put(load.id(), on);
    }

    /** Every time at which any load may come on. */
    NavigableSet<Long> all() {
        return all;
    }

    /** Literals that tell when the load comes on, exactly one of which holds; none for an unswitched load. */
    NavigableMap<Long, BoolVar> instants(Load load) {
        return instants.getOrDefault(load.id(), new TreeMap<>());
    }

    /** When a switched load comes on. */
    IntVar on(Load load) {
        return ons.get(load.id());
    }
}
