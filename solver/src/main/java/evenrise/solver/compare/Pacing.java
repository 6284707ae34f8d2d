package evenrise.solver.compare;

import evenrise.model.project.Board;
import evenrise.model.project.BoardTiming;
import evenrise.model.project.BoardType;
import evenrise.model.project.Load;
import evenrise.model.project.Project;
import evenrise.model.project.Role;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;

/**
 * One start delay and step for every board that has processing and other loads of a system fixed on it, such that the last
 * processing of all is on when the first other load of any comes: what processing-first asks of full boards, which cannot
 * leave outputs out to wait for each other, and what one board cannot be set to without all the others.
 */
final class Pacing {
    private static final double SAME_SECONDS = 1e-9;

    private record Mixed(Board board, BoardType type, int processing) {}

    private record Setting(double delaySeconds, double stepSeconds) {}

    private Pacing() {}

    /** The project with those boards of kinds that offer that setting alone; empty where there are none, or none fits all. */
    static Optional<Project> of(Project seated) {
        Map<String, BoardType> types = new HashMap<>();
        seated.boardTypes().forEach(type -> types.put(type.id(), type));
        Map<Optional<String>, List<Mixed>> systems = new LinkedHashMap<>();
        for (Board board : seated.boards()) {
            List<Load> on = seated.loads().stream()
                    .filter(load ->
                            load.fixed().board().filter(board.id()::equals).isPresent())
                    .toList();
            int processing = (int)
                    on.stream().filter(load -> load.role() == Role.PROCESSING).count();
            BoardType type = types.get(board.type());
            if (processing > 0 && processing < on.size() && type.timing() == BoardTiming.STEPPED) {
                systems.computeIfAbsent(board.system(), any -> new ArrayList<>())
                        .add(new Mixed(board, type, processing));
            }
        }
        Map<String, Setting> settings = new HashMap<>();
        for (List<Mixed> mixed : systems.values()) {
            Optional<Map<String, Setting>> found = together(mixed);
            if (found.isEmpty()) {
                return Optional.empty();
            }
            settings.putAll(found.get());
        }
        return settings.isEmpty() ? Optional.empty() : Optional.of(with(seated, types, settings));
    }

    /** The earliest instant by which all processing can be on while no other load is before. */
    private static Optional<Map<String, Setting>> together(List<Mixed> mixed) {
        TreeSet<Double> instants = new TreeSet<>();
        mixed.forEach(each -> settings(each.type()).forEach(setting -> {
            instants.add(seconds(setting, each.processing() - 1));
            instants.add(seconds(setting, each.processing()));
        }));
        for (double instant : instants) {
            Map<String, Setting> found = new HashMap<>();
            for (Mixed each : mixed) {
                settings(each.type()).stream()
                        .filter(setting -> seconds(setting, each.processing() - 1) <= instant + SAME_SECONDS
                                && seconds(setting, each.processing()) >= instant - SAME_SECONDS)
                        .findFirst()
                        .ifPresent(setting -> found.put(each.board().id(), setting));
            }
            if (found.size() == mixed.size()) {
                return Optional.of(found);
            }
        }
        return Optional.empty();
    }

    /** Those of short steps first. */
    private static List<Setting> settings(BoardType type) {
        List<Setting> settings = new ArrayList<>();
        for (double step : type.stepSeconds()) {
            for (double delay : type.startDelaySeconds()) {
                settings.add(new Setting(delay, step));
            }
        }
        return settings;
    }

    private static double seconds(Setting setting, int outputsBefore) {
        return setting.delaySeconds() + outputsBefore * setting.stepSeconds();
    }

    private static Project with(Project seated, Map<String, BoardType> types, Map<String, Setting> settings) {
        List<BoardType> all = new ArrayList<>(seated.boardTypes());
        List<Board> boards = new ArrayList<>();
        for (Board board : seated.boards()) {
            Setting setting = settings.get(board.id());
            if (setting == null) {
                boards.add(board);
                continue;
            }
            BoardType own = types.get(board.type())
                    .with()
                    .id(board.type() + " of " + board.id())
                    .startDelaySeconds(List.of(setting.delaySeconds()))
                    .stepSeconds(List.of(setting.stepSeconds()))
                    .build();
            all.add(own);
            boards.add(board.withType(own.id()));
        }
        return seated.with().boardTypes(all).boards(boards).build();
    }
}
