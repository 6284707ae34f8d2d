package evenrise.solver.rework;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aGroup;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.aSupply;
import static evenrise.model.Fixtures.anAssignment;

import evenrise.model.AssignmentBuilder;
import evenrise.model.BoardBuilder;
import evenrise.model.LoadBuilder;
import evenrise.model.PanelBuilder;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.solver.report.WorkSheets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/**
 * A small plant in which everything changes that can: a breaker in its panel, one to another panel, one that is gone and
 * left as a spare, one that is gone for good since its slot is wanted, a new one, and a lead.
 */
public final class AnOrderedWork {
    private final String mover;
    private final boolean isIsolated;

    /**
     * Panels stay live by their makers' leave, so that each change is a stage of its own.
     *
     * @param mover id of the load that goes to another slot of its panel
     */
    public AnOrderedWork(String mover) {
        this(mover, false);
    }

    private AnOrderedWork(String mover, boolean isIsolated) {
        this.mover = mover;
        this.isIsolated = isIsolated;
    }

    /** Where both panels have to be isolated, so that all is done in one large stage. */
    public static AnOrderedWork isolated() {
        return new AnOrderedWork("mover", true);
    }

    private PanelBuilder panel(String id, int slots) {
        PanelBuilder panel = aPanel(id).slots(slots).ratedAmps(63);
        return isIsolated ? panel : panel.with(it -> it.withdrawableUnderLoad("maker's manual, invented"));
    }

    private BoardBuilder board(String id, String panel) {
        return aBoard(id).in(panel).with(it -> it.outputVolts(24));
    }

    private static LoadBuilder amp(String id) {
        return aLoad(id).amplifier().runningAmps(3).idleAmps(1).breakerAmps(16).group("pit");
    }

    private Project project(LoadBuilder... loads) {
        return aProject()
                .supply(aSupply().ratedAmps(63))
                .panels(panel("P1", 12), panel("P2", 8))
                .boards(board("B1", "P1"), board("B2", "P2"))
                .groups(aGroup("stalls"), aGroup("pit"), aGroup("gallery"))
                .loads(loads)
                .build();
    }

    private LoadBuilder moved() {
        return amp(mover).name(mover + " amplifier").group("stalls");
    }

    private static AssignmentBuilder seat(String load, String panel, int slot, int output) {
        return anAssignment(load).at(panel, slot).on("P1".equals(panel) ? "B1" : "B2", output);
    }

    private static Plan plan(AssignmentBuilder... seats) {
        return aPlan().board("B1", 0, 1).board("B2", 2, 1).assignments(seats).build();
    }

    /** The project as it is to be. */
    public Project planned() {
        return project(
                amp("stays"),
                moved(),
                amp("far").group("gallery"),
                amp("lead"),
                amp("fresh").group("gallery"));
    }

    public BuiltPlant plant() {
        Project was = project(amp("stays"), moved(), amp("far").group("gallery"), amp("lead"), amp("old"), amp("gone"));
        Plan built = plan(
                seat("stays", "P1", 1, 2),
                seat(mover, "P1", 3, 1),
                seat("far", "P1", 7, 3),
                seat("lead", "P1", 9, 4),
                seat("old", "P1", 2, 5),
                seat("gone", "P1", 5, 6));
        return BuiltPlant.of(planned(), built, Optional.of(was)).withSpares(List.of(), true);
    }

    /** Phases follow from slots. */
    public WorkOrder order(NightLimits limits) {
        return new OrderOfWork(plant(), target(), limits).withAtLeast(1);
    }

    private Plan target() {
        return plan(
                seat("stays", "P1", 1, 2),
                seat(mover, "P1", 5, 1),
                seat("far", "P2", 1, 1),
                seat("lead", "P1", 9, 3),
                seat("fresh", "P2", 3, 2));
    }

    /** Where the plant is as it is to be. */
    public WorkSheets nothing() {
        BuiltPlant done = BuiltPlant.of(planned(), target(), Optional.empty());
        WorkOrder order = new OrderOfWork(done, target(), NightLimits.NONE).withAtLeast(1);
        return WorkSheets.of(done, order, List.of(), NightLimits.NONE);
    }

    /** Without a night, or by nights of so many minutes. */
    public WorkSheets sheets(Double... nights) {
        NightLimits limits = new NightLimits(Set.of(), OptionalInt.empty(), new ArrayList<>(List.of(nights)));
        return WorkSheets.of(plant(), order(limits), List.of("the lift hangs"), limits);
    }
}
