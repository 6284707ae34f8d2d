package evenrise.solver.sample;

import evenrise.model.plan.Assignment;
import evenrise.model.project.FixedPlace;
import evenrise.model.project.Load;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** A load being drawn, with the place that the layout gives it. */
final class LoadDraft {
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
    private final double peakAmps;
    private final double halfMillis;
    private final double settleSeconds;
    Optional<String> group = Optional.empty();
    List<String> panels = List.of();
    FixedPlace fixed = FixedPlace.NONE;
    Optional<String> board = Optional.empty();
    OptionalInt output = OptionalInt.empty();
    int slot;

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
                .inrushPeakAmps(switched ? OptionalDouble.of(peakAmps) : OptionalDouble.empty())
                .inrushHalfMillis(halfMillis)
                .settleSeconds(settleSeconds)
                .shutdownGroup(group)
                .comesAfter(comesAfter)
                .panels(panels)
                .apartFrom(apartFrom)
                .samePhaseAs(samePhaseAs)
                .fixed(fixed)
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
                .build();
    }
}
