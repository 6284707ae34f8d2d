package evenrise.solver.exchange;

import evenrise.model.project.AddedPercentage;
import evenrise.model.project.BoardType;
import evenrise.model.project.BreakerPrice;
import evenrise.model.project.CablePrice;
import evenrise.model.project.Catalogue;
import evenrise.model.project.ContactorPrice;
import evenrise.model.project.FeederPrice;
import evenrise.model.project.LabourHours;
import evenrise.model.project.NodePrice;
import evenrise.model.project.PanelType;
import evenrise.model.project.PercentageBase;
import evenrise.model.project.PriceBreak;
import evenrise.model.project.TransformerPrice;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/** One price of each kind, to show how a table is filled in. All of them are invented. */
final class ExamplePrices {
    private ExamplePrices() {}

    static Catalogue catalogue() {
        return Catalogue.builder()
                .currency("EUR")
                .source(Optional.of("price list of our buyers, 2026-01"))
                .panelTypes(List.of(PanelType.builder()
                        .id("p42")
                        .slots(42)
                        .ratedAmps(225)
                        .price(1180)
                        .priceBreaks(breaks(5, 1100, 20, 1040))
                        .floorSquareMetres(1.2)
                        .build()))
                .breakers(List.of(
                        BreakerPrice.builder()
                                .poles(1)
                                .upToAmps(20)
                                .price(92)
                                .priceBreaks(breaks(50, 88, 200, 84.5))
                                .build(),
                        BreakerPrice.builder()
                                .poles(1)
                                .upToAmps(63)
                                .switched(false)
                                .price(15)
                                .build()))
                .cables(List.of(CablePrice.builder()
                        .poles(OptionalInt.of(1))
                        .upToAmps(20)
                        .pricePerMetre(1.8)
                        .conduitPerMetre(3.5)
                        .hoursPerMetre(0.05)
                        .build()))
                .leadBetweenPanels(14)
                .transformers(List.of(
                        TransformerPrice.builder().upToKva(75).price(4000).build()))
                .nodes(List.of(NodePrice.builder().upToAmps(400).price(2200).build()))
                .feeders(List.of(FeederPrice.builder()
                        .upToAmps(225)
                        .price(310)
                        .pricePerMetre(24)
                        .build()))
                .contactors(List.of(ContactorPrice.builder()
                        .upToPoles(4)
                        .upToAmps(63)
                        .price(120)
                        .build()))
                .labourPerNode(900)
                .labourHours(Optional.of(LabourHours.builder()
                        .rate(60)
                        .nightRate(90)
                        .nightPercent(20)
                        .perPole(0.35)
                        .perLead(0.25)
                        .perLeadBetweenPanels(0.3)
                        .perBoard(1.5)
                        .perPanel(8)
                        .perContactor(0.5)
                        .build()))
                .percentages(List.of(
                        added("freight", 4, PercentageBase.MATERIAL),
                        added("contingency", 5, PercentageBase.MATERIAL_AND_LABOUR)))
                .exclusions(Optional.of(List.of("the supply, its meter and what stands before it")))
                .build();
    }

    static List<BoardType> boards() {
        return List.of(BoardType.builder()
                .id("b12")
                .outputs(12)
                .price(640)
                .priceBreaks(breaks(5, 600, 10, 570))
                .build());
    }

    private static List<PriceBreak> breaks(int first, double price, int second, double lower) {
        return List.of(
                PriceBreak.builder().from(first).price(price).build(),
                PriceBreak.builder().from(second).price(lower).build());
    }

    private static AddedPercentage added(String name, double percent, PercentageBase of) {
        return AddedPercentage.builder().name(name).percent(percent).of(of).build();
    }
}
