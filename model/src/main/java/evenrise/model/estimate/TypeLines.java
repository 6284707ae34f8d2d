package evenrise.model.estimate;

import evenrise.model.project.Board;
import evenrise.model.project.BoardType;
import evenrise.model.project.Catalogue;
import evenrise.model.project.Panel;
import evenrise.model.project.PanelType;
import evenrise.model.project.Project;
import evenrise.model.project.SlotNumbering;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What panels and boards themselves cost, by how many of each kind there are, so that breaks of prices are reached. */
public final class TypeLines {
    private final List<PanelType> panelTypes;

    public TypeLines(Optional<Catalogue> catalogue) {
        this.panelTypes = catalogue.map(Catalogue::panelTypes).orElse(List.of());
    }

    /** What tells panels apart where they are bought. */
    public record PanelLook(int slots, double ratedAmps, double neutralFactor, SlotNumbering numbering) {
        public static PanelLook of(Panel panel) {
            return new PanelLook(panel.slots(), panel.ratedAmps(), panel.neutralFactor(), panel.numbering());
        }

        public static PanelLook of(PanelType type) {
            return new PanelLook(type.slots(), type.ratedAmps(), type.neutralFactor(), type.numbering());
        }
    }

    /** So many panels cost what the cheapest type of the catalogue does that looks like them, at that number. */
    public BillLine panels(PanelLook look, int count) {
        Optional<PanelType> type = panelTypes.stream()
                .filter(each -> PanelLook.of(each).equals(look))
                .min(Comparator.comparing(each -> prices(each).at(count).orElse(BigDecimal.ZERO)));
        String item = type.map(each -> "panel " + each.id())
                .orElse("panel of " + look.slots() + " slots, " + BillOfMaterials.amps(look.ratedAmps()));
        return BillLine.material(
                item,
                BigDecimal.valueOf(count),
                type.flatMap(each -> prices(each).at(count)));
    }

    public static BillLine boards(BoardType type, int count) {
        return BillLine.material(
                "board " + type.id() + " of " + type.outputs() + " outputs",
                BigDecimal.valueOf(count),
                prices(type).at(count));
    }

    /** What one such panel costs at least, whatever their number; empty without a price. */
    public Optional<BigDecimal> leastPrice(PanelLook look) {
        return panelTypes.stream()
                .filter(each -> PanelLook.of(each).equals(look))
                .map(each -> prices(each).least().orElse(BigDecimal.ZERO))
                .min(Comparator.naturalOrder())
                .filter(each -> each.signum() > 0);
    }

    /** Alike, of a board. */
    public static Optional<BigDecimal> leastPrice(BoardType type) {
        return prices(type).least();
    }

    static List<BillLine> of(Project project) {
        TypeLines types = new TypeLines(project.catalogue());
        Map<PanelLook, Integer> looks = new LinkedHashMap<>();
        for (Panel panel : project.panels()) {
            looks.merge(PanelLook.of(panel), 1, Integer::sum);
        }
        List<BillLine> lines = new ArrayList<>();
        looks.forEach((look, count) -> lines.add(types.panels(look, count)));
        Map<String, BoardType> byId = new LinkedHashMap<>();
        project.boardTypes().forEach(type -> byId.put(type.id(), type));
        Map<BoardType, Integer> boards = new LinkedHashMap<>();
        for (Board board : project.boards()) {
            boards.merge(byId.get(board.type()), 1, Integer::sum);
        }
        boards.forEach((type, count) -> lines.add(boards(type, count)));
        return lines;
    }

    private static UnitPrices prices(PanelType type) {
        return new UnitPrices(type.price(), type.priceBreaks());
    }

    private static UnitPrices prices(BoardType type) {
        return new UnitPrices(type.price(), type.priceBreaks());
    }
}
