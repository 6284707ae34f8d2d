package evenrise.solver.document;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.plan.EventPeak;
import evenrise.model.plan.Metrics;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeLimits;
import evenrise.model.rules.Referee;
import evenrise.solver.browser.DrawnPages;
import evenrise.solver.rendering.HtmlPage;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;

/** What stands first says whether it may be built and how tight it is, with the referee's figures. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class OverviewTest {
    private Layout layout;
    private Document document;
    private Overview overview;

    @BeforeAll
    void plan() {
        DrawnPages.Planned planned = DrawnPages.of("lumen-theatre");
        layout = planned.layout();
        document = planned.document();
        overview = document.overview();
    }

    @Nested
    class EachPlace {
        @Test
        void showsTheRefereesRunningCurrentAndPeakOfItsLimits() {
            List<NodeLimits> limits = NodeLimits.of(layout.project());
            for (int i = 0; i < limits.size(); i++) {
                String id = limits.get(i).node();
                PlaceLoading place = overview.places().stream()
                        .filter(each -> each.place().equals(id))
                        .findFirst()
                        .orElseThrow();

                assertThat(place.running())
                        .isEqualTo(new Bullet(
                                Collections.max(
                                        layout.nodes().get(i).runningAmps().values()),
                                limits.get(i).continuousAmps(),
                                "A"));
                assertThat(place.peak())
                        .isEqualTo(new Bullet(
                                layout.worstPeak(i).amps(),
                                limits.get(i).inrushLimitAmps().orElse(0),
                                "A"));
            }
        }

        @Test
        void theTightestFirst() {
            assertThat(overview.places())
                    .isSortedAccordingTo(Comparator.comparingDouble((PlaceLoading place) -> Math.max(
                                    place.running().usedPercent(), place.peak().usedPercent()))
                            .reversed());
            assertThat(overview.tightest())
                    .extracting(row -> row.margin())
                    .isEqualTo(document.tables()
                            .margins()
                            .rows()
                            .subList(0, overview.tightest().size()));
        }
    }

    @Nested
    class EveryEvent {
        @Test
        void standsBesideTheSequenceAgainstTheSupplysLimit() {
            List<EventPeak> peaks = layout.eventPeaks().get(0);
            double limit = layout.project().supply().inrushLimitAmps().orElseThrow();

            assertThat(overview.events()).hasSize(1 + peaks.size());
            for (int i = 0; i < peaks.size(); i++) {
                assertThat(overview.events().get(i + 1).supply())
                        .isEqualTo(new Bullet(peaks.get(i).peakInrushAmps(), limit, "A"));
            }
        }

        @Test
        void isToldAsMultipleOfTheSequencesPeak() {
            EventPeak dip = layout.eventPeaks().get(0).get(3);

            assertThat(overview.events().get(4).times())
                    .isEqualTo(String.format(
                            Locale.ROOT,
                            "%.1f times the sequence",
                            dip.peakInrushAmps() / layout.worstPeak(0).amps()));
        }

        @Test
        void namesThePlaceThatUsesMostOfItsLimit() {
            List<NodeLimits> limits = NodeLimits.of(layout.project());
            EventLoading failure = overview.events().get(3);

            for (int i = 0; i < limits.size(); i++) {
                double amps = layout.eventPeaks().get(i).stream()
                        .filter(each -> each.board().isPresent())
                        .mapToDouble(EventPeak::peakInrushAmps)
                        .findFirst()
                        .orElse(0);
                limits.get(i)
                        .inrushLimitAmps()
                        .ifPresent(limit -> assertThat(failure.atTightest().usedPercent())
                                .isGreaterThanOrEqualTo(100 * amps / limit - 1e-9));
            }
            assertThat(failure.tightest()).isEqualTo("DB-sound");
        }
    }

    @Nested
    class HowGoodItIs {
        @Test
        void isToldOfAPlanThatKeepsEveryRule() {
            DrawnPages.Planned kept = DrawnPages.kept("meridian-hall");
            Metrics metrics = Referee.judge(kept.layout()).metrics();
            double bound = kept.layout().plan().bounds().orElseThrow().objective();

            Fact gap = kept.document().overview().search().get(0);

            assertThat(Double.parseDouble(gap.value().replace(" %", "")))
                    .isCloseTo(100 * (metrics.objective() - bound) / metrics.objective(), within(0.05));
            assertThat(gap.note()).contains(String.format(Locale.ROOT, "%.1f", bound));
        }

        @Test
        void isNotToldOfOneThatBreaksARule() {
            assertThat(document.isBroken()).isTrue();
            assertThat(overview.search().get(0).value()).isEqualTo("not told");
        }

        @Test
        void countsWhatWasNotChecked() {
            assertThat(overview.open().get(0).value())
                    .isEqualTo(document.assessment().checksNotMade() + " of "
                            + (document.assessment().checksMade()
                                    + document.assessment().checksNotMade()));
        }
    }

    @Nested
    class ABar {
        @Test
        void isOfTheLimitAndSaysTheDistance() {
            Bullet kept = new Bullet(60, 80, "A");
            Bullet over = new Bullet(90.25, 80, "A");

            assertThat(kept.length()).isEqualTo("75.0");
            assertThat(kept.shown() + " " + kept.distance()).isEqualTo("60.0 of 80 A, 20.0 left");
            assertThat(over.isOver()).isTrue();
            assertThat(over.length()).isEqualTo("112.8");
            assertThat(over.distance()).isEqualTo("of 80 A, 10.3 over");
        }

        @Test
        void neverRoundsAFigureOntoItsLimit() {
            Bullet barely = new Bullet(80.004, 80, "A");

            assertThat(barely.shown() + " " + barely.distance()).isEqualTo("80.004 of 80 A, 0.004 over");
        }

        @Test
        void isNotDrawnWithoutALimit() {
            Bullet free = new Bullet(60, 0, "A");

            assertThat(free.isOver()).isFalse();
            assertThat(free.length()).isEqualTo("0.0");
            assertThat(free.shown() + " " + free.distance()).isEqualTo("60.0 A no limit stated");
        }
    }

    @Test
    void standsBeforeEverythingElseOnThePage() {
        String page = HtmlPage.of(document);

        assertThat(Stream.of("id=\"assessment-first\"", "id=\"first\"", "id=\"sequence\"", "id=\"panels\"")
                        .map(page::indexOf))
                .isSorted()
                .doesNotContain(-1);
    }
}
