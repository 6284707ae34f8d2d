package evenrise.solver.rework;

import evenrise.model.plan.BrokenRule;
import evenrise.model.plan.Plan;
import evenrise.model.rules.ProjectIndex;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;

/**
 * What a night leaves no room for.
 *
 * @param live loads that may not be off at any time
 * @param mostOut shutdown groups of which a load may be off at once
 * @param windowsMinutes how long each night is, in their order; none where nobody counts them
 */
public record NightLimits(Set<String> live, OptionalInt mostOut, List<Double> windowsMinutes) {
    public static final NightLimits NONE = new NightLimits(Set.of(), OptionalInt.empty(), List.of());

    public NightLimits {
        live = Collections.unmodifiableSet(new TreeSet<>(live));
        windowsMinutes = List.copyOf(windowsMinutes);
    }

    /** Loads that are meant by ids of loads, of shutdown groups and of panels, as built. */
    public static Set<String> loads(ProjectIndex index, Plan built, Collection<String> ids) {
        Set<String> loads = new TreeSet<>();
        index.project().loads().stream()
                .flatMap(load -> index.load(load.id()).stream())
                .filter(load -> ids.contains(load.id())
                        || load.shutdownGroup().filter(ids::contains).isPresent())
                .forEach(load -> loads.add(load.id()));
        built.assignments().stream().filter(seat -> ids.contains(seat.panel())).forEach(seat -> loads.add(seat.load()));
        return loads;
    }

    boolean allows(Set<String> off, Set<String> outages, double minutes) {
        return Collections.disjoint(off, live)
                && named(outages) <= mostOut.orElse(Integer.MAX_VALUE)
                && minutes - 1e-9
                        <= windowsMinutes.stream().max(Double::compare).orElse(Double.POSITIVE_INFINITY);
    }

    /** What a stage does not keep of it, but for loads that are to stay live, which the replay finds. */
    List<BrokenRule> brokenBy(WorkStage stage) {
        List<BrokenRule> broken = new ArrayList<>();
        long out = named(stage.outages());
        if (out > mostOut.orElse(Integer.MAX_VALUE)) {
            broken.add(WorkKind.TOO_MANY_OUT.with(
                    Map.of("out", String.valueOf(out), "allowed", String.valueOf(mostOut.getAsInt()))));
        }
        double longest = windowsMinutes.stream().max(Double::compare).orElse(Double.POSITIVE_INFINITY);
        if (stage.minutes() > longest + 1e-9) {
            broken.add(WorkKind.TOO_LONG.with(Map.of(
                    "minutes", String.valueOf(Math.round(stage.minutes())),
                    "window", String.valueOf(Math.round(longest)))));
        }
        return broken;
    }

    /** The same without limits to what is out at once and for how long. */
    NightLimits onlyLive() {
        return new NightLimits(live, OptionalInt.empty(), List.of());
    }

    /** Groups, without the loads that are of none. */
    static long named(Collection<String> outages) {
        return outages.stream().filter(group -> !group.isEmpty()).count();
    }
}
