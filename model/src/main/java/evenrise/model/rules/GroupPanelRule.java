package evenrise.model.rules;

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
    public List<String> broken(Layout layout) {
        List<String> broken = new ArrayList<>();
        Map<String, List<Placement>> members = layout.groups();
        for (ShutdownGroup group : layout.project().shutdownGroups()) {
            Set<String> panels = members.getOrDefault(group.id(), List.of()).stream()
                    .map(each -> each.assignment().panel())
                    .collect(Collectors.toCollection(TreeSet::new));
            if (group.samePanel() && panels.size() > 1) {
                broken.add("shutdown group " + Say.quoted(group.id()) + " must sit in one panel, but is in "
                        + Say.quoted(panels) + ". Maybe move the fewer loads to the panel of the others.");
            }
        }
        return broken;
    }
}
