package evenrise.solver.rework;

import evenrise.model.project.WorkTimes;
import java.util.OptionalDouble;
import java.util.function.Function;

/** Kinds of work that a night costs, with the minutes that a crew is taken to need. */
public enum MoveKind {
    /** A breaker is re-terminated in its panel. */
    SAME_PANEL(20, WorkTimes::samePanelMinutes),
    /** A breaker goes to another panel: conductors are drawn or lengthened. */
    OTHER_PANEL(120, WorkTimes::otherPanelMinutes),
    /** A breaker goes in that is not there yet, with its conductors. */
    NEW_CIRCUIT(180, WorkTimes::newCircuitMinutes),
    /** A breaker of gear that is gone comes out, its conductors are capped. */
    REMOVAL(20, WorkTimes::removalMinutes),
    /** A control lead goes to another output, with both ends where it reached before. */
    LEAD(10, WorkTimes::leadMinutes),
    /** A control lead is drawn, since its breaker or its board is in another panel than before. */
    DRAWN_LEAD(60, WorkTimes::drawnLeadMinutes),
    /** A board is set otherwise, or an output that has a time of its own. */
    SETTING(5, WorkTimes::settingMinutes),
    /** A panel or a board is isolated, found dead, and brought back. */
    ISOLATION(15, WorkTimes::isolationMinutes),
    /** A system is taken off and brought up again by its commands, and seen to run. */
    SHUTDOWN(30, WorkTimes::shutdownMinutes),
    /** A load is switched off or on by hand. */
    SWITCHING(1, WorkTimes::switchingMinutes),
    /** A load that was worked on is locked out, tested, labelled and tried. */
    TEST(10, WorkTimes::testMinutes);

    /** Common practice, no source: estimates for a crew of two that knows the plant. */
    private final double usualMinutes;

    private final Function<WorkTimes, OptionalDouble> stated;

    MoveKind(double usualMinutes, Function<WorkTimes, OptionalDouble> stated) {
        this.usualMinutes = usualMinutes;
        this.stated = stated;
    }

    double usualMinutes() {
        return usualMinutes;
    }

    OptionalDouble statedMinutes(WorkTimes times) {
        return stated.apply(times);
    }
}
