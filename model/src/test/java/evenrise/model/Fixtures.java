package evenrise.model;

import evenrise.model.plan.MadeBy;

/**
 * Where tests begin: a plant in the words of the trade. Every builder starts from something small and legal, so that a
 * test names only what it is about.
 *
 * <pre>{@code
 * Project project = aProject()
 *         .panels(aPanel("P1").slots(12))
 *         .boards(aBoard("B1").in("P1"))
 *         .loads(aLoad("amp").amplifier().runningAmps(12), aLoad("dsp").processing().settleSeconds(5))
 *         .build();
 * }</pre>
 */
public final class Fixtures {
    private Fixtures() {}

    /** Three-phase, 120 V, 60 Hz, one panel and one load unless others are given. */
    /** What made a plan of which nobody asks what made it. */
    public static final MadeBy NOBODY = MadeBy.builder()
            .softwareVersion("test")
            .projectSha256("none")
            .seed(0)
            .threads(1)
            .movesAllowed(0)
            .build();

    public static ProjectBuilder aProject() {
        return new ProjectBuilder();
    }

    /** 120 V to neutral, 60 Hz, 400 A, three-phase. */
    public static SupplyBuilder aSupply() {
        return new SupplyBuilder();
    }

    /** 42 alternating slots, 225 A. */
    public static PanelBuilder aPanel(String id) {
        return new PanelBuilder(id);
    }

    public static PanelBuilder aPanel() {
        return aPanel("P1");
    }

    /** 8 outputs; start delays 0, 0.5, 1, 2 s; steps 0.25, 0.5, 1 s. */
    public static BoardTypeBuilder aBoardType(String id) {
        return new BoardTypeBuilder(id);
    }

    public static BoardTypeBuilder aBoardType() {
        return aBoardType(BoardTypeBuilder.EIGHT);
    }

    /** A board of type {@link BoardTypeBuilder#EIGHT} in panel P1 that starts with the command. */
    public static BoardBuilder aBoard(String id) {
        return new BoardBuilder(id);
    }

    public static BoardBuilder aBoard() {
        return aBoard("B1");
    }

    /** A group that drops on an emergency. */
    public static GroupBuilder aGroup(String id) {
        return new GroupBuilder(id);
    }

    /** A switched auxiliary load, one pole, 10 A, without inrush. */
    public static LoadBuilder aLoad(String id) {
        return new LoadBuilder(id);
    }

    public static LoadBuilder aLoad() {
        return aLoad("L1");
    }

    /** A plan without boards, assignments, metrics. */
    public static PlanBuilder aPlan() {
        return new PlanBuilder();
    }

    /** An unswitched load's assignment to slot 1 of P1, phase A, until told otherwise. */
    public static AssignmentBuilder anAssignment(String load) {
        return new AssignmentBuilder(load);
    }
}
