package evenrise.solver.compare;

import static evenrise.model.Fixtures.aBoardType;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aProject;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.project.FixedPlace;
import evenrise.model.project.Panel;
import evenrise.model.project.Project;
import evenrise.model.project.Spare;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class BidSpareTest {
    private static Project project() {
        Project flat = aProject()
                .boardTypes(aBoardType("six").outputs(6))
                .loads(aLoad("a"), aLoad("b"))
                .build();
        return flat.withPanels(List.of(
                Panel.builder().id("P").slots(12).ratedAmps(63).build(),
                Panel.builder().id("Q").slots(12).ratedAmps(63).build()));
    }

    @Test
    void isTheUsualWhereAProjectSaysNothing() {
        Project bid = BidSpare.USUAL.on(project());

        assertThat(bid.spare()).hasValueSatisfying(spare -> {
            assertThat(spare.slots()).isEqualTo(2);
            assertThat(spare.runningPercent()).isEqualTo(10);
        });
        assertThat(bid.boardTypes().get(0).spareOutputs()).isEqualTo(1);
        assertThat(BidSpare.USUAL.sentence(project())).contains("assumed", "no source");
    }

    @Test
    void isTheProjectsOwnWhereItSaysAnything() {
        Project own = project().withSpare(Optional.of(Spare.builder().slots(1).build()));

        assertThat(BidSpare.USUAL.on(own)).isEqualTo(own);
        assertThat(BidSpare.USUAL.sentence(own)).isEqualTo("Spare: as the project asks.");
    }

    @Test
    void takesWhateverIsMoreWhereItIsAskedFor() {
        Project own = project()
                .withSpare(
                        Optional.of(Spare.builder().slots(5).runningPercent(3).build()));

        Project bid = new BidSpare(2, 0, 20, true).on(own);

        assertThat(bid.spare()).hasValueSatisfying(spare -> {
            assertThat(spare.slots()).isEqualTo(5);
            assertThat(spare.runningPercent()).isEqualTo(20);
        });
    }

    @Test
    void asksNothingOfAPanelThatStays() {
        Project fixed = project()
                .withLoads(List.of(
                        project()
                                .loads()
                                .get(0)
                                .withFixed(FixedPlace.builder()
                                        .panel(Optional.of("Q"))
                                        .build()),
                        project().loads().get(1)));

        Project bid = BidSpare.USUAL.on(fixed);

        assertThat(bid.spareIn(bid.panels().get(0)).orElseThrow().slots()).isEqualTo(2);
        assertThat(bid.spareIn(bid.panels().get(1)).orElseThrow().slots()).isZero();
    }
}
