package evenrise.solver.document;

import evenrise.model.project.OnEmergency;
import evenrise.model.project.ShutdownGroup;
import evenrise.model.rules.Layout;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What becomes of one load on an emergency.
 *
 * @param group its shutdown group, or why it has none
 * @param effect in a word
 */
public record EmergencyEffect(String group, String effect, PlannedCircuit circuit) {
    /** Group by group; then the switched loads without a group, which hold; then what no board switches. */
    static List<EmergencyEffect> of(Layout layout, List<PlannedCircuit> circuits) {
        Map<String, List<EmergencyEffect>> byGroup = new LinkedHashMap<>();
        Map<String, OnEmergency> effects = new LinkedHashMap<>();
        for (ShutdownGroup group : layout.project().shutdownGroups()) {
            byGroup.put(group.id(), new ArrayList<>());
            effects.put(group.id(), group.onEmergency());
        }
        List<EmergencyEffect> alone = new ArrayList<>();
        List<EmergencyEffect> unswitched = new ArrayList<>();
        for (PlannedCircuit each : circuits) {
            String group = each.group().orElse("");
            if (!each.isSwitched()) {
                unswitched.add(new EmergencyEffect("not switched", "stays on", each));
            } else if (byGroup.containsKey(group)) {
                byGroup.get(group).add(new EmergencyEffect(group, effect(effects.get(group), each), each));
            } else {
                alone.add(new EmergencyEffect("without a group", effect(OnEmergency.HOLD, each), each));
            }
        }
        List<EmergencyEffect> all = new ArrayList<>();
        byGroup.values().forEach(each -> all.addAll(assignedFirst(each)));
        all.addAll(assignedFirst(alone));
        all.addAll(unswitched);
        return all;
    }

    private static List<EmergencyEffect> assignedFirst(List<EmergencyEffect> effects) {
        return effects.stream()
                .sorted(Comparator.comparing(each -> each.circuit().isWithoutOutput()))
                .toList();
    }

    /** What has no output neither drops nor holds by any. */
    private static String effect(OnEmergency what, PlannedCircuit circuit) {
        return circuit.isWithoutOutput() ? PlannedCircuit.NO_OUTPUT : word(what);
    }

    static String word(OnEmergency what) {
        return what == OnEmergency.DROP ? "drops" : "holds";
    }
}
