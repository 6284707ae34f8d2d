package evenrise.model.check;

import evenrise.model.contract.Decimals;
import evenrise.model.project.DistributionNode;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;

/**
 * Inrush limits are above what cannot be avoided. Necessary: each load's own peak is reached at its switch-on, whatever else
 * is on, at every point that carries its current as it is; and once all are on, the worst phase carries at least the mean of
 * √2·{@code idle_a} over the phases. With systems, what does not start is in use, which is no less.
 */
final class InrushFits {
    private InrushFits() {}

    static void check(Candidates candidates, Consumer<Objection> found) {
        ProjectParts parts = candidates.parts;
        node(
                "/supply",
                candidates.belowSupply(),
                parts.phases(),
                parts.project.supply().inrushLimitAmps(),
                found);
        for (int p = 0; p < candidates.panels.size(); p++) {
            Panel panel = candidates.panels.get(p);
            int phases = parts.systemOf(panel).phases().size();
            node("/panels/" + p, candidates.boundBelow(panel.id()), phases, panel.inrushLimitAmps(), found);
        }
        for (int n = 0; n < parts.project.nodes().size(); n++) {
            DistributionNode it = parts.project.nodes().get(n);
            int phases = parts.linesOf(Optional.of(it.id()))
                    .orElseThrow()
                    .system()
                    .phases()
                    .size();
            node("/nodes/" + n, candidates.boundBelow(it.id()), phases, it.inrushLimitAmps(), found);
        }
    }

    private static void node(
            String pointer, List<Load> loads, int phases, OptionalDouble limit, Consumer<Objection> found) {
        if (limit.isEmpty() || loads.isEmpty()) {
            return;
        }
        Load largest = loads.stream()
                .max(Comparator.comparingDouble(Candidates::peakAmps))
                .orElseThrow();
        double single = Candidates.peakAmps(largest);
        double mean = loads.stream()
                        .mapToDouble(load -> load.baseAmps() * load.poles())
                        .sum()
                / phases;
        double needed = Math.max(single, mean);
        if (needed > limit.getAsDouble() + Candidates.AMPS_TOLERANCE) {
            String why = single >= mean
                    ? ", and load " + Shown.quoted(largest.id()) + " alone peaks at "
                            + Decimals.toThousandths(single, limit.getAsDouble()) + " A"
                    : ", and with all loads on the mean of the phases' crests is "
                            + Decimals.toThousandths(mean, limit.getAsDouble()) + " A";
            found.accept(Objection.impossible(
                    pointer + "/inrush_limit_a",
                    Decimals.toThousandths(limit.getAsDouble(), needed) + why,
                    "at least " + Decimals.toThousandths(Math.ceil(needed)),
                    Decimals.toThousandths(needed - limit.getAsDouble())
                            + " A missing. Maybe limit the inrush at the load,"
                            + " or raise the limit if the feeder allows."));
        }
    }
}
