package evenrise.solver.sample;

import evenrise.model.plan.Assignment;
import evenrise.model.project.Contactor;
import evenrise.model.project.FixedPlace;
import evenrise.model.project.Load;
import evenrise.model.project.SwitchedBy;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** A load being drawn, with the place that the layout gives it. */
final class LoadDraft {
    private static final int NEAREST_METRES = 9;
    private static final int METRES_APART = 14;

    final String id;
    final String name;
    final Kit kit;
    final int poles;
    final boolean switched;
    final double runningAmps;
    final String panel;
    final List<String> comesAfter = new ArrayList<>();
    final List<String> apartFrom = new ArrayList<>();
    final List<String> samePhaseAs = new ArrayList<>();
    final double peakAmps;
    private final double halfMillis;
    private final double settleSeconds;
    Optional<String> group = Optional.empty();
    List<String> panels = List.of();
    FixedPlace fixed = FixedPlace.NONE;
    Optional<String> board = Optional.empty();
    OptionalInt output = OptionalInt.empty();
    OptionalDouble onSeconds = OptionalDouble.empty();
    Optional<String> system = Optional.empty();
    SwitchedBy switchedBy = SwitchedBy.BREAKER;
    Optional<Contactor> contactor = Optional.empty();
    Optional<String> rack = Optional.empty();
    OptionalDouble lineToNeutralVolts = OptionalDouble.empty();
    double offAfterSeconds;
    boolean statesInrush;
    boolean isWired;
    int slot;
    private Optional<String> comesWith = Optional.empty();

    LoadDraft(String id, String name, Kit kit, int mostPoles, String panel, boolean switched, SeededDraws draw) {
        this.id = id;
        this.name = name;
        this.kit = kit;
        this.panel = panel;
        this.switched = switched;
        poles = Math.min(kit.poles(), mostPoles);
        runningAmps = kit.running().draw(draw, 2);
        double ratio = kit.peakRatio() * draw.between(0.85, 1.15, 3);
        peakAmps = SeededDraws.rounded(Math.max(runningAmps * ratio, Math.sqrt(2) * idleAmps() + 0.1), 1);
        halfMillis = kit.half().draw(draw, 1);
        settleSeconds = Math.round(kit.settle().draw(draw, 1));
    }

    private double idleAmps() {
        return SeededDraws.rounded(runningAmps * kit.idleRatio(), 2);
    }

    void on(String board, int output) {
        this.board = Optional.of(board);
        this.output = OptionalInt.of(output);
    }

    /** Behind the contactor of another load, whose group and system it shares and whose output switches it. */
    void behind(String leader) {
        comesWith = Optional.of(leader);
        board = Optional.empty();
        output = OptionalInt.empty();
        onSeconds = OptionalDouble.empty();
    }

    /** Invented; a little longer from load to load. */
    private double branchMetres() {
        return NEAREST_METRES + Math.floorMod(id.hashCode(), METRES_APART);
    }

    Load load() {
        return Load.builder()
                .id(id)
                .name(name)
                .role(kit.role())
                .poles(poles)
                .breakerAmps(kit.breakerAmps())
                .switched(switched)
                .runningAmps(runningAmps)
                .idleAmps(idleAmps())
                .powerFactor(kit.powerFactor())
                .thirdHarmonic(kit.thirdHarmonic())
                .inrushPeakAmps(statesInrush ? OptionalDouble.of(peakAmps) : OptionalDouble.empty())
                .inrushHalfMillis(halfMillis)
                .settleSeconds(settleSeconds)
                .shutdownGroup(comesWith.isPresent() ? Optional.empty() : group)
                .comesAfter(comesAfter)
                .panels(panels)
                .apartFrom(apartFrom)
                .samePhaseAs(samePhaseAs)
                .fixed(fixed)
                .system(comesWith.isPresent() ? Optional.empty() : system)
                .switchedBy(switchedBy)
                .comesWith(comesWith)
                .rack(rack)
                .lineToNeutralVolts(lineToNeutralVolts)
                .offAfterSeconds(offAfterSeconds)
                .contactor(contactor)
                .circuit(isWired ? Optional.of(Wiring.branch(kit.breakerAmps(), branchMetres())) : Optional.empty())
                .build();
    }

    /** Its bare place in the layout. */
    Assignment assignment() {
        return Assignment.builder()
                .load(id)
                .panel(panel)
                .slot(slot)
                .board(board)
                .output(output)
                .onSeconds(onSeconds)
                .build();
    }
}
