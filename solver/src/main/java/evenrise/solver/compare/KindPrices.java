package evenrise.solver.compare;

import evenrise.model.estimate.BillLine;
import evenrise.model.estimate.BillOfMaterials;
import evenrise.model.project.BoardType;
import evenrise.model.project.PanelType;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;

/**
 * What one thing of each kind adds to the price of a project, as its bill has it, so that prices need no plan. What has no
 * price must not win as if it were free: a kind that lacks one is left out where another lacks less.
 */
final class KindPrices {
    private final Variation variation;
    private final MakeUp start;
    private final BillOfMaterials bill;
    private final List<PanelKind> panels = new ArrayList<>();
    private final List<BoardKind> boards = new ArrayList<>();
    private final Set<String> leftOut = new LinkedHashSet<>();
    private final Set<String> unpriced = new TreeSet<>();
    private final double rest;

    private record Priced<K>(K kind, Set<String> lacks) {}

    KindPrices(Variation variation) {
        this.variation = variation;
        List<PanelType> types = variation.catalogue().panelTypes();
        List<PanelKind> first = variation.points().stream()
                .map(point -> new PanelKind(point, types.get(0), 0))
                .toList();
        start = new MakeUp(first, List.of(), 0);
        bill = BillOfMaterials.of(variation.built(start));
        double ofStart = 0;
        for (int i = 0; i < first.size(); i++) {
            List<Priced<PanelKind>> priced = new ArrayList<>();
            for (PanelType type : types) {
                priced.add(panel(first.get(i).point(), type));
            }
            ofStart += priced.get(0).kind().price();
            panels.addAll(chosen(priced, kind -> "panel type '" + kind.type().id() + "'"));
        }
        rest = bill.total() - ofStart;
        List<Priced<BoardKind>> priced = variation.project().boardTypes().stream()
                .filter(type -> GroupPacking.room(type) > 0)
                .map(this::board)
                .toList();
        List<BoardKind> good =
                chosen(priced, kind -> "board type '" + kind.type().id() + "'");
        for (Optional<String> system : variation.systems()) {
            good.forEach(kind -> boards.add(new BoardKind(system, kind.type(), kind.price())));
        }
    }

    List<PanelKind> panels() {
        return panels;
    }

    List<BoardKind> boards() {
        return boards;
    }

    /** Price of all that does not vary. */
    double rest() {
        return rest;
    }

    /** Kinds that are not chosen, since nobody knows what they cost. */
    List<String> leftOut() {
        return List.copyOf(leftOut);
    }

    /** What varies with the make-up and has no price in any, so that a make-up with more of it is not dearer for it. */
    List<String> unpriced() {
        return List.copyOf(unpriced);
    }

    private Priced<PanelKind> panel(FeedPoint point, PanelType type) {
        List<PanelKind> more = new ArrayList<>(start.panels());
        more.add(new PanelKind(point, type, 0));
        BillOfMaterials with = BillOfMaterials.of(variation.built(new MakeUp(more, List.of(), 0)));
        Set<String> lacks = lacks(with);
        if (type.price() == 0) {
            lacks.add("panels");
        }
        return new Priced<>(new PanelKind(point, type, with.total() - bill.total()), lacks);
    }

    private Priced<BoardKind> board(BoardType type) {
        MakeUp more = new MakeUp(
                start.panels(), List.of(new BoardKind(variation.systems().get(0), type, 0)), 0);
        BillOfMaterials with = BillOfMaterials.of(variation.built(more));
        return new Priced<>(new BoardKind(Optional.empty(), type, with.total() - bill.total()), lacks(with));
    }

    /** Kinds of line without a price that are more than at the start. */
    private Set<String> lacks(BillOfMaterials with) {
        Map<String, Integer> before = new HashMap<>();
        bill.lines().forEach(line -> before.put(line.item(), line.quantity()));
        Set<String> lacks = new TreeSet<>();
        for (BillLine line : with.unpriced()) {
            if (line.quantity() > before.getOrDefault(line.item(), 0)) {
                String noun = line.item().startsWith("work")
                        ? line.item()
                        : line.item().split("[ ,]")[0] + "s";
                lacks.add(noun);
            }
        }
        return lacks;
    }

    private <K> List<K> chosen(List<Priced<K>> priced, Function<K, String> name) {
        int fewest = priced.stream().mapToInt(each -> each.lacks().size()).min().orElse(0);
        List<K> chosen = new ArrayList<>();
        for (Priced<K> each : priced) {
            if (each.lacks().size() > fewest) {
                leftOut.add(name.apply(each.kind()) + " (no price of " + String.join(", ", each.lacks()) + ")");
            } else {
                chosen.add(each.kind());
                unpriced.addAll(each.lacks());
            }
        }
        return chosen;
    }
}
