package evenrise.solver.rework;

import evenrise.model.plan.Assignment;
import evenrise.model.plan.BoardSetting;
import evenrise.model.plan.Plan;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What is different between a plan as built and another one of the same project.
 *
 * @param loads in the order of the new plan
 * @param settings in the order of the new plan
 */
public record Changes(List<LoadChange> loads, List<SettingChange> settings) {
    public Changes {
        loads = List.copyOf(loads);
        settings = List.copyOf(settings);
    }

    public static Changes between(Plan before, Plan after) {
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
        return new Changes(loads, settings);
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
}
