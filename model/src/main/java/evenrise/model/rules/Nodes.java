package evenrise.model.rules;

import evenrise.model.electrical.Draw;
import evenrise.model.electrical.Imbalance;
import evenrise.model.electrical.InrushEnvelope;
import evenrise.model.electrical.Lag;
import evenrise.model.electrical.LineAmps;
import evenrise.model.electrical.NeutralCurrent;
import evenrise.model.electrical.PeakInrush;
import evenrise.model.electrical.PhaseCurrents;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import java.util.ArrayList;
import java.util.List;

/** Computes the electrical figures of the supply and of each panel from where the loads sit and when they come on. */
final class Nodes {
    private final Layout layout;
    private final PhaseSystem system;
    private final double toleranceSeconds;

    Nodes(Layout layout) {
        this.layout = layout;
        this.system = layout.project().supply().system();
        this.toleranceSeconds = layout.project().timingToleranceSeconds();
    }

    /** The supply first, then the panels in the project's order. A load that fits nowhere draws nowhere. */
    List<NodeFigures> figures() {
        List<NodeFigures> all = new ArrayList<>();
        all.add(figures(NodeFigures.SUPPLY, system.phases(), fitting()));
        for (Panel panel : layout.project().panels()) {
            all.add(figures(panel.id(), layout.index().slotsOf(panel).phases(), layout.in(panel)));
        }
        return List.copyOf(all);
    }

    /** What makes the supply's peak {@code peak}, largest first. */
    List<PeakShare> shares(PhasePeak peak) {
        return PeakShare.of(peak, fitting(), toleranceSeconds);
    }

    private List<Placement> fitting() {
        return layout.placements().stream().filter(Placement::fits).toList();
    }

    private NodeFigures figures(String node, List<Phase> had, List<Placement> fed) {
        PhaseCurrents running = new PhaseCurrents(system);
        LineAmps lines = new LineAmps(system);
        NeutralCurrent neutral = new NeutralCurrent(system);
        List<Draw> draws = new ArrayList<>();
        for (Placement each : fed) {
            Load load = each.load();
            running.add(each.phases(), load.runningAmps());
            lines.add(each.phases(), load.runningAmps(), Lag.of(load), load.harmonicRatio());
            if (load.poles() == 1) {
                neutral.add(each.phases().get(0), load.runningAmps(), Lag.of(load), load.harmonicRatio());
            }
            draws.add(new Draw(envelope(each), each.phases().stream().distinct().toList(), each.onSeconds()));
        }
        PeakInrush inrush = PeakInrush.of(draws);
        Imbalance imbalance = running.imbalance(had);
        return new NodeFigures(
                node,
                running.byPhase(),
                imbalance.percent(),
                imbalance.deviationAmps(),
                neutral.amps(),
                system.phases().stream()
                        .map(phase -> new PhasePeak(phase, inrush.amps(phase), inrush.atSeconds(phase)))
                        .toList(),
                lines.byPhase());
    }

    private InrushEnvelope envelope(Placement placement) {
        return InrushEnvelope.of(placement.load(), toleranceSeconds);
    }
}
