package evenrise.model.estimate;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aProject;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.offset;

import evenrise.model.plan.Assignment;
import evenrise.model.plan.Plan;
import evenrise.model.project.AddedPercentage;
import evenrise.model.project.BreakerPrice;
import evenrise.model.project.Cable;
import evenrise.model.project.CablePrice;
import evenrise.model.project.Catalogue;
import evenrise.model.project.CatalogueBuilder;
import evenrise.model.project.Circuit;
import evenrise.model.project.LabourHours;
import evenrise.model.project.PanelType;
import evenrise.model.project.PercentageBase;
import evenrise.model.project.PriceBreak;
import evenrise.model.project.Project;
import evenrise.model.project.SlotNumbering;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

/** A bid that was reckoned by hand. */
class PriceBuildUpTest {
    private static final List<AddedPercentage> PERCENTAGES = List.of(
            percentage("freight", 4, PercentageBase.MATERIAL),
            percentage("supervision", 7.5, PercentageBase.LABOUR),
            percentage("contingency", 5, PercentageBase.MATERIAL_AND_LABOUR),
            percentage("tax", 19, PercentageBase.ALL_ABOVE));

    private static AddedPercentage percentage(String name, double percent, PercentageBase of) {
        return AddedPercentage.builder().name(name).percent(percent).of(of).build();
    }

    private static PriceBreak from(int number, double price) {
        return PriceBreak.builder().from(number).price(price).build();
    }

    private static CatalogueBuilder catalogue() {
        return Catalogue.builder()
                .currency("EUR")
                .panelTypes(List.of(PanelType.builder()
                        .id("wide")
                        .slots(42)
                        .ratedAmps(225)
                        .neutralFactor(1)
                        .numbering(SlotNumbering.ALTERNATING)
                        .price(1000)
                        .priceBreaks(List.of(from(2, 950), from(5, 880)))
                        .build()))
                .breakers(List.of(BreakerPrice.builder()
                        .poles(1)
                        .upToAmps(20)
                        .switched(true)
                        .price(50.1)
                        .priceBreaks(List.of(from(2, 45.35)))
                        .build()))
                .cables(List.of(CablePrice.builder()
                        .upToAmps(20)
                        .pricePerMetre(1.234)
                        .conduitPerMetre(3.5)
                        .hoursPerMetre(0.05)
                        .build()))
                .labourHours(Optional.of(LabourHours.builder()
                        .rate(60)
                        .nightRate(90)
                        .nightPercent(20)
                        .perPole(0.35)
                        .perLead(0.25)
                        .perLeadBetweenPanels(0.5)
                        .perBoard(1.5)
                        .perPanel(8)
                        .build()))
                .leadBetweenPanels(17.5)
                .percentages(PERCENTAGES);
    }

    private static Optional<Circuit> circuit(double metres) {
        return Optional.of(Circuit.builder()
                .cable(Optional.of(
                        Cable.builder().lengthMetres(metres).size("12 AWG").build()))
                .build());
    }

    /** Two panels, a board, two breakers of one kind by different ratings. */
    private static Project project(Catalogue catalogue) {
        Project project = aProject()
                .panels(
                        aPanel("P1").slots(42).ratedAmps(225),
                        aPanel("P2").slots(42).ratedAmps(225))
                .boards(aBoard("B1").in("P1"))
                .loads(aLoad("L1").breakerAmps(20), aLoad("L2").breakerAmps(16))
                .catalogue(catalogue)
                .build();
        return project.withLoads(List.of(
                project.loads().get(0).withCircuit(circuit(12.5)),
                project.loads().get(1).withCircuit(circuit(20.2))));
    }

