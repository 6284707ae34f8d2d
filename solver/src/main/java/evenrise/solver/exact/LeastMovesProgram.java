package evenrise.solver.exact;

import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import evenrise.model.plan.Assignment;
import evenrise.model.plan.Plan;
import evenrise.model.project.Board;
import evenrise.model.project.BoardType;
import evenrise.model.project.Load;
import evenrise.model.project.OnEmergency;
import evenrise.model.project.PlantPart;
import evenrise.model.project.Project;
import evenrise.model.project.ShutdownGroup;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The fewest moves from a plan as built, as an integer program without time: loads choose slots, panels and phases under the
 * ratings and, in part, the neutrals; and boards that have outputs for them, reach their panels and keep groups and what
 * drops on an emergency together. A breaker stays in its slot or is a move; a lead stays on its output while its breaker
 * stays in the panel, or is one. Every plan that keeps the hard rules is a solution that costs its moves, so what is the
 * least here is so for them: times, inrush limits, order and runs of groups on a board only forbid more.
 */
final class LeastMovesProgram {
    private final CpModel model = new CpModel();
    private final boolean withBoards;
    private final Project project;
    private final ExactModelPlaces places;
    private final Map<String, Assignment> seats = new LinkedHashMap<>();
    private final Map<String, Map<String, BoolVar>> boards = new LinkedHashMap<>();

    /**
     * @param withBoards whether leads choose boards; without, the program is smaller by far
     * @throws Unfit where the project does not fit the program, or there is no solver on this platform
     */
    LeastMovesProgram(Project project, Plan built, boolean withBoards) {
        NativeSolver.load();
        this.withBoards = withBoards;
        this.project = project;
        built.assignments().forEach(seat -> seats.put(seat.load(), seat));
        places = new ExactModelPlaces(model, project);
        LeastMovesCurrents.add(model, project, places);
        if (withBoards) {
            chooseBoards();
        }
        LinearExprBuilder moves = LinearExpr.newBuilder();
        stayingBreakers(moves);
        stayingLeads(moves);
        model.minimize(moves.build());
    }

    CpModel model() {
        return model;
    }

    private List<Load> switched() {
        return project.loads().stream().filter(Load::switched).toList();
    }

    private void stayingBreakers(LinearExprBuilder moves) {
        Map<BoolVar, List<BoolVar>> staying = new LinkedHashMap<>();
        for (Load load : project.loads()) {
            moves.add(1);
            Assignment seat = seats.get(load.id());
            if (seat == null) {
                continue;
            }
            places.taken(load).forEach((place, taken) -> {
                BoolVar there = places.spots(load).get(place.spot());
                boolean isIts = place.spot().panel().equals(seat.panel()) && place.slot() == seat.slot();
                if (isIts && there != null) {
                    BoolVar stays = model.newBoolVar("");
                    model.addImplication(stays, there);
                    staying.computeIfAbsent(taken, any -> new ArrayList<>()).add(stays);
                    moves.addTerm(stays, -1);
                }
            });
        }
        staying.forEach((taken, all) -> model.addLessOrEqual(ExactModelUnits.sum(all), taken));
    }

    private void stayingLeads(LinearExprBuilder moves) {
        Map<String, List<BoolVar>> onOutput = new LinkedHashMap<>();
        for (Load load : switched()) {
            moves.add(1);
            Optional<Assignment> seat = Optional.ofNullable(seats.get(load.id()));
            boolean isThere = seat.flatMap(Assignment::board).isPresent()
                    && seat.get().output().isPresent();
            if (isThere
                    && seat.get().output().getAsInt()
                            <= outputs(seat.get().board().get())) {
                BoolVar stays = model.newBoolVar("");
                if (withBoards) {
                    model.addImplication(
                            stays, boards.get(load.id()).get(seat.get().board().get()));
                }
                model.addLessOrEqual(stays, places.in(load.id(), seat.get().panel()));
                onOutput.computeIfAbsent(
                                seat.get().board().get() + "\n"
                                        + seat.get().output().getAsInt(),
                                any -> new ArrayList<>())
                        .add(stays);
                moves.addTerm(stays, -1);
            }
        }
        onOutput.values().forEach(all -> model.addAtMostOne(all.toArray(BoolVar[]::new)));
    }

    private int outputs(String board) {
        return project.boards().stream()
                .filter(each -> each.id().equals(board))
                .mapToInt(each -> type(each).outputs())
                .findFirst()
                .orElse(0);
    }

    private BoardType type(Board board) {
        return project.boardTypes().stream()
                .filter(type -> type.id().equals(board.type()))
                .findFirst()
                .orElseThrow();
    }

    private void chooseBoards() {
        for (Load load : switched()) {
            Map<String, BoolVar> own = new LinkedHashMap<>();
            for (Board board : project.boards()) {
                BoolVar on = model.newBoolVar("");
                model.addLessOrEqual(
                        on, places.where(load.id(), spot -> board.reaches().contains(spot.panel())));
                own.put(board.id(), on);
            }
            if (own.isEmpty()) {
                throw new Unfit("there is no board for load " + load.id());
            }
            model.addExactlyOne(own.values().toArray(BoolVar[]::new));
            boards.put(load.id(), own);
        }
        for (Board board : project.boards()) {
            List<BoolVar> on =
                    boards.values().stream().map(own -> own.get(board.id())).toList();
            model.addLessOrEqual(
                    ExactModelUnits.sum(on), LinearExpr.constant(type(board).outputs()));
        }
        if (!PlantPart.of(project).contains(PlantPart.GROUPS)) {
            project.shutdownGroups().forEach(this::seatWhole);
        }
        if (!PlantPart.of(project).contains(PlantPart.EMERGENCY_BY)) {
            project.boards().forEach(this::dropTogether);
        }
    }

    /** A group that fits the largest board is on one board. */
    private void seatWhole(ShutdownGroup group) {
        List<Load> members = ExactModelOrder.members(project, group).stream()
                .filter(Load::switched)
                .toList();
        int largest = project.boards().stream()
                .mapToInt(board -> type(board).outputs())
                .max()
                .orElse(0);
        if (members.size() <= largest) {
            members.stream()
                    .skip(1)
                    .forEach(member -> project.boards()
                            .forEach(board -> model.addEquality(
                                    boards.get(members.get(0).id()).get(board.id()),
                                    boards.get(member.id()).get(board.id()))));
        }
    }

    /** What drops on an emergency shares no board with what holds. */
    private void dropTogether(Board board) {
        BoolVar drops = model.newBoolVar("");
        for (Load load : switched()) {
            boolean falls = load.shutdownGroup()
                    .flatMap(id -> project.shutdownGroups().stream()
                            .filter(group -> group.id().equals(id))
                            .findFirst())
                    .filter(group -> group.onEmergency() == OnEmergency.DROP)
                    .isPresent();
            model.addImplication(boards.get(load.id()).get(board.id()), falls ? drops : drops.not());
        }
    }
}
