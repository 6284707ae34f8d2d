package evenrise.solver.exact;

import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import evenrise.model.project.Board;
import evenrise.model.project.BoardType;
import evenrise.model.project.EmergencyBy;
import evenrise.model.project.Load;
import evenrise.model.project.ObjectiveWeights;
import evenrise.model.project.OffTiming;
import evenrise.model.project.Project;
import evenrise.model.project.SwitchedSystem;
import evenrise.model.rules.ProjectIndex;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Which board switches which load of a plant, without outputs and times: each load that needs an output has one board, which
 * reaches its panel, has an output for it, serves its system and, unless it drops outputs one by one, does not mix what drops
 * on an emergency with what holds; a group that has to sit whole does.
 */
final class DistributionBoards {
    private final CpModel model;
    private final Project project;
    private final ProjectIndex index;
    private final List<Load> leads;
    private final Map<String, Map<Board, BoolVar>> on = new LinkedHashMap<>();
    private final Map<Board, BoolVar> used = new LinkedHashMap<>();

    /**
     * @param loads all of the project's, with the group and system of those that they come with
     * @throws Unfit where no board may switch a load
     */
    DistributionBoards(CpModel model, ProjectIndex index, List<Load> loads) {
        this.model = model;
        this.project = index.project();
        this.index = index;
        leads = loads.stream()
                .filter(load -> load.switched() && load.comesWith().isEmpty())
                .toList();
        project.boards().forEach(board -> used.put(board, model.newBoolVar("")));
        Set<String> offLate = new HashSet<>();
        loads.stream()
                .filter(load -> load.switched()
                        && load.offAfterSeconds() > 0
                        && load.comesWith().isEmpty())
                .forEach(load -> offLate.add(load.id()));
        for (Load load : leads) {
            choose(load, offLate.contains(load.id()));
        }
        project.boards().forEach(this::keep);
        groups();
    }

    private void choose(Load load, boolean offLate) {
        Map<Board, BoolVar> own = new LinkedHashMap<>();
        for (Board board : project.boards()) {
            boolean isOfSystem = board.system().isEmpty()
                    || project.systems().isEmpty()
                    || load.system().isEmpty()
                    || board.system().equals(load.system());
            boolean isFixed = load.fixed().board().map(board.id()::equals).orElse(true);
            boolean mayWait = !offLate || index.typeOf(board).off() == OffTiming.EACH;
            if (isOfSystem && isFixed && mayWait) {
                BoolVar here = model.newBoolVar("");
                model.addImplication(here, used.get(board));
                own.put(board, here);
            }
        }
        if (own.isEmpty()) {
            throw new Unfit("no board may switch load '" + load.id() + "'");
        }
        model.addExactlyOne(own.values().toArray(BoolVar[]::new));
        on.put(load.id(), own);
    }

    /** Where a load sits in a panel, its board reaches that. */
    void reach(Load load, String panel, LinearExpr sitsThere) {
        Map<Board, BoolVar> own = on.get(load.id());
        if (own != null) {
            List<BoolVar> reaching = own.entrySet().stream()
                    .filter(each -> each.getKey().reaches().contains(panel))
                    .map(Map.Entry::getValue)
                    .toList();
            model.addLessOrEqual(sitsThere, ExactModelUnits.sum(reaching));
        }
    }

    /** Outputs, one system, and what drops apart from what holds. */
    private void keep(Board board) {
        BoardType type = index.typeOf(board);
        LinearExprBuilder taken = LinearExpr.newBuilder();
        Map<String, BoolVar> systems = new HashMap<>();
        project.systems().stream().map(SwitchedSystem::id).forEach(system -> systems.put(system, model.newBoolVar("")));
        if (!systems.isEmpty()) {
            model.addAtMostOne(systems.values().toArray(BoolVar[]::new));
        }
        BoolVar drops = model.newBoolVar("");
        for (Load load : leads) {
            BoolVar here = on.get(load.id()).get(board);
            if (here == null) {
                continue;
            }
            taken.add(here);
            load.system()
                    .filter(systems::containsKey)
                    .ifPresent(system -> model.addImplication(here, systems.get(system)));
            if (type.emergencyBy() == EmergencyBy.BOARD) {
                model.addImplication(here, index.drops(load) ? drops : drops.not());
            }
        }
        LinearExprBuilder room = LinearExpr.newBuilder();
        room.addTerm(used.get(board), type.outputs() - type.spareOutputs());
        model.addLessOrEqual(taken.build(), room.build());
    }

    /** A group that fits the largest board that seats groups whole: where one of it is on such a board, all are. */
    private void groups() {
        Map<String, List<Load>> groups = new LinkedHashMap<>();
        leads.forEach(load -> load.shutdownGroup()
                .ifPresent(group ->
                        groups.computeIfAbsent(group, any -> new ArrayList<>()).add(load)));
        groups.values().stream()
                .filter(members -> members.size() > 1 && members.size() <= index.largestBoardOutputs())
                .forEach(this::stayTogether);
    }

    private void stayTogether(List<Load> members) {
        for (Board board : project.boards()) {
            if (index.seatsGroupsWhole(board)) {
                for (int i = 1; i < members.size(); i++) {
                    model.addEquality(on(members.get(0), board), on(members.get(i), board));
                }
            }
        }
    }

    private LinearExpr on(Load load, Board board) {
        BoolVar here = on.get(load.id()).get(board);
        return here == null ? LinearExpr.constant(0) : LinearExpr.term(here, 1);
    }

    /**
     * Boards in use, and boards that each rack's loads are on beyond the first, by their weights.
     *
     * @param fewest boards that every plan uses at least
     * @param unit what one ampere-equivalent of weight 0.001 is of the sum
     */
    void cost(LinearExprBuilder sum, ObjectiveWeights weights, int fewest, long unit) {
        model.addGreaterOrEqual(ExactModelUnits.sum(List.copyOf(used.values())), fewest);
        long board = ExactModelUnits.weight(weights.boards()) * unit;
        used.values().forEach(each -> sum.addTerm(each, board));
        long rack = ExactModelUnits.weight(weights.rackBoards()) * unit;
        if (rack > 0) {
            Map<String, List<Load>> racks = new LinkedHashMap<>();
            leads.forEach(load -> load.rack()
                    .ifPresent(id ->
                            racks.computeIfAbsent(id, any -> new ArrayList<>()).add(load)));
            racks.values().forEach(members -> {
                spread(members, sum, rack);
                sum.add(-rack);
            });
        }
    }

    private void spread(List<Load> members, LinearExprBuilder sum, long rack) {
        for (Board board : project.boards()) {
            List<BoolVar> here = members.stream()
                    .map(load -> on.get(load.id()).get(board))
                    .filter(each -> each != null)
                    .toList();
            if (!here.isEmpty()) {
                BoolVar touches = model.newBoolVar("");
                here.forEach(each -> model.addImplication(each, touches));
                sum.addTerm(touches, rack);
            }
        }
    }
}
