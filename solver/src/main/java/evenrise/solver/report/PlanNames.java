package evenrise.solver.report;

import evenrise.solver.rework.Front;
import evenrise.solver.rework.FrontPoint;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/** Names of the files that hold the plans of a front: by moves, with a letter where several have as many. */
public final class PlanNames {
    private final Map<FrontPoint, String> names = new IdentityHashMap<>();

    private PlanNames() {}

    /** Of every plan to choose from, and of the one chosen, whatever it cures. */
    public static PlanNames of(Front front, FrontPoint chosen) {
        PlanNames it = new PlanNames();
        Set<String> taken = new HashSet<>();
        for (FrontPoint each : shown(front, chosen)) {
            String name = String.format(Locale.ROOT, "plan-%04d", each.moves());
            String free = name;
            for (char letter = 'b'; !taken.add(free); letter++) {
                free = name + letter;
            }
            it.names.put(each, free + ".json");
        }
        return it;
    }

    /** Rows of the front: what can be chosen, the plan chosen among them. */
    public static List<FrontPoint> shown(Front front, FrontPoint chosen) {
        List<FrontPoint> rows = new ArrayList<>(front.choices());
        if (rows.stream().noneMatch(each -> each == chosen)) {
            rows.add(0, chosen);
        }
        return rows;
    }

    public String of(FrontPoint point) {
        return names.get(point);
    }
}
