package evenrise.solver.exact;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Project;
import evenrise.solver.engine.Budget;
import evenrise.solver.engine.PhaseShares;
import evenrise.solver.engine.PlanningRequest;
import evenrise.solver.sample.Sample;
import evenrise.solver.sample.Venue;
import evenrise.solver.sample.VenueSize;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Searches that begin at nothing are told who had best sit on which phases. */
class GuidedSearchTest {
    private final Venue venue = Sample.venue(1, new VenueSize(3, 65, PhaseSystem.THREE_PHASE));

    private static PlanningRequest request(Project project) {
        return new PlanningRequest(project, Optional.empty(), new Budget.Moves(1), 1, 1);
    }

    private static PhaseShares shares(PlanningRequest request) {
        return new ExactBounds().on(request, note -> {}).shares();
    }

    /** Also where the command line would improve what it begins at, if there were anything. */
    @Test
    void aSearchFromNothingIsGuided() {
        PlanningRequest request = request(venue.project());

        assertThat(shares(request).byLoad()).hasSize(65);
        assertThat(shares(request.improving()).byLoad()).hasSize(65);
    }

    @Test
    void whatAnEarlierPlanHasIsLeftToIt() {
        assertThat(shares(request(venue.project()).withFrom(venue.layout())).byLoad())
                .isEmpty();
    }

    @Test
    void aProjectOfSoManyPanelsThatTheyAreNotToldApartIsNotGuided() {
        Project project = Sample.venue(1, VenueSize.ofPanels(12)).project();

        assertThat(shares(request(project)).byLoad()).isEmpty();
    }

    @Test
    void theSameProjectHasTheSameShares() {
        PhaseShares one = shares(request(venue.project()));
        PhaseShares other = shares(request(venue.project()));

        one.byLoad()
                .forEach((load, share) -> assertThat(other.byLoad().get(load)).isEqualTo(share));
    }
}
