package evenrise.model.rules;

import evenrise.model.plan.BrokenRule;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** The hard rules, in the order in which they are reported. docs/rules.md explains each. */
public final class Rules {
    public static final List<Rule> ALL = List.of(
            new AssignedRule(),
            new BoardSettingRule(),
            new OutputRule(),
            new ReachRule(),
            new StepTimeRule(),
            new PhaseRule(),
            new SlotRule(),
            new SwitchedSlotRule(),
            new PanelAllowedRule(),
            new FixedRule(),
            new ApartRule(),
            new SamePhaseRule(),
            new ProcessingFirstRule(),
            new AmplifiersLastRule(),
            new OrderRule(),
            new EmergencyRule(),
            new GroupWholeRule(),
            new GroupRunRule(),
            new GroupPanelRule(),
            new RatingRule(),
            new NeutralRule(),
            new InrushLimitRule(),
            new EventInrushRule(),
            new DurationRule(),
            new SystemRule(),
            new WithRule(),
            new VoltageRule(),
            new OffDelayRule(),
            new SpareRule());

    private static final Map<String, Rule> BY_ID = ALL.stream().collect(Collectors.toMap(Rule::id, rule -> rule));

    private Rules() {}

    /** Whether something that was found in a layout of what is on counts while other loads are off for work. */
    public static boolean countsWhilePartsAreOff(BrokenRule found, ProjectIndex index) {
        return BY_ID.get(found.rule()).countsWhilePartsAreOff(found, index);
    }
}
