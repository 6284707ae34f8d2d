package evenrise.solver.report;

import evenrise.model.contract.Decimals;
import evenrise.model.plan.Assignment;
import evenrise.model.plan.Plan;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.SlotNumbering;
import evenrise.model.rules.ProjectIndex;
import evenrise.solver.rework.BuiltPlant;
import evenrise.solver.rework.SpareBreaker;
import evenrise.solver.rework.SpareBreakers;
import evenrise.solver.rework.WorkStage;
import evenrise.solver.rework.WorkStepKind;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Draws the panels of a stage: before beside after, so that every change is told where it is made. */
final class PanelPictures {
    private final ProjectIndex index;
    private final BuiltPlant plant;
    private final State before;
    private final State after;
    private final WorkStage stage;

    /** Where loads and spare breakers are at a moment. */
    private record State(Map<String, Assignment> seats, List<SpareBreaker> spares) {
        static State of(Plan plan, List<SpareBreaker> spares) {
            Map<String, Assignment> seats = new LinkedHashMap<>();
            plan.assignments().forEach(each -> seats.put(each.load(), each));
            return new State(seats, spares);
        }
    }

    /** A breaker that takes a slot: a load's, or a spare. */
    private record Taken(String words, Optional<Assignment> seat, int first, String breaker) {}

    private PanelPictures(BuiltPlant plant, Plan plan, List<SpareBreaker> spares, WorkStage stage) {
        this.plant = plant;
        this.stage = stage;
        this.index = new ProjectIndex(plant.project());
        this.before = State.of(plan, spares);
        this.after = State.of(stage.after(), SpareBreakers.after(plant, spares, stage));
    }

    /**
     * Every panel in which a breaker or its lead is another, in the project's order.
     *
     * @param before the stage
     * @param spares before the stage
     */
    static List<PanelPicture> of(BuiltPlant plant, Plan before, List<SpareBreaker> spares, WorkStage stage) {
        PanelPictures pictures = new PanelPictures(plant, before, spares, stage);
        return plant.project().panels().stream()
                .map(pictures::picture)
                .filter(PanelPicture::isOther)
                .toList();
    }

    private PanelPicture picture(Panel panel) {
        Map<Integer, Taken> was = inSlots(panel, before);
        Map<Integer, Taken> now = inSlots(panel, after);
        List<PanelPicture.Position> positions = new ArrayList<>();
        for (int slot = 1; slot <= panel.slots(); slot++) {
            positions.add(
                    position(panel, slot, Optional.ofNullable(was.get(slot)), Optional.ofNullable(now.get(slot))));
        }
        return new PanelPicture(panel.id(), panel.numbering() == SlotNumbering.ALTERNATING, positions);
    }

    private Map<Integer, Taken> inSlots(Panel panel, State state) {
        Map<Integer, Taken> taken = new HashMap<>();
        for (SpareBreaker spare : state.spares()) {
            if (spare.panel().equals(panel.id())) {
                Taken as = new Taken(words(spare), Optional.empty(), spare.slot(), breaker(spare));
                index.slotsOf(panel).span(spare.slot(), spare.poles()).forEach(slot -> taken.put(slot, as));
            }
        }
        for (Assignment seat : state.seats().values()) {
            if (seat.panel().equals(panel.id())) {
                Optional<Load> load = index.load(seat.load());
                int poles = load.map(Load::poles).orElse(1);
                String rating = load.filter(each -> !plant.unknown().contains(each.id()))
                        .map(each -> Decimals.toThousandths(each.breakerAmps())
                                + each.curve().map(curve -> " " + curve.name()).orElse(""))
                        .orElse("?");
                Taken as = new Taken(seat.load(), Optional.of(seat), seat.slot(), rating + "/" + poles);
                index.slotsOf(panel).span(seat.slot(), poles).forEach(slot -> taken.put(slot, as));
            }
        }
        return taken;
    }

    private static String breaker(SpareBreaker spare) {
        return (spare.ratedAmps().isPresent()
                        ? Decimals.toThousandths(spare.ratedAmps().getAsDouble())
                        : "?")
                + "/" + spare.poles();
    }

    private static String words(SpareBreaker spare) {
        return "spare"
                + (spare.ratedAmps().isPresent()
                        ? " " + Numbers.amps(spare.ratedAmps().getAsDouble()) + " A"
                        : "")
                + spare.curve().map(curve -> " " + curve.name()).orElse("");
    }

    private PanelPicture.Position position(Panel panel, int slot, Optional<Taken> was, Optional<Taken> now) {
        String nothing = panel.reservedSlots().contains(slot) ? "reserved" : PanelPicture.EMPTY;
        Optional<Taken> begins = now.filter(each -> each.first() == slot);
        Optional<String> load = begins.flatMap(Taken::seat).map(Assignment::load);
        String control = load.map(id -> control(after, id)).orElse("");
        return new PanelPicture.Position(
                slot,
                index.slotsOf(panel).phase(slot).name(),
                now.map(Taken::words).orElse(nothing),
                now.filter(each -> each.first() != slot)
                        .map(each -> Integer.toString(each.first()))
                        .orElse(""),
                was.map(Taken::words).orElse(nothing),
                begins.map(Taken::breaker).orElse(""),
                control,
                load.filter(before.seats()::containsKey)
                        .map(id -> control(before, id))
                        .orElse(control),
                changes(slot, was, now));
    }

    private static String control(State state, String load) {
        return Optional.ofNullable(state.seats().get(load))
                .flatMap(seat ->
                        seat.board().map(board -> board + "/" + seat.output().orElse(0)))
                .orElse("");
    }

    /** Where what is here came from, and where what was here went; nothing where both are the same. */
    private List<String> changes(int slot, Optional<Taken> was, Optional<Taken> now) {
        List<String> words = new ArrayList<>();
        if (was.map(Taken::words).equals(now.map(Taken::words))) {
            return words;
        }
        now.filter(each -> each.first() == slot).flatMap(this::cameFrom).ifPresent(words::add);
        was.flatMap(each -> wentTo(each, now)).ifPresent(words::add);
        return words;
    }

    private Optional<String> cameFrom(Taken now) {
        if (now.seat().isEmpty()) {
            return Optional.of("left as a spare");
        }
        Assignment to = now.seat().get();
        Assignment from = before.seats().get(to.load());
        if (from != null) {
            return Optional.of("from " + place(from, to.panel()));
        }
        return Optional.of(isOnSpare(to.load()) ? "on the spare breaker" : "new breaker");
    }

    private Optional<String> wentTo(Taken was, Optional<Taken> now) {
        if (was.seat().isEmpty()) {
            // Who goes on it says so itself.
            boolean isUsed = now.flatMap(Taken::seat)
                    .filter(seat -> isOnSpare(seat.load()))
                    .isPresent();
            return isUsed ? Optional.empty() : Optional.of("spare out");
        }
        Assignment from = was.seat().get();
        Assignment to = after.seats().get(from.load());
        return Optional.of(
                to == null ? from.load() + " gone: cap and tag" : from.load() + " to " + place(to, from.panel()));
    }

    private boolean isOnSpare(String load) {
        return stage.steps().stream()
                .anyMatch(step -> step.kind() == WorkStepKind.USE_SPARE
                        && step.load().filter(load::equals).isPresent());
    }

    private static String place(Assignment seat, String here) {
        return (seat.panel().equals(here) ? "" : "panel " + seat.panel() + " ") + "slot " + seat.slot();
    }
}
