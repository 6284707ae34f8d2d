package evenrise.model.rules;

import evenrise.model.plan.Assignment;
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
    public List<String> broken(Layout layout) {
        List<String> broken = new ArrayList<>();
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

    private static void time(Placement placement, double fixed, List<String> broken) {
        if (!placement.isSequenced() || Math.abs(placement.on() - fixed) > Tolerances.SECONDS) {
            broken.add("load " + Say.quoted(placement.id()) + " is fixed to come on at " + Say.seconds(fixed)
                    + ", but has " + Say.seconds(placement.onSeconds())
                    + " (within 0.5 ms). Maybe set its output's time, or release it in the project.");
        }
    }

    private static Optional<Integer> boxed(OptionalInt number) {
        return number.isPresent() ? Optional.of(number.getAsInt()) : Optional.empty();
    }

    private static void compare(Placement placement, String what, Object fixed, Optional<?> said, List<String> broken) {
        if (said.isEmpty() || !said.get().equals(fixed)) {
            String has = said.map(each -> what + " '" + each + "'").orElse("no " + what);
            broken.add("load " + Say.quoted(placement.id()) + " is fixed at " + what + " '" + fixed
                    + "', but the plan has " + has + ". Maybe move it back, or release it in the project.");
        }
    }
}
