package evenrise.solver.rework;

import evenrise.model.plan.Assignment;
import evenrise.model.plan.BoardSetting;
import evenrise.model.plan.Plan;
import evenrise.model.rules.ProjectIndex;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * What is different between a plan as built and another one of the same project.
 *
 * @param loads in the order of the new plan
 * @param settings in the order of the new plan
 * @param times of outputs whose loads stay where they are, in the order of the new plan
 * @param removals breakers of gear that is gone, in the order of the plan as built
 */
public record Changes(
        List<LoadChange> loads, List<SettingChange> settings, List<TimeChange> times, List<Removal> removals) {
    public Changes {
        loads = List.copyOf(loads);
        removals = List.copyOf(removals);
        settings = List.copyOf(settings);
        times = List.copyOf(times);
    }

    public static Changes between(ProjectIndex index, Plan before, Plan after) {
        return between(index, before, after, Set.of());
    }

    /** @param gone loads whose breakers are taken out; what else only the plan as built has stays where it is */
    static Changes between(ProjectIndex index, Plan before, Plan after, Set<String> gone) {
        Map<String, Assignment> seats = seats(before);
        List<LoadChange> loads = new ArrayList<>();
        seats(after).forEach((load, to) -> {
            LoadChange change = new LoadChange(load, Optional.ofNullable(seats.get(load)), to);
            if (change.moves() > 0) {
                loads.add(change);
            }
        });
        Map<String, BoardSetting> set = new LinkedHashMap<>();
        before.boards().forEach(each -> set.put(each.id(), each));
        List<SettingChange> settings = after.boards().stream()
                .filter(to -> set.containsKey(to.id()) && !set.get(to.id()).equals(to))
                .map(to -> new SettingChange(set.get(to.id()), to))
                .toList();
        List<Removal> removals = seats.values().stream()
                .filter(seat -> gone.contains(seat.load()))
                .map(seat -> new Removal(seat.load(), seat))
                .toList();
        return new Changes(loads, settings, times(index, before, after, loads), removals);
    }

    private static List<TimeChange> times(ProjectIndex index, Plan before, Plan after, List<LoadChange> loads) {
        OutputTimes now = OutputTimes.of(index, before);
        OutputTimes then = OutputTimes.of(index, after);
        Set<String> moved = loads.stream().map(LoadChange::load).collect(Collectors.toSet());
        List<TimeChange> times = new ArrayList<>();
        seats(after)
                .forEach((load, seat) -> OutputTimes.key(seat)
                        .filter(key -> !moved.contains(load) && now.differs(then, key))
                        .ifPresent(key -> times.add(new TimeChange(
                                load,
                                seat.board().orElseThrow(),
                                seat.output().getAsInt(),
                                then.seconds(key).orElseThrow()))));
        return times;
    }

    /** Where the plan has each load, its last word where it has several. */
    static Map<String, Assignment> seats(Plan plan) {
        Map<String, Assignment> seats = new LinkedHashMap<>();
        plan.assignments().forEach(each -> seats.put(each.load(), each));
        return seats;
    }

    /** Breakers that are re-terminated. */
    public int breakers() {
        return (int) loads.stream().filter(LoadChange::isReTerminated).count();
    }

    /** Control leads that are re-landed. */
    public int leads() {
        return (int) loads.stream().filter(LoadChange::isReLanded).count();
    }

    /** Breakers and control leads together. */
    public int moves() {
        return breakers() + leads();
    }

    /** Boards, and outputs with times of their own, that are set otherwise where nothing else is done. */
    public int settingsInAll() {
        return settings.size() + times.size();
    }
}
