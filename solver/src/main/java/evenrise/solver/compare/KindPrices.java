package evenrise.solver.compare;

import evenrise.model.project.BoardType;
import evenrise.model.project.PanelType;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;

/**
 * Kinds of panel and board to choose from. What has no price must not win as if it were free: a kind that lacks one is left
 * out where another lacks less.
 */
final class KindPrices {
    private final PriceFormula formula;
    private final List<PanelKind> panels = new ArrayList<>();
    private final List<BoardKind> boards = new ArrayList<>();
    private final Set<String> leftOut = new LinkedHashSet<>();
    private final Set<String> unpriced = new TreeSet<>();

    KindPrices(Variation variation) {
        this.formula = new PriceFormula(variation);
        for (FeedPoint point : variation.points()) {
            List<PanelKind> all = new ArrayList<>();
            for (PanelType type : variation.catalogue().panelTypes()) {
                PriceFormula.Unit unit = formula.unit(point, type);
                all.add(new PanelKind(point, type, unit.price(), unit.lacks()));
            }
            panels.addAll(chosen(
                    all, PanelKind::lacks, kind -> "panel type '" + kind.type().id() + "'"));
        }
        List<BoardKind> all = new ArrayList<>();
        for (BoardType type : variation.project().boardTypes()) {
            if (GroupPacking.room(type) > 0) {
                PriceFormula.Unit unit = formula.unit(type);
                all.add(new BoardKind(Optional.empty(), type, unit.price(), unit.lacks()));
            }
        }
        List<BoardKind> good = chosen(
                all, BoardKind::lacks, kind -> "board type '" + kind.type().id() + "'");
        for (Optional<String> system : variation.systems()) {
            good.forEach(kind -> boards.add(new BoardKind(system, kind.type(), kind.price(), kind.lacks())));
        }
    }

    List<PanelKind> panels() {
        return panels;
    }

    List<BoardKind> boards() {
        return boards;
    }

    /** What the kinds chosen come to together. */
    PriceFormula formula() {
        return formula;
    }

    /** Kinds that are not chosen, since nobody knows what they cost. */
    List<String> leftOut() {
        return List.copyOf(leftOut);
    }

    /** What varies with the make-up and has no price in any, so that a make-up with more of it is not dearer for it. */
    List<String> unpriced() {
        return List.copyOf(unpriced);
    }

    private <K> List<K> chosen(List<K> kinds, Function<K, Set<String>> lacks, Function<K, String> name) {
        int fewest =
                kinds.stream().mapToInt(each -> lacks.apply(each).size()).min().orElse(0);
        List<K> chosen = new ArrayList<>();
        for (K each : kinds) {
            Set<String> missing = new TreeSet<>(lacks.apply(each));
            if (missing.size() > fewest) {
                leftOut.add(name.apply(each) + " (no price of " + String.join(", ", missing) + ")");
            } else {
                chosen.add(each);
                unpriced.addAll(missing);
            }
        }
        return chosen;
    }
}
