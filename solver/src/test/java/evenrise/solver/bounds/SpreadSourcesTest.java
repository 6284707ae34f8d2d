package evenrise.solver.bounds;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aBoardType;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aProject;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.ProjectBuilder;
import evenrise.model.project.DistributionNode;
import evenrise.model.project.NodeSource;
import evenrise.model.project.Overlap;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Project;
import evenrise.model.project.SwitchedSystem;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Peaks of sources, spread over time, worked out by hand. */
class SpreadSourcesTest {
    private static final double ROOT_2 = Math.sqrt(2);

    private static PlantMinimum.Found found(Project project) {
        return new PlantMinimum(new PlantLoads(project, new Seats(project)), 10, () -> false).of(1, 1, 0);
    }

    /** On one board without steps: all at one of these delays. Below the second panel stands a node. */
    private static ProjectBuilder threeLoads(double... delays) {
        ProjectBuilder project = aProject()
                .panels(aPanel("P1").slots(6), aPanel("P2").slots(6).with(it -> it.fedFrom(Optional.of("N"))))
                .boardTypes(aBoardType("T").outputs(3).startDelaySeconds(delays).stepSeconds(0))
                .boards(aBoard("B1").type("T").in("P1").reaches("P1", "P2"));
        for (int i = 1; i <= 3; i++) {
            project.loads(aLoad("L" + i)
                    .runningAmps(10)
                    .idleAmps(3)
                    .inrushPeakAmps(60)
                    .inrushHalfMillis(1));
        }
        return project;
    }

    private static void node(evenrise.model.project.ProjectBuilder project, boolean isSource) {
        var node = DistributionNode.builder().id("N").ratedAmps(100);
        if (isSource) {
            node.source(Optional.of(NodeSource.builder()
                    .system(PhaseSystem.SINGLE_PHASE)
                    .lineToNeutralVolts(230)
                    .frequencyHertz(50)
                    .build()));
        }
        project.nodes(List.of(node.build()));
    }

    /** One load of the first, two of the second, all at 0 s. */
    private static Project twoSystems(Overlap overlap) {
        Project project = threeLoads(0).with(it -> node(it, false)).build();
        return project.with()
                .systems(List.of(
                        SwitchedSystem.builder().id("S1").build(),
                        SwitchedSystem.builder().id("S2").build()))
                .overlap(overlap)
                .loads(project.loads().stream()
                        .map(load -> load.withSystem(Optional.of(load.id().equals("L1") ? "S1" : "S2")))
                        .toList())
                .build();
    }

    /** 3 × 60 A on three phases. */
    @Test
    void whatComesOnAtOnceIsSharedByThePhases() {
        Project project = threeLoads(0).with(it -> node(it, false)).build();

        assertThat(found(project).sourcesAmps()).isCloseTo(60, within(0.01));
        assertThat(found(project).supplyAmps()).isCloseTo(60, within(0.01));
    }

    /** Below the single-phase source each load would count whole, so the supply's three phases are cheapest: 3 × 60 / 3. */
    @Test
    void eachLoadIsChargedBelowItsCheapestSource() {
        Project project = threeLoads(0).with(it -> node(it, true)).build();

        assertThat(found(project).sourcesAmps()).isCloseTo(60, within(0.01));
        assertThat(found(project).supplyAmps()).isZero(); // all may be at the other
    }

    /** At 0, 1 or 2 s, with nothing left of an inrush after a second: at the last 60 A find two bases of 3·√2 A. */
    @Test
    void whatCanBeSpreadIsSpread() {
        Project project = threeLoads(0, 1, 2).with(it -> node(it, false)).build();

        assertThat(found(project).sourcesAmps()).isBetween(20.0, (60 + 6 * ROOT_2) / 3 + 0.01);
    }

    /** As the second starts with 2 × 60 A at once, the first draws √2 × 10 A in use. */
    @Test
    void whatIsInUseIsFoundByWhoeverStarts() {
        Project apart = twoSystems(Overlap.ONE_AT_A_TIME);

        assertThat(found(apart).sourcesAmps()).isCloseTo((120 + 10 * ROOT_2) / 3, within(0.5));
        assertThat(found(apart).sourcesAmps()).isLessThanOrEqualTo((120 + 10 * ROOT_2) / 3);
    }

    /** Each by itself: 60 A of the first and 120 A of the second, more than in use. */
    @Test
    void peaksOfSystemsAddWhereAnyMayStart() {
        Project any = twoSystems(Overlap.ANY);

        assertThat(found(any).sourcesAmps()).isCloseTo(60, within(0.5));
        assertThat(found(any).sourcesAmps()).isLessThanOrEqualTo(60);
    }
}
