package evenrise.solver.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import evenrise.solver.app.JobFailed;
import evenrise.solver.desk.DeskAnswers.DeskSheet;
import evenrise.solver.desk.DeskAnswers.LoadView;
import evenrise.solver.desk.ShownTree.TreePoint;
import evenrise.solver.desk.ShownTree.TreeView;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class TreeWorkTest {
    @TempDir
    private Path folder;

    private DeskRoutes routes;

    @BeforeEach
    void open() {
        routes = Hall.routes(Hall.in(folder));
    }

    private DeskSheet asked(String path, String body) {
        return (DeskSheet) routes.of("POST", path).orElseThrow().answer(body.getBytes(StandardCharsets.UTF_8));
    }

    private List<TreePoint> points() {
        return ((TreeView) routes.of("GET", "/api/tree").orElseThrow().answer(new byte[0])).points();
    }

    private TreePoint point(String id) {
        return points().stream()
                .filter(each -> each.id().equals(id))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void showsWhatFeedsWhatAndWhatItCarries() {
        assertThat(points()).extracting(TreePoint::id).containsExactly("supply", "P1", "P2");
        assertThat(point("P1").under()).contains("supply");
        // dsp 3 A and hoist 12 A on A.
        assertThat(point("P1").greatestAmps()).isEqualTo(15);
        assertThat(point("P1").boards()).containsExactly("B1");
        assertThat(point("P2").loads()).isEqualTo(2);
    }

    @Test
    void aNodeIsAddedAndAPanelIsFedFromIt() {
        asked("/api/tree/add", "{\"id\": \"riser\", \"node\": true, \"rated_a\": 300}");
        asked("/api/tree/change", "{\"id\": \"P2\", \"under\": \"riser\"}");

        assertThat(point("riser").under()).contains("supply");
        assertThat(point("P2").under()).contains("riser");
        assertThat(point("riser").greatestAmps()).isEqualTo(9);
    }

    @Test
    void aRenamedPanelKeepsItsLoadsItsBoardsAndItsPlaceInThePlan() {
        DeskSheet renamed = asked("/api/tree/change", "{\"id\": \"P2\", \"name\": \"Stage left\"}");

        assertThat(renamed.plan().orElseThrow().violations()).isEmpty();
        assertThat(renamed.plan().orElseThrow().loads())
                .filteredOn(each -> each.id().equals("amp-1"))
                .extracting(LoadView::panel)
                .containsExactly(Optional.of("Stage left"));
        assertThat(point("Stage left").boards()).containsExactly("B2");
    }

    @Test
    void aRenamedPointIsMeantWhereverOthersAreFedFromIt() {
        asked("/api/tree/add", "{\"id\": \"riser\", \"node\": true, \"rated_a\": 300}");
        asked("/api/tree/change", "{\"id\": \"P2\", \"under\": \"riser\"}");

        asked("/api/tree/change", "{\"id\": \"riser\", \"name\": \"shaft\"}");

        assertThat(point("P2").under()).contains("shaft");
    }

    @Test
    void aCircleIsRefusedInWordsAndNothingChanges() {
        asked("/api/tree/add", "{\"id\": \"riser\", \"node\": true, \"rated_a\": 300}");
        asked("/api/tree/add", "{\"id\": \"upper\", \"node\": true, \"rated_a\": 300, \"under\": \"riser\"}");

        assertThatThrownBy(() -> asked("/api/tree/change", "{\"id\": \"riser\", \"under\": \"upper\"}"))
                .isInstanceOf(JobFailed.class)
                .hasMessageContaining("riser");
        assertThat(point("riser").under()).contains("supply");
    }

    @Test
    void aNameThatIsTakenIsRefused() {
        assertThatThrownBy(() -> asked("/api/tree/change", "{\"id\": \"P1\", \"name\": \"P2\"}"))
                .hasMessageContaining("there is 'P2' already");
    }

    @Test
    void aPanelTakenOutWhoseBoardIsStillThereIsRefusedWithTheCure() {
        assertThatThrownBy(() -> asked("/api/tree/change", "{\"id\": \"P2\", \"out\": true}"))
                .isInstanceOf(JobFailed.class)
                .hasMessageContaining("B2");
    }
}
