package evenrise.solver.exhaustive;

import evenrise.model.plan.BoardSetting;
import evenrise.model.project.BoardType;
import evenrise.model.project.ObjectiveWeights;
import evenrise.model.project.Role;
import evenrise.solver.exhaustive.Timetable.End;
import evenrise.solver.exhaustive.Timetable.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;

/**
 * Every timetable in which all loads find outputs by the rules of order, boards and groups, phases left aside; of settings
 * that give the same loads the same times one is enough.
 */
final class Timetables {
    private final SmallProject project;
    private final SequenceTree tree;
    private final Steps steps;
    private final ObjectiveWeights weights;
    private final int[] byPrior;
    private final List<Long> settles = new ArrayList<>();
    private final int switched;
    private final int auxiliaries;
    private final BoardTimes times;
    private final Tails numbers = new Tails();
    private final BoardSetting[] settings;
    private final List<Instant> instants = new ArrayList<>();
    private double limitAmps;
    private List<Timetable> found;

    Timetables(SmallProject project, Steps steps) {
        this.project = project;
        this.steps = steps;
        this.weights = project.project.objective();
        this.tree = new SequenceTree(project, steps);
        this.times = new BoardTimes(project);
        this.byPrior = byPrior();
        this.settings = new BoardSetting[project.boards.size()];
        project.loads.stream()
                .filter(load -> load.switched() && load.load().role() == Role.PROCESSING)
                .forEach(load -> settles.add(load.settleMicros()));
        settles.sort(Comparator.reverseOrder());
        switched = (int) project.loads.stream().filter(SmallLoad::switched).count();
        auxiliaries = (int) project.loads.stream()
                .filter(load -> load.switched() && load.load().role() == Role.AUXILIARY)
                .count();
    }

    /** Boards, each after the one that it follows. */
    private int[] byPrior() {
        List<Integer> order = new ArrayList<>();
        while (order.size() < project.boards.size()) {
            for (int board = 0; board < project.boards.size(); board++) {
                int prior = project.prior(board);
                if (!order.contains(board) && (prior < 0 || order.contains(prior))) {
                    order.add(board);
                }
            }
        }
        return order.stream().mapToInt(board -> board).toArray();
    }

    /** All that cost less than {@code limitAmps} for duration and boards, by rising cost. */
    List<Timetable> below(double limitAmps) {
        this.limitAmps = limitAmps;
        this.found = new ArrayList<>();
        choose(0, new long[project.boards.size()], 0);
        found.sort(Comparator.comparingDouble(Timetable::leastAmps));
        return found;
    }

    /** The latest end that so many boards leave. */
    private long lastMicros(int used) {
        double left = limitAmps - weights.boards() * used;
        if (left < 0) {
            return -1;
        }
        double most = weights.duration() > 0 ? left / weights.duration() * Micros.PER_SECOND : Double.MAX_VALUE;
        return most < project.mostMicros ? (long) Math.floor(most) : project.mostMicros;
    }

    /** @param nextBegins when a board that follows another begins, of those that were chosen already */
    private void choose(int next, long[] nextBegins, int used) {
        steps.one();
        if (lastMicros(used) < 0) {
            return;
        }
        if (next == byPrior.length) {
            judge(used);
            return;
        }
        int board = byPrior[next];
        int prior = project.prior(board);
        long begin = prior < 0 ? 0 : nextBegins[prior];
        BoardType type = project.type(board);
        settings[board] = new BoardSetting(
                project.boards.get(board).id(),
                type.startDelaySeconds().get(0),
                type.stepSeconds().get(0));
        nextBegins[board] = begin;
        choose(next + 1, nextBegins, used);
        boolean isFollowed = project.isFollowed(board);
        for (BoardTimes.Option option : times.of(board, lastMicros(used + 1) - begin)) {
            settings[board] = option.setting();
            int outputs = option.onMicros().length;
            for (int last = isFollowed ? 1 : outputs; last <= outputs; last++) {
                int before = instants.size();
                for (int output = 1; output <= last; output++) {
                    instants.add(new Instant(
                            begin + option.onMicros()[output - 1], board, output, isFollowed && output == last));
                }
                nextBegins[board] = begin + option.onMicros()[last - 1];
                choose(next + 1, nextBegins, used + 1);
                instants.subList(before, instants.size()).clear();
            }
        }
    }

    private void judge(int used) {
        long last = lastMicros(used);
        List<Instant> all = new ArrayList<>(instants);
        if (all.removeIf(instant -> instant.micros() > last && instant.isLast())) {
            return;
        }
        all.removeIf(instant -> instant.micros() > last);
        Collections.sort(all);
        if (!canSeat(all)) {
            return;
        }
        int[] tails = numbers.of(all);
        if (tree.find(all, all.size(), tails).isEmpty()) {
            return;
        }
        int least = switched;
        while (least < all.size()
                && !(isEnd(all, least) && tree.find(all, least, tails).isPresent())) {
            least++;
        }
        List<End> ends = new ArrayList<>();
        for (int end = least; end <= all.size(); end++) {
            double amps = amps(all, end, used);
            if (isEnd(all, end) && amps < limitAmps) {
                ends.add(new End(end, amps));
            }
        }
        if (!ends.isEmpty()) {
            found.add(new Timetable(
                    List.of(settings), all.subList(0, ends.get(ends.size() - 1).instants()), ends));
        }
    }

    private double amps(List<Instant> all, int end, int used) {
        double seconds = end == 0 ? 0 : all.get(end - 1).micros() / Micros.PER_SECOND;
        return weights.duration() * seconds + weights.boards() * used;
    }

    /** Whether a plan may end with the output before {@code end}: those after it come later, and none of them has to be used. */
    private static boolean isEnd(List<Instant> all, int end) {
        return end == all.size()
                || (end == 0 || all.get(end).micros() > all.get(end - 1).micros())
                        && all.subList(end, all.size()).stream().noneMatch(Instant::isLast);
    }

    /** By counting alone: outputs for all, enough of them late enough for each role. */
    private boolean canSeat(List<Instant> all) {
        if (all.size() < switched) {
            return false;
        }
        if (switched == 0) {
            return true;
        }
        long ready = 0;
        int processing = settles.size();
        for (int i = 0; i < processing; i++) {
            ready = Math.max(ready, all.get(i).micros() + settles.get(i));
        }
        long processed = processing > 0 ? all.get(processing - 1).micros() : 0;
        if (from(all, processed) < switched - processing) {
            return false;
        }
        if (processing + auxiliaries > 0) {
            ready = Math.max(ready, all.get(processing + auxiliaries - 1).micros());
        }
        return from(all, ready) >= switched - processing - auxiliaries;
    }

    private static long from(List<Instant> all, long micros) {
        return all.stream()
                .filter(instant -> instant.micros() >= micros - 2 * Micros.FORGIVEN)
                .count();
    }
}
