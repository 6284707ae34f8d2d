package evenrise.solver.exact;

import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import evenrise.model.project.Board;
import evenrise.model.project.Load;
import evenrise.model.project.OnEmergency;
import evenrise.model.project.Project;
import evenrise.model.project.ShutdownGroup;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** Rules of boards and shutdown groups in the exact model. */
final class ExactModelGroups {
    private final CpModel model;
    private final Project project;
    private final ExactModelPlaces places;
    private final ExactModelBoards boards;
    private final List<Load> switched;
    private final int largest;

    private ExactModelGroups(CpModel model, Project project, ExactModelPlaces places, ExactModelBoards boards) {
        this.model = model;
        this.project = project;
        this.places = places;
        this.boards = boards;
        this.switched = project.loads().stream().filter(Load::switched).toList();
        this.largest = project.boards().stream()
                .mapToInt(board -> boards.type(board).outputs())
                .max()
                .orElse(0);
    }

    /** Adds every rule about which load shares a board with which. */
    static void add(CpModel model, Project project, ExactModelPlaces places, ExactModelBoards boards) {
        ExactModelGroups it = new ExactModelGroups(model, project, places, boards);
        for (Board board : project.boards()) {
            it.reach(board);
            it.emergency(board);
            it.runs(board);
            project.shutdownGroups().forEach(group -> it.whole(group, board));
        }
    }

    private void reach(Board board) {
        if (board.reaches().size() < project.panels().size()) {
            for (Load load : switched) {
                model.addLessOrEqual(
                        boards.on(load, board),
                        places.where(load.id(), spot -> board.reaches().contains(spot.panel())));
            }
        }
    }

    private void emergency(Board board) {
        Map<String, Boolean> drops = project.shutdownGroups().stream()
                .collect(Collectors.toMap(ShutdownGroup::id, group -> group.onEmergency() == OnEmergency.DROP));
        BoolVar drop = model.newBoolVar("");
        for (Load load : switched) {
            boolean falls = load.shutdownGroup().map(drops::get).orElse(false);
            model.addLessOrEqual(boards.on(load, board), falls ? drop : drop.not());
        }
    }

    private void whole(ShutdownGroup group, Board board) {
        List<Load> members = ExactModelOrder.members(project, group);
        if (members.size() <= largest) {
            members.stream()
                    .skip(1)
                    .forEach(member -> model.addEquality(boards.on(members.get(0), board), boards.on(member, board)));
            return;
        }
        BoolVar itsOwn = model.newBoolVar("");
        for (Load load : switched) {
            model.addLessOrEqual(boards.on(load, board), members.contains(load) ? itsOwn : itsOwn.not());
        }
    }

    /**
     * Every output belongs to one group, or to loads without one, whether it is in use or not; who is on it belongs to
     * the same. Then a group's loads are not interrupted exactly if its outputs can be chosen without a gap.
     */
    private void runs(Board board) {
        List<List<Load>> parts = new ArrayList<>();
        project.shutdownGroups().forEach(group -> parts.add(ExactModelOrder.members(project, group)));
        parts.removeIf(members -> members.size() < 2 || members.stream().noneMatch(load -> !isNowhere(load, board)));
        if (parts.isEmpty()) {
            return;
        }
        List<Load> others = switched.stream()
                .filter(load -> parts.stream().noneMatch(part -> part.contains(load)))
                .toList();
        List<LinearExprBuilder> starts = new ArrayList<>();
        parts.forEach(any -> starts.add(LinearExpr.newBuilder()));
        List<BoolVar> before = List.of();
        for (ExactModelBoards.Output output : boards.outputsOf(board)) {
            List<BoolVar> here = new ArrayList<>();
            for (int i = 0; i < parts.size(); i++) {
                BoolVar belongs = model.newBoolVar("");
                model.addLessOrEqual(boards.on(output, parts.get(i)), belongs);
                BoolVar start = model.newBoolVar("");
                LinearExprBuilder begun = LinearExpr.newBuilder().add(start);
                if (!before.isEmpty()) {
                    begun.add(before.get(i));
                }
                model.addLessOrEqual(belongs, begun);
                starts.get(i).add(start);
                here.add(belongs);
            }
            BoolVar belongsToOthers = model.newBoolVar("");
            model.addLessOrEqual(boards.on(output, others), belongsToOthers);
            before = List.copyOf(here);
            here.add(belongsToOthers);
            model.addExactlyOne(here.toArray(BoolVar[]::new));
        }
        starts.forEach(sum -> model.addLessOrEqual(sum, 1));
    }

    private boolean isNowhere(Load load, Board board) {
        return boards.outputs(load).keySet().stream()
                .noneMatch(output -> output.board().equals(board.id()));
    }
}
