package evenrise.model.measured;

import static evenrise.model.measured.OnSite.idle;
import static evenrise.model.measured.OnSite.on;
import static evenrise.model.measured.OnSite.place;
import static evenrise.model.measured.OnSite.places;
import static evenrise.model.measured.OnSite.poles;
import static evenrise.model.measured.OnSite.running;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.measured.Allowed.Error;
import evenrise.model.project.Phase;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Placement;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleFunction;
import org.junit.jupiter.api.Test;

/** What a page at the panel calls allowed is what the sheets are judged by: nothing is found within it, something beyond. */
class SiteAllowancesTest {
    private static final double HAIR = 1e-6;

    private final Layout layout = OnSite.layout();
    private final SiteAllowances allowed = new SiteAllowances(layout);

    private boolean finds(SiteReadings readings) {
        return MeasuredPlant.of(layout, readings, load -> false).discrepancies().stream()
                .anyMatch(each -> each.weight() != Discrepancy.Weight.LESS || each.quantity() == MeasuredQuantity.IDLE);
    }

    /** At the edges, with what the clamp of {@link OnSite} may be off by: 2 % of what it shows, 0.1 s. */
    private void agrees(Allowed bounds, DoubleFunction<SiteReadings> read) {
        boolean isTime = bounds.error() == Error.TIME;
        double part = bounds.error() == Error.CURRENT ? 0.02 : 0;
        double seconds = isTime ? OnSite.CLAMP.seconds() : 0;
        bounds.least().ifPresent(least -> edge((least - seconds) / (1 + part), -1, read));
        bounds.most().ifPresent(most -> edge((most + seconds) / (1 - part), 1, read));
        bounds.limit().ifPresent(limit -> edge(limit / (1 + part), 1, read));
        bounds.floor().ifPresent(floor -> edge(floor, -1, read));
    }

    private void edge(double at, int outward, DoubleFunction<SiteReadings> read) {
        assertThat(finds(read.apply(at - outward * HAIR))).as(at + " kept").isFalse();
        assertThat(finds(read.apply(at + outward * HAIR))).as(at + " passed").isTrue();
    }

    private Placement one() {
        return layout.placement("one").orElseThrow();
    }

    private Point panel() {
        return layout.distribution().point("P1").orElseThrow();
    }

    @Test
    void holdsOfIdleCurrents() {
        agrees(allowed.idle(one().load()), amps -> poles(idle("one", Phase.A, amps)));
    }

    @Test
    void holdsOfRunningCurrentsBelowTheBreaker() {
        Allowed bounds = allowed.running(one().load());

        // 6 A as stated behind 16 A: each edge by itself, since beyond the first one something is found anyhow
        assertThat(bounds.limit()).hasValue(16);
        agrees(
                new Allowed(bounds.floor(), bounds.least(), bounds.most(), OptionalDouble.empty(), bounds.error()),
                amps -> poles(running("one", amps)));
    }

    @Test
    void holdsOfPeaks() {
        agrees(
                allowed.peak(one().load()),
                amps -> poles(new PoleReading(
                        "one",
                        Optional.of(Phase.A),
                        OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        OptionalDouble.of(amps),
                        OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        OnSite.VISIT)));
    }

    @Test
    void holdsOfTimes() {
        agrees(allowed.on(one()).orElseThrow(), seconds -> poles(on("one", seconds)));
    }

    @Test
    void holdsOfWholePanels() {
        agrees(
                allowed.idle(panel(), Phase.A),
                amps -> places(place(Map.of(), Map.of(Phase.A, amps), Map.of(), Optional.empty())));
        agrees(
                allowed.running(panel()),
                amps -> places(place(Map.of(), Map.of(), Map.of(Phase.A, amps), Optional.empty())));
        agrees(
                allowed.volts(panel()),
                volts -> places(place(Map.of(Phase.A, volts), Map.of(), Map.of(), Optional.empty())));
        agrees(allowed.neutral(panel()), amps -> places(further(OptionalDouble.of(amps), OptionalDouble.empty())));
        agrees(
                allowed.insulationMegohms(),
                megohms -> places(further(OptionalDouble.empty(), OptionalDouble.of(megohms))));
    }

    private static PlaceReading further(OptionalDouble neutralAmps, OptionalDouble megohms) {
        return new PlaceReading(
                "P1",
                Map.of(),
                Map.of(),
                Map.of(),
                Map.of(),
                neutralAmps,
                Optional.empty(),
                megohms,
                Optional.empty(),
                OnSite.VISIT);
    }

    @Test
    void holdsOfDevices() {
        agrees(allowed.leakageMilliamps(30), amps -> device(OptionalDouble.of(amps), OptionalDouble.empty(), 0));
        agrees(allowed.tripMilliamps(30), amps -> device(OptionalDouble.empty(), OptionalDouble.of(amps), 0));
        agrees(allowed.tripMillis(), millis -> device(OptionalDouble.empty(), OptionalDouble.empty(), millis));
    }

    private static SiteReadings device(OptionalDouble leakage, OptionalDouble trippedAt, double millis) {
        return new SiteReadings(
                List.of(),
                List.of(),
                List.of(new DeviceReading(
                        "P1",
                        "one",
                        OptionalDouble.of(30),
                        leakage,
                        trippedAt,
                        OptionalDouble.of(millis),
                        Optional.empty(),
                        "sheet line 2")));
    }

    @Test
    void sayNothingOfTimesWhereNothingIsSwitched() {
        Placement steady = Layout.of(
                        OnSite.project()
                                .withLoads(List.of(OnSite.project()
                                        .loads()
                                        .get(0)
                                        .with()
                                        .switched(false)
                                        .build())),
                        layout.plan())
                .placement("one")
                .orElseThrow();

        assertThat(allowed.idle(steady.load()).most().orElseThrow()).isCloseTo(2 * 1.24, within(1e-12));
        assertThat(allowed.on(steady)).isEmpty();
        assertThat(allowed.off(steady)).isEmpty();
    }
}
