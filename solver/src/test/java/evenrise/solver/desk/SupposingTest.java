package evenrise.solver.desk;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.solver.desk.SupposedAnswers.PlayedView;
import evenrise.solver.desk.SupposedAnswers.RoomsView;
import evenrise.solver.desk.SupposedAnswers.ScenesView;
import evenrise.solver.desk.SupposedAnswers.SupposedView;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Comparator;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SupposingTest {
    @TempDir
    private Path folder;

    private DeskRoutes routes;

    @BeforeEach
    void open() {
        routes = Hall.routes(Hall.in(folder));
    }

    private Record asked(String path, String body) {
        return routes.of("POST", path).orElseThrow().answer(body.getBytes(StandardCharsets.UTF_8));
    }

    @Test
    void roomIsWhereRatingsLeaveSoMuchAndNowhereElse() {
        RoomsView small = (RoomsView) asked("/api/room", "{\"amps\": 1}");
        RoomsView large = (RoomsView) asked("/api/room", "{\"amps\": 5000}");

        // Twelve slots each, five and two of them taken.
        assertThat(small.places()).hasSize(17);
        assertThat(small.places())
                .allMatch(each -> each.upToAmps() >= 1 && !each.by().isEmpty());
        assertThat(large.places()).isEmpty();
    }

    @Test
    void fullUseIsWhatTheLoadsDrawByPhase() {
        ScenesView scenes =
                (ScenesView) routes.of("GET", "/api/scenes").orElseThrow().answer(new byte[0]);

        // P1: dsp 3 A and hoist 12 A on A, lamp 2 A and hoist on B; P2: amp-1 8 A on A, amp-2 9 A on C.
        assertThat(scenes.uses()).hasSize(1);
        assertThat(scenes.uses().get(0).points()).hasSize(3);
        assertThat(scenes.uses().get(0).points().get(0).runningAmps()).containsExactly(23.0, 14.0, 21.0);
        assertThat(scenes.uses().get(0).points().get(0).ratedAmps()).isEqualTo(400);
        assertThat(scenes.uses().get(0).points().get(1).runningAmps()).containsExactly(15.0, 14.0, 12.0);
    }

    @Test
    void whatHappensIsPlayedMomentByMoment() {
        PlayedView played = (PlayedView) asked("/api/play", "{\"events\": [\"system-on\", \"mains=0\"]}");

        assertThat(played.moments())
                .extracting(SupposedAnswers.MomentView::loadsOn)
                .contains(0, 4);
        assertThat(played.moments())
                .isSortedAccordingTo(Comparator.comparingDouble(SupposedAnswers.MomentView::atSeconds));
        assertThat(played.episodes())
                .extracting(SupposedAnswers.EpisodeView::closed)
                .contains(4);
    }

    @Test
    void withoutAPanelThePlanIsFoundAnewAndTheDeskStaysAsItIs() {
        SupposedView supposed = (SupposedView)
                asked("/api/suppose", "{\"limited_at\": \"supply\", \"limit_a\": 5000, \"time_s\": 0.3}");

        assertThat(supposed.supposed()).containsExactly("with an inrush limit of 5000.0 A at supply");
        assertThat(supposed.violations()).isEmpty();
        assertThat(supposed.after().objective())
                .isLessThanOrEqualTo(supposed.before().objective());
        assertThat(((DeskAnswers.DeskSheet)
                                routes.of("GET", "/api/desk").orElseThrow().answer(new byte[0]))
                        .undo())
                .isEmpty();
    }
}
