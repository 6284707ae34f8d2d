package evenrise.model.review;

import evenrise.model.plan.Subject;
import evenrise.model.plan.SubjectKind;
import evenrise.model.project.Project;
import evenrise.model.rules.NodeFigures;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Tells what each place of a remark is. An id that two kinds of things have tells nothing by itself. */
final class Subjects {
    private final Map<String, List<Subject>> byId = new HashMap<>();

    Subjects(Project project) {
        add(SubjectKind.SUPPLY, NodeFigures.SUPPLY);
        project.loads().forEach(load -> add(SubjectKind.LOAD, load.id()));
        project.panels().forEach(panel -> add(SubjectKind.PANEL, panel.id()));
        project.nodes().forEach(node -> add(SubjectKind.NODE, node.id()));
    }

    private void add(SubjectKind kind, String id) {
        byId.computeIfAbsent(id, any -> new ArrayList<>()).add(new Subject(kind, id));
    }

    /** Those of the places that are a load, a panel, a node or the supply, and nothing else by the same id. */
    List<Subject> of(Collection<String> places) {
        return places.stream()
                .map(place -> byId.getOrDefault(place, List.of()))
                .filter(found -> found.size() == 1)
                .map(found -> found.get(0))
                .toList();
    }

    static List<Subject> loads(Collection<String> ids) {
        return ids.stream().map(id -> new Subject(SubjectKind.LOAD, id)).toList();
    }
}
