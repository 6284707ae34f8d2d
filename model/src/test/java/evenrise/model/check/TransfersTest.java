package evenrise.model.check;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aProject;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.ProjectBuilder;
import evenrise.model.project.DistributionNode;
import evenrise.model.project.DistributionNodeBuilder;
import evenrise.model.project.NodeSource;
import evenrise.model.project.PhaseSystem;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** Where panels, nodes and boards may be fed from. */
class TransfersTest {
    private DistributionNodeBuilder main = node("M").alternateFedFrom("GEN").transferSeconds(3);
    private double sourceVolts = 120;
    private Optional<String> fedBy = Optional.empty();

    private static DistributionNodeBuilder node(String id) {
        return DistributionNode.builder().id(id).ratedAmps(400);
    }

    private ProjectBuilder project() {
        return aProject()
                .panels(aPanel("P1").with(panel -> panel.fedFrom("M")))
                .boards(aBoard("B1").with(board -> board.fedBy(fedBy)))
                .loads(aLoad("amp"), aLoad("outlet").unswitched())
                .with(it -> it.nodes(List.of(
                        main.build(),
                        node("GEN")
                                .source(NodeSource.builder()
                                        .system(PhaseSystem.THREE_PHASE)
                                        .lineToNeutralVolts(sourceVolts)
                                        .frequencyHertz(60)
                                        .build())
                                .build())));
    }

    private List<String> errors() {
        return ProjectChecks.errors(project().build()).stream()
                .map(each -> each.pointer() + ": " + each.value() + "; " + each.expected())
                .toList();
    }

    @Nested
    class AnAlternate {
        @Test
        void isKeptWhereItExistsAndHasTheSameVoltage() {
            assertThat(errors()).isEmpty();
        }

        @Test
        void hasToExist() {
            main = node("M").alternateFedFrom("GEM").transferSeconds(3);

            assertThat(errors())
                    .containsExactly(
                            "/nodes/0/alternate_fed_from: 'GEM'; the id of one of the nodes or panels, or supply");
        }

        @Test
        void isAnotherThanWhatFeedsItAsUsual() {
            main = node("M").alternateFedFrom("supply").transferSeconds(3);

            assertThat(errors())
                    .containsExactly("/nodes/0/alternate_fed_from: 'supply', which feeds it as usual; another source");
        }

        /** 5 % of 120 V are 6 V. */
        @Test
        void hasTheVoltageOfWhatFeedsItWithinFivePercent() {
            sourceVolts = 126;
            assertThat(errors()).isEmpty();

            sourceVolts = 127;
            assertThat(errors())
                    .containsExactly(
                            "/nodes/0/alternate_fed_from: 'GEN' of 127 V three-phase; the system of what feeds it"
                                    + " as usual and its 120 V within 5 %");
        }

        @Test
        void isNotFedByWhatIsTransferred() {
            main = node("M").alternateFedFrom("P1").transferSeconds(3);

            assertThat(errors())
                    .singleElement()
                    .satisfies(each -> assertThat(each)
                            .startsWith("/nodes/0/alternate_fed_from: 'P1', in a circle of")
                            .endsWith("something that it does not feed itself, however others are transferred"));
        }

        @Test
        void needsATransferTime() {
            main = node("M").alternateFedFrom("GEN");

            assertThat(errors())
                    .containsExactly("/nodes/0/transfer_s: missing; the time without voltage while it is transferred");
        }

        @Test
        void isWhatTransferTimeAndNeutralAreAbout() {
            main = node("M").transferSeconds(3).neutralSwitched(true);

            assertThat(errors())
                    .containsExactly(
                            "/nodes/0/transfer_s: 3; nothing without an alternate_fed_from",
                            "/nodes/0/neutral_switched: stated; nothing without an alternate_fed_from");
        }

        @Test
        void isNothingForASource() {
            main = node("M")
                    .source(NodeSource.builder()
                            .system(PhaseSystem.THREE_PHASE)
                            .lineToNeutralVolts(120)
                            .frequencyHertz(60)
                            .build())
                    .alternateFedFrom("GEN")
                    .transferSeconds(3);

            assertThat(errors())
                    .containsExactly(
                            "/nodes/0/alternate_fed_from: 'GEN' though the node is a source; nothing: a source is"
                                    + " fed by nothing");
        }
    }

    @Nested
    class TheFeedOfABoard {
        @Test
        void isAPanelANodeTheSupplyOrALoadThatIsAlwaysOn() {
            for (String each : List.of("P1", "M", "GEN", "supply", "outlet")) {
                fedBy = Optional.of(each);

                assertThat(errors()).as(each).isEmpty();
            }
        }

        @Test
        void hasToExist() {
            fedBy = Optional.of("outlets");

            assertThat(errors()).containsExactly("/boards/0/fed_by: 'outlets'; the id of a panel, a node or a load");
        }

        @Test
        void isNoLoadThatIsSwitched() {
            fedBy = Optional.of("amp");

            assertThat(errors())
                    .containsExactly("/boards/0/fed_by: 'amp', which is switched; a load that is not switched: a board"
                            + " cannot wait for another to feed it");
        }
    }
}
