package evenrise.model.estimate;

import evenrise.model.contract.Phrase;
import evenrise.model.project.Cable;
import evenrise.model.project.CablePrice;
import evenrise.model.project.Catalogue;
import evenrise.model.project.Circuit;
import evenrise.model.project.Load;
import evenrise.model.project.Project;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Cables of circuits and their conduits, in metres, and the hours for them. What states no length is counted and has no
 * price.
 */
final class CableLines {
    private final List<BillLine> lines = new ArrayList<>();

    private record Run(int poles, double amps, Optional<CablePrice> kind) {}

    private CableLines() {}

    /** None where the catalogue prices no cables. */
    static List<BillLine> of(Project project) {
        CableLines cables = new CableLines();
        project.catalogue()
                .filter(it -> !it.cables().isEmpty())
                .ifPresent(catalogue -> cables.count(project, catalogue));
        return cables.lines;
    }

    private void count(Project project, Catalogue catalogue) {
        Map<Run, BigDecimal> metres = new LinkedHashMap<>();
        Map<Run, Integer> unknown = new LinkedHashMap<>();
        for (Load load : project.loads()) {
            Run run = new Run(load.poles(), load.breakerAmps(), kind(catalogue, load));
            OptionalDouble length = load.circuit().flatMap(Circuit::cable).stream()
                    .mapToDouble(Cable::lengthMetres)
                    .findFirst();
            if (length.isPresent()) {
                metres.merge(run, BigDecimal.valueOf(length.getAsDouble()), BigDecimal::add);
            } else {
                unknown.merge(run, 1, Integer::sum);
            }
        }
        WorkPrice work = new WorkPrice(catalogue);
        metres.forEach((run, length) -> laid(run, length, work));
        unknown.forEach((run, count) -> lines.add(BillLine.material(
                "cable, " + words(run) + ", length not stated", BigDecimal.valueOf(count), Optional.empty())));
    }

    private void laid(Run run, BigDecimal metres, WorkPrice work) {
        Optional<CablePrice> kind = run.kind();
        lines.add(BillLine.material(
                "cable, " + words(run) + ", metres",
                metres,
                kind.map(each -> BigDecimal.valueOf(each.pricePerMetre()))));
        kind.filter(each -> each.conduitPerMetre() > 0)
                .ifPresent(each -> lines.add(BillLine.material(
                        "conduit for cable, " + words(run) + ", metres",
                        metres,
                        Optional.of(BigDecimal.valueOf(each.conduitPerMetre())))));
        kind.filter(each -> each.hoursPerMetre() > 0)
                .ifPresent(each -> lines.add(work.line(
                        "work: cable, " + words(run) + ", metres", metres, BigDecimal.valueOf(each.hoursPerMetre()))));
    }

    private static String words(Run run) {
        return Phrase.counted(run.poles(), "pole") + ", " + BillOfMaterials.amps(run.amps());
    }

    /** The smallest that is large enough; of equal ones the one for these poles. */
    private static Optional<CablePrice> kind(Catalogue catalogue, Load load) {
        return catalogue.cables().stream()
                .filter(each -> each.upToAmps() >= load.breakerAmps())
                .filter(each -> each.poles().orElse(load.poles()) == load.poles())
                .min(Comparator.comparingDouble(CablePrice::upToAmps)
                        .thenComparing(each -> each.poles().isEmpty()));
    }
}
