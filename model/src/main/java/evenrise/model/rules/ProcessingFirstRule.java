package evenrise.model.rules;

import evenrise.model.plan.BrokenRule;
import evenrise.model.project.Role;
import evenrise.model.rules.Clocks.Precedence;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Nothing auxiliary before the last processing load is on; no amplifier before all of them are settled, too. Of systems
 * each by itself, with the processing of what it needs where they start together.
 */
final class ProcessingFirstRule implements WholePlantRule {
    @Override
    public String id() {
        return "processing-first";
    }

    @Override
    public List<BrokenRule> broken(Layout layout) {
        List<BrokenRule> broken = new ArrayList<>();
        layout.clocks().precedences().forEach(each -> check(each, broken));
        return broken;
    }

    private static void check(Precedence among, List<BrokenRule> broken) {
        List<Placement> processing = among.processing();
        processing.stream().max(Comparator.comparingDouble(Placement::on)).ifPresent(last -> {
            for (Placement each : among.of(Role.AUXILIARY)) {
                if (each.on() < last.on() - Tolerances.SECONDS) {
                    broken.add(Early.by(BrokenKind.AUXILIARY_BEFORE_PROCESSING, each, last, last.on()));
                }
            }
        });
        processing.stream()
                .max(Comparator.comparingDouble(Placement::settledSeconds))
                .ifPresent(last -> {
                    for (Placement each : among.of(Role.AMPLIFIER)) {
                        if (each.on() < last.settledSeconds() - Tolerances.SECONDS) {
                            broken.add(Early.by(
                                    BrokenKind.AMPLIFIER_BEFORE_PROCESSING, each, last, last.settledSeconds()));
                        }
                    }
                });
    }
}
