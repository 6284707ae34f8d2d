package evenrise.model.rules;

import static evenrise.model.contract.Figures.THOUSANDTHS;

import evenrise.model.contract.Phrase;
import evenrise.model.plan.Assignment;
import evenrise.model.plan.BrokenRule;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/** The switch-on and switch-off times in the plan are those that the outputs give. */
final class StepTimeRule implements Rule {
    @Override
    public String id() {
        return "step-time";
    }

    @Override
    public List<BrokenRule> broken(Layout layout) {
        List<BrokenRule> broken = new ArrayList<>();
        for (Placement placement : layout.placements()) {
            if (placement.isSequenced()) {
                Assignment said = placement.assignment();
                double off = layout.clocks().offSeconds(placement.load(), placement.on());
                compare(placement, "on", said.onSeconds(), placement.on(), broken);
                compare(placement, "off", said.offSeconds(), off, broken);
            }
        }
        return broken;
    }

    private static String giver(Placement placement) {
        return placement
                .load()
                .comesWith()
                .map(lead -> "the contactor of load " + Phrase.quoted(lead))
                .orElseGet(() -> RuleWords.outputOf(placement));
    }

    private static void compare(
            Placement placement, String what, OptionalDouble said, double given, List<BrokenRule> broken) {
        if (said.isEmpty() || Math.abs(said.getAsDouble() - given) > Tolerances.SECONDS) {
            broken.add(Broken.by(BrokenKind.STALE_TIME)
                    .load(placement.id())
                    .word("what", what)
                    .word("said", THOUSANDTHS.seconds(said))
                    .word("giver", giver(placement))
                    .word("given", THOUSANDTHS.seconds(given))
                    .at(RuleWords.leadOf(placement))
                    .times(said, given)
                    .build());
        }
    }
}
