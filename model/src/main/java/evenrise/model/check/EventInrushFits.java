package evenrise.model.check;

import evenrise.model.contract.Decimals;
import evenrise.model.electrical.FullUse;
import evenrise.model.electrical.InrushEnvelope;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.PlanEvent;
import evenrise.model.project.PlantPart;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.ToDoubleFunction;

/**
 * Inrush limits that hold for events are above what these cannot avoid. Necessary: of loads that draw their inrush at once
 * the worst phase carries each load's own peak and at least the mean of all over the phases. At a return of the mains these
 * are the unswitched loads, in a deep dip all; when a board fails, all are in full use. The show runs meanwhile.
 */
final class EventInrushFits {
    private static final String INRUSH = "their inrush beside what they do in full use";

    /** Parts of a plant for which the arguments are not made. */
    private static final Set<PlantPart> BEYOND = EnumSet.of(
            PlantPart.NODES,
            PlantPart.FED_FROM,
            PlantPart.SYSTEMS,
            PlantPart.SCENES,
            PlantPart.TIMES,
            PlantPart.PASSES_ON,
            PlantPart.EMERGENCY_BY,
            PlantPart.GROUPS,
            PlantPart.OFF_TIMES,
            PlantPart.CONTACTORS);

    private EventInrushFits() {}

    static void check(Candidates candidates, Consumer<Objection> found) {
        List<PlanEvent> asked = candidates.parts.project.behaviourOrDefault().inrushLimitHoldsFor();
        if (asked.isEmpty() || !PlantPart.used(candidates.parts.project, BEYOND).isEmpty()) {
            return;
        }
        List<Load> all = List.copyOf(candidates.parts.loads.values());
        node(
                candidates,
                asked,
                "/supply",
                all,
                candidates.parts.project.supply().inrushLimitAmps(),
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
            Consumer<Objection> found) {
        if (limit.isEmpty()) {
            return;
        }
        List<Load> unswitched = loads.stream().filter(load -> !load.switched()).toList();
        boolean asksBoards = asked.contains(PlanEvent.BOARD_FAILURE)
                && !candidates.parts.project.boards().isEmpty();
        boolean asksReturn = asked.contains(PlanEvent.RETURN) || asksBoards;
        Sum sum = new Sum(candidates, pointer, limit.getAsDouble());
        Optional<Objection> first = asked.contains(PlanEvent.DIP)
                ? sum.tooMuch(
                        loads, EventInrushFits::anewAmps, "in a deep dip", INRUSH, "raise it if the feeder allows")
                : Optional.empty();
        if (first.isEmpty() && asksReturn) {
            first = sum.tooMuch(
                    unswitched,
                    EventInrushFits::anewAmps,
                    "when the mains return",
                    INRUSH,
                    "let boards switch some of them");
        }
        if (first.isEmpty() && asksBoards) {
            first = sum.tooMuch(
                    loads, FullUse::amps, "when a board fails", "in full use", "raise it if the feeder allows");
        }
        first.ifPresent(found);
    }

    /** Its inrush beside what it draws in full use. */
    private static double anewAmps(Load load) {
        return FullUse.amps(load) + InrushEnvelope.of(load, 0).excessAmps();
    }

    /** Loads that draw at once, held against one limit. */
    private record Sum(Candidates candidates, String pointer, double limitAmps) {
        Optional<Objection> tooMuch(
                List<Load> loads, ToDoubleFunction<Load> amps, String when, String how, String cure) {
            Optional<Load> worst = loads.stream().max(Comparator.comparingDouble(amps));
            double mean = loads.stream()
                            .mapToDouble(it -> amps.applyAsDouble(it) * it.poles())
                            .sum()
                    / candidates.parts.phases();
            double needed = Math.max(worst.map(amps::applyAsDouble).orElse(0.0), mean);
            if (needed <= limitAmps + Candidates.AMPS_TOLERANCE) {
                return Optional.empty();
            }
            return Optional.of(Objection.impossible(
                    pointer + "/inrush_limit_a",
                    Decimals.toThousandths(limitAmps, needed) + ", and " + when + " " + loads.size()
                            + (loads.size() == 1 ? " load draws" : " loads draw") + " at once " + how + ", "
                            + Shown.quoted(worst.orElseThrow().id()) + " the most, with at least "
                            + Decimals.toThousandths(needed, limitAmps) + " A on the worst phase",
                    "at least " + Decimals.toThousandths(Math.ceil(needed)),
                    "Maybe " + cure + ", or take the event out of behaviour.inrush_limit_holds_for."));
        }
    }
}
