package evenrise.solver.report;

import evenrise.model.project.Phase;
import evenrise.model.project.SwitchedSystem;
import evenrise.model.rules.Distribution;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeStart;
import evenrise.model.rules.PhasePeak;
import evenrise.model.rules.Placement;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * One system: what its command switches, for how long, and what that draws.
 *
 * @param needs systems that are on before it
 * @param lastOnSeconds its last switch-on; from its own command, where it has one
 * @param atSupply empty where one command starts all systems
 */
public record SystemUse(
        String system, List<String> needs, int loads, double lastOnSeconds, Optional<SystemPeak> atSupply) {

    /**
     * Crest at nominal voltage on the worst phase of the supply.
     *
     * @param startAmps of the system alone
     * @param inUseAmps that it draws in use
     * @param besideAmps what is always on, with the other systems at their worst
     */
    public record SystemPeak(Phase phase, double startAmps, double inUseAmps, double besideAmps) {
        private static SystemPeak of(NodeStart start) {
            PhasePeak worst = start.worst();
            double rest = start.restAmps().get(worst.phase());
            return new SystemPeak(
                    worst.phase(), worst.amps() - rest, start.usedAmps().get(worst.phase()) - rest, rest);
        }
    }

    /** One a system, in the project's order. */
    public static List<SystemUse> of(Layout layout) {
        List<NodeStart> starts = layout.project().hasClocks() ? layout.starts(Distribution.SUPPLY) : List.of();
        List<SystemUse> uses = new ArrayList<>();
        for (int i = 0; i < layout.project().systems().size(); i++) {
            Optional<NodeStart> start = starts.isEmpty() ? Optional.empty() : Optional.of(starts.get(i));
            uses.add(of(layout, layout.project().systems().get(i), start));
        }
        return uses;
    }

    private static SystemUse of(Layout layout, SwitchedSystem system, Optional<NodeStart> start) {
        List<Placement> own = layout.placements().stream()
                .filter(each -> each.isSequenced() && each.load().system().equals(Optional.of(system.id())))
                .toList();
        return new SystemUse(
                system.id(),
                system.needs(),
                own.size(),
                own.stream()
                        .mapToDouble(each -> each.onSeconds().orElseThrow())
                        .max()
                        .orElse(0),
                start.map(SystemPeak::of));
    }
}
