package evenrise.solver.tidy;

import evenrise.model.project.Load;
import evenrise.model.project.Project;
import evenrise.model.project.Scene;
import evenrise.model.project.SceneUse;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;

/**
 * Loads of which any two could change names and no rule and no figure of the objective would notice: all that is stated of
 * them is the same but id, name, what was guessed and the cable, which no rule reads, and so is what others and scenes say
 * of them. Time: linear in the loads, but for loads that are the same by themselves and differ in what others say of them,
 * of which each is compared with each.
 */
final class AlikeLoads {
    /** What one load has to do with another, or with a scene. */
    private record Tie(String how, String other) {}

    private final Map<String, Set<Tie>> ties = new HashMap<>();

    private AlikeLoads(Project project) {
        for (Load load : project.loads()) {
            load.comesAfter().forEach(other -> tie(load.id(), "after", other, "before"));
            load.apartFrom().forEach(other -> tie(load.id(), "apart", other, "apart"));
            load.samePhaseAs().forEach(other -> tie(load.id(), "phase", other, "phase"));
            load.comesWith().ifPresent(other -> tie(load.id(), "with", other, "leads"));
        }
        for (int scene = 0; scene < project.scenes().size(); scene++) {
            named(project.scenes().get(scene), scene);
        }
    }

    /** Every set of two or more loads that are alike, in natural order; only of loads that {@code isFree} picks. */
    static List<List<String>> of(Project project, Predicate<Load> isFree) {
        AlikeLoads alike = new AlikeLoads(project);
        Map<Load, List<List<String>>> found = new LinkedHashMap<>();
        project.loads().stream()
                .filter(isFree)
                .forEach(
                        load -> alike.sort(load.id(), found.computeIfAbsent(nameless(load), any -> new ArrayList<>())));
        return found.values().stream()
                .flatMap(List::stream)
                .filter(each -> each.size() > 1)
                .map(each -> each.stream().sorted(NaturalOrder.INSTANCE).toList())
                .toList();
    }

    private void sort(String load, List<List<String>> sets) {
        for (List<String> set : sets) {
            if (canChange(load, set.get(0))) {
                set.add(load);
                return;
            }
        }
        sets.add(new ArrayList<>(List.of(load)));
    }

    /** Whether what each has to do with others is the same once the two have changed names. */
    private boolean canChange(String one, String another) {
        Set<Tie> ofOne = ties.getOrDefault(one, Set.of());
        Set<Tie> ofAnother = ties.getOrDefault(another, Set.of());
        return ofOne.size() == ofAnother.size()
                && ofOne.stream().allMatch(tie -> ofAnother.contains(changed(tie, one, another)));
    }

    private static Tie changed(Tie tie, String one, String another) {
        if (tie.other().equals(one)) {
            return new Tie(tie.how(), another);
        }
        return tie.other().equals(another) ? new Tie(tie.how(), one) : tie;
    }

    private void tie(String load, String how, String other, String back) {
        add(load, new Tie(how, other));
        add(other, new Tie(back, load));
    }

    private void named(Scene scene, int number) {
        for (int i = 0; i < scene.use().size(); i++) {
            SceneUse use = scene.use().get(i);
            Tie tie = new Tie("scene " + number + " use " + i, "");
            use.loads().orElse(List.of()).forEach(load -> add(load, tie));
        }
    }

    private void add(String load, Tie tie) {
        ties.computeIfAbsent(load, any -> new HashSet<>()).add(tie);
    }

    /** What is stated of the load by itself. */
    private static Load nameless(Load load) {
        return load.with()
                .id("any")
                .name("any")
                .guessed(List.of())
                .panels(List.copyOf(new TreeSet<>(load.panels())))
                .comesAfter(List.of())
                .apartFrom(List.of())
                .samePhaseAs(List.of())
                .comesWith(Optional.empty())
                .circuit(load.circuit().map(circuit -> circuit.withCable(Optional.empty())))
                .build();
    }
}
