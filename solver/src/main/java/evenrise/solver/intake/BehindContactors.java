package evenrise.solver.intake;

import evenrise.model.project.Load;
import evenrise.model.project.SwitchedBy;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What a list puts behind one contactor: the first breaker's load is switched by it, the others come with that. */
final class BehindContactors {
    /** What is on and off together is of one role, zone and system. */
    private record Shared(Object role, String zone, String system, String fedFrom) {
        static Shared of(Item.Kind kind) {
            return new Shared(
                    kind.role(), kind.zone(), kind.ties().system(), kind.ties().fedFrom());
        }
    }

    private final Notices notices;

    BehindContactors(Notices notices) {
        this.notices = notices;
    }

    void tie(List<Bundler.Branch> branches, List<Load> loads) {
        Map<String, Integer> firsts = new LinkedHashMap<>();
        for (int i = 0; i < branches.size(); i++) {
            Item.Kind kind = branches.get(i).kind();
            String contactor = kind.ties().contactor();
            if (contactor.isEmpty()) {
                continue;
            }
            Integer first = firsts.putIfAbsent(contactor, i);
            if (first == null) {
                loads.set(i, loads.get(i).withSwitchedBy(SwitchedBy.CONTACTOR));
                continue;
            }
            if (!Shared.of(kind).equals(Shared.of(branches.get(first).kind()))) {
                notices.add(new Notice(
                        Notice.Kind.PROBLEM,
                        branches.get(i).pieces().get(0).place(),
                        "behind contactor '" + contactor + "' with "
                                + branches.get(first).pieces().get(0).place()
                                + ", expected the same role, zone, system and panel: one contactor switches all of it"
                                + " at once. Maybe it is another contactor."));
                continue;
            }
            loads.set(
                    i,
                    loads.get(i)
                            .with()
                            .comesWith(Optional.of(loads.get(first).id()))
                            .shutdownGroup(Optional.empty())
                            .system(Optional.empty())
                            .build());
        }
    }
}
