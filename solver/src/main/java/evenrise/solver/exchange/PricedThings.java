package evenrise.solver.exchange;

import evenrise.model.project.BreakerPrice;
import evenrise.model.project.CablePrice;
import evenrise.model.project.CatalogueBuilder;
import evenrise.model.project.ContactorPrice;
import evenrise.model.project.FeederPrice;
import evenrise.model.project.NodePrice;
import evenrise.model.project.PanelType;
import evenrise.model.project.SlotNumbering;
import evenrise.model.project.TransformerConnection;
import evenrise.model.project.TransformerPrice;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.function.Consumer;

/** Things to buy, as rows of a table of prices state them. */
final class PricedThings {
    private final Consumer<String> needsRate;
    private final List<PanelType> panels = new ArrayList<>();
    private final List<BreakerPrice> breakers = new ArrayList<>();
    private final List<TransformerPrice> transformers = new ArrayList<>();
    private final List<NodePrice> nodes = new ArrayList<>();
    private final List<FeederPrice> feeders = new ArrayList<>();
    private final List<ContactorPrice> contactors = new ArrayList<>();
    private final List<CablePrice> cables = new ArrayList<>();

    /** @param needsRate takes what states hours */
    PricedThings(Consumer<String> needsRate) {
        this.needsRate = needsRate;
    }

    /** @throws IllegalArgumentException where a figure is out of its bounds */
    void take(PricedKind kind, PriceCells cells) {
        switch (kind) {
            case PANEL -> panels.add(panel(cells));
            case BREAKER ->
                breakers.add(BreakerPrice.builder()
                        .poles(cells.neededWhole(PriceColumn.POLES))
                        .upToAmps(cells.neededNumber(PriceColumn.UP_TO_AMPS))
                        .switched(cells.isYes(PriceColumn.SWITCHED))
                        .price(cells.price())
                        .priceBreaks(cells.breaks())
                        .build());
            case TRANSFORMER ->
                transformers.add(TransformerPrice.builder()
                        .connection(cells.word(PriceColumn.CONNECTION, TransformerConnection.values()))
                        .upToKva(cells.neededNumber(PriceColumn.UP_TO_KVA))
                        .price(cells.price())
                        .priceBreaks(cells.breaks())
                        .build());
            case NODE ->
                nodes.add(NodePrice.builder()
                        .upToAmps(cells.neededNumber(PriceColumn.UP_TO_AMPS))
                        .price(cells.price())
                        .priceBreaks(cells.breaks())
                        .build());
            case FEEDER ->
                feeders.add(FeederPrice.builder()
                        .upToAmps(cells.neededNumber(PriceColumn.UP_TO_AMPS))
                        .price(cells.price())
                        .pricePerMetre(cells.number(PriceColumn.PER_METRE, 0))
                        .priceBreaks(cells.breaks())
                        .build());
            case CONTACTOR ->
                contactors.add(ContactorPrice.builder()
                        .upToPoles(cells.neededWhole(PriceColumn.POLES))
                        .upToAmps(cells.neededNumber(PriceColumn.UP_TO_AMPS))
                        .price(cells.price())
                        .priceBreaks(cells.breaks())
                        .build());
            case CABLE -> cables.add(cable(cells));
            default -> throw new IllegalStateException(kind + " is nothing to buy");
        }
    }

    private static PanelType panel(PriceCells cells) {
        return PanelType.builder()
                .id(cells.needed(PriceColumn.NAME))
                .slots(cells.neededWhole(PriceColumn.SLOTS))
                .ratedAmps(cells.neededNumber(PriceColumn.UP_TO_AMPS))
                .neutralFactor(cells.number(PriceColumn.NEUTRAL, 1))
                .numbering(cells.word(PriceColumn.NUMBERING, SlotNumbering.values())
                        .orElse(SlotNumbering.ALTERNATING))
                .floorSquareMetres(cells.number(PriceColumn.FLOOR))
                .price(cells.price())
                .priceBreaks(cells.breaks())
                .build();
    }

    private CablePrice cable(PriceCells cells) {
        double hoursPerMetre = cells.number(PriceColumn.HOURS, 0);
        if (hoursPerMetre > 0) {
            needsRate.accept("cable");
        }
        OptionalInt poles = cells.text(PriceColumn.POLES).isEmpty()
                ? OptionalInt.empty()
                : OptionalInt.of(cells.neededWhole(PriceColumn.POLES));
        return CablePrice.builder()
                .poles(poles)
                .upToAmps(cells.neededNumber(PriceColumn.UP_TO_AMPS))
                .pricePerMetre(cells.neededNumber(PriceColumn.PER_METRE))
                .conduitPerMetre(cells.number(PriceColumn.CONDUIT, 0))
                .hoursPerMetre(hoursPerMetre)
                .build();
    }

    void into(CatalogueBuilder catalogue) {
        catalogue
                .panelTypes(panels)
                .breakers(breakers)
                .transformers(transformers)
                .nodes(nodes)
                .feeders(feeders)
                .contactors(contactors)
                .cables(cables);
    }
}
