package evenrise.model.rules;

import evenrise.model.project.Board;
import evenrise.model.project.BoardType;
import evenrise.model.project.Panel;
import evenrise.model.project.Spare;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What is to stay free stays free: slots, room for breakers, running current and outputs. */
final class SpareRule implements Rule {
    @Override
    public String id() {
        return "spare";
    }

    @Override
    public List<String> broken(Layout layout) {
        List<String> broken = new ArrayList<>();
        List<NodeLimits> limits = NodeLimits.of(layout.project());
        for (Panel panel : layout.project().panels()) {
            Optional<Spare> spare = layout.project().spareIn(panel);
            if (spare.isPresent()) {
                int index = layout.distribution().of(panel).index();
                slots(panel, spare.get(), layout, broken);
                running(limits.get(index), layout.nodes().get(index), spare.get(), broken);
            }
        }
        layout.project().boards().forEach(board -> outputs(board, layout, broken));
        return broken;
    }

    private static void slots(Panel panel, Spare spare, Layout layout, List<String> broken) {
        FreeSlots free = FreeSlots.of(panel, layout);
        String name = "panel " + Say.quoted(panel.id());
        leaves(name, "free slots", free.count(), spare.slots(), broken);
        leaves(name, "free slots for switched breakers", free.forSwitched(), spare.switchedSlots(), broken);
        String breakers = "further breakers of " + spare.poles() + (spare.poles() == 1 ? " pole" : " poles");
        leaves(name, "room for " + breakers, free.breakers(spare.poles()), spare.fits(), broken);
    }

    private static void leaves(String name, String what, int has, int wanted, List<String> broken) {
        if (has < wanted) {
            broken.add(name + " leaves " + what + ": " + has + ", wanted are " + wanted
                    + ". Maybe move a load to another panel.");
        }
    }

    private static void running(NodeLimits limits, NodeFigures figures, Spare spare, List<String> broken) {
        double allowed = limits.continuousAmps();
        double most = allowed * (1 - spare.runningPercent() / 100);
        figures.runningAmps().forEach((phase, amps) -> {
            if (amps > most + Tolerances.AMPS && amps <= allowed + Tolerances.AMPS) {
                broken.add(limits.label() + " phase " + phase + " runs at " + Say.amps(amps, most)
                        + ", which leaves less than " + Say.percent(spare.runningPercent() / 100) + " of "
                        + Say.amps(allowed) + " (" + Say.amps(most, amps)
                        + "). Maybe move a load to another phase or panel.");
            }
        });
    }

    private static void outputs(Board board, Layout layout, List<String> broken) {
        BoardType type = layout.index().typeOf(board);
        int used = layout.outputs(board.id()).size();
        if (used > 0) {
            leaves(
                    "board " + Say.quoted(board.id()),
                    "outputs free",
                    type.outputs() - used,
                    type.spareOutputs(),
                    broken);
        }
    }
}
