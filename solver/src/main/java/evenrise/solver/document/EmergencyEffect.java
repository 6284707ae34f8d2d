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
    private static final String NOT_SWITCHED = "not switched";
    private static final String STAYS_ON = "stays on";
    private static final String WITHOUT_GROUP = "without a group";

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
                unswitched.add(new EmergencyEffect(NOT_SWITCHED, STAYS_ON, each));
            } else if (byGroup.containsKey(group)) {
                byGroup.get(group).add(new EmergencyEffect(group, effect(effects.get(group), each), each));
            } else {
                alone.add(new EmergencyEffect(WITHOUT_GROUP, effect(OnEmergency.HOLD, each), each));
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

    /** Its group, or why it has none, in a language. */
    public String groupIn(SheetWords words) {
        return switch (group) {
            case NOT_SWITCHED -> words.say("emergency.not-switched");
            case WITHOUT_GROUP -> words.say("emergency.without-group");
            default -> group;
        };
    }

    /** What becomes of it, in a language. */
    public String effectIn(SheetWords words) {
        return switch (effect) {
            case STAYS_ON -> words.say("emergency.stays-on");
            case PlannedCircuit.NO_OUTPUT -> words.say("label.no-output");
            default -> words.say(effect.equals(word(OnEmergency.DROP)) ? "test.drops" : "test.holds");
        };
    }
}
