package evenrise.solver.desk;

import evenrise.model.file.ProjectMerge;
import evenrise.model.file.ProjectTree;
import evenrise.model.file.Reading;
import evenrise.model.plan.Assignment;
import evenrise.model.plan.BoardSetting;
import evenrise.model.plan.Plan;
import evenrise.model.project.Board;
import evenrise.model.project.Project;
import evenrise.model.rules.ProjectIndex;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.function.Function;

/**
 * What another program made of the files brought together with what the desk made of them meanwhile: the project field by
 * field, the plan load by load and board by board. Where both say something new and differ, the file counts.
 */
final class StateMerge {
    private final List<String> contradictions = new ArrayList<>();

    /**
     * @param state both together; empty where that makes no sense
     * @param contradictions where the file's word stands against the desk's
     */
    record Merged(Optional<DeskState> state, List<String> contradictions) {}

    private StateMerge() {}

    /**
     * @param base what both began with
     * @param own what lies on the desk
     * @param other what is in the files
     */
    static Merged of(DeskState base, DeskState own, DeskState other) {
        StateMerge merge = new StateMerge();
        ProjectMerge projects = ProjectMerge.of(tree(base), tree(own), tree(other));
        Reading<Project> read = projects.tree().read("the project");
        merge.contradictions.addAll(projects.contradictions());
        if (read.value().isEmpty()) {
            return new Merged(Optional.empty(), merge.contradictions);
        }
        Plan plan = merge.plans(
                base.plan(),
                own.plan(),
                other.plan(),
                new ProjectIndex(read.value().get()));
        return new Merged(
                Optional.of(other.withPlan(plan).under(read.value().get(), read.notes())), merge.contradictions);
    }

    private static ProjectTree tree(DeskState state) {
        return ProjectTree.of(state.project(), state.notes());
    }

    private Plan plans(Plan base, Plan own, Plan other, ProjectIndex index) {
        BiFunction<Assignment, Assignment, Boolean> isSame =
                (left, right) -> seat(left, index).equals(seat(right, index));
        return other.with()
                .assignments(merged(
                        byId(base.assignments(), Assignment::load),
                        byId(own.assignments(), Assignment::load),
                        byId(other.assignments(), Assignment::load),
                        isSame,
                        "place of "))
                .boards(merged(
                        byId(base.boards(), BoardSetting::id),
                        byId(own.boards(), BoardSetting::id),
                        byId(other.boards(), BoardSetting::id),
                        Object::equals,
                        "setting of "))
                .build();
    }

    /** Without what follows from the rest of the plan. */
    private static List<Object> seat(Assignment at, ProjectIndex index) {
        boolean hasOwnTime = at.board()
                .flatMap(index::board)
                .map((Board board) -> index.typeOf(board).isTimedByOutput())
                .orElse(false);
        return List.of(
                at.panel(), at.slot(), at.board(), at.output(), hasOwnTime ? at.onSeconds() : OptionalDouble.empty());
    }

    private <T> List<T> merged(
            Map<String, T> base,
            Map<String, T> own,
            Map<String, T> other,
            BiFunction<T, T, Boolean> isSame,
            String what) {
        Set<String> ids = new LinkedHashSet<>(other.keySet());
        ids.addAll(own.keySet());
        List<T> all = new ArrayList<>();
        for (String id : ids) {
            T before = base.get(id);
            T here = own.get(id);
            T there = other.get(id);
            boolean isOwnOld = isSame(before, here, isSame);
            if (!isOwnOld && !isSame(before, there, isSame) && !isSame(here, there, isSame)) {
                contradictions.add(what + id);
            }
            T word = isOwnOld || !isSame(before, there, isSame) ? there : here;
            Optional.ofNullable(word).ifPresent(all::add);
        }
        return all;
    }

    private static <T> boolean isSame(T left, T right, BiFunction<T, T, Boolean> isSame) {
        return left == null || right == null ? Objects.equals(left, right) : isSame.apply(left, right);
    }

    private static <T> Map<String, T> byId(List<T> entries, Function<T, String> id) {
        Map<String, T> all = new LinkedHashMap<>();
        entries.forEach(each -> all.put(id.apply(each), each));
        return all;
    }
}
