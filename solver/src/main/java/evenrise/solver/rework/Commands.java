package evenrise.solver.rework;

import evenrise.model.project.Load;
import evenrise.model.project.Project;
import evenrise.model.project.SwitchedSystem;
import evenrise.model.rules.Clocks;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** Which command switches what, where a plant has several. */
final class Commands {
    private Commands() {}

    /**
     * Whether roles say something between two switched loads: they are of one system, or the one's needs the other's; all
     * are where the project has no systems.
     */
    static boolean waitsFor(Project project, Load one, Load other) {
        if (project.systems().isEmpty() || one.system().equals(other.system())) {
            return true;
        }
        Optional<String> system = one.system();
        return system.isPresent()
                && other.system()
                        .filter(Clocks.needed(system.get(), project.systems())::contains)
                        .isPresent();
    }

    /**
     * Whether a load goes off and comes on by one of the commands for these systems.
     *
     * @param systems none where one command is for all that boards switch
     */
    static boolean isFor(Collection<String> systems, Load load) {
        return load.switched()
                && (systems.isEmpty() || load.system().filter(systems::contains).isPresent());
    }

    /**
     * Systems that are off so that these loads can come on: theirs and all that need these, or all of them for a load
     * of none; in the order in which they come on again. None where one command is for all that boards switch.
     */
    static List<String> offWith(Project project, Collection<Load> loads) {
        if (!project.hasClocks()) {
            return List.of();
        }
        if (loads.stream().anyMatch(load -> load.system().isEmpty())) {
            return inOrder(project);
        }
        Set<String> theirs =
                loads.stream().flatMap(load -> load.system().stream()).collect(Collectors.toSet());
        return inOrder(project).stream()
                .filter(system ->
                        Clocks.needed(system, project.systems()).stream().anyMatch(theirs::contains))
                .toList();
    }

    /** Loads of systems that need this one. */
    static boolean needs(Project project, Load load, String system) {
        return load.system()
                .filter(own -> !own.equals(system)
                        && Clocks.needed(own, project.systems()).contains(system))
                .isPresent();
    }

    /** The systems in an order in which each comes after all that it needs. */
    private static List<String> inOrder(Project project) {
        List<String> order = new ArrayList<>();
        List<SwitchedSystem> left = new ArrayList<>(project.systems());
        while (!left.isEmpty()) {
            SwitchedSystem next = left.stream()
                    .filter(each -> order.containsAll(others(each, project)))
                    .findFirst()
                    .orElse(left.get(0));
            order.add(next.id());
            left.remove(next);
        }
        return order;
    }

    private static Set<String> others(SwitchedSystem system, Project project) {
        Set<String> needed = Clocks.needed(system.id(), project.systems());
        needed.remove(system.id());
        return needed;
    }
}
