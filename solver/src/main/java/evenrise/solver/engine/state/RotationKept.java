package evenrise.solver.engine.state;

import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Project;
import evenrise.model.project.SlotLayout;
import evenrise.model.project.SwitchedBy;
import evenrise.model.rules.NodeLimits;
import evenrise.model.rules.Rotation;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Three-phase motors sit only where they turn the right way, as long as that leaves them a place and panels enough: a motor
 * that turns backwards is a finding of the review, no hard rule, so no rule is broken for it. Where it leaves too little,
 * the search is free and the review tells.
 */
final class RotationKept {
    private final Project project;
    private final Place[][][] placeAt;
    private final BitSet[] allowed;
    private final BitSet[] leftOut;
    private final PhaseSystem[] systems;

    private RotationKept(Project project, Place[][][] placeAt, BitSet[] allowed, PhaseSystem[] systems) {
        this.project = project;
        this.systems = systems;
        this.placeAt = placeAt;
        this.allowed = allowed;
        this.leftOut = new BitSet[allowed.length];
    }

    /**
     * By load, the indexes of places that are left out since they turn it backwards, null for what needs no such care; its
     * panels without any other place are taken out of {@code allowed}.
     */
    static BitSet[] narrow(Project project, Place[][][] placeAt, BitSet[] allowed, FeederTree tree) {
        RotationKept kept = new RotationKept(project, placeAt, allowed, tree.systems);
        kept.narrow();
        return kept.leftOut;
    }

    private void narrow() {
        List<Integer> motors = IntStream.range(0, allowed.length)
                .filter(load -> Rotation.matters(load(load)))
                .boxed()
                .toList();
        BitSet[] panels = new BitSet[allowed.length];
        motors.forEach(motor -> panels[motor] = turningRight(motor));
        // A group that must sit in one panel stays together.
        for (int motor : motors) {
            for (int other : motors) {
                if (mustShareAPanel(motor, other)) {
                    panels[motor].and(panels[other]);
                }
            }
        }
        List<Integer> able =
                motors.stream().filter(motor -> !panels[motor].isEmpty()).toList();
        if (haveRoom(able, panels)) {
            for (int motor : able) {
                leftOut[motor] = backwards(motor);
                if (!panels[motor].equals(allowed[motor])) {
                    members(motor).forEach(member -> allowed[member] = panels[motor]);
                }
            }
        }
    }

    /** Allowed panels with a place in which the motor turns as it should. */
    private BitSet turningRight(int motor) {
        BitSet panels = new BitSet();
        allowed[motor].stream()
                .filter(panel -> IntStream.range(1, placeAt[panel].length)
                        .anyMatch(slot -> mayTake(motor, panel, slot) && !reverses(motor, panel, slot)))
                .forEach(panels::set);
        return panels;
    }

    private boolean mayTake(int motor, int panel, int slot) {
        Place place = placeAt[panel][slot][3];
        return place != null
                && load(motor).fixed().slot().orElse(slot) == slot
                && (place.takesSwitched() || !needsSwitchedSlot(load(motor)));
    }

    private static boolean needsSwitchedSlot(Load load) {
        return load.switched() && load.comesWith().isEmpty() && load.switchedBy() == SwitchedBy.BREAKER;
    }

    private BitSet backwards(int motor) {
        BitSet places = new BitSet();
        for (int panel = 0; panel < placeAt.length; panel++) {
            for (int slot = 1; slot < placeAt[panel].length; slot++) {
                if (placeAt[panel][slot][3] != null && reverses(motor, panel, slot)) {
                    places.set(placeAt[panel][slot][3].index());
                }
            }
        }
        return places;
    }

    /** Whether a breaker whose first pole is in the slot turns the motor backwards. */
    private boolean reverses(int motor, int panel, int slot) {
        SlotLayout layout = new SlotLayout(project.panels().get(panel), systems[panel + 1]);
        List<Phase> phases = layout.span(slot, 3).stream().map(layout::phase).toList();
        return Rotation.isReversed(load(motor), phases);
    }

    private boolean mustShareAPanel(int one, int other) {
        return load(one).switched()
                && load(one).shutdownGroup().isPresent()
                && load(one).shutdownGroup().equals(load(other).shutdownGroup())
                && project.shutdownGroups().stream()
                        .anyMatch(group -> group.samePanel()
                                && group.id().equals(load(one).shutdownGroup().get()));
    }

    /** The motor, and whoever must sit in its panel. */
    private List<Integer> members(int motor) {
        List<Integer> members = new ArrayList<>(List.of(motor));
        IntStream.range(0, allowed.length)
                .filter(other -> other != motor && load(other).switched() && mustShareAPanel(motor, other))
                .forEach(members::add);
        return members;
    }

    /** Whether what can sit nowhere else than in the motors' panels has slots and current there. */
    private boolean haveRoom(List<Integer> motors, BitSet[] panels) {
        BitSet theirs = new BitSet();
        motors.forEach(motor -> theirs.or(panels[motor]));
        int slots = 0;
        double poleAmps = 0;
        for (int load = 0; load < allowed.length; load++) {
            BitSet where = (BitSet) (motors.contains(load) ? panels[load] : allowed[load]).clone();
            where.andNot(theirs);
            if (where.isEmpty()) {
                slots += load(load).poles();
                poleAmps += load(load).poles() * load(load).runningAmps();
            }
        }
        int free = 0;
        double allowedAmps = 0;
        List<NodeLimits> limits = NodeLimits.of(project);
        for (int panel = theirs.nextSetBit(0); panel >= 0; panel = theirs.nextSetBit(panel + 1)) {
            Panel given = project.panels().get(panel);
            free += given.slots() - given.reservedSlots().size();
            allowedAmps +=
                    systems[panel + 1].phases().size() * limits.get(panel + 1).continuousAmps();
        }
        return slots <= free && poleAmps <= allowedAmps;
    }

    private Load load(int index) {
        return project.loads().get(index);
    }
}
