package evenrise.solver.exact;

import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.Literal;
import evenrise.model.plan.Assignment;
import evenrise.model.plan.BoardSetting;
import evenrise.model.plan.Plan;
import evenrise.model.project.Board;
import evenrise.model.project.Load;
import evenrise.model.project.Phase;
import evenrise.model.project.Project;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Predicate;

/** Crosses between plans and the literals of the exact model. */
final class ExactModelPlan {
    private final CpModel model;
    private final Project project;
    private final ExactModelPlaces places;
    private final ExactModelTimes times;
    private final ExactModelInrush inrush;
    private final Optional<ExactModelBoards> boards;

    /** What is done with one choice among literals, of which the plan takes those that match. */
    private interface Choice {
        <T> void among(Map<T, BoolVar> literals, Predicate<T> matches);
    }

    ExactModelPlan(
            CpModel model,
            Project project,
            ExactModelPlaces places,
            ExactModelTimes times,
            ExactModelInrush inrush,
            Optional<ExactModelBoards> boards) {
        this.model = model;
        this.project = project;
        this.places = places;
        this.times = times;
        this.inrush = inrush;
        this.boards = boards;
    }

    /** Leaves nothing but the plan; where a choice of its is none of the model's, nothing at all. */
    void fix(Plan plan) {
        walk(plan, new Choice() {
            @Override
            public <T> void among(Map<T, BoolVar> literals, Predicate<T> matches) {
                model.addBoolOr(literals.entrySet().stream()
                        .filter(each -> matches.test(each.getKey()))
                        .map(Map.Entry::getValue)
                        .toArray(Literal[]::new));
            }
        });
        Map<Map<ExactModelPlaces.Place, BoolVar>, Set<ExactModelPlaces.Place>> taken = taken(plan);
        taken.forEach(
                (all, own) -> all.forEach((place, literal) -> model.addEquality(literal, own.contains(place) ? 1 : 0)));
        for (Assignment each : plan.assignments()) {
            if (placeOf(each).isEmpty()) {
                model.addBoolOr(new Literal[0]);
            }
        }
    }

    void hint(Plan plan) {
        walk(plan, new Choice() {
            @Override
            public <T> void among(Map<T, BoolVar> literals, Predicate<T> matches) {
                literals.forEach((key, literal) -> model.addHint(literal, matches.test(key)));
            }
        });
        taken(plan).forEach((all, own) -> all.forEach((place, literal) -> model.addHint(literal, own.contains(place))));
        for (Assignment each : plan.assignments()) {
            if (each.onSeconds().isPresent()) {
                hintTime(each, Math.round(each.onSeconds().getAsDouble() * ExactModelUnits.PER_SECOND));
            }
        }
    }

    private void hintTime(Assignment assignment, long on) {
        Load load = load(assignment.load());
        List<Phase> phases = assignment.phases().stream().sorted().toList();
        times.instants(load).forEach((time, literal) -> model.addHint(literal, time == on));
        if (inrush.moments(load).size() > 1) {
            inrush.moments(load)
                    .forEach((set, row) ->
                            row.forEach((time, literal) -> model.addHint(literal, time == on && set.equals(phases))));
        }
    }

    private void walk(Plan plan, Choice choice) {
        for (Assignment each : plan.assignments()) {
            Load load = load(each.load());
            Optional<ExactModelPlaces.Spot> spot = placeOf(each).map(ExactModelPlaces.Place::spot);
            choice.among(places.spots(load), own -> Optional.of(own).equals(spot));
            if (load.switched()) {
                boards.ifPresent(it -> choice.among(
                        it.outputs(load),
                        output -> Optional.of(output.board()).equals(each.board())
                                && OptionalInt.of(output.number()).equals(each.output())));
            }
        }
        Map<String, BoardSetting> settings = new HashMap<>();
        plan.boards().forEach(each -> settings.put(each.id(), each));
        for (Board board : project.boards()) {
            BoardSetting setting = settings.get(board.id());
            boards.ifPresent(it -> {
                choice.among(it.delays(board), delay -> setting != null && delay == setting.delaySeconds());
                choice.among(it.steps(board), step -> setting != null && step == setting.betweenSeconds());
            });
        }
    }

    private Optional<ExactModelPlaces.Place> placeOf(Assignment assignment) {
        return places.taken(load(assignment.load())).keySet().stream()
                .filter(place -> place.spot().panel().equals(assignment.panel()) && place.slot() == assignment.slot())
                .findFirst();
    }

    private Map<Map<ExactModelPlaces.Place, BoolVar>, Set<ExactModelPlaces.Place>> taken(Plan plan) {
        Map<Map<ExactModelPlaces.Place, BoolVar>, Set<ExactModelPlaces.Place>> all = new IdentityHashMap<>();
        for (Assignment each : plan.assignments()) {
            Set<ExactModelPlaces.Place> own =
                    all.computeIfAbsent(places.taken(load(each.load())), any -> new HashSet<>());
            placeOf(each).ifPresent(own::add);
        }
        return all;
    }

    /** The plan of a solution: settings, places and outputs. */
    Plan plan(Predicate<Literal> holds) {
        ExactModelBoards wired = boards.orElseThrow();
        List<BoardSetting> settings = project.boards().stream()
                .map(board -> new BoardSetting(
                        board.id(), chosen(holds, wired.delays(board)), chosen(holds, wired.steps(board))))
                .toList();
        Map<Map<ExactModelPlaces.Place, BoolVar>, Map<ExactModelPlaces.Spot, Deque<ExactModelPlaces.Place>>> free =
                new IdentityHashMap<>();
        List<Assignment> assignments = new ArrayList<>();
        for (Load load : project.loads()) {
            ExactModelPlaces.Spot spot = chosen(holds, places.spots(load));
            ExactModelPlaces.Place place = free.computeIfAbsent(
                            places.taken(load), all -> ExactModelPlaces.bySpot(holds, all))
                    .get(spot)
                    .pop();
            Optional<ExactModelBoards.Output> output =
                    load.switched() ? Optional.of(chosen(holds, wired.outputs(load))) : Optional.empty();
            assignments.add(Assignment.builder()
                    .load(load.id())
                    .panel(spot.panel())
                    .slot(place.slot())
                    .phases(spot.phases())
                    .board(output.map(ExactModelBoards.Output::board))
                    .output(output.map(it -> OptionalInt.of(it.number())).orElse(OptionalInt.empty()))
                    .build());
        }
        return Plan.builder().boards(settings).assignments(assignments).build();
    }

    private static <T> T chosen(Predicate<Literal> holds, Map<T, BoolVar> literals) {
        return literals.entrySet().stream()
                .filter(each -> holds.test(each.getValue()))
                .map(Map.Entry::getKey)
                .findFirst()
                .orElseThrow();
    }

    private Load load(String id) {
        return project.loads().stream()
                .filter(load -> load.id().equals(id))
                .findFirst()
                .orElseThrow();
    }
}
