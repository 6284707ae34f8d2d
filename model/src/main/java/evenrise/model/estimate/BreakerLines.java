package evenrise.model.estimate;

import evenrise.model.contract.Phrase;
import evenrise.model.project.BreakerPrice;
import evenrise.model.project.Load;
import evenrise.model.project.Project;
import java.math.BigDecimal;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** Breakers: each is of the smallest kind that is large enough, and counts with all others of its kind. */
final class BreakerLines {
    private final List<BreakerPrice> kinds;
    private final Map<BreakerPrice, Integer> counts = new HashMap<>();

    private record Listed(int count, Optional<BreakerPrice> kind) {}

    private BreakerLines(Project project) {
        this.kinds = project.catalogue().stream()
                .flatMap(catalogue -> catalogue.breakers().stream())
                .toList();
    }

    static List<BillLine> of(Project project) {
        return new BreakerLines(project).lines(project);
    }

    private List<BillLine> lines(Project project) {
        Map<String, Listed> items = new TreeMap<>();
        for (Load load : project.loads()) {
            Optional<BreakerPrice> kind = kind(load);
            kind.ifPresent(each -> counts.merge(each, 1, Integer::sum));
            String item = (PlantLines.hasSwitchedBreaker(load) ? "switched breaker, " : "breaker, ")
                    + Phrase.counted(load.poles(), "pole") + ", "
                    + BillOfMaterials.amps(load.breakerAmps());
            items.merge(item, new Listed(1, kind), (before, one) -> new Listed(before.count() + 1, kind));
        }
        return items.entrySet().stream()
                .map(each -> BillLine.material(
                        each.getKey(),
                        BigDecimal.valueOf(each.getValue().count()),
                        each.getValue()
                                .kind()
                                .flatMap(
                                        kind -> new UnitPrices(kind.price(), kind.priceBreaks()).at(counts.get(kind)))))
                .toList();
    }

    private Optional<BreakerPrice> kind(Load load) {
        return kinds.stream()
                .filter(each -> each.poles() == load.poles() && each.switched() == PlantLines.hasSwitchedBreaker(load))
                .filter(each -> each.upToAmps() >= load.breakerAmps())
                .min(Comparator.comparingDouble(BreakerPrice::upToAmps));
    }
}
