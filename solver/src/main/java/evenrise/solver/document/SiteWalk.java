package evenrise.solver.document;

import evenrise.model.contract.Figures;
import evenrise.model.handout.PlanDigest;
import evenrise.model.measured.Allowed;
import evenrise.model.measured.Meter;
import evenrise.model.measured.SiteAllowances;
import evenrise.model.project.Phase;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Placement;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/** Goes along the supply, the nodes and the panels, and asks for what is read there. */
final class SiteWalk {
    private static final double MOST_AMPS = 6300;
    private static final double MOST_PLACE_AMPS = 100_000;
    private static final double MOST_PEAK_AMPS = 1e6;
    private static final double MOST_SECONDS = 86_400;
    private static final double MOST_VOLTS = 1000;
    private static final double MOST = 1e6;
    private static final int LONGEST = 60;

    private final Layout layout;
    private final SiteAllowances allowed;
    private final List<PlannedCircuit> circuits;
    private final List<ResidualTest> devices;
    private final List<SiteForm.Stop> stops = new ArrayList<>();
    private final List<SiteCard> cards = new ArrayList<>();

    SiteWalk(Layout layout) {
        this.layout = layout;
        this.allowed = new SiteAllowances(layout);
        this.circuits = PlannedCircuit.along(layout);
        this.devices = ResidualTest.of(layout);
    }

    SiteForm form() {
        List<Point> points = layout.distribution().points();
        points.stream().filter(point -> point.panel().isEmpty()).forEach(this::stop);
        points.stream().filter(point -> point.panel().isPresent()).forEach(this::stop);
        Meter usual = Meter.usual("");
        return new SiteForm(
                PlanDigest.sha256(layout.plan()),
                usual.ofReadingPercent(),
                usual.leastAmps(),
                usual.seconds(),
                stops,
                cards);
    }

    private void stop(Point point) {
        String id = point.isSupply() ? "supply" : point.id();
        String kind = point.isSupply() ? "Supply" : point.panel().isPresent() ? "Panel " : "Node ";
        stops.add(new SiteForm.Stop(id, kind + (point.isSupply() ? "" : Plain.text(id, LONGEST))));
        cards.add(whole(point, id));
        devices.stream()
                .filter(each -> each.panel().equals(id) && point.panel().isPresent())
                .forEach(this::device);
        circuits.stream()
                .filter(each -> each.panel().equals(id) && point.panel().isPresent())
                .forEach(this::circuit);
    }

    private SiteCard whole(Point point, String id) {
        List<SiteAsk> asks = new ArrayList<>();
        List<Phase> phases = point.system().phases();
        for (Phase phase : phases) {
            Allowed volts = allowed.volts(point);
            asks.add(SiteAsk.of(
                    phase + ".to_neutral_v",
                    phase + " to neutral, V",
                    SiteAsk.range(
                            "V", volts.least().orElseThrow(), volts.limit().orElseThrow()),
                    volts,
                    MOST_VOLTS));
        }
        for (Phase phase : phases) {
            Allowed idle = allowed.idle(point, phase);
            asks.add(SiteAsk.of(
                    phase + ".idle_a",
                    "Idle " + phase + ", A",
                    SiteAsk.range("A", idle.least().orElseThrow(), idle.most().orElseThrow()),
                    idle,
                    MOST_PLACE_AMPS));
        }
        for (Phase phase : phases) {
            asks.add(atMost(phase + ".running_a", "Running " + phase + ", A", allowed.running(point)));
        }
        for (Phase phase : phases) {
            asks.add(allowed.peak(point)
                    .map(most -> atMost(phase + ".peak_a", "Peak " + phase + ", A", most))
                    .orElseGet(() -> SiteAsk.unjudged(phase + ".peak_a", "Peak " + phase + ", A", MOST_PLACE_AMPS)));
        }
        asks.add(atMost("neutral_a", "Neutral, A", allowed.neutral(point)));
        asks.add(SiteAsk.of(
                "insulation_megohm", "Insulation, MΩ", "dead; at least 1 MΩ", allowed.insulationMegohms(), MOST));
        return new SiteCard(
                "place",
                id,
                "All of it",
                NominalVoltage.of(point),
                "",
                "",
                id,
                "",
                OptionalDouble.empty(),
                phases.size() > 2,
                asks);
    }

