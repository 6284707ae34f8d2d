package evenrise.model.rules;

import evenrise.model.plan.Assignment;
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
    public List<String> broken(Layout layout) {
        List<String> broken = new ArrayList<>();
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
                .map(lead -> "the contactor of load " + Say.quoted(lead))
                .orElseGet(() -> Say.outputOf(placement));
    }

    private static void compare(
            Placement placement, String what, OptionalDouble said, double given, List<String> broken) {
        if (said.isEmpty() || Math.abs(said.getAsDouble() - given) > Tolerances.SECONDS) {
            broken.add("load " + Say.quoted(placement.id()) + ": the plan says " + what + " at " + Say.seconds(said)
                    + ", but " + giver(placement) + " gives " + Say.seconds(given)
                    + " (within 0.5 ms). Maybe the board's setting or the output was changed by hand:"
                    + " write " + Say.seconds(given) + ".");
        }
    }
}
