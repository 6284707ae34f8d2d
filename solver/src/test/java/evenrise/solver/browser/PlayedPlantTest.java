package evenrise.solver.browser;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.Needs;
import evenrise.model.electrical.InrushEnvelope;
import evenrise.model.project.Load;
import evenrise.model.project.Overlap;
import evenrise.model.project.Phase;
import evenrise.model.project.Project;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeLoads.Seen;
import evenrise.model.rules.PhasePeak;
import evenrise.solver.document.Plants;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;

/** The page plays a plant system by system, at every node of its distribution. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@Needs({"chromium", "chromedriver"})
class PlayedPlantTest {
    private static final double SHOWN_AMPS = 0.05 + 1e-6;

    @TempDir
    private Path folder;

    private Browser browser;

    @BeforeAll
    void openABrowser() {
        browser = new Browser();
    }

    @AfterAll
    void closeIt() {
        browser.close();
    }

    /** What is always on and the other system in use, and the envelopes of what the command switches. */
    private static double amps(Layout layout, Point point, Phase phase, String system, double seconds) {
        double sum = 0;
        for (Seen seen : layout.nodeLoads().seen(point.index())) {
            Load load = seen.placement().load();
            // The first scene is full use, so that no load is used more in another.
            double used = Math.sqrt(2) * Math.max(load.idleAmps(), load.runningAmps());
            boolean starts = seen.placement().isSequenced() && load.system().equals(Optional.of(system));
            double amps = starts
                    ? InrushEnvelope.of(load, layout.project().timingToleranceSeconds())
                            .amps(seen.placement().onSeconds().orElseThrow(), seconds)
                    : used;
            sum += seen.parts()[phase.ordinal()] * amps;
        }
        return sum;
    }

    @Test
    void atEveryNodeWhileTheOtherIsInUse() {
        DrawnPages.Planned planned = DrawnPages.of(Plants.read(Plants.twoHalls()), 1000);
        Layout layout = planned.layout();
        PlanPage page = PlanPage.open(browser, planned.document(), folder);
        double end = layout.clocks().longestSeconds();

        for (int system = 1; system >= 0; system--) {
            page.choose("system", system);
            String name = layout.project().systems().get(system).id();
            for (Point point : layout.distribution().points()) {
                page.chooseNode(point.index());
                PhasePeak worst = layout.starts(point.index()).get(system).peaks().values().stream()
                        .reduce((kept, next) -> next.amps() > kept.amps() ? next : kept)
                        .orElseThrow();
                double peakAt = Math.max(0, worst.atSeconds() - layout.project().timingToleranceSeconds());

                for (double seconds : new double[] {0.4 * end, end, peakAt}) {
                    page.scrubTo(seconds);

                    List<Phase> phases = point.system().phases();
                    List<Double> shown = page.amps();
                    for (int i = 0; i < phases.size(); i++) {
                        assertThat(shown.get(phases.get(i).ordinal()))
                                .isCloseTo(amps(layout, point, phases.get(i), name, seconds), within(SHOWN_AMPS));
                    }
                }
                if (system == 0 || point.index() > 0) {
                    assertThat(browser.text("#drawing .peaked"))
                            .contains(String.format(java.util.Locale.ROOT, "peak %.1f A", worst.amps()));
                }
            }
        }
    }

    @Test
    void asOneWhereAllStartTogether() {
        Project project = Plants.read(Plants.twoHalls()).withOverlap(Overlap.TOGETHER);
        DrawnPages.Planned planned = DrawnPages.of(project, 1000);
        Layout layout = planned.layout();
        PlanPage page = PlanPage.open(browser, planned.document(), folder);

        for (Point point : layout.distribution().points()) {
            page.chooseNode(point.index());
            PhasePeak worst = layout.worstPeak(point.index());
            page.scrubTo(Math.max(0, worst.atSeconds() - project.timingToleranceSeconds()));

            assertThat(page.amps().get(worst.phase().ordinal())).isCloseTo(worst.amps(), within(SHOWN_AMPS));
        }
    }
}
