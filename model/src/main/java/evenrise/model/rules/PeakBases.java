package evenrise.model.rules;

import evenrise.model.contract.Decimals;
import evenrise.model.electrical.InrushEnvelope;
import evenrise.model.electrical.PeakInrush;
import evenrise.model.plan.PeakBasis;
import evenrise.model.plan.RangePeak;
import evenrise.model.project.Load;
import evenrise.model.rules.Distribution.Point;
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
        return layout.distribution().points().stream().map(this::peak).toList();
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
        return Decimals.whole(1e11 * ratio) / 1e9;
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

    private RangePeak peak(Point point) {
        NodeFigures node = layout.nodes().get(point.index());
        List<Load> fed = layout.nodeLoads().seen(point.index()).stream()
                .map(each -> each.placement().load())
                .toList();
        List<PhasePeak> peaks = phasePeaks(point);
        PhasePeak worst = peaks.stream()
                .reduce((kept, next) -> next.amps() > kept.amps() ? next : kept)
                .orElseThrow();
        boolean hasInrush = fed.stream().noneMatch(load -> lacksInrush(load) || isGuessed(load));
        boolean hasWaveform = fed.stream().noneMatch(PeakBases::lacksWaveform);
        boolean isPlain = !layout.distribution().feedsTransformers(point.index());
        return RangePeak.builder()
                .node(node.node())
                .nominalAmps(Referee.worstPeak(node).amps())
                .rangeAmps(worst.amps())
                .rangePhase(worst.phase())
                .rangeAtSeconds(worst.atSeconds())
                .nominalBound(hasInrush && isPlain)
                .rangeBound(
                        hasInrush && hasWaveform && isPlain && !layout.project().hasClocks())
                .build();
    }

    private List<PhasePeak> phasePeaks(Point point) {
        if (layout.project().hasClocks()) {
            SystemPeaks systems =
                    new SystemPeaks(layout, layout.nodeLoads().seen(point.index()), this::envelope, this::inUse);
            return point.system().phases().stream().map(systems::peak).toList();
        }
        PeakInrush inrush = PeakInrush.of(layout.nodeLoads().draws(point.index(), each -> envelope(each.load())));
        return point.system().phases().stream()
                .map(phase -> new PhasePeak(phase, inrush.amps(phase), inrush.atSeconds(phase)))
                .toList();
    }

    private InrushEnvelope envelope(Load load) {
        return InrushEnvelope.within(load, layout.project().timingToleranceSeconds(), voltage.band());
    }

    /** In use at the crest that is stated of the idle current: in use it may be another, so that no bound is made of it. */
    private double inUse(Load load) {
        return InrushEnvelope.crestRatio(load)
                * Math.max(load.idleAmps(), load.runningAmps())
                * voltage.band().steadyRatio();
    }
}
