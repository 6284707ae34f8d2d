package evenrise.model.estimate;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aBoardType;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aProject;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.ProjectBuilder;
import evenrise.model.project.BreakerPrice;
import evenrise.model.project.Cable;
import evenrise.model.project.Catalogue;
import evenrise.model.project.ContactorPrice;
import evenrise.model.project.DistributionNode;
import evenrise.model.project.Feeder;
import evenrise.model.project.FeederPrice;
import evenrise.model.project.NodePrice;
import evenrise.model.project.PanelType;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.PriceBreak;
import evenrise.model.project.Project;
import evenrise.model.project.Secondary;
import evenrise.model.project.SlotNumbering;
import evenrise.model.project.SwitchedBy;
import evenrise.model.project.Transformer;
import evenrise.model.project.TransformerConnection;
import evenrise.model.project.TransformerPrice;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class BillOfMaterialsTest {
    private static final Catalogue CATALOGUE = Catalogue.builder()
            .currency("EUR")
            .panelTypes(List.of(PanelType.builder()
                    .id("wide")
                    .slots(42)
                    .ratedAmps(225)
                    .neutralFactor(1)
                    .numbering(SlotNumbering.ALTERNATING)
                    .price(1000)
                    .build()))
            .breakers(List.of(
                    BreakerPrice.builder()
                            .poles(1)
                            .upToAmps(20)
                            .switched(true)
                            .price(50)
                            .build(),
                    BreakerPrice.builder()
                            .poles(1)
                            .upToAmps(63)
                            .switched(true)
                            .price(70)
                            .build()))
            .labourPerPole(10)
            .labourPerLead(5)
            .labourPerPanel(200)
            .boardsReachAll(true)
            .build();

    private static ProjectBuilder project() {
        return aProject()
                .panels(aPanel("P1").slots(42).ratedAmps(225))
                .boards(aBoard("B1"))
                .loads(
                        aLoad("L1").breakerAmps(20),
                        aLoad("L2").breakerAmps(32),
                        aLoad("L3").breakerAmps(20).twoPole());
    }

    @Test
    void addsThingsAndWork() {
        BillOfMaterials bill = BillOfMaterials.of(project().catalogue(CATALOGUE).build());

        // panel 1000, breakers 50 + 70, four poles at 10, three leads at 5, one panel at 200; board and 2-pole breaker
        // unpriced
        assertThat(bill.total()).isEqualByComparingTo("1375"); // 1000 + 50 + 70 + 40 + 15 + 200
        assertThat(bill.unpriced())
                .extracting(BillLine::item)
                .containsExactly("board eight of 8 outputs", "switched breaker, 2 poles, 20 A", "work: board");
    }

    @Test
    void takesTheSmallestKindThatIsLargeEnough() {
        BillOfMaterials bill = BillOfMaterials.of(project().catalogue(CATALOGUE).build());

        assertThat(bill.lines())
                .filteredOn(line -> line.item().equals("switched breaker, 1 pole, 32 A"))
                .singleElement()
                .satisfies(line -> assertThat(line.unitPrice().orElseThrow()).isEqualByComparingTo("70"));
    }

    @Test
    void hasNoPriceWithoutACatalogueButForBoards() {
        BillOfMaterials bill = BillOfMaterials.of(project()
                .boards(aBoard("B2").type("dear"))
                .boardTypes(aBoardType(), aBoardType("dear").price(300))
                .build());

        assertThat(bill.currency()).isEmpty();
        assertThat(bill.total()).isEqualByComparingTo("300");
    }

    /**
     * A delta-wye of 75 kVA costs 4000, for the cheaper kind is a single one; the node 900; the feeders 300 + 20·8 = 460
     * for 20 m and, of the panel's 225 A without a cable, none; the contactor of 1 + 2 poles at 20 A costs 120; its breakers
     * are ordinary ones, 15 of one pole and no price of two; a lead for the contactor alone.
     */
    @Test
    void countsTheDistributionAndContactors() {
        Catalogue catalogue = Catalogue.builder()
                .currency("EUR")
                .breakers(List.of(BreakerPrice.builder()
                        .poles(1)
                        .upToAmps(20)
                        .switched(false)
                        .price(15)
                        .build()))
                .transformers(List.of(
                        TransformerPrice.builder()
                                .connection(Optional.of(TransformerConnection.SINGLE))
                                .upToKva(100)
                                .price(2000)
                                .build(),
                        TransformerPrice.builder().upToKva(75).price(4000).build()))
                .nodes(List.of(NodePrice.builder().upToAmps(400).price(900).build()))
                .feeders(List.of(FeederPrice.builder()
                        .upToAmps(400)
                        .price(300)
                        .pricePerMetre(8)
                        .build()))
                .contactors(List.of(
                        ContactorPrice.builder()
                                .upToPoles(2)
                                .upToAmps(63)
                                .price(80)
                                .build(),
                        ContactorPrice.builder()
                                .upToPoles(4)
                                .upToAmps(25)
                                .price(120)
                                .build()))
                .labourPerLead(5)
                .labourPerNode(100)
                .labourPerContactor(30)
                .build();
        Project plant = aProject()
                .panels(aPanel("P1").slots(42).ratedAmps(225))
                .boards(aBoard("B1"))
                .loads(aLoad("L1").breakerAmps(20), aLoad("L2").breakerAmps(20).twoPole())
                .catalogue(catalogue)
                .build();
        plant = plant.withNodes(List.of(
                        DistributionNode.builder()
                                .id("MDP")
                                .ratedAmps(400)
                                .feeder(Optional.of(Feeder.builder()
                                        .cable(Optional.of(Cable.builder()
                                                .lengthMetres(20)
                                                .size("250 kcmil")
                                                .build()))
                                        .build()))
                                .build(),
                        DistributionNode.builder()
                                .id("T")
                                .fedFrom(Optional.of("MDP"))
                                .ratedAmps(208)
                                .transformer(Optional.of(Transformer.builder()
                                        .connection(TransformerConnection.DELTA_WYE)
                                        .ratedKva(75)
                                        .secondary(Secondary.builder()
                                                .system(PhaseSystem.THREE_PHASE)
                                                .lineToNeutralVolts(120)
                                                .build())
                                        .build()))
                                .build()))
                .withLoads(List.of(
                        plant.loads().get(0).withSwitchedBy(SwitchedBy.CONTACTOR),
                        plant.loads().get(1).withComesWith(Optional.of("L1"))));

        BillOfMaterials bill = BillOfMaterials.of(plant);

        assertThat(bill.total()).isEqualByComparingTo("5730"); // 4000 + 900 + 460 + 120 + 15 + 5 + 2 * 100 + 30
        assertThat(bill.unpriced())
                .extracting(BillLine::item)
                .contains("breaker, 2 poles, 20 A", "feeder, 225 A", "feeder, rating not stated");
        assertThat(bill.lines())
                .extracting(BillLine::item)
                .contains(
                        "transformer, delta-wye, 75 kVA",
                        "distribution point, 400 A",
                        "feeder, 400 A, 20 m",
                        "contactor, 3 poles, 20 A");
    }

    private static DistributionNode node(String id, double amps) {
        return DistributionNode.builder().id(id).ratedAmps(amps).build();
    }

    /** Two nodes of one kind at 800 each; three feeders of one kind at 250 each: the nodes' and the panel's. */
    @Test
    void thingsOfOneKindCountTogetherWherePricesFallWithNumbers() {
        Catalogue catalogue = Catalogue.builder()
                .currency("EUR")
                .nodes(List.of(NodePrice.builder()
                        .upToAmps(400)
                        .price(900)
                        .priceBreaks(List.of(from(2, 800)))
                        .build()))
                .feeders(List.of(FeederPrice.builder()
                        .upToAmps(400)
                        .price(300)
                        .priceBreaks(List.of(from(3, 250), from(4, 100)))
                        .build()))
                .build();
        Project plant = project().catalogue(catalogue).build().withNodes(List.of(node("N1", 300), node("N2", 400)));

        assertThat(BillOfMaterials.of(plant).total()).isEqualByComparingTo("2350"); // 2 * 800 + 3 * 250
    }

    @Test
    void aKindWithoutAPriceIsNeverTheCheapest() {
        Catalogue catalogue = Catalogue.builder()
                .currency("EUR")
                .nodes(List.of(
                        NodePrice.builder().upToAmps(400).price(0).build(),
                        NodePrice.builder().upToAmps(630).price(1200).build()))
                .feeders(List.of(FeederPrice.builder().upToAmps(400).price(0).build()))
                .build();
        BillOfMaterials bill =
                BillOfMaterials.of(project().catalogue(catalogue).build().withNodes(List.of(node("N", 300))));

        assertThat(bill.total()).isEqualByComparingTo("1200");
        assertThat(bill.unpriced()).extracting(BillLine::item).contains("feeder, 300 A", "feeder, 225 A");
    }

    private static PriceBreak from(int count, double price) {
        return PriceBreak.builder().from(count).price(price).build();
    }
}
