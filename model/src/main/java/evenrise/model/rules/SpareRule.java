package evenrise.model.rules;

import static evenrise.model.contract.Figures.THOUSANDTHS;

import evenrise.model.contract.Phrase;
import evenrise.model.plan.BrokenRule;
import evenrise.model.project.Board;
import evenrise.model.project.BoardType;
import evenrise.model.project.Panel;
import evenrise.model.project.Spare;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What is to stay free stays free: slots, room for breakers, running current and outputs. */
final class SpareRule implements WholePlantRule {
    @Override
    public String id() {
        return "spare";
    }

    @Override
    public List<BrokenRule> broken(Layout layout) {
        List<BrokenRule> broken = new ArrayList<>();
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

    private static void slots(Panel panel, Spare spare, Layout layout, List<BrokenRule> broken) {
        FreeSlots free = FreeSlots.of(panel, layout);
        leaves(BrokenKind.FEW_SLOTS, panel, free.count(), spare.slots(), spare, broken);
        leaves(BrokenKind.FEW_SWITCHED_SLOTS, panel, free.forSwitched(), spare.switchedSlots(), spare, broken);
        leaves(BrokenKind.LITTLE_ROOM, panel, free.breakers(spare.poles()), spare.fits(), spare, broken);
    }

    private static void leaves(
            BrokenKind kind, Panel panel, int has, int wanted, Spare spare, List<BrokenRule> broken) {
        if (has < wanted) {
            broken.add(Broken.by(kind)
                    .panel(panel.id())
                    .word("poles", Phrase.counted(spare.poles(), "pole"))
                    .at("panel " + panel.id())
                    .figure(has, wanted, "")
                    .build());
        }
    }

    private static void running(NodeLimits limits, NodeFigures figures, Spare spare, List<BrokenRule> broken) {
        double allowed = limits.continuousAmps();
        double most = allowed * (1 - spare.runningPercent() / 100);
        figures.runningAmps().forEach((phase, amps) -> {
            if (amps > most + Tolerances.AMPS && amps <= allowed + Tolerances.AMPS) {
                broken.add(Broken.by(BrokenKind.LITTLE_CURRENT)
                        .node(limits)
                        .word("phase", phase)
                        .word("spare", RuleWords.percent(spare.runningPercent() / 100))
                        .word("allowed", THOUSANDTHS.amps(allowed))
                        .at(limits.place() + " phase " + phase)
                        .figure(amps, most, "A")
                        .build());
            }
        });
    }

    private static void outputs(Board board, Layout layout, List<BrokenRule> broken) {
        BoardType type = layout.index().typeOf(board);
        int used = layout.outputs(board.id()).size();
        int free = type.outputs() - used;
        if (used > 0 && free < type.spareOutputs()) {
            broken.add(Broken.by(BrokenKind.FEW_OUTPUTS)
                    .board(board.id())
                    .at("board " + board.id())
                    .figure(free, type.spareOutputs(), "")
                    .build());
        }
    }
}