    /**
     * The rate is 60·0.8 + 90·0.2 = 66. Material: panels 2·950 = 1900; breakers 2·45.35 = 90.70, for both are of the kind up
     * to 20 A; cables 12.5·1.234 = 15.43 and 20.2·1.234 = 24.93; conduits 43.75 and 70.70; in all 2145.51. Labour: cables
     * 0.05·66·12.5 = 41.25 and ·20.2 = 66.66; poles 2·0.35·66 = 46.20; leads 2·0.25·66 = 33; a board 99; panels 1056; in all
     * 1342.11. Freight 85.82, supervision 100.66, contingency of 3487.62 is 174.38, tax of 3848.48 is 731.21.
     */
    @Test
    void addsBreaksHoursLengthsAndPercentages() {
        BillOfMaterials bill = BillOfMaterials.of(project(catalogue().build())
                .withBoardTypes(project(catalogue().build()).boardTypes().stream()
                        .map(type -> type.withPrice(0))
                        .toList()));
        PriceBuildUp buildUp = bill.buildUp();

        assertThat(buildUp.material()).isEqualByComparingTo("2145.51");
        assertThat(buildUp.labour()).isEqualByComparingTo("1342.11");
        assertThat(buildUp.added())
                .extracting(PriceBuildUp.Added::amount)
                .usingElementComparator(BigDecimal::compareTo)
                .containsExactly(
                        new BigDecimal("85.82"),
                        new BigDecimal("100.66"),
                        new BigDecimal("174.38"),
                        new BigDecimal("731.21"));
        assertThat(bill.total()).isEqualByComparingTo("4579.69");
        // 32.7 m at 0.05, poles 0.7, leads 0.5, board 1.5, panels 16
        assertThat(bill.hours()).isEqualByComparingTo("20.335");
        assertThat(bill.unpriced()).extracting(BillLine::item).containsExactly("board eight of 8 outputs");
    }

    /** L1 in P1 and L2 in P2, both on the board in P1: one lead crosses, 17.50 and half an hour at 66 more. */
    @Test
    void countsLeadsBetweenPanelsWhereAPlanSaysWhichTheyAre() {
        Project project = project(catalogue().percentages(List.of()).build());
        Plan plan = Plan.builder()
                .boards(List.of())
                .assignments(List.of(sits("L1", "P1", 1), sits("L2", "P2", 2)))
                .build();

        BigDecimal more = BillOfMaterials.of(project, Optional.of(plan))
                .total()
                .subtract(BillOfMaterials.of(project).total());

        assertThat(more).isEqualByComparingTo("50.50");
        assertThat(LeadLines.between(project, plan)).isEqualTo(1);
        assertThat(PriceBasis.of(project).assumptions())
                .contains("Control leads between panels follow from a plan and are not in this price.");
    }

    private static Assignment sits(String load, String panel, int output) {
        return Assignment.builder()
                .load(load)
                .panel(panel)
                .slot(1)
                .phases(List.of())
                .board(Optional.of("B1"))
                .output(OptionalInt.of(output))
                .build();
    }

    @Test
    void aCableWithoutALengthIsListedWithoutAPrice() {
        Project project = project(catalogue().build());
        Project open = project.withLoads(
                List.of(project.loads().get(0), project.loads().get(1).withCircuit(Optional.empty())));

        assertThat(BillOfMaterials.of(open).unpriced())
                .extracting(BillLine::item)
                .contains("cable, 1 pole, 16 A, length not stated");
    }

    @Test
    void hoursWithoutTheirRateHaveNoPrice() {
        Project project = project(catalogue().labourHours(Optional.empty()).build());

        assertThat(BillOfMaterials.of(project).unpriced())
                .extracting(BillLine::item)
                .contains("work: cable, 1 pole, 20 A, metres", "work: panel");
    }

    /** 1.04 + 0.05 = 1.09 and 1.075 + 0.05 = 1.125, both with 19 % on all of it. */
    @Test
    void percentagesAreFactorsOfMaterialAndLabour() {
        assertThat(PriceBuildUp.factor(CostKind.MATERIAL, PERCENTAGES)).isCloseTo(1.09 * 1.19, offset(1e-12));
        assertThat(PriceBuildUp.factor(CostKind.LABOUR, PERCENTAGES)).isCloseTo(1.125 * 1.19, offset(1e-12));
    }

    @Test
    void theUsualExclusionsDoNotNameWhatIsIncluded() {
        String sentence = PriceBasis.of(project(catalogue().build())).exclusionSentence();

        assertThat(sentence)
                .contains("whatever of freight, taxes, contingency, overheads and profit is not listed")
                .doesNotContain("work at night");
    }
}
