package evenrise.solver.compare;

import evenrise.model.project.Board;
import evenrise.model.project.BoardType;
import evenrise.model.project.Load;
import evenrise.model.project.OffTiming;
import evenrise.model.project.Role;
import evenrise.model.rules.ProjectIndex;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What the boards of a system have together in every plan that keeps the rules: outputs, and room for whole groups. */
final class BoardNeeds {
    private final Variation variation;
    private final Optional<String> system;
    private final List<Load> loads;
    private final List<BoardType> staying = new ArrayList<>();

    BoardNeeds(Variation variation, Optional<String> system) {
        this.variation = variation;
        this.system = system;
        this.loads = variation.project().loads().stream()
                .filter(load -> load.switched() && load.comesWith().isEmpty())
                .filter(load -> system.isEmpty() || load.system().equals(system))
                .toList();
        ProjectIndex index = new ProjectIndex(variation.project());
        variation.boardsThatStay().stream().filter(this::mayServe).forEach(board -> staying.add(index.typeOf(board)));
    }

    /** By what it says of its system, or the loads that are fixed on it do. */
    private boolean mayServe(Board board) {
        Optional<String> serves = board.system()
                .or(() -> variation.project().loads().stream()
                        .filter(load ->
                                load.fixed().board().filter(board.id()::equals).isPresent())
                        .findFirst()
                        .flatMap(Load::system));
        return system.isEmpty() || serves.isEmpty() || serves.equals(system);
    }

    List<Need<BoardKind>> all() {
        long late = loads.stream().filter(load -> load.offAfterSeconds() > 0).count();
        double outputs = staying.stream().mapToInt(GroupPacking::room).sum();
        double lateOutputs = staying.stream()
                .filter(type -> type.off() == OffTiming.EACH)
                .mapToInt(GroupPacking::room)
                .sum();
        return List.of(
                new Need<>(loads.size() - outputs, kind -> GroupPacking.room(kind.type()), Optional.empty()),
                new Need<>(
                        late - lateOutputs,
                        kind -> kind.type().off() == OffTiming.EACH ? GroupPacking.room(kind.type()) : 0,
                        Optional.empty()));
    }

    /** Whether boards of these kinds, with those that stay, hold the groups, as far as anybody may try. */
    GroupPacking.Answer answer(List<BoardKind> kinds) {
        List<BoardType> boards = boards(kinds);
        return variation
                .packings(system)
                .answer(boards, most -> new GroupPacking(groups(false), singles(), boards, most));
    }

    /**
     * Of the groups on boards of these kinds, those that stay after them.
     *
     * @param byRole whether groups that come on early are to share boards, which takes longer to decide
     */
    GroupPacking packing(List<BoardKind> kinds, boolean byRole) {
        return new GroupPacking(groups(byRole), singles(), boards(kinds));
    }

    private List<BoardType> boards(List<BoardKind> kinds) {
        List<BoardType> boards =
                new ArrayList<>(kinds.stream().map(BoardKind::type).toList());
        boards.addAll(staying);
        return boards;
    }

    private int singles() {
        return (int)
                loads.stream().filter(load -> load.shutdownGroup().isEmpty()).count();
    }

    private List<GroupPacking.Group> groups(boolean byRole) {
        ProjectIndex index = new ProjectIndex(variation.project());
        Map<String, Role> first = new LinkedHashMap<>();
        Map<String, Integer> sizes = new LinkedHashMap<>();
        for (Load load : loads) {
            load.shutdownGroup().ifPresent(id -> {
                sizes.merge(id, 1, Integer::sum);
                first.merge(id, load.role(), (one, other) -> one.compareTo(other) < 0 ? one : other);
            });
        }
        List<GroupPacking.Group> groups = new ArrayList<>();
        for (Load load : loads) {
            load.shutdownGroup()
                    .map(sizes::remove)
                    .ifPresent(size -> groups.add(new GroupPacking.Group(
                            load.shutdownGroup().get(),
                            size,
                            index.drops(load),
                            byRole ? first.get(load.shutdownGroup().get()).ordinal() : 0)));
        }
        return groups;
    }

    List<Load> loads() {
        return loads;
    }
}
