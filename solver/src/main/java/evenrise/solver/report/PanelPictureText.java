package evenrise.solver.report;

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
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A panel as a stage leaves it, slot beside slot as on the wall, with a mark where the stage changes something. */
final class PanelPictureText {
    private static final String CHANGED = ">";
    private static final String EMPTY = "-";

    private final ProjectIndex index;
    private final Panel panel;
    private final Map<Integer, String> before;
    private final Map<Integer, String> after;
    private final Map<String, Assignment> seats = new HashMap<>();

    private PanelPictureText(
            ProjectIndex index,
            Panel panel,
            Plan before,
            Plan after,
            List<SpareBreaker> sparesBefore,
            List<SpareBreaker> sparesAfter) {
        this.index = index;
        this.panel = panel;
        this.before = inSlots(before, sparesBefore);
        this.after = inSlots(after, sparesAfter);
        after.assignments().forEach(seat -> seats.put(seat.load(), seat));
    }

    /**
     * Every panel that a breaker of the stage is in, or was.
     *
     * @param spares before the stage
     */
    static List<String> lines(
            BuiltPlant plant, ProjectIndex index, Plan before, List<SpareBreaker> spares, WorkStage stage) {
        List<String> lines = new ArrayList<>();
        for (Panel each : index.project().panels()) {
            PanelPictureText picture = new PanelPictureText(
                    index, each, before, stage.after(), spares, SpareBreakers.after(plant, spares, stage));
            if (!picture.before.equals(picture.after)) {
                lines.addAll(picture.lines());
            }
        }
        return lines;
    }

    private Map<Integer, String> inSlots(Plan plan, List<SpareBreaker> spares) {
        Map<Integer, String> taken = new HashMap<>();
        for (SpareBreaker spare : spares) {
            if (spare.panel().equals(panel.id())) {
                index.slotsOf(panel).span(spare.slot(), spare.poles()).forEach(slot -> taken.put(slot, words(spare)));
            }
        }
        for (Assignment seat : plan.assignments()) {
            if (seat.panel().equals(panel.id())) {
                int poles = index.load(seat.load()).map(Load::poles).orElse(1);
                index.slotsOf(panel).span(seat.slot(), poles).forEach(slot -> taken.put(slot, seat.load()));
            }
        }
        return taken;
    }

    private static String words(SpareBreaker spare) {
        return "spare"
                + (spare.ratedAmps().isPresent()
                        ? " " + Numbers.amps(spare.ratedAmps().getAsDouble()) + " A"
                        : "")
                + spare.curve().map(curve -> " " + curve.name()).orElse("");
    }

    private List<String> lines() {
        Section section = new Section(
                Paint.NONE, "Panel " + panel.id() + " as this stage leaves it; " + CHANGED + " marks what it changes");
        boolean isAlternating = panel.numbering() == SlotNumbering.ALTERNATING;
        Table table = heads(new Table());
        if (isAlternating) {
            heads(table);
        }
        for (int slot = 1; slot <= panel.slots(); slot += isAlternating ? 2 : 1) {
            List<String> cells = new ArrayList<>(cells(slot));
            if (isAlternating) {
                cells.addAll(slot < panel.slots() ? cells(slot + 1) : List.of("", "", "", ""));
            }
            table.row(cells.toArray(String[]::new));
        }
        return section.table(table).lines();
    }

    private static Table heads(Table table) {
        return table.words("").number("slot").words("line").text("breaker");
    }

    private List<String> cells(int slot) {
        return List.of(
                isChanged(slot) ? CHANGED : "",
                String.valueOf(slot),
                index.slotsOf(panel).phase(slot).name(),
                words(slot));
    }

    private boolean isChanged(int slot) {
        return !Optional.ofNullable(before.get(slot)).equals(Optional.ofNullable(after.get(slot)));
    }

    private String words(int slot) {
        String now = after.getOrDefault(slot, panel.reservedSlots().contains(slot) ? "reserved" : EMPTY);
        String pole = Optional.ofNullable(seats.get(after.getOrDefault(slot, "")))
                .filter(seat -> seat.slot() != slot)
                .map(seat -> " (with " + seat.slot() + ")")
                .orElse("");
        return now + pole + (isChanged(slot) ? ", was " + before.getOrDefault(slot, EMPTY) : "");
    }
}
