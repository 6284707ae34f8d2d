package evenrise.solver.compare;

import evenrise.model.estimate.BillLine;
import evenrise.model.estimate.BillOfMaterials;
import evenrise.model.estimate.CostKind;
import evenrise.model.estimate.FeederLines;
import evenrise.model.estimate.PriceBuildUp;
import evenrise.model.estimate.TypeLines;
import evenrise.model.estimate.TypeLines.PanelLook;
import evenrise.model.project.AddedPercentage;
import evenrise.model.project.Board;
import evenrise.model.project.BoardType;
import evenrise.model.project.Panel;
import evenrise.model.project.PanelType;
import evenrise.model.project.PriceBreak;
import evenrise.model.project.Project;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * The price of a project by what it is built of, without building it: what its bill says, to the cent. It is more than a
 * sum where prices fall with numbers and where cents are rounded; then {@link #rest} and the units' prices are a sum that
 * is nowhere above it by more than {@link #mostRounded}.
 */
final class PriceFormula {
    /** Stands in no name. */
    private static final char SEPARATOR = 0;

    private final Variation variation;
    private final TypeLines types;
    private final List<AddedPercentage> percentages;
    private final double ofMaterial;
    private final double ofLabour;
    private final MakeUp start;
    private final Map<String, BillLine> lines = new LinkedHashMap<>();
    private final FeederLines feeders;
    private final Map<String, Map<String, BigDecimal>> adds = new HashMap<>();
    private final Map<String, BigDecimal> fixed = new HashMap<>();
    private final Map<PanelLook, Integer> panelsThatStay = new LinkedHashMap<>();
    private final Map<BoardType, Integer> boardsThatStay = new LinkedHashMap<>();

    /** One thing of a kind: what it adds at least, and what of it has no price. */
    record Unit(double price, Set<String> lacks) {}

    PriceFormula(Variation variation) {
        this.variation = variation;
        this.types = new TypeLines(Optional.of(variation.catalogue()));
        this.percentages = variation.catalogue().percentages();
        this.ofMaterial = PriceBuildUp.factor(CostKind.MATERIAL, percentages);
        this.ofLabour = PriceBuildUp.factor(CostKind.LABOUR, percentages);
        PanelType first = variation.catalogue().panelTypes().get(0);
        this.start = new MakeUp(
                variation.points().stream()
                        .map(point -> new PanelKind(point, first, 0, Set.of()))
                        .toList(),
                List.of(),
                0);
        Project built = variation.built(start);
        this.feeders = FeederLines.of(built);
        BillOfMaterials.besidesTypes(built).forEach(line -> lines.put(line.item(), line));
        for (FeedPoint point : variation.points()) {
            for (PanelType type : variation.catalogue().panelTypes()) {
                List<PanelKind> more = new ArrayList<>(start.panels());
                more.add(new PanelKind(point, type, 0, Set.of()));
                adds.put(key(point, type), added(new MakeUp(more, List.of(), 0)));
            }
        }
        for (BoardType type : variation.project().boardTypes()) {
            BoardKind one = new BoardKind(variation.systems().get(0), type, 0, Set.of());
            adds.put(key(type), added(new MakeUp(start.panels(), List.of(one), 0)));
        }
        lines.values().forEach(line -> fixed.put(line.item(), line.quantity()));
        start.panels()
                .forEach(kind -> adds.get(key(kind.point(), kind.type()))
                        .forEach((item, more) -> fixed.merge(item, more.negate(), BigDecimal::add)));
        for (Panel panel : variation.panelsThatStay()) {
            panelsThatStay.merge(PanelLook.of(panel), 1, Integer::sum);
        }
        Map<String, BoardType> byId = new HashMap<>();
        variation.project().boardTypes().forEach(type -> byId.put(type.id(), type));
        for (Board board : variation.boardsThatStay()) {
            boardsThatStay.merge(byId.get(board.type()), 1, Integer::sum);
        }
    }

    /** By item, what a bill has more than at the start; items that were not there at the start are noted. */
    private Map<String, BigDecimal> added(MakeUp makeUp) {
        Map<String, BigDecimal> more = new HashMap<>();
        Project built = variation.built(makeUp);
        feeders.learn(FeederLines.of(built));
        for (BillLine line : BillOfMaterials.besidesTypes(built)) {
            BillLine before = lines.computeIfAbsent(
                    line.item(),
                    any -> new BillLine(line.item(), line.kind(), BigDecimal.ZERO, line.unitPrice(), line.unitHours()));
            BigDecimal difference = line.quantity().subtract(before.quantity());
            if (difference.signum() != 0) {
                more.put(line.item(), difference);
            }
        }
        return more;
    }

    Unit unit(FeedPoint point, PanelType type) {
        return unit(types.leastPrice(PanelLook.of(type)), "panels", adds.get(key(point, type)));
    }

    Unit unit(BoardType type) {
        return unit(TypeLines.leastPrice(type), "boards", adds.get(key(type)));
    }

    private Unit unit(Optional<BigDecimal> own, String noun, Map<String, BigDecimal> more) {
        Set<String> lacks = new TreeSet<>();
        if (own.isEmpty()) {
            lacks.add(noun);
        }
        double price = ofMaterial * own.orElse(BigDecimal.ZERO).doubleValue();
        for (Map.Entry<String, BigDecimal> each : more.entrySet()) {
            BillLine line = lines.get(each.getKey());
            if (line.unitPrice().isEmpty()) {
                lacks.add(
                        line.item().startsWith("work")
                                ? line.item()
                                : line.item().split("[ ,]")[0] + "s");
            }
            price += each.getValue().doubleValue() * unrounded(line);
        }
        return new Unit(price, lacks);
    }

    /** What everything costs at least that does not vary. */
    double rest() {
        double rest = 0;
        for (BillLine line : lines.values()) {
            rest += fixed.getOrDefault(line.item(), BigDecimal.ZERO).doubleValue() * unrounded(line);
        }
        for (Map.Entry<PanelLook, Integer> each : panelsThatStay.entrySet()) {
            rest += ofMaterial
                    * each.getValue()
                    * types.leastPrice(each.getKey()).orElse(BigDecimal.ZERO).doubleValue();
        }
        for (Map.Entry<BoardType, Integer> each : boardsThatStay.entrySet()) {
            rest += ofMaterial
                    * each.getValue()
                    * TypeLines.leastPrice(each.getKey())
                            .orElse(BigDecimal.ZERO)
                            .doubleValue();
        }
        return rest;
    }

    /** By how much the sum of what is least may be above the price, where cents are rounded off. */
    double mostRounded() {
        long feedersWithParts = lines.keySet().stream()
                .filter(feeders::has)
                .filter(feeders::hasPartsOfCents)
                .count();
        Stream<Optional<BigDecimal>> ofLines = lines.values().stream()
                .filter(line -> !feeders.has(line.item()))
                .map(BillLine::unitPrice);
        Stream<Optional<BigDecimal>> ofPanels =
                variation.catalogue().panelTypes().stream().flatMap(type -> prices(type.price(), type.priceBreaks()));
        Stream<Optional<BigDecimal>> ofBoards =
                variation.project().boardTypes().stream().flatMap(type -> prices(type.price(), type.priceBreaks()));
        long rounded = Stream.of(ofLines, ofPanels, ofBoards)
                .flatMap(Function.identity())
                .flatMap(Optional::stream)
                .filter(price -> price.stripTrailingZeros().scale() > 2)
                .count();
        return PriceBuildUp.mostRounded((int) (rounded + feedersWithParts), percentages);
    }

    private static Stream<Optional<BigDecimal>> prices(double price, List<PriceBreak> breaks) {
        return Stream.concat(Stream.of(price), breaks.stream().map(PriceBreak::price))
                .map(BigDecimal::valueOf)
                .map(Optional::of);
    }

    /** What so many new panels that look alike cost above what they do at least, those that stay among them. */
    double surcharge(PanelLook look, int count) {
        int all = count + panelsThatStay.getOrDefault(look, 0);
        double least = types.leastPrice(look).orElse(BigDecimal.ZERO).doubleValue();
        return Math.max(0, ofMaterial * (sum(types.panels(look, all)).doubleValue() - all * least));
    }

    /** Alike, of boards. */
    double surcharge(BoardType type, int count) {
        int all = count + boardsThatStay.getOrDefault(type, 0);
        double least = TypeLines.leastPrice(type).orElse(BigDecimal.ZERO).doubleValue();
        return Math.max(0, ofMaterial * (sum(TypeLines.boards(type, all)).doubleValue() - all * least));
    }

    /** What a project of this make-up costs. */
    BigDecimal total(Collection<PanelKind> panels, Collection<BoardKind> boards) {
        Map<String, BigDecimal> quantities = new HashMap<>(fixed);
        Map<PanelLook, Integer> looks = new LinkedHashMap<>(panelsThatStay);
        for (PanelKind kind : panels) {
            looks.merge(PanelLook.of(kind.type()), 1, Integer::sum);
            adds.get(key(kind.point(), kind.type()))
                    .forEach((item, more) -> quantities.merge(item, more, BigDecimal::add));
        }
        Map<BoardType, Integer> ofBoards = new LinkedHashMap<>(boardsThatStay);
        for (BoardKind kind : boards) {
            ofBoards.merge(kind.type(), 1, Integer::sum);
            adds.get(key(kind.type())).forEach((item, more) -> quantities.merge(item, more, BigDecimal::add));
        }
        List<BillLine> bill = new ArrayList<>();
        looks.forEach((look, count) -> bill.add(types.panels(look, count)));
        ofBoards.forEach((type, count) -> bill.add(TypeLines.boards(type, count)));
        Map<String, BigDecimal> feeds = new LinkedHashMap<>();
        for (BillLine line : lines.values()) {
            BigDecimal quantity = quantities.getOrDefault(line.item(), BigDecimal.ZERO);
            if (feeders.has(line.item())) {
                feeds.put(line.item(), quantity);
            } else {
                bill.add(new BillLine(line.item(), line.kind(), quantity, line.unitPrice(), line.unitHours()));
            }
        }
        bill.addAll(feeders.priced(feeds));
        return PriceBuildUp.of(bill, percentages).total();
    }

    private double unrounded(BillLine line) {
        double factor = line.kind() == CostKind.MATERIAL ? ofMaterial : ofLabour;
        Optional<BigDecimal> least = feeders.has(line.item()) ? feeders.leastPrice(line.item()) : line.unitPrice();
        return factor * least.orElse(BigDecimal.ZERO).doubleValue();
    }

    private static BigDecimal sum(BillLine line) {
        return line.sum().orElse(BigDecimal.ZERO);
    }

    private static String key(FeedPoint point, PanelType type) {
        return "panel " + type.id() + SEPARATOR + point.name();
    }

    private static String key(BoardType type) {
        return "board " + type.id();
    }
}