    private static SiteAsk atMost(String key, String label, Allowed most) {
        return SiteAsk.of(
                key, label, "at most " + Figures.THOUSANDTHS.amps(most.limit().orElseThrow()), most, MOST_PLACE_AMPS);
    }

    private void device(ResidualTest device) {
        double rated = device.ratedMilliamps();
        cards.add(new SiteCard(
                "device",
                device.panel(),
                "Residual-current device of " + Plain.text(device.protects(), LONGEST),
                Plain.text(device.place(), LONGEST) + ", " + Figures.THOUSANDTHS.in("mA", rated),
                "",
                "",
                device.place(),
                device.protects(),
                OptionalDouble.of(rated),
                false,
                List.of(
                        SiteAsk.of(
                                "leakage_ma",
                                "Leakage, mA",
                                "at most " + Figures.THOUSANDTHS.in("mA", device.leakageMilliamps()),
                                allowed.leakageMilliamps(rated),
                                MOST),
                        SiteAsk.of(
                                "tripped_at_ma",
                                "Tripped at, mA",
                                "at most " + Figures.THOUSANDTHS.in("mA", rated),
                                allowed.tripMilliamps(rated),
                                MOST),
                        SiteAsk.of(
                                "tripped_after_ms",
                                "Tripped after, ms",
                                "at most "
                                        + Figures.THOUSANDTHS.in(
                                                "ms",
                                                allowed.tripMillis().limit().orElseThrow()),
                                allowed.tripMillis(),
                                MOST))));
    }

    private void circuit(PlannedCircuit circuit) {
        Placement placement = layout.placement(circuit.load()).orElseThrow();
        List<MeasuredPole> poles = MeasuredPole.of(circuit);
        for (MeasuredPole pole : poles) {
            cards.add(new SiteCard(
                    "pole",
                    circuit.panel(),
                    Plain.text(circuit.load(), LONGEST),
                    "slots " + circuit.slots() + (pole.phase().isEmpty() ? "" : ", phase " + pole.phase())
                            + (circuit.name().isEmpty() ? "" : ", " + Plain.text(circuit.name(), LONGEST)) + "; "
                            + Plain.text(circuit.control(), LONGEST),
                    circuit.load(),
                    pole.phase(),
                    "",
                    "",
                    OptionalDouble.empty(),
                    false,
                    asks(placement, pole == poles.get(0))));
        }
    }

    private List<SiteAsk> asks(Placement placement, boolean isFirst) {
        Allowed idle = allowed.idle(placement.load());
        Allowed running = allowed.running(placement.load());
        List<SiteAsk> asks = new ArrayList<>(List.of(
                SiteAsk.of(
                        "idle_a",
                        "Idle, A",
                        SiteAsk.range(
                                "A", idle.least().orElseThrow(), idle.most().orElseThrow()),
                        idle,
                        MOST_AMPS),
                SiteAsk.of(
                        "running_a",
                        "Running, A",
                        "at most " + Figures.THOUSANDTHS.amps(running.most().orElseThrow()),
                        running,
                        MOST_AMPS),
                SiteAsk.of(
                        "peak_a",
                        "Inrush peak, A",
                        "at most " + Figures.THOUSANDTHS.amps(placement.load().inrushAmps()),
                        allowed.peak(placement.load()),
                        MOST_PEAK_AMPS)));
        if (isFirst) {
            allowed.on(placement).ifPresent(each -> asks.add(time("on_s", "Comes on at, s", each)));
            allowed.off(placement).ifPresent(each -> asks.add(time("off_s", "Goes off at, s", each)));
        }
        return asks;
    }

    private static SiteAsk time(String key, String label, Allowed allowed) {
        double middle = (allowed.least().orElseThrow() + allowed.most().orElseThrow()) / 2;
        return SiteAsk.of(
                key,
                label,
                "planned " + Figures.HUNDREDTHS.seconds(middle) + ", ± "
                        + Figures.THOUSANDTHS.seconds(allowed.most().orElseThrow() - middle),
                allowed,
                MOST_SECONDS);
    }
}
