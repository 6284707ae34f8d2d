package evenrise.model.rules;

import evenrise.model.project.Role;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** No amplifier comes on before the last auxiliary load. */
final class AmplifiersLastRule implements Rule {
    @Override
    public String id() {
        return "amplifiers-last";
    }

    @Override
    public List<String> broken(Layout layout) {
        List<String> broken = new ArrayList<>();
        layout.sequenced(Role.AUXILIARY).stream()
                .max(Comparator.comparingDouble(Placement::on))
                .ifPresent(last -> {
                    for (Placement each : layout.sequenced(Role.AMPLIFIER)) {
                        if (each.on() < last.on() - Tolerances.SECONDS) {
                            broken.add(Say.early(each, last.on()) + "the last " + Say.who(last) + " comes on only at "
                                    + Say.seconds(last.on(), each.on()) + Say.later(each));
                        }
                    }
                });
        return broken;
    }
}
