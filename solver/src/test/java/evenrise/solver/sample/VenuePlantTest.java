package evenrise.solver.sample;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import evenrise.model.check.Objection;
import evenrise.model.check.ProjectChecks;
import evenrise.model.plan.BrokenRule;
import evenrise.model.plan.Plan;
import evenrise.model.project.BoardTiming;
import evenrise.model.project.BoardType;
import evenrise.model.project.EmergencyBy;
import evenrise.model.project.Load;
import evenrise.model.project.OffTiming;
import evenrise.model.project.Overlap;
import evenrise.model.project.PassesOn;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Project;
import evenrise.model.project.SwitchedBy;
import evenrise.model.project.TransformerConnection;
import evenrise.solver.engine.Budget;
import evenrise.solver.engine.PlanningRequest;
import evenrise.solver.engine.search.Planner;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

@DisplayName("A drawn plant")
class VenuePlantTest {
    private static final VenueSize SIZE = new VenueSize(10, 200, PhaseSystem.THREE_PHASE);

    private static Venue venue(long seed, VenueSize size, VenuePlant plant) {
        return Sample.venue(seed, size, "Drawn", plant);
    }

    private static void isKept(Venue venue, long seed) {
        List<Objection> problems = ProjectChecks.errors(venue.project());
        assertThat(problems).as("seed %d", seed).isEmpty();
        assertThat(SampleTest.verdictOnTheLayout(venue).violations())
                .as("seed %d", seed)
                .extracting(BrokenRule::message)
                .isEmpty();
    }

    @ParameterizedTest
    @EnumSource
    void ofOnePartIsLegalAndItsLayoutKeepsEveryHardRule(PlantOption option) {
        for (long seed = 0; seed < 8; seed++) {
            isKept(venue(seed, SIZE, new VenuePlant(Set.of(option), Overlap.ONE_AT_A_TIME)), seed);
        }
    }

    @ParameterizedTest
    @EnumSource
    void ofAllPartsIsLegalAndItsLayoutKeepsEveryHardRule(Overlap overlap) {
        for (long seed = 0; seed < 8; seed++) {
            isKept(venue(seed, SIZE, VenuePlant.whole(overlap)), seed);
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void isPlannedClean(long seed) {
        Project project = venue(
                        seed, new VenueSize(6, 100, PhaseSystem.THREE_PHASE), VenuePlant.whole(Overlap.ONE_AT_A_TIME))
                .project();
        PlanningRequest request = new PlanningRequest(project, Optional.empty(), new Budget.Moves(40_000), 1, 1);

        Plan plan = new Planner(request, progress -> {}).plan().plan();

        assertThat(SampleTest.verdictOnTheLayout(new Venue(project, plan)).violations())
                .extracting(BrokenRule::message)
                .isEmpty();
    }

    @Test
    void hasEveryPart() {
        Project project = venue(1, new VenueSize(17, 400, PhaseSystem.THREE_PHASE), VenuePlant.whole(Overlap.ANY))
                .project();

        assertThat(project.nodes())
                .anyMatch(node -> node.source().isPresent())
                .flatExtracting(node ->
                        node.transformer().map(it -> it.connection()).stream().toList())
                .contains(TransformerConnection.values());
        assertThat(project.systems()).extracting(system -> system.id()).containsExactly("core", "alder", "birch");
        assertThat(project.scenes()).hasSizeGreaterThan(2);
        assertThat(project.boardTypes()).extracting(BoardType::timing).contains(BoardTiming.values());
        assertThat(project.boardTypes()).extracting(BoardType::passesOn).contains(PassesOn.values());
        assertThat(project.boardTypes()).extracting(BoardType::emergencyBy).contains(EmergencyBy.values());
        assertThat(project.boardTypes()).extracting(BoardType::off).contains(OffTiming.values());
        assertThat(project.boardTypes()).anyMatch(type -> type.spareOutputs() > 0);
        assertThat(project.panels()).allMatch(panel -> panel.spare().isPresent());
        assertThat(project.loads()).extracting(Load::switchedBy).contains(SwitchedBy.values());
        assertThat(project.loads())
                .anyMatch(load -> load.comesWith().isPresent())
                .anyMatch(load -> load.rack().isPresent())
                .anyMatch(load -> load.offAfterSeconds() > 0);
    }

    @Test
    void withoutPartsIsWhatItWas() {
        assertThat(venue(7, SIZE, VenuePlant.FLAT)).isEqualTo(Sample.venue(7, SIZE, "Drawn"));
    }

    @Test
    void refusesPartsThatAVenueHasNoRoomFor() {
        assertThatThrownBy(() ->
                        new VenuePlant(Set.of(PlantOption.SOURCE), Overlap.ONE_AT_A_TIME).fit(VenueSize.ofPanels(4)))
                .hasMessage("a source for the first zone of 4 panels, expected more than one zone. Maybe ask for 5"
                        + " panels.");
        assertThatThrownBy(() -> new VenuePlant(Set.of(PlantOption.TRANSFORMERS), Overlap.ONE_AT_A_TIME)
                        .fit(new VenueSize(4, 60, PhaseSystem.SPLIT_PHASE)))
                .hasMessageContaining("split-phase venue, expected three-phase. Maybe ask for nodes alone.");
        assertThatThrownBy(() -> new VenuePlant(Set.of(PlantOption.NODES), Overlap.ANY))
                .hasMessage("an overlap of systems without systems. Maybe ask for systems, too.");
    }
}
