package evenrise.model.estimate;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aBoardType;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aProject;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.ProjectBuilder;
import evenrise.model.project.BreakerPrice;
import evenrise.model.project.Catalogue;
import evenrise.model.project.PanelType;
import evenrise.model.project.SlotNumbering;
import java.util.List;
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
        assertThat(bill.total()).isEqualTo(1000 + 50 + 70 + 40 + 15 + 200);
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
                .satisfies(line -> assertThat(line.unitPrice()).hasValue(70));
    }

    @Test
    void hasNoPriceWithoutACatalogueButForBoards() {
        BillOfMaterials bill = BillOfMaterials.of(project()
                .boards(aBoard("B2").type("dear"))
                .boardTypes(aBoardType(), aBoardType("dear").price(300))
                .build());

        assertThat(bill.currency()).isEmpty();
        assertThat(bill.total()).isEqualTo(300);
    }
}
