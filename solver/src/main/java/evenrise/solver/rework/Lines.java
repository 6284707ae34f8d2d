package evenrise.solver.rework;

import evenrise.model.project.Load;
import evenrise.model.rules.ProjectIndex;
import java.util.Set;
import java.util.TreeSet;

/** The lines that a breaker draws on in a slot, each with its panel. */
final class Lines {
    private Lines() {}

    static Set<String> of(ProjectIndex index, String load, String panel, int slot) {
        int poles = index.load(load).map(Load::poles).orElse(1);
        Set<String> lines = new TreeSet<>();
        index.panel(panel)
                .map(index::slotsOf)
                .ifPresent(geometry ->
                        geometry.span(slot, poles).forEach(each -> lines.add(panel + "\n" + geometry.phase(each))));
        return lines;
    }
}
