package evenrise.model.estimate;

import evenrise.model.contract.Phrase;
import evenrise.model.project.Board;
import evenrise.model.project.BoardType;
import evenrise.model.project.BreakerPrice;
import evenrise.model.project.Catalogue;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.PanelType;
import evenrise.model.project.Project;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;

/**
 * What a project consists of, in things to buy and work to do. A plan changes nothing of it: where a breaker sits does not
 * change what it costs. What has no price is listed without one, and the total says so.
 *
 * @param currency empty where the project has no catalogue
 * @param basis what stands with its prices
 */
public record BillOfMaterials(Optional<String> currency, List<BillLine> lines, PriceBasis basis) {
    public BillOfMaterials {
        lines = List.copyOf(lines);
    }

    /** Time: the project's size. */
    public static BillOfMaterials of(Project project) {
        List<BillLine> lines = new ArrayList<>();
        panels(project, lines);
        boards(project, lines);
        breakers(project, lines);
        lines.addAll(PlantLines.of(project));
        labour(project, lines);
        return new BillOfMaterials(project.catalogue().map(Catalogue::currency), lines, PriceBasis.of(project));
    }

    /** Of what has a price. */
    public double total() {
        return lines.stream()
                .map(BillLine::sum)
                .filter(OptionalDouble::isPresent)
                .mapToDouble(OptionalDouble::getAsDouble)
                .sum();
    }

    /** What is to be read with its prices; nothing where it has none. */
    public List<String> basisSentences() {
        return unpriced().size() < lines.size() ? basis.sentences() : List.of();
    }

    /** Lines without a price. */
    public List<BillLine> unpriced() {
        return lines.stream().filter(line -> line.unitPrice().isEmpty()).toList();
    }

    /** A panel costs what the cheapest type of the catalogue does that has its slots, rating, neutral and numbering. */
    private static void panels(Project project, List<BillLine> lines) {
        Map<String, BillLine> kinds = new LinkedHashMap<>();
        for (Panel panel : project.panels()) {
            Optional<PanelType> type = project.catalogue().stream()
                    .flatMap(catalogue -> catalogue.panelTypes().stream())
                    .filter(each -> each.slots() == panel.slots()
                            && each.ratedAmps() == panel.ratedAmps()
                            && each.neutralFactor() == panel.neutralFactor()
                            && each.numbering() == panel.numbering())
                    .min(Comparator.comparingDouble(PanelType::price));
            String item = type.map(each -> "panel " + each.id())
                    .orElse("panel of " + panel.slots() + " slots, " + amps(panel.ratedAmps()));
            count(kinds, item, type.map(each -> OptionalDouble.of(each.price())).orElse(OptionalDouble.empty()));
        }
        lines.addAll(kinds.values());
    }

    /** A price of 0 is the default of the file and counts as none. */
    private static void boards(Project project, List<BillLine> lines) {
        Map<String, BillLine> kinds = new LinkedHashMap<>();
        Map<String, BoardType> types = new LinkedHashMap<>();
        project.boardTypes().forEach(type -> types.put(type.id(), type));
        for (Board board : project.boards()) {
            BoardType type = types.get(board.type());
            OptionalDouble price = type.price() > 0 ? OptionalDouble.of(type.price()) : OptionalDouble.empty();
            count(kinds, "board " + type.id() + " of " + type.outputs() + " outputs", price);
        }
        lines.addAll(kinds.values());
    }

    private static void breakers(Project project, List<BillLine> lines) {
        Map<String, BillLine> kinds = new TreeMap<>();
        for (Load load : project.loads()) {
            String item = (PlantLines.hasSwitchedBreaker(load) ? "switched breaker, " : "breaker, ")
                    + Phrase.counted(load.poles(), "pole") + ", "
                    + amps(load.breakerAmps());
            count(kinds, item, price(project, load));
        }
        lines.addAll(kinds.values());
    }

    private static OptionalDouble price(Project project, Load load) {
        return project.catalogue().stream()
                .flatMap(catalogue -> catalogue.breakers().stream())
                .filter(each -> each.poles() == load.poles() && each.switched() == PlantLines.hasSwitchedBreaker(load))
                .filter(each -> each.upToAmps() >= load.breakerAmps())
                .min(Comparator.comparingDouble(BreakerPrice::upToAmps))
                .map(each -> OptionalDouble.of(each.price()))
                .orElse(OptionalDouble.empty());
    }

    private static void labour(Project project, List<BillLine> lines) {
        if (project.catalogue().isEmpty()) {
            return;
        }
        Catalogue catalogue = project.catalogue().get();
        int poles = project.loads().stream().mapToInt(Load::poles).sum();
        int leads = (int) project.loads().stream().filter(PlantLines::hasLead).count();
        lines.add(new BillLine("work: breaker and cable, a pole", poles, catalogue.labourPerPole()));
        lines.add(new BillLine("work: control lead", leads, catalogue.labourPerLead()));
        lines.add(new BillLine("work: board", project.boards().size(), catalogue.labourPerBoard()));
        lines.add(new BillLine("work: panel", project.panels().size(), catalogue.labourPerPanel()));
        lines.addAll(PlantLines.labour(project, catalogue));
    }

    static void count(Map<String, BillLine> kinds, String item, OptionalDouble price) {
        kinds.merge(
                item, new BillLine(item, 1, price), (before, one) -> new BillLine(item, before.quantity() + 1, price));
    }

    static String amps(double amps) {
        return number(amps) + " A";
    }

    static String number(double value) {
        return value == Math.rint(value) ? Long.toString((long) value) : Double.toString(value);
    }
}
