package evenrise.model.rules;

import evenrise.model.project.Role;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Nothing auxiliary before the last processing load is on; no amplifier before all of them are settled, too. */
final class ProcessingFirstRule implements Rule {
    @Override
    public String id() {
        return "processing-first";
    }

    @Override
    public List<String> broken(Layout layout) {
        List<String> broken = new ArrayList<>();
        List<Placement> processing = layout.sequenced(Role.PROCESSING);
        processing.stream().max(Comparator.comparingDouble(Placement::on)).ifPresent(last -> {
            for (Placement each : layout.sequenced(Role.AUXILIARY)) {
                if (each.on() < last.on() - Tolerances.SECONDS) {
                    broken.add(Say.early(each, last.on()) + "the last " + Say.who(last) + " comes on only at "
                            + Say.seconds(last.on(), each.on()) + Say.later(each));
                }
            }
        });
        processing.stream()
                .max(Comparator.comparingDouble(Placement::settledSeconds))
                .ifPresent(last -> {
                    for (Placement each : layout.sequenced(Role.AMPLIFIER)) {
                        if (each.on() < last.settledSeconds() - Tolerances.SECONDS) {
                            broken.add(Say.early(each, last.settledSeconds()) + "processing is settled only at "
                                    + Say.seconds(last.settledSeconds(), each.on()) + " (load " + Say.quoted(last.id())
                                    + ")"
                                    + Say.later(each));
                        }
                    }
                });
        return broken;
    }
}
