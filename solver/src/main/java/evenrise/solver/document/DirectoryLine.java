package evenrise.solver.document;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * One position of a panel's circuit directory.
 *
 * @param slot the first of its breaker
 * @param slots all of its breaker
 * @param purpose what the circuit is for; of others whether a breaker is spare or the position a space
 * @param breaker rating over poles; empty where there is none
 * @param isNamed whether its purpose says more than an id
 */
public record DirectoryLine(
        String panel, String fedFrom, int slot, String slots, String purpose, String breaker, boolean isNamed) {
    private static final String NO_NAME = "give it a purpose";

    static DocumentTable<DirectoryLine> table(List<Schedule> schedules, SheetWords words) {
        return new DocumentTable<>(
                "directory",
                words.say("directory.title"),
                words.say("directory.note"),
                List.of(
                        Column.text("panel", "Panel", DirectoryLine::panel),
                        Column.text("fedFrom", "Fed from", DirectoryLine::fedFrom),
                        Column.text("slots", "Slots", DirectoryLine::slots),
                        Column.text("purpose", "Purpose or use", DirectoryLine::purpose),
                        Column.text("breaker", "Breaker", DirectoryLine::breaker),
                        Column.text("open", "Open", each -> each.isNamed() ? "" : NO_NAME)),
                List.of(Column.count("slot", "First slot", DirectoryLine::slot)),
                schedules.stream().flatMap(each -> of(each, words).stream()).toList(),
                any -> java.util.Optional.empty());
    }

    /** In the order of the slots; of a breaker of several poles once. */
    private static List<DirectoryLine> of(Schedule schedule, SheetWords words) {
        Map<Integer, Schedule.Slot> slots = new TreeMap<>();
        for (Schedule.Row row : schedule.rows()) {
            for (Schedule.Slot slot : List.of(row.left(), row.right())) {
                if (slot.number() > 0) {
                    slots.put(slot.number(), slot);
                }
            }
        }
        List<DirectoryLine> lines = new ArrayList<>();
        slots.values().stream()
                .filter(slot -> slot.pole() < 2)
                .forEach(slot -> lines.add(of(schedule, slot, slots, words)));
        return lines;
    }

    private static DirectoryLine of(
            Schedule schedule, Schedule.Slot slot, Map<Integer, Schedule.Slot> slots, SheetWords words) {
        boolean isCircuit = slot.poles() > 0 && !slot.state().equals("spare");
        String own = slot.name().isEmpty() || slot.name().equals(slot.load()) ? "" : slot.name();
        String purpose = !isCircuit
                ? words.say("slot." + slot.state())
                : (own.isEmpty() ? slot.load() : own + " (" + slot.load() + ")")
                        + (slot.marks().isEmpty() ? "" : ", " + slot.marks());
        return new DirectoryLine(
                schedule.panel(),
                schedule.fedFrom(),
                slot.number(),
                String.join(
                        ", ",
                        slots.values().stream()
                                .filter(each -> each == slot
                                        || slot.poles() > 1
                                                && each.poles() > 0
                                                && each.load().equals(slot.load()))
                                .map(each -> String.valueOf(each.number()))
                                .toList()),
                Plain.text(purpose, 160),
                slot.breaker(),
                !isCircuit || !own.isEmpty());
    }
}
