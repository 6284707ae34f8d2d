package evenrise.solver.compare;

import evenrise.model.project.Load;
import evenrise.model.project.Project;
import evenrise.model.project.QuantityRange;
import evenrise.model.project.Scene;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;

/** A project with other quantities: the last of the loads listed are left out, or more like the first are there. */
final class DrawnQuantities {
    private final Project project;
    private final List<Load> loads;
    private final Set<String> ids = new HashSet<>();
    private final Set<String> gone = new HashSet<>();

    private DrawnQuantities(Project project) {
        this.project = project;
        this.loads = new ArrayList<>(project.loads());
        loads.forEach(load -> ids.add(load.id()));
    }

    /** @param counts one for each of the project's quantities */
    static Project of(Project project, List<Integer> counts) {
        DrawnQuantities drawn = new DrawnQuantities(project);
        for (int i = 0; i < counts.size(); i++) {
            drawn.take(project.quantities().get(i), counts.get(i));
        }
        return drawn.project();
    }

    private void take(QuantityRange range, int count) {
        gone.addAll(range.loads().subList(Math.min(count, range.listed()), range.listed()));
        Load first = project.loads().stream()
                .filter(load -> load.id().equals(range.loads().get(0)))
                .findFirst()
                .orElseThrow();
        int number = 1;
        for (int more = range.listed(); more < count; more++) {
            while (!ids.add(first.id() + "-" + number)) {
                number++;
            }
            loads.add(first.withId(first.id() + "-" + number));
        }
    }

    private Project project() {
        return project.with()
                .loads(loads.stream()
                        .filter(load -> !gone.contains(load.id()))
                        .map(load -> load.with()
                                .comesAfter(left(load.comesAfter()))
                                .apartFrom(left(load.apartFrom()))
                                .samePhaseAs(left(load.samePhaseAs()))
                                .build())
                        .toList())
                .scenes(project.scenes().stream().map(this::left).toList())
                .quantities(List.of())
                .build();
    }

    private Scene left(Scene scene) {
        return scene.withUse(scene.use().stream()
                .map(use -> use.withLoads(use.loads().map(this::left)))
                .filter(use -> use.loads().filter(List::isEmpty).isEmpty())
                .toList());
    }

    private List<String> left(List<String> of) {
        return of.stream().filter(Predicate.not(gone::contains)).toList();
    }
}
