package evenrise.model.rules;

import static evenrise.model.contract.Figures.THOUSANDTHS;

import evenrise.model.plan.Assignment;
import evenrise.model.plan.BrokenRule;
import evenrise.model.project.FixedPlace;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/** A load keeps every part of its place that is decided already. */
final class FixedRule implements Rule {
    @Override
    public String id() {
        return "fixed";
    }

    @Override
    public List<BrokenRule> broken(Layout layout) {
        List<BrokenRule> broken = new ArrayList<>();
        for (Placement placement : layout.placements()) {
            if (placement.fits()) {
                FixedPlace fixed = placement.load().fixed();
                Assignment said = placement.assignment();
                fixed.panel().ifPresent(panel -> compare(placement, "panel", panel, Optional.of(said.panel()), broken));
                fixed.slot().ifPresent(slot -> compare(placement, "slot", slot, Optional.of(said.slot()), broken));
                fixed.board().ifPresent(board -> compare(placement, "board", board, said.board(), broken));
                fixed.onSeconds().ifPresent(on -> time(placement, on, broken));
                fixed.output().ifPresent(output -> compare(placement, "output", output, boxed(said.output()), broken));
            }
        }
        return broken;
    }

    private static void time(Placement placement, double fixed, List<BrokenRule> broken) {
        if (!placement.isSequenced() || Math.abs(placement.on() - fixed) > Tolerances.SECONDS) {
            broken.add(Broken.by(BrokenKind.NOT_WHEN_FIXED)
                    .load(placement.id())
                    .word("fixed", THOUSANDTHS.seconds(fixed))
                    .word("has", THOUSANDTHS.seconds(placement.onSeconds()))
                    .at(RuleWords.leadOf(placement))
                    .times(placement.onSeconds(), fixed)
                    .build());
        }
    }

    private static Optional<Integer> boxed(OptionalInt number) {
        return number.isPresent() ? Optional.of(number.getAsInt()) : Optional.empty();
    }

    private static void compare(
            Placement placement, String what, Object fixed, Optional<?> said, List<BrokenRule> broken) {
        if (said.isEmpty() || !said.get().equals(fixed)) {
            String has = said.map(each -> what + " '" + each + "'").orElse("no " + what);
            broken.add(Broken.by(BrokenKind.NOT_WHERE_FIXED)
                    .load(placement.id())
                    .word("what", what)
                    .word("fixed", fixed)
                    .word("has", has)
                    .at(RuleWords.seatOf(placement))
                    .build());
        }
    }
}
