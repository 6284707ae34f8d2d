package evenrise.solver.desk;

import evenrise.model.contract.Field;
import evenrise.model.contract.Harmless;
import evenrise.model.file.FieldColumn;
import evenrise.model.file.Problem;
import evenrise.model.file.ProjectTree;
import evenrise.model.file.Reading;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.model.rules.NodeFigures;
import evenrise.solver.app.JobFailed;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;

/** The tree of supply, nodes and panels, looked at and edited. */
final class TreeWork implements DeskPart {
    private static final String PANELS = "panels";
    private static final String NODES = "nodes";

    /** A panel or node is added, like another where one is named. */
    public record AddedPoint(
            @Field(meaning = "Its id", atLeast = 1) String id,

            @Field(meaning = "What feeds it", byDefault = "\"supply\"")
            String under,

            @Field(meaning = "Whether it is a node; a panel else", byDefault = "false")
            boolean node,

            @Field(meaning = "Rated rms current of each line", above = 0, max = 100_000)
            double ratedAmps,

            @Field(meaning = "Slots of a panel", min = 1, max = 1000, byDefault = "42")
            int slots) {}

    /** A panel or node is called otherwise, fed from elsewhere, or taken out. */
    public record ChangedPoint(
            @Field(meaning = "Its id", atLeast = 1) String id,

            @Field(meaning = "Its id from now on", atLeast = 1, optional = true)
            Optional<String> name,

            @Field(meaning = "What feeds it from now on", atLeast = 1, optional = true)
            Optional<String> under,

            @Field(meaning = "Whether it is taken out", byDefault = "false")
            boolean out) {}

    private record Renamed(String id, String next) {}

    private final Desk desk;

    TreeWork(Desk desk) {
        this.desk = desk;
    }

    @Override
    public void offer(DeskRoutes routes) {
        routes.shown(
                "/api/tree",
                "What feeds what, and what it carries",
                ShownTree.TreeView.class,
                () -> ShownTree.of(desk.judged(), desk.revision()));
        routes.asked(
                "/api/tree/add", "A panel or node is added", AddedPoint.class, DeskAnswers.DeskSheet.class, this::add);
        routes.asked(
                "/api/tree/change",
                "A panel or node is renamed, moved or taken out",
                ChangedPoint.class,
                DeskAnswers.DeskSheet.class,
                this::change);
    }

    private DeskAnswers.DeskSheet add(AddedPoint asked) {
        return edited(Harmless.shown(asked.id()) + " added to the tree", Optional.empty(), tree -> {
            if (ids(tree).contains(asked.id())) {
                throw refused("there is '" + Harmless.shown(asked.id()) + "' already. Choose another name.");
            }
            String list = asked.node() ? NODES : PANELS;
            tree.add(list, asked.id());
            state(tree, list, asked.id(), "rated_a", Optional.of(asked.ratedAmps()));
            state(tree, list, asked.id(), "fed_from", under(asked.under()));
            if (!asked.node()) {
                state(tree, list, asked.id(), "slots", Optional.of((double) asked.slots()));
            }
        });
    }

    private DeskAnswers.DeskSheet change(ChangedPoint asked) {
        String words = Harmless.shown(asked.id())
                + (asked.out() ? " taken out" : asked.name().isPresent() ? " renamed" : " fed from elsewhere");
        return edited(
                words,
                asked.out() ? Optional.empty() : asked.name().map(next -> new Renamed(asked.id(), next)),
                tree -> {
                    String list = tree.ids(PANELS).contains(asked.id()) ? PANELS : NODES;
                    if (!tree.ids(list).contains(asked.id())) {
                        throw refused("there is no panel and no node '" + Harmless.shown(asked.id()) + "'.");
                    }
                    if (asked.out()) {
                        tree.remove(list, asked.id());
                        return;
                    }
                    asked.under().ifPresent(under -> state(tree, list, asked.id(), "fed_from", under(under)));
                    if (asked.name().isPresent() && !asked.name().get().equals(asked.id())) {
                        if (ids(tree).contains(asked.name().get())) {
                            throw refused("there is '"
                                    + Harmless.shown(asked.name().get()) + "' already. Choose another name.");
                        }
                        tree.renamePoint(asked.id(), asked.name().get());
                    }
                });
    }

    private static List<String> ids(ProjectTree tree) {
        return Stream.concat(tree.ids(PANELS).stream(), tree.ids(NODES).stream())
                .toList();
    }

    private static Optional<Object> under(String point) {
        return point.equals(NodeFigures.SUPPLY) ? Optional.empty() : Optional.of(point);
    }

    private static void state(ProjectTree tree, String list, String id, String column, Optional<Object> value) {
        FieldColumn of = FieldColumn.of(list).stream()
                .filter(each -> each.path().equals(column))
                .findFirst()
                .orElseThrow();
        tree.state(list, id, of, value);
    }

    /** @param renamed a point's id before and after, which the plan follows */
    private DeskAnswers.DeskSheet edited(String words, Optional<Renamed> renamed, Consumer<ProjectTree> edit) {
        desk.change(words, now -> {
            ProjectTree tree =
                    ProjectTree.of(now.state().project(), now.state().notes()).copy();
            edit.accept(tree);
            Reading<Project> read = tree.read("the project");
            Project next = read.value()
                    .orElseThrow(() -> new JobFailed(
                            JobFailed.Reason.REQUEST,
                            read.problems().stream()
                                    .map(Problem::message)
                                    .limit(5)
                                    .toList()));
            DeskState state = now.state();
            if (renamed.isPresent()) {
                state = state.withPlan(followed(state.plan(), renamed.get()));
            }
            return state.under(next, read.notes());
        });
        return desk.sheet();
    }

    private static Plan followed(Plan plan, Renamed renamed) {
        return plan.withAssignments(plan.assignments().stream()
                .map(each -> each.panel().equals(renamed.id())
                        ? each.with().panel(renamed.next()).build()
                        : each)
                .toList());
    }

    private static JobFailed refused(String why) {
        return new JobFailed(JobFailed.Reason.REQUEST, why);
    }
}
