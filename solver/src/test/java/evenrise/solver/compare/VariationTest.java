package evenrise.solver.compare;

import static evenrise.model.Fixtures.aBoardType;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aProject;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.check.ProjectChecks;
import evenrise.model.estimate.BillOfMaterials;
import evenrise.model.project.AddedPercentage;
import evenrise.model.project.Board;
import evenrise.model.project.Catalogue;
import evenrise.model.project.DistributionNode;
import evenrise.model.project.FeederPrice;
import evenrise.model.project.FixedPlace;
import evenrise.model.project.LabourHours;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.PanelType;
import evenrise.model.project.PercentageBase;
import evenrise.model.project.PriceBreak;
import evenrise.model.project.Project;
import evenrise.model.project.SwitchedSystem;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class VariationTest {
    private static PanelType panelType(String id, int slots, double amps, double price) {
        return PanelType.builder()
                .id(id)
                .slots(slots)
                .ratedAmps(amps)
                .price(price)
                .build();
    }

    private static Catalogue catalogue() {
        return Catalogue.builder()
                .currency("EUR")
                .panelTypes(List.of(panelType("small", 6, 63, 300), panelType("large", 24, 160, 800)))
                .feeders(List.of(FeederPrice.builder().upToAmps(100).price(150).build()))
                .labourPerPanel(40)
                .labourPerBoard(10)
                .build();
    }

    private static Panel panel(String id, String fedFrom) {
        return Panel.builder()
                .id(id)
                .slots(12)
                .ratedAmps(63)
                .fedFrom(Optional.of(fedFrom))
                .build();
    }

    private static DistributionNode node(String id) {
        return DistributionNode.builder().id(id).ratedAmps(200).build();
    }

    /** Two places of two panels each, two systems of a board each, eight loads. */
    private static Project plant() {
        Project flat = aProject()
                .boardTypes(aBoardType("four").outputs(4).price(100))
                .loads(aLoad("a1"), aLoad("a2"), aLoad("a3"), aLoad("a4"), aLoad("b1"), aLoad("b2"))
                .catalogue(catalogue())
                .build();
        return flat.with()
                .nodes(List.of(node("east"), node("west")))
                .systems(List.of(
                        SwitchedSystem.builder().id("hall").build(),
                        SwitchedSystem.builder().id("foyer").build()))
                .panels(List.of(panel("E1", "east"), panel("E2", "east"), panel("W1", "west"), panel("W2", "west")))
                .boards(List.of(board("H", "E1", "hall"), board("F", "W1", "foyer")))
                .loads(flat.loads().stream()
                        .map(load -> load.withSystem(Optional.of(load.id().startsWith("a") ? "hall" : "foyer")))
                        .toList())
                .build();
    }

    private static Board board(String id, String panel, String system) {
        return Board.builder()
                .id(id)
                .type("four")
                .panel(panel)
                .system(Optional.of(system))
                .build();
    }

    private static Project with(Project project, String load, UnaryOperator<Load> change) {
        return project.withLoads(project.loads().stream()
                .map(each -> each.id().equals(load) ? change.apply(each) : each)
                .toList());
    }

    private static MakeUp cheapest(Variation variation) {
        return new MakeUps(variation, new KindPrices(variation), CountRange.ANY, CountRange.ANY)
                .at(0)
                .orElseThrow();
    }

    @Nested
    class Tree {
        @Test
        void panelsHangWhereTheProjectHasPanels() {
            Variation variation = new Variation(plant());

            Project built = variation.built(cheapest(variation));

            assertThat(built.nodes()).isEqualTo(plant().nodes());
            assertThat(built.panels())
                    .extracting(panel -> panel.fedFrom().orElseThrow())
                    .containsExactlyInAnyOrder("east", "west");
            assertThat(ProjectChecks.errors(built)).isEmpty();
        }

        @Test
        void eachSystemHasBoardsOfItsOwnThatReachWhatTheirsReachedInTheProject() {
            Variation variation = new Variation(plant());

            Project built = variation.built(cheapest(variation));

            assertThat(built.boards())
                    .extracting(board -> board.system().orElseThrow())
                    .containsExactly("hall", "foyer");
            assertThat(built.boards().get(0).reaches())
                    .allSatisfy(id -> assertThat(fedFrom(built, id)).isEqualTo("east"));
        }

        @Test
        void aListOfAllPanelsOfAPlaceBecomesTheNewOnesThere() {
            Project project = with(plant(), "a1", load -> load.withPanels(List.of("W1", "W2")));
            Variation variation = new Variation(project);

            Project built = variation.built(cheapest(variation));

            assertThat(built.loads().get(0).panels())
                    .isNotEmpty()
                    .allSatisfy(id -> assertThat(fedFrom(built, id)).isEqualTo("west"));
            assertThat(variation.whatStays()).isEmpty();
        }

        private static String fedFrom(Project project, String panel) {
            return project.panels().stream()
                    .filter(each -> each.id().equals(panel))
                    .findFirst()
                    .flatMap(Panel::fedFrom)
                    .orElseThrow();
        }
    }

    @Nested
    class Staying {
        @Test
        void aPanelThatFeedsANodeStays() {
            Project project = plant();
            Project fed = project.withNodes(
                    List.of(node("east"), node("west"), node("attic").withFedFrom(Optional.of("E1"))));

            assertThat(new Variation(fed).whatStays())
                    .singleElement()
                    .asString()
                    .contains("'E1', for it feeds node 'attic'");
        }

        @Test
        void aPanelThatALoadIsFixedInStaysAndHoldsIt() {
            Project project = with(
                    plant(),
                    "b1",
                    load -> load.withFixed(
                            FixedPlace.builder().panel(Optional.of("W2")).build()));
            Variation variation = new Variation(project);

            assertThat(variation.built(cheapest(variation)).panels())
                    .contains(plant().panels().get(3));
            assertThat(variation.whatStays()).singleElement().asString().contains("load 'b1' is fixed in it");
        }

        @Test
        void panelsThatALoadTellsApartFromOthersOfTheirPlaceStay() {
            Project project = with(plant(), "b1", load -> load.withPanels(List.of("W2")));

            assertThat(new Variation(project).whatStays())
                    .singleElement()
                    .asString()
                    .contains("'W2', for load 'b1' may sit in it and not in others at the same place");
        }

        @Test
        void aBoardThatALoadIsFixedOnStaysAndSoDoesTheOneThatItFollows() {
            Project project = with(
                    plant(),
                    "b1",
                    load -> load.withFixed(
                            FixedPlace.builder().board(Optional.of("F")).build()));
            Project chained = project.withBoards(List.of(
                    board("H", "E1", "hall"),
                    board("G", "W1", "foyer"),
                    board("F", "W1", "foyer").withAfter(Optional.of("G"))));

            assertThat(new Variation(chained).boardsThatStay())
                    .extracting(Board::id)
                    .containsExactly("G", "F");
        }
    }

    @Nested
    class Prices {
        @Test
        void areThoseOfTheBill() {
            Variation variation = new Variation(plant());
            MakeUps makeUps = new MakeUps(variation, new KindPrices(variation), CountRange.ANY, CountRange.ANY);

            for (int number = 0; number < 30; number++) {
                MakeUp makeUp = makeUps.at(number).orElseThrow();
                assertThat(makeUp.price())
                        .isEqualTo(BillOfMaterials.of(variation.built(makeUp))
                                .total()
                                .doubleValue());
            }
        }

        /** Breaks that panels of two places and boards of two systems reach together, hours and percentages. */
        @Test
        void areInOrderWhereTheyAreMoreThanASum() {
            Project sum = plant();
            Catalogue falling = catalogue()
                    .withPanelTypes(List.of(
                            panelType("small", 6, 63, 300).withPriceBreaks(List.of(from(3, 240), from(5, 190.4))),
                            panelType("large", 24, 160, 500)))
                    .with()
                    .feeders(List.of(
                            FeederPrice.builder()
                                    .upToAmps(100)
                                    .price(120.5)
                                    .priceBreaks(List.of(from(4, 60)))
                                    .build(),
                            FeederPrice.builder()
                                    .upToAmps(200)
                                    .price(150.125)
                                    .priceBreaks(List.of(from(3, 110.375)))
                                    .build()))
                    .labourPerPanel(OptionalDouble.empty())
                    .labourHours(Optional.of(
                            LabourHours.builder().rate(61.3).perPanel(0.73).build()))
                    .percentages(List.of(AddedPercentage.builder()
                            .name("tax")
                            .percent(7.7)
                            .of(PercentageBase.ALL_ABOVE)
                            .build()))
                    .build();
            Variation variation = new Variation(sum.with()
                    .catalogue(Optional.of(falling))
                    .boardTypes(sum.boardTypes().stream()
                            .map(type -> type.withPriceBreaks(List.of(from(3, 70), from(4, 40))))
                            .toList())
                    .build());
            Variation plain =
                    new Variation(sum.withCatalogue(Optional.of(falling.withPanelTypes(falling.panelTypes().stream()
                            .map(type -> type.withPriceBreaks(List.of()))
                            .toList()))));
            List<Double> expected = new ArrayList<>();
            MakeUps all = new MakeUps(plain, new KindPrices(plain), CountRange.ANY, CountRange.ANY);
            for (int number = 0; number < 4000; number++) {
                expected.add(BillOfMaterials.of(variation.built(all.at(number).orElseThrow()))
                        .total()
                        .doubleValue());
            }
            expected.sort(Comparator.naturalOrder());

            MakeUps makeUps = new MakeUps(variation, new KindPrices(variation), CountRange.ANY, CountRange.ANY);
            List<Double> listed = new ArrayList<>();
            for (int number = 0; number < 200; number++) {
                MakeUp makeUp = makeUps.at(number).orElseThrow();
                listed.add(makeUp.price());
                assertThat(makeUp.price())
                        .isEqualTo(BillOfMaterials.of(variation.built(makeUp))
                                .total()
                                .doubleValue());
            }

            assertThat(listed).isEqualTo(expected.subList(0, 200));
        }

        @Test
        void thatWereNotListedSinceItWasStoppedAreToldByTheirLeastPrice() {
            Variation whole = new Variation(plant());
            double least = cheapest(whole).price();
            Variation stopped = new Variation(plant(), () -> true);

            MakeUps makeUps = new MakeUps(stopped, new KindPrices(stopped), CountRange.ANY, CountRange.ANY);

            assertThat(makeUps.at(0)).isEmpty();
            assertThat(makeUps.completeBelow()).isLessThanOrEqualTo(least);
        }

        private static PriceBreak from(int number, double price) {
            return PriceBreak.builder().from(number).price(price).build();
        }

        @Test
        void aKindWithoutAPriceIsNotChosenAsIfItWereFree() {
            // a feeder of 160 A has no price, one of 63 A has
            KindPrices prices = new KindPrices(new Variation(plant()));

            assertThat(prices.panels()).extracting(kind -> kind.type().id()).containsOnly("small");
            assertThat(prices.leftOut()).singleElement().asString().contains("'large'", "feeders");
        }

        @Test
        void whatNoKindHasAPriceOfIsSaid() {
            Project project = plant();
            Catalogue bare = catalogue().withFeeders(List.of());

            KindPrices prices = new KindPrices(new Variation(project.withCatalogue(Optional.of(bare))));

            assertThat(prices.leftOut()).isEmpty();
            assertThat(prices.unpriced()).containsExactly("feeders");
        }
    }
}
