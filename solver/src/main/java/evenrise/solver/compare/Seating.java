package evenrise.solver.compare;

import evenrise.model.project.Board;
import evenrise.model.project.Load;
import evenrise.model.project.Project;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Boards for the loads of all groups, from the packing that showed that they fit: where boards have few outputs to spare, a
 * search that begins there has the hardest part behind it.
 */
final class Seating {
    private Seating() {}

    /**
     * The project with these boards fixed, of groups of which nothing is yet: with groups that come on early together, so
     * that no board waits for another in the middle of its outputs, then anyhow; each paced for all processing first, then
     * free. Empty where it is not known that they fit.
     */
    static List<Project> of(Variation variation, MakeUp makeUp, Project built) {
        return Stream.of(true, false)
                .flatMap(byRole -> of(variation, makeUp, built, byRole).stream())
                .flatMap(seated -> Stream.concat(Pacing.of(seated).stream(), Stream.of(seated)))
                .toList();
    }

    private static Optional<Project> of(Variation variation, MakeUp makeUp, Project built, boolean byRole) {
        Map<String, String> boards = new HashMap<>();
        List<Board> added = built.boards()
                .subList(
                        built.boards().size() - makeUp.boards().size(),
                        built.boards().size());
        for (Optional<String> system : variation.systems()) {
            BoardNeeds needs = new BoardNeeds(variation, system);
            List<Integer> own = new ArrayList<>();
            for (int i = 0; i < makeUp.boards().size(); i++) {
                if (makeUp.boards().get(i).system().equals(system)) {
                    own.add(i);
                }
            }
            GroupPacking packing =
                    needs.packing(own.stream().map(makeUp.boards()::get).toList(), byRole);
            if (packing.answer() != GroupPacking.Answer.FITS) {
                return Optional.empty();
            }
            Map<String, List<Load>> members = members(needs);
            for (GroupPacking.Seated seat : packing.seats()) {
                List<Load> waiting = members.get(seat.group().id());
                boolean isFree =
                        waiting.stream().noneMatch(load -> load.fixed().board().isPresent());
                if (!isFree || seat.board() >= own.size()) {
                    continue; // on a board that stays, or beside loads that are fixed: the search decides
                }
                for (int i = 0; i < seat.loads(); i++) {
                    boards.put(
                            waiting.remove(0).id(),
                            added.get(own.get(seat.board())).id());
                }
            }
        }
        List<Load> loads = built.loads().stream()
                .map(load -> boards.containsKey(load.id()) ? on(boards.get(load.id()), load) : load)
                .toList();
        return Optional.of(built.with().loads(loads).build());
    }

    /** Those that come on early first: a large group's boards then take turns. */
    private static Map<String, List<Load>> members(BoardNeeds needs) {
        Map<String, List<Load>> members = new LinkedHashMap<>();
        needs.loads().stream()
                .filter(load -> load.shutdownGroup().isPresent())
                .sorted(Comparator.comparing(Load::role))
                .forEach(load -> members.computeIfAbsent(load.shutdownGroup().get(), any -> new ArrayList<>())
                        .add(load));
        return members;
    }

    private static Load on(String board, Load load) {
        return load.with()
                .fixed(load.fixed().with().board(Optional.of(board)).build())
                .build();
    }
}
