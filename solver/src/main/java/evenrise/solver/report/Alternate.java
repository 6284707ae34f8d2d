package evenrise.solver.report;

import evenrise.model.estimate.BillLine;
import evenrise.model.estimate.BillOfMaterials;
import evenrise.model.estimate.CostKind;
import evenrise.model.estimate.PriceBasis;
import evenrise.model.evaluation.Evaluation;
import evenrise.model.plan.Assessment;
import evenrise.model.project.AddedPercentage;
import evenrise.model.project.Panel;
import evenrise.model.project.PanelType;
import evenrise.model.project.Project;
import evenrise.model.rules.Layout;
import evenrise.solver.compare.PriceRange;
import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * One of several ways to build a thing, as it is offered: what it costs and what it does, without how it is reckoned.
 *
 * @param assessment what all judges say of its plan
 * @param price of what has one; empty where nothing has
 * @param unpriced items without a price
 * @param included names of percentages that are in the price
 * @param floorSquareMetres empty where a panel's type does not state it
 * @param range prices where quantities are open; empty where none were drawn
 * @param things items to buy by their number
 */
public record Alternate(
        String name,
        Assessment assessment,
        Optional<String> currency,
        Optional<BigDecimal> price,
        int unpriced,
        List<String> included,
        double peakInrushAmps,
        double lastOnSeconds,
        int panels,
        int boards,
        int freeSlots,
        int slots,
        int freeOutputs,
        int outputs,
        Optional<BigDecimal> floorSquareMetres,
        Optional<PriceRange> range,
        Map<String, BigDecimal> things,
        PriceBasis basis) {

    /** @param range of its prices where quantities are open */
    public static Alternate of(String name, Evaluation evaluation, Optional<PriceRange> range) {
        Layout layout = evaluation.layout();
        Project project = layout.project();
        BillOfMaterials bill = BillOfMaterials.of(project, Optional.of(evaluation.plan()));
        List<SlotUse> slots = project.panels().stream()
                .map(panel -> SlotUse.of(layout, panel))
                .toList();
        List<BoardUse> boards = BoardUse.of(layout);
        Map<String, BigDecimal> things = new LinkedHashMap<>();
        bill.lines().stream()
                .filter(line -> line.kind() == CostKind.MATERIAL)
                .forEach(line -> things.put(line.item(), line.quantity()));
        return new Alternate(
                name,
                evaluation.assessment(),
                bill.currency(),
                bill.lines().stream().map(BillLine::unitPrice).anyMatch(Optional::isPresent)
                        ? Optional.of(bill.total())
                        : Optional.empty(),
                bill.unpriced().size(),
                bill.percentages().stream().map(AddedPercentage::name).toList(),
                evaluation.verdict().metrics().peakInrushAmps(),
                evaluation.verdict().metrics().durationSeconds(),
                slots.size(),
                boards.size(),
                slots.stream().mapToInt(SlotUse::free).sum(),
                slots.stream().mapToInt(SlotUse::slots).sum(),
                boards.stream().mapToInt(each -> each.freeOutputs().size()).sum(),
                boards.stream().mapToInt(BoardUse::outputs).sum(),
                floor(project),
                range,
                things,
                bill.basis());
    }

    public String headline() {
        return assessment.headline();
    }

    /** Whether its plan breaks neither rule nor limit, of what was checked, and has a place for every load. */
    public boolean keepsAll() {
        return assessment.hardRulesBroken() == 0
                && assessment.limitsBroken() == 0
                && assessment.eventsOverLimit() == 0
                && assessment.loadsWithoutPlace() == 0;
    }

    /** Of all panels, each of the first type of the catalogue that looks like it and states its floor. */
    private static Optional<BigDecimal> floor(Project project) {
        BigDecimal sum = BigDecimal.ZERO;
        for (Panel panel : project.panels()) {
            Optional<BigDecimal> one = project.catalogue().stream()
                    .flatMap(catalogue -> catalogue.panelTypes().stream())
                    .filter(type -> looksLike(type, panel))
                    .flatMap(type -> type.floorSquareMetres().isPresent()
                            ? Stream.of(
                                    BigDecimal.valueOf(type.floorSquareMetres().getAsDouble()))
                            : Stream.empty())
                    .findFirst();
            if (one.isEmpty()) {
                return Optional.empty();
            }
            sum = sum.add(one.get());
        }
        return Optional.of(sum);
    }

    private static boolean looksLike(PanelType type, Panel panel) {
        return type.slots() == panel.slots()
                && type.ratedAmps() == panel.ratedAmps()
                && type.neutralFactor() == panel.neutralFactor()
                && type.numbering() == panel.numbering();
    }
}
