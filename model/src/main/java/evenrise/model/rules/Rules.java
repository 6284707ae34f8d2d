package evenrise.model.rules;

import java.util.List;

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

    private Rules() {}
}
