package evenrise.model.rules;

import evenrise.model.plan.BrokenRule;
import evenrise.model.plan.SubjectKind;
import evenrise.model.project.ShutdownGroup;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** A group that asks for it sits in one panel. */
final class GroupPanelRule implements Rule {
    @Override
    public String id() {
        return "group-panel";
    }

    @Override
    public List<BrokenRule> broken(Layout layout) {
        List<BrokenRule> broken = new ArrayList<>();
        Map<String, List<Placement>> members = layout.groups();
        for (ShutdownGroup group : layout.project().shutdownGroups()) {
            Set<String> panels = members.getOrDefault(group.id(), List.of()).stream()
                    .map(each -> each.assignment().panel())
                    .collect(Collectors.toCollection(TreeSet::new));
            if (group.samePanel() && panels.size() > 1) {
                broken.add(Broken.by(BrokenKind.SCATTERED_GROUP)
                        .group(group.id())
                        .all("panels", SubjectKind.PANEL, panels)
                        .at("panels " + String.join(", ", panels))
                        .build());
            }
        }
        return broken;
    }
}
