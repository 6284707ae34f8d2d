package evenrise.model.answer;

import evenrise.model.plan.Assignment;
import evenrise.model.plan.BoardSetting;
import evenrise.model.plan.Plan;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

/**
 * What is another in one plan than in an earlier one, from the two alone.
 *
 * @param loads those that have another place, output or time, or are in one plan alone; in the order of the later plan,
 *     then of the earlier
 * @param settings boards that are set otherwise, or in one plan alone
 * @param same how many loads are where they were, at the same time
 */
public record PlanDifference(List<LoadChange> loads, List<SettingChange> settings, int same) {
    /** Nominal times nearer than this, in seconds, are the same. */
    private static final double SAME_SECONDS = 0.0005;

    /** One load before and after; one of the two is there. */
    public record LoadChange(String load, Optional<Assignment> was, Optional<Assignment> now) {
        public boolean isAdded() {
            return was.isEmpty();
        }

        public boolean isRemoved() {
            return now.isEmpty();
        }

        /** Whether its breaker sits in another panel or slot. */
        public boolean movesBreaker() {
            return differs(Assignment::panel) || differs(Assignment::slot);
        }

        /** Whether another output switches it. */
        public boolean movesLead() {
            return differs(Assignment::board) || differs(Assignment::output);
        }

        /** Whether it comes on at another time. */
        public boolean isRetimed() {
            return was.isPresent() && now.isPresent() && !isSameTime(was.get(), now.get());
        }

        /** Whether the panel is where it was or where it is. */
        public boolean isIn(String panel) {
            return was.filter(each -> each.panel().equals(panel)).isPresent()
                    || now.filter(each -> each.panel().equals(panel)).isPresent();
        }

        private boolean differs(Function<Assignment, Object> part) {
            return was.isPresent() && now.isPresent() && !Objects.equals(part.apply(was.get()), part.apply(now.get()));
        }
    }

    /** One board before and after; one of the two is there. */
    public record SettingChange(String board, Optional<BoardSetting> was, Optional<BoardSetting> now) {}

    public PlanDifference {
        loads = List.copyOf(loads);
        settings = List.copyOf(settings);
    }

    /** Of what a plan says twice of a load or board, the last word counts. */
    public static PlanDifference of(Plan earlier, Plan later) {
        Map<String, Assignment> was = byId(earlier.assignments(), Assignment::load);
        Map<String, Assignment> now = byId(later.assignments(), Assignment::load);
        List<LoadChange> loads = new ArrayList<>();
        int same = 0;
        for (String load : union(now, was)) {
            LoadChange change =
                    new LoadChange(load, Optional.ofNullable(was.get(load)), Optional.ofNullable(now.get(load)));
            if (change.isAdded()
                    || change.isRemoved()
                    || change.movesBreaker()
                    || change.movesLead()
                    || change.isRetimed()) {
                loads.add(change);
            } else {
                same++;
            }
        }
        Map<String, BoardSetting> set = byId(earlier.boards(), BoardSetting::id);
        Map<String, BoardSetting> reset = byId(later.boards(), BoardSetting::id);
        List<SettingChange> settings = union(reset, set).stream()
                .map(board -> new SettingChange(
                        board, Optional.ofNullable(set.get(board)), Optional.ofNullable(reset.get(board))))
                .filter(each -> !each.was().equals(each.now()))
                .toList();
        return new PlanDifference(loads, settings, same);
    }

    /** Panels that a changed load is in, in the order of the changes, then those that one was in. */
    public List<String> panels() {
        Set<String> panels = new LinkedHashSet<>();
        loads.forEach(each -> each.now().map(Assignment::panel).ifPresent(panels::add));
        loads.forEach(each -> each.was().map(Assignment::panel).ifPresent(panels::add));
        return List.copyOf(panels);
    }

    private static boolean isSameTime(Assignment was, Assignment now) {
        return was.onSeconds().isPresent() == now.onSeconds().isPresent()
                && Math.abs(was.onSeconds().orElse(0) - now.onSeconds().orElse(0)) <= SAME_SECONDS;
    }

    private static <T> Map<String, T> byId(List<T> parts, Function<T, String> id) {
        Map<String, T> found = new LinkedHashMap<>();
        parts.forEach(part -> found.put(id.apply(part), part));
        return found;
    }

    private static <T> List<String> union(Map<String, T> first, Map<String, T> second) {
        List<String> all = new ArrayList<>(first.keySet());
        second.keySet().stream().filter(each -> !first.containsKey(each)).forEach(all::add);
        return all;
    }
}
