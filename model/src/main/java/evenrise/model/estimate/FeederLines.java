package evenrise.model.estimate;

import evenrise.model.project.Cable;
import evenrise.model.project.Catalogue;
import evenrise.model.project.DistributionNode;
import evenrise.model.project.Feeder;
import evenrise.model.project.FeederPrice;
import evenrise.model.project.Panel;
import evenrise.model.project.Project;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Feeders of panels and nodes: the device, of which all of one kind count together where prices fall with numbers, and its
 * cable by length. The kind is the cheapest by list prices of those that are large enough.
 */
public final class FeederLines {
    private final List<FeederPrice> kinds;
    private final Map<String, Feed> feeds = new LinkedHashMap<>();
    private final Map<String, BigDecimal> quantities = new LinkedHashMap<>();

    private record Feed(Optional<FeederPrice> kind, double metres) {}

    private FeederLines(List<FeederPrice> kinds) {
        this.kinds = kinds;
    }

    /** None where a project has neither nodes nor prices of feeders. */
    public static FeederLines of(Project project) {
        List<FeederPrice> kinds = project.catalogue().map(Catalogue::feeders).orElse(List.of());
        FeederLines lines = new FeederLines(kinds);
        if (!project.nodes().isEmpty() || !kinds.isEmpty()) {
            project.panels().forEach(lines::feeder);
            project.nodes().stream().filter(node -> node.source().isEmpty()).forEach(lines::feeder);
        }
        return lines;
    }

    List<BillLine> lines() {
        return priced(quantities);
    }

    /** Whether a line is one of a feeder of this project. */
    public boolean has(String item) {
        return feeds.containsKey(item);
    }

    /** Knows the feeders of another project, too, whose catalogue is the same. */
    public void learn(FeederLines others) {
        feeds.putAll(others.feeds);
    }

    /** So many feeders of each item, with the prices of these numbers. */
    public List<BillLine> priced(Map<String, BigDecimal> numbers) {
        Map<FeederPrice, Long> counts = new HashMap<>();
        numbers.forEach((item, number) ->
                feeds.get(item).kind().ifPresent(kind -> counts.merge(kind, number.longValue(), Long::sum)));
        List<BillLine> lines = new ArrayList<>();
        numbers.forEach((item, number) -> {
            Feed feed = feeds.get(item);
            lines.add(BillLine.material(
                    item,
                    number,
                    feed.kind()
                            .flatMap(kind ->
                                    price(kind, feed.metres(), prices(kind).at(counts.get(kind))))));
        });
        return lines;
    }

    /** What one such feeder costs at least, whatever their number; empty without a price. */
    public Optional<BigDecimal> leastPrice(String item) {
        Feed feed = feeds.get(item);
        return feed.kind()
                .flatMap(kind -> price(kind, feed.metres(), prices(kind).least()));
    }

    /** Whether some price of it has parts of a cent. */
    public boolean hasPartsOfCents(String item) {
        return feeds.get(item)
                .kind()
                .filter(kind -> prices(kind)
                        .all()
                        .anyMatch(each -> price(kind, feeds.get(item).metres(), Optional.of(each))
                                .filter(price -> price.stripTrailingZeros().scale() > BillLine.DECIMALS)
                                .isPresent()))
                .isPresent();
    }

    private void feeder(Panel panel) {
        feeder(panel.feeder(), OptionalDouble.of(panel.ratedAmps()));
    }

    /** Before a transformer its device is rated at another voltage than the node. */
    private void feeder(DistributionNode node) {
        feeder(
                node.feeder(),
                node.transformer().isPresent() ? OptionalDouble.empty() : OptionalDouble.of(node.ratedAmps()));
    }

    private void feeder(Optional<Feeder> feeder, OptionalDouble otherwise) {
        OptionalDouble amps = feeder.map(Feeder::breakerAmps)
                .filter(OptionalDouble::isPresent)
                .orElse(otherwise);
        OptionalDouble metres = feeder.flatMap(Feeder::cable).stream()
                .mapToDouble(Cable::lengthMetres)
                .findFirst();
        String item = "feeder, " + (amps.isPresent() ? BillOfMaterials.amps(amps.getAsDouble()) : "rating not stated")
                + (metres.isPresent() ? ", " + BillOfMaterials.number(metres.getAsDouble()) + " m" : "");
        quantities.merge(item, BigDecimal.ONE, BigDecimal::add);
        feeds.computeIfAbsent(item, any -> new Feed(kind(amps, metres), metres.orElse(0)));
    }

    private Optional<FeederPrice> kind(OptionalDouble amps, OptionalDouble metres) {
        return kinds.stream()
                .filter(kind -> amps.isPresent() && kind.upToAmps() >= amps.getAsDouble())
                .filter(kind -> kind.pricePerMetre() == 0 || metres.isPresent())
                .filter(kind -> listPrice(kind, metres.orElse(0)).isPresent())
                .min(Comparator.comparing(
                        kind -> listPrice(kind, metres.orElse(0)).orElseThrow()));
    }

    private static Optional<BigDecimal> listPrice(FeederPrice kind, double metres) {
        return price(kind, metres, prices(kind).at(1));
    }

    /** Empty where neither device nor cable has a price: nothing is free. */
    private static Optional<BigDecimal> price(FeederPrice kind, double metres, Optional<BigDecimal> device) {
        BigDecimal cable = BigDecimal.valueOf(kind.pricePerMetre()).multiply(BigDecimal.valueOf(metres));
        return Optional.of(device.orElse(BigDecimal.ZERO).add(cable)).filter(price -> price.signum() > 0);
    }

    private static UnitPrices prices(FeederPrice kind) {
        return new UnitPrices(kind.price(), kind.priceBreaks());
    }
}
