package evenrise.solver.document;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.project.Board;
import evenrise.model.project.Panel;
import evenrise.model.project.Project;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Placement;
import evenrise.solver.browser.DrawnPages;
import evenrise.solver.document.Diagram.Block;
import evenrise.solver.drawing.Sheet;
import evenrise.solver.drawing.Sheets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;

/** A riser shows what stands where, what feeds it, and what control leads leave it. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class RiserDiagramTest {
    private static final Map<String, String> PLACES =
            Map.of("amp-left", "Level 2", "amp-right", "Level 2", "rack-room", "Level 1", "video", "Level 3");

    private Layout layout;

    @BeforeAll
    void plan() {
        layout = DrawnPages.of("meridian-hall").layout();
    }

    /** The hall with its panels where the function says. */
    private Diagram riser(Function<Panel, Optional<String>> places) {
        return RiserDiagram.of(placed(places)).orElseThrow();
    }

    private Layout placed(Function<Panel, Optional<String>> places) {
        Project project = layout.project();
        List<Panel> panels = project.panels().stream()
                .map(panel -> panel.withLocation(places.apply(panel)))
                .toList();
        return Layout.of(project.withPanels(panels), layout.plan());
    }

    private static Optional<String> usual(Panel panel) {
        return Optional.of(PLACES.get(panel.id()));
    }

    private static Block block(Diagram diagram, String name) {
        return diagram.blocks().stream()
                .filter(each -> each.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void isDrawnOnlyWhereAPanelSaysWhereItStands() {
        assertThat(RiserDiagram.of(placed(any -> Optional.empty()))).isEmpty();
    }

    @Test
    void putsWhatStandsTogetherIntoOneBlockBehindWhatFeedsIt() {
        Diagram riser = riser(RiserDiagramTest::usual);

        assertThat(riser.blocks().stream().map(Block::name))
                .containsExactlyInAnyOrder("place not stated", "Level 1", "Level 2", "Level 3");
        Block level = block(riser, "Level 2");
        assertThat(level.parent()).contains("place not stated");
        assertThat(level.lead()).containsExactly("2 feeders");
        assertThat(level.lines())
                .anyMatch(line -> line.startsWith("amp-left: "))
                .anyMatch(line -> line.startsWith("amp-right: "));
    }

    @Test
    void namesDeviceSizeAndLengthOfEachFeeder() {
        Panel panel = layout.index().panel("video").orElseThrow();
        String amps = Unrounded.amps(panel.feeder().orElseThrow().breakerAmps().orElseThrow());
        String size = CableWords.size(panel.feeder().orElseThrow().cable().orElseThrow());

        assertThat(block(riser(RiserDiagramTest::usual), "Level 3").lines().get(0))
                .startsWith("video: " + amps + ", " + size + ", ")
                .endsWith(" m");
    }

    /** Counted anew from the plan's assignments. */
    @Test
    void countsTheControlLeadsThatLeaveAPlace() {
        Diagram riser = riser(RiserDiagramTest::usual);
        Map<String, String> home = layout.project().boards().stream()
                .collect(Collectors.toMap(Board::id, board -> PLACES.get(board.panel())));
        Map<List<String>, Long> leads = layout.placements().stream()
                .filter(each -> each.assignment().board().isPresent())
                .collect(Collectors.groupingBy(RiserDiagramTest.ends(home), Collectors.counting()));
        leads.keySet().removeIf(ends -> ends.get(0).equals(ends.get(1)));

        assertThat(leads).isNotEmpty();
        leads.forEach((ends, count) -> assertThat(block(riser, ends.get(0)).lines())
                .contains(count + (count == 1 ? " control lead to " : " control leads to ") + ends.get(1)));
        assertThat(riser.blocks().stream()
                        .flatMap(each -> each.lines().stream())
                        .filter(line -> line.contains("control lead")))
                .hasSize(leads.size());
    }

    private static Function<Placement, List<String>> ends(Map<String, String> home) {
        return each -> List.of(
                home.get(each.assignment().board().orElseThrow()),
                PLACES.get(each.assignment().panel()));
    }

    @Test
    void leavesAPanelWithoutAPlaceAmongThoseNotStated() {
        Diagram riser = riser(panel -> panel.id().equals("video") ? Optional.of("Level 3") : Optional.empty());

        assertThat(riser.blocks()).hasSize(2);
        assertThat(block(riser, "place not stated").lines()).anyMatch(line -> line.startsWith("amp-left: "));
    }

    @Test
    void showsEveryPanelOnItsSheets() {
        Diagram riser = riser(RiserDiagramTest::usual);

        assertThat(Sheets.of(riser).stream()
                        .flatMap(sheet -> sheet.texts().stream())
                        .map(Sheet.Text::text))
                .containsAll(riser.blocks().stream()
                        .flatMap(each -> each.lines().stream())
                        .toList());
    }
}
