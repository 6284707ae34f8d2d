package evenrise.model.check;

import evenrise.model.check.ProjectParts.Lines;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import java.util.List;
import java.util.function.Consumer;

/** Slots that are named exist, and so do phases and poles. */
final class SlotNumbers {
    private SlotNumbers() {}

    static void check(ProjectParts parts, Consumer<Objection> found) {
        boolean systemKnown = parts.knows("/supply/system");
        List<Panel> panels = parts.project.panels();
        for (int i = 0; i < panels.size(); i++) {
            Panel panel = panels.get(i);
            String at = "/panels/" + i;
            within(panel, panel.reservedSlots(), at + "/reserved_slots/", found);
            panel.switchedSlots().ifPresent(slots -> within(panel, slots, at + "/switched_slots/", found));
            PhaseSystem system =
                    parts.linesOf(panel.fedFrom()).map(Lines::system).orElse(PhaseSystem.THREE_PHASE);
            for (int k = 0; k < panel.phaseRotation().size() && systemKnown; k++) {
                Phase phase = panel.phaseRotation().get(k);
                if (!system.phases().contains(phase)) {
                    String expected = "one of: " + system.phases();
                    String cure = "Maybe the supply's system is another.";
                    found.accept(Objection.error(at + "/phase_rotation/" + k, phase.name(), expected, cure));
                }
            }
        }
        List<Load> loads = parts.project.loads();
        int most = parts.project.panels().stream()
                .map(panel -> parts.linesOf(panel.fedFrom()).map(Lines::system).orElse(PhaseSystem.THREE_PHASE))
                .mapToInt(each -> each.phases().size())
                .max()
                .orElse(0);
        boolean isFlat = parts.project.nodes().isEmpty();
        for (int i = 0; i < loads.size() && systemKnown; i++) {
            if (loads.get(i).poles() > most) {
                String expected =
                        "at most " + most + ", the phases of " + (isFlat ? "the supply" : "the system with most");
                String cure = "Maybe the supply's system is another.";
                found.accept(Objection.error(
                        "/loads/" + i + "/poles", "" + loads.get(i).poles(), expected, cure));
            }
        }
    }

    private static void within(Panel panel, List<Integer> slots, String at, Consumer<Objection> found) {
        for (int k = 0; k < slots.size(); k++) {
            if (slots.get(k) > panel.slots()) {
                String expected = "at most " + panel.slots() + ", the slots of the panel";
                found.accept(Objection.error(at + k, "" + slots.get(k), expected, ""));
            }
        }
    }
}
