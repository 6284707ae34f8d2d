package evenrise.model.check;

import evenrise.model.electrical.FullUse;
import evenrise.model.electrical.InrushEnvelope;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.PlanEvent;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Consumer;

/**
 * Inrush limits that hold for events are above what these cannot avoid. Necessary: of loads that draw their inrush at once
 * the worst phase carries each load's own peak and at least the mean of all over the phases. At a return of the mains these
 * are the unswitched loads, in a deep dip all.
 */
final class EventInrushFits {
    private EventInrushFits() {}

    static void check(Candidates candidates, Consumer<Finding> found) {
        List<PlanEvent> asked = candidates.plant.project.behaviourOrDefault().inrushLimitHoldsFor();
        if (asked.isEmpty()) {
            return;
        }
        List<Load> all = List.copyOf(candidates.plant.loads.values());
        node(
                candidates,
                asked,
                "/supply",
                all,
                candidates.plant.project.supply().inrushLimitAmps(),
                found);
        for (int p = 0; p < candidates.panels.size(); p++) {
            Panel panel = candidates.panels.get(p);
            node(candidates, asked, "/panels/" + p, candidates.bound(p), panel.inrushLimitAmps(), found);
        }
    }

    private static void node(
            Candidates candidates,
            List<PlanEvent> asked,
            String pointer,
            List<Load> loads,
            OptionalDouble limit,
            Consumer<Finding> found) {
        if (limit.isEmpty()) {
            return;
        }
        List<Load> unswitched = loads.stream().filter(load -> !load.switched()).toList();
        boolean asksReturn = asked.contains(PlanEvent.RETURN)
                || asked.contains(PlanEvent.BOARD_FAILURE)
                        && !candidates.plant.project.boards().isEmpty();
        if (asked.contains(PlanEvent.DIP) && tooMuch(candidates, loads, limit.getAsDouble())) {
            found.accept(impossible(
                    candidates, pointer, loads, limit.getAsDouble(), "in a deep dip", "raise it if the feeder allows"));
        } else if (asksReturn && tooMuch(candidates, unswitched, limit.getAsDouble())) {
            found.accept(impossible(
                    candidates,
                    pointer,
                    unswitched,
                    limit.getAsDouble(),
                    "when the mains return",
                    "let boards switch some of them"));
        }
    }

    private static boolean tooMuch(Candidates candidates, List<Load> loads, double limit) {
        return needed(candidates, loads) > limit + Candidates.AMPS_TOLERANCE;
    }

    private static double needed(Candidates candidates, List<Load> loads) {
        double largest =
                loads.stream().mapToDouble(EventInrushFits::peakAmps).max().orElse(0);
        double mean = loads.stream()
                        .mapToDouble(load -> peakAmps(load) * load.poles())
                        .sum()
                / candidates.plant.phases();
        return Math.max(largest, mean);
    }

    /** Its inrush beside what it draws in full use. */
    private static double peakAmps(Load load) {
        return FullUse.amps(load) + InrushEnvelope.of(load, 0).excessAmps();
    }

    private static Finding impossible(
            Candidates candidates, String pointer, List<Load> loads, double limit, String when, String cure) {
        double needed = needed(candidates, loads);
        String worst = loads.stream()
                .max(Comparator.comparingDouble(EventInrushFits::peakAmps))
                .map(Load::id)
                .orElseThrow();
        return Finding.impossible(
                pointer + "/inrush_limit_a",
                Shown.number(limit, needed) + ", and " + when + " " + loads.size()
                        + (loads.size() == 1 ? " load draws its" : " loads draw their") + " inrush at once, "
                        + Shown.quoted(worst) + " the most, with at least " + Shown.number(needed, limit)
                        + " A on the worst phase",
                "at least " + Shown.number(Math.ceil(needed)),
                "Maybe " + cure + ", or take the event out of behaviour.inrush_limit_holds_for.");
    }
}
