package evenrise.model.rules;

import evenrise.model.project.Role;
import evenrise.model.rules.Clocks.Precedence;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Nothing auxiliary before the last processing load is on; no amplifier before all of them are settled, too. Of systems
 * each by itself, with the processing of what it needs where they start together.
 */
final class ProcessingFirstRule implements Rule {
    @Override
    public String id() {
        return "processing-first";
    }

    @Override
    public List<String> broken(Layout layout) {
        List<String> broken = new ArrayList<>();
        layout.clocks().precedences().forEach(each -> check(each, broken));
        return broken;
    }

    private static void check(Precedence among, List<String> broken) {
        List<Placement> processing = among.processing();
        processing.stream().max(Comparator.comparingDouble(Placement::on)).ifPresent(last -> {
            for (Placement each : among.of(Role.AUXILIARY)) {
                if (each.on() < last.on() - Tolerances.SECONDS) {
                    broken.add(Say.early(each, last.on()) + "the last " + Say.who(last) + " comes on only at "
                            + Say.seconds(last.on(), each.on()) + Say.later(each));
                }
            }
        });
        processing.stream()
                .max(Comparator.comparingDouble(Placement::settledSeconds))
                .ifPresent(last -> {
                    for (Placement each : among.of(Role.AMPLIFIER)) {
                        if (each.on() < last.settledSeconds() - Tolerances.SECONDS) {
                            broken.add(Say.early(each, last.settledSeconds()) + "processing is settled only at "
                                    + Say.seconds(last.settledSeconds(), each.on()) + " (load " + Say.quoted(last.id())
                                    + ")"
                                    + Say.later(each));
                        }
                    }
                });
    }
}
