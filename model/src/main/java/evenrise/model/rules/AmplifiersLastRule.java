package evenrise.model.rules;

import evenrise.model.plan.BrokenRule;
import evenrise.model.project.Role;
import evenrise.model.rules.Clocks.Precedence;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** No amplifier comes on before the last auxiliary load of its system. */
final class AmplifiersLastRule implements WholePlantRule {
    @Override
    public String id() {
        return "amplifiers-last";
    }

    @Override
    public List<BrokenRule> broken(Layout layout) {
        List<BrokenRule> broken = new ArrayList<>();
        layout.clocks().precedences().forEach(each -> check(each, broken));
        return broken;
    }

    private static void check(Precedence among, List<BrokenRule> broken) {
        among.of(Role.AUXILIARY).stream()
                .max(Comparator.comparingDouble(Placement::on))
                .ifPresent(last -> {
                    for (Placement each : among.of(Role.AMPLIFIER)) {
                        if (each.on() < last.on() - Tolerances.SECONDS) {
                            broken.add(Early.by(BrokenKind.AMPLIFIER_BEFORE_AUXILIARY, each, last, last.on()));
                        }
                    }
                });
    }
}
