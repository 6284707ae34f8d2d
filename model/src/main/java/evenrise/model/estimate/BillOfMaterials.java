package evenrise.model.estimate;

import evenrise.model.plan.Plan;
import evenrise.model.project.AddedPercentage;
import evenrise.model.project.Catalogue;
import evenrise.model.project.Project;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What a project consists of, in things to buy and work to do. A plan changes nothing of it but which control leads cross to
 * another panel: where a breaker sits does not change what it costs. What has no price is listed without one, and the total
 * says so.
 *
 * @param currency empty where the project has no catalogue
 * @param percentages added to the lines, in their order
 * @param basis what stands with its prices
 */
public record BillOfMaterials(
        Optional<String> currency, List<BillLine> lines, List<AddedPercentage> percentages, PriceBasis basis) {
    public BillOfMaterials {
        lines = List.copyOf(lines);
        percentages = List.copyOf(percentages);
    }

    /** Without a plan, so without what leads between panels cost. Time: the project's size. */
    public static BillOfMaterials of(Project project) {
        return of(project, Optional.empty());
    }

    public static BillOfMaterials of(Project project, Optional<Plan> plan) {
        List<BillLine> lines = new ArrayList<>(TypeLines.of(project));
        lines.addAll(besidesTypes(project));
        plan.ifPresent(each -> lines.addAll(LeadLines.of(project, each)));
        return new BillOfMaterials(
                project.catalogue().map(Catalogue::currency),
                lines,
                project.catalogue().map(Catalogue::percentages).orElse(List.of()),
                PriceBasis.of(project, plan));
    }

    /** All lines but those of panels and boards themselves: of these, prices do not change with their number. */
    public static List<BillLine> besidesTypes(Project project) {
        List<BillLine> lines = new ArrayList<>(BreakerLines.of(project));
        lines.addAll(CableLines.of(project));
        lines.addAll(PlantLines.of(project));
        lines.addAll(LabourLines.of(project));
        return lines;
    }

    /** Of what has a price. */
    public PriceBuildUp buildUp() {
        return PriceBuildUp.of(lines, percentages);
    }

    /** Of what has a price, percentages included. */
    public BigDecimal total() {
        return buildUp().total();
    }

    /** Of work that is counted in hours. */
    public BigDecimal hours() {
        return lines.stream().map(BillLine::hours).reduce(BigDecimal.ZERO, BigDecimal::add);
    }

    /** What is to be read with its prices; nothing where it has none. */
    public List<String> basisSentences() {
        return unpriced().size() < lines.size() ? basis.sentences() : List.of();
    }

    /** Lines without a price. */
    public List<BillLine> unpriced() {
        return lines.stream().filter(line -> line.unitPrice().isEmpty()).toList();
    }

    static String amps(double amps) {
        return number(amps) + " A";
    }

    static String number(double value) {
        return value == Math.rint(value) ? Long.toString((long) value) : Double.toString(value);
    }
}
