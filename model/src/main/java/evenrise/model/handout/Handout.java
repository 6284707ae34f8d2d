package evenrise.model.handout;

import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A project and its plan as one text, for the referee in a page. Prices and what only reading needs stay at home: no rule
 * asks for them, and who gets the page need not know them.
 *
 * @param projectSha256 of the project's file
 * @param planSha256 of what the plan places and sets, see {@link PlanDigest}
 */
public record Handout(String projectSha256, String planSha256, Project project, Plan plan) {

    public static Handout of(String projectSha256, Project project, Plan plan) {
        return new Handout(projectSha256, PlanDigest.sha256(plan), lean(project), bare(plan));
    }

    private static Project lean(Project project) {
        return project.with()
                .catalogue(Optional.empty())
                .work(Optional.empty())
                .defaults(List.of())
                .quantities(List.of())
                .cautions(List.of())
                .build();
    }

    private static Plan bare(Plan plan) {
        return Plan.builder()
                .boards(plan.boards())
                .assignments(plan.assignments())
                .build();
    }

    /** For {@link #read}, by this very version. */
    public String text() {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("unset", UnsetValues.all());
        tree.put("digests", List.of(projectSha256, planSha256));
        tree.put("project", RecordLists.of(project));
        tree.put("plan", RecordLists.of(plan));
        return PlainJson.text(tree);
    }

    static Handout read(String text) {
        Map<?, ?> tree = (Map<?, ?>) PlainJson.read(text);
        UnsetValues.take((Map<?, ?>) tree.get("unset"));
        List<String> digests = new ArrayList<>();
        ((List<?>) tree.get("digests")).forEach(each -> digests.add(each.toString()));
        return new Handout(
                digests.get(0),
                digests.get(1),
                RecordReader.read(Project.class, (List<?>) tree.get("project")),
                RecordReader.read(Plan.class, (List<?>) tree.get("plan")));
    }
}
