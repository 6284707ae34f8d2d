package evenrise.solver.exhaustive;

import evenrise.model.project.Load;
import evenrise.model.project.Project;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;

/** Loads that nothing tells apart: exchanging two of them makes of any plan another as good. */
final class Alike {
    private Alike() {}

    /** Equal for two loads that no rule and no figure tells apart. */
    static Object key(Project project, Load load) {
        boolean isAlone = load.fixed().slot().isPresent()
                || project.loads().stream().anyMatch(other -> areTied(load, other) || areTied(other, load));
        return List.of(isAlone ? load.id() : "", currents(load), keyInTime(project, load));
    }

    private static Load currents(Load load) {
        return Load.builder()
                .id("-")
                .role(load.role())
                .poles(load.poles())
                .breakerAmps(1)
                .switched(load.switched())
                .runningAmps(load.runningAmps())
                .idleAmps(load.idleAmps())
                .powerFactor(load.powerFactor())
                .leading(load.leading())
                .thirdHarmonic(OptionalDouble.of(load.harmonicRatio()))
                .inrushPeakAmps(OptionalDouble.of(load.inrushAmps()))
                .inrushHalfMillis(load.inrushHalfMillis())
                .build();
    }

    /** Equal for two loads that nothing tells apart but their currents and where they sit. */
    static Object keyInTime(Project project, Load load) {
        Set<String> followers = project.loads().stream()
                .filter(other -> other.comesAfter().contains(load.id()))
                .map(Load::id)
                .collect(Collectors.toSet());
        return List.of(
                load.switched(),
                load.role(),
                load.settleSeconds(),
                load.shutdownGroup(),
                load.panels(),
                load.fixed(),
                load.fixed().output().isPresent() ? load.id() : "",
                Set.copyOf(load.comesAfter()),
                followers);
    }

    private static boolean areTied(Load one, Load other) {
        return one.samePhaseAs().contains(other.id()) || one.apartFrom().contains(other.id());
    }
}
