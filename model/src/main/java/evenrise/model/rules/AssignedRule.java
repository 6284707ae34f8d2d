package evenrise.model.rules;

import evenrise.model.plan.Assignment;
import evenrise.model.plan.BrokenRule;
import evenrise.model.project.Load;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Every load of the project has exactly one assignment, and nothing else has one. */
final class AssignedRule implements WholePlantRule {
    @Override
    public String id() {
        return "assigned";
    }

    @Override
    public List<BrokenRule> broken(Layout layout) {
        List<BrokenRule> broken = new ArrayList<>();
        Set<String> seen = new HashSet<>();
        for (Assignment assignment : layout.plan().assignments()) {
            if (layout.index().load(assignment.load()).isEmpty()) {
                broken.add(Broken.by(BrokenKind.UNKNOWN_LOAD)
                        .load(assignment.load())
                        .at(RuleWords.seatOf(assignment))
                        .build());
            } else if (!seen.add(assignment.load())) {
                broken.add(Broken.by(BrokenKind.ASSIGNED_TWICE)
                        .load(assignment.load())
                        .panel(assignment.panel())
                        .word("slot", assignment.slot())
                        .at(RuleWords.seatOf(assignment))
                        .build());
            }
        }
        for (Load load : layout.project().loads()) {
            if (!seen.contains(load.id())) {
                broken.add(Broken.by(BrokenKind.NOT_ASSIGNED)
                        .load(load.id())
                        .word("output", load.switched() ? " and a free output" : "")
                        .build());
            }
        }
        return broken;
    }
}
