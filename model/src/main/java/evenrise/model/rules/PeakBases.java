package evenrise.model.rules;

import evenrise.model.electrical.Draw;
import evenrise.model.electrical.InrushEnvelope;
import evenrise.model.electrical.PeakInrush;
import evenrise.model.plan.PeakBasis;
import evenrise.model.plan.RangePeak;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.Phase;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.List;
import java.util.function.Predicate;

/** Works out the peaks over the supply's voltages beside those at the nominal one, and for whom they are no bounds. */
final class PeakBases {
    /** Fields that a peak follows from. */
    private static final List<String> RESTS_ON =
            List.of("idle_a", "inrush_peak_a", "inrush_half_ms", "third_harmonic", "crest_factor");

    private final Layout layout;
    private final SupplyVoltage voltage;

    private PeakBases(Layout layout, SupplyVoltage voltage) {
        this.layout = layout;
        this.voltage = voltage;
    }

    static PeakBasis of(Layout layout) {
        return new PeakBases(layout, SupplyVoltage.of(layout.project())).basis();
    }

    /** The supply's, then each panel's, over these voltages. */
    static List<RangePeak> peaks(Layout layout, SupplyVoltage voltage) {
        return new PeakBases(layout, voltage).peaks();
    }

    private List<RangePeak> peaks() {
        List<RangePeak> peaks = new ArrayList<>();
        peaks.add(peak(
                layout.nodes().get(0),
                layout.placements().stream().filter(Placement::fits).toList()));
        for (Panel panel : layout.project().panels()) {
            peaks.add(peak(layout.nodes().get(peaks.size()), layout.in(panel)));
        }
        return peaks;
    }

    private PeakBasis basis() {
        List<Load> loads = layout.project().loads();
        return PeakBasis.builder()
                .leastVoltagePercent(percent(voltage.band().leastRatio()))
                .mostVoltagePercent(percent(voltage.band().mostRatio()))
                .voltageFrom(voltage.from())
                .voltageAssumed(voltage.isAssumed())
                .withoutInrush(ids(loads, PeakBases::lacksInrush))
                .unswitchedWithoutInrush(ids(
                        loads, load -> !load.switched() && load.inrushPeakAmps().isEmpty()))
                .withoutWaveform(ids(loads, PeakBases::lacksWaveform))
                .guessed(ids(loads, PeakBases::isGuessed))
                .peaks(peaks())
                .build();
    }

    /** To a billionth, so that what was stated in percent reads as it was stated. */
    private static double percent(double ratio) {
        return Math.rint(1e11 * ratio) / 1e9;
    }

    private static List<String> ids(Collection<Load> loads, Predicate<Load> which) {
        return loads.stream().filter(which).map(Load::id).toList();
    }

    private static boolean lacksInrush(Load load) {
        return load.switched() && load.inrushPeakAmps().isEmpty();
    }

    /** What draws nothing once it is on needs no crest. */
    private static boolean lacksWaveform(Load load) {
        return load.idleAmps() > 0 && !load.statesWaveform();
    }

    private static boolean isGuessed(Load load) {
        return !Collections.disjoint(load.guessed(), RESTS_ON);
    }

    private RangePeak peak(NodeFigures node, List<Placement> fed) {
        double tolerance = layout.project().timingToleranceSeconds();
        PeakInrush inrush = PeakInrush.of(fed.stream()
                .map(each -> new Draw(
                        InrushEnvelope.within(each.load(), tolerance, voltage.band()),
                        each.phases().stream().distinct().toList(),
                        each.onSeconds()))
                .toList());
        List<Phase> phases = layout.project().supply().system().phases();
        Phase worst = phases.stream()
                .reduce((kept, next) -> inrush.amps(next) > inrush.amps(kept) ? next : kept)
                .orElseThrow();
        boolean hasInrush = fed.stream().map(Placement::load).noneMatch(load -> lacksInrush(load) || isGuessed(load));
        boolean hasWaveform = fed.stream().map(Placement::load).noneMatch(PeakBases::lacksWaveform);
        return RangePeak.builder()
                .node(node.node())
                .nominalAmps(Referee.worstPeak(node).amps())
                .rangeAmps(inrush.amps(worst))
                .rangePhase(worst)
                .rangeAtSeconds(inrush.atSeconds(worst))
                .nominalBound(hasInrush)
                .rangeBound(hasInrush && hasWaveform)
                .build();
    }
}
