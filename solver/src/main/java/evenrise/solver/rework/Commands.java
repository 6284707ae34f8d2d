package evenrise.solver.rework;

import evenrise.model.project.Load;
import evenrise.model.project.Project;
import evenrise.model.project.SwitchedSystem;
import evenrise.model.rules.Clocks;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Which command switches what, where a plant has several. */
public final class Commands {
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

    /** The systems in an order in which each comes after all that it needs. */
    public static List<String> inOrder(Project project) {
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
