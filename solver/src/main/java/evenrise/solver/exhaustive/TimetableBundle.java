package evenrise.solver.exhaustive;

import evenrise.solver.exhaustive.Timetable.End;
import evenrise.solver.exhaustive.Timetable.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.IntStream;

/**
 * Timetables that are much alike, and one whose boards have all of their outputs at once: where that has no sequence, none
 * of them has. A bundle of one is that timetable itself.
 *
 * @param whole all outputs of any of them
 * @param parts smaller bundles; none of a bundle of one
 */
record TimetableBundle(Timetable whole, List<TimetableBundle> parts) {
    /**
     * All timetables in one, parted by the times of one board after another: boards that others follow are the last to tell
     * them apart, since few loads come on before others begin.
     *
     * @param timetables at least one
     */
    static TimetableBundle of(SmallProject project, List<Timetable> timetables) {
        List<Integer> boards = IntStream.range(0, project.boards.size())
                .boxed()
                .sorted(Comparator.comparing(project::isFollowed)
                        .thenComparing(board -> -project.type(board).outputs()))
                .toList();
        return tied(timetables, boards);
    }

    private static TimetableBundle tied(List<Timetable> tables, List<Integer> boards) {
        if (tables.size() == 1) {
            return new TimetableBundle(tables.get(0), List.of());
        }
        List<TimetableBundle> parts = new ArrayList<>();
        if (boards.isEmpty()) {
            tables.forEach(table -> parts.add(new TimetableBundle(table, List.of())));
        } else {
            Map<List<Long>, List<Timetable>> alike = new LinkedHashMap<>();
            tables.forEach(table -> alike.computeIfAbsent(table.micros(boards.get(0)), any -> new ArrayList<>())
                    .add(table));
            List<Integer> others = boards.subList(1, boards.size());
            alike.values().forEach(some -> parts.add(tied(some, others)));
        }
        return parts.size() == 1 ? parts.get(0) : new TimetableBundle(union(parts), parts);
    }

    private static Timetable union(List<TimetableBundle> parts) {
        TreeMap<Instant, Double> earliest = new TreeMap<>();
        for (TimetableBundle part : parts) {
            Timetable table = part.whole();
            for (int at = 0; at < table.instants().size(); at++) {
                Instant own = table.instants().get(at);
                earliest.merge(
                        new Instant(own.micros(), own.board(), Instant.ANY_OUTPUT, false),
                        table.amps(at + 1),
                        Math::min);
            }
        }
        List<Instant> all = List.copyOf(earliest.keySet());
        List<End> ends = new ArrayList<>();
        double later = Double.POSITIVE_INFINITY;
        for (int end = all.size(); end > 0; end--) {
            later = Math.min(later, earliest.get(all.get(end - 1)));
            ends.add(0, new End(end, later));
        }
        return new Timetable(parts.get(0).whole().settings(), all, ends);
    }
}
