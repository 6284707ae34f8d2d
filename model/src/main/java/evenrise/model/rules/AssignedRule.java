package evenrise.model.rules;

import evenrise.model.plan.Assignment;
import evenrise.model.project.Load;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Every load of the project has exactly one assignment, and nothing else has one. */
final class AssignedRule implements Rule {
    @Override
    public String id() {
        return "assigned";
    }

    @Override
    public List<String> broken(Layout layout) {
        List<String> broken = new ArrayList<>();
        Set<String> seen = new HashSet<>();
        for (Assignment assignment : layout.plan().assignments()) {
            String load = Say.quoted(assignment.load());
            if (layout.index().load(assignment.load()).isEmpty()) {
                broken.add("the plan assigns load " + load + ", which the project does not have."
                        + " Maybe it was renamed or taken out: delete the assignment.");
            } else if (!seen.add(assignment.load())) {
                broken.add("load " + load + " is assigned once more, in slot " + assignment.slot() + " of panel "
                        + Say.quoted(assignment.panel()) + "; exactly one assignment is allowed."
                        + " Maybe delete all but the right one.");
            }
        }
        for (Load load : layout.project().loads()) {
            if (!seen.contains(load.id())) {
                broken.add("load " + Say.quoted(load.id())
                        + " has no assignment, exactly one is needed. Maybe give it a free slot"
                        + (load.switched() ? " and a free output." : "."));
            }
        }
        return broken;
    }
}
