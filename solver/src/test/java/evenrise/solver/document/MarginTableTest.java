package evenrise.solver.document;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.plan.EventPeak;
import evenrise.model.plan.Quantity;
import evenrise.model.project.PlanEvent;
import evenrise.model.review.ElectricalReview;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeFigures;
import evenrise.solver.browser.DrawnPages;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;

/** What is tight stands first, with the limit that the rules hold it to. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class MarginTableTest {
    private Layout layout;
    private Document document;
    private List<Margin> margins;

    @BeforeAll
    void plan() {
        DrawnPages.Planned planned = DrawnPages.of("meridian-hall");
        layout = planned.layout();
        document = planned.document();
        margins = document.tables().margins().rows();
    }

    private Margin of(String place, String what) {
        return margins.stream()
                .filter(each -> each.place().equals(place) && each.what().startsWith(what))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void theTightestFirst() {
        assertThat(margins).isSortedAccordingTo((one, other) -> Double.compare(other.usedPercent(), one.usedPercent()));
    }

    @Test
    void isWhatTheRefereeFound() {
        for (Point point : layout.distribution().points()) {
            NodeFigures figures = layout.nodes().get(point.index());
            Margin running = of(point.id(), "running current");

            assertThat(running.figure())
                    .isEqualTo(Collections.max(figures.runningAmps().values()));
            assertThat(of(point.id(), "neutral").figure()).isEqualTo(figures.neutralAmps());
            assertThat(of(point.id(), "peak while").figure())
                    .isEqualTo(layout.worstPeak(point.index()).amps());
        }
        // 80 % of the supply's 600 A; 5900 A of inrush as the project states.
        assertThat(of("supply", "running current").limit()).isCloseTo(480, within(1e-9));
        assertThat(of("supply", "peak while").limit()).isEqualTo(5900);
    }

    @Test
    void holdsFaultCurrentsAgainstWhatDevicesInterrupt() {
        Margin fault = of("amp-left", "available fault current");

        assertThat(fault.limit()).isEqualTo(22_000);
        assertThat(fault.left()).isCloseTo(22_000 - fault.figure(), within(1e-9));
        assertThat(margins)
                .noneMatch(each -> each.place().equals("supply") && each.what().startsWith("available"));
    }

    @Test
    void saysByABarOfTheLimitWhatIsOverIt() {
        Margin kept = new Margin("P", "running current", 60, 80, "A", "rule rating");
        Margin atTheLimit = new Margin("P", "running current", 80, 80, "A", "rule rating");
        Margin over = new Margin("P", "running current", 81, 80, "A", "rule rating");

        assertThat(kept.bar()).isEqualTo("75.0");
        assertThat(atTheLimit.isOver()).isFalse();
        assertThat(over.isOver()).isTrue();
        assertThat(over.bar()).isEqualTo("100.0");
        assertThat(over.left()).isEqualTo(-1);
    }

    /** Also where no rule holds it to the limit: nobody may overlook it. */
    @Test
    void hasThePeakOfEveryEventBesideEachInrushLimit() {
        EventPeak dip = layout.eventPeaks().get(0).stream()
                .filter(each -> each.event() == PlanEvent.DIP)
                .findFirst()
                .orElseThrow();

        assertThat(of("supply", "peak, dip ridden through").figure()).isEqualTo(dip.peakInrushAmps());
        assertThat(of("supply", "peak, dip ridden through").basis())
                .isEqualTo("inrush limit, held for the sequence only");
    }

    @Test
    void hasEveryVoltageDropThatWasComputed() {
        assertThat(margins.stream().filter(each -> each.what().startsWith("voltage drop")))
                .hasSize((int) ElectricalReview.of(layout).quantities().stream()
                        .map(Quantity::name)
                        .filter(List.of("voltage drop of the branch", "voltage drop in all")::contains)
                        .count());
    }
}
