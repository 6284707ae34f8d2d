package evenrise.model.check;

import evenrise.model.contract.Decimals;
import evenrise.model.contract.Phrase;
import evenrise.model.project.DistributionNode;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Supply;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * The supply, panels and nodes are rated for the running current, however it is laid out. Necessary: the worst phase carries at
 * least the mean; what must sit in or below one panel or node, with no transformer between, loads it; what passes
 * a transformer only adds to it; and but for split-phase, third harmonics of one-pole loads add
 * up in the neutral wherever they sit.
 */
final class RatingsSuffice {
    private final Candidates candidates;
    private final Supply supply;
    private final Consumer<Objection> found;

    private RatingsSuffice(Candidates candidates, Consumer<Objection> found) {
        this.candidates = candidates;
        this.supply = candidates.parts.project.supply();
        this.found = found;
    }

    static void check(Candidates candidates, Consumer<Objection> found) {
        if (!candidates.parts.project.scenes().isEmpty()) {
            return; // running currents are those of each scene
        }
        RatingsSuffice check = new RatingsSuffice(candidates, found);
        List<Load> all = List.copyOf(candidates.parts.loads.values());
        check.node(
                "/supply",
                candidates.belowSupply(),
                check.supply.system(),
                check.candidates.parts.phases(),
                check.supply.ratedAmps(),
                check.supply.continuousFraction(),
                check.supply.neutralFactor());
        for (int p = 0; p < candidates.panels.size(); p++) {
            Panel panel = candidates.panels.get(p);
            check.node(
                    "/panels/" + p,
                    candidates.boundBelow(panel.id()),
                    candidates.parts.systemOf(panel),
                    check.phases(panel),
                    panel.ratedAmps(),
                    panel.continuousFractionUnder(check.supply),
                    panel.neutralFactor());
        }
        check.nodes();
        check.panelsTogether(all);
    }

    private void nodes() {
        List<DistributionNode> nodes = candidates.parts.project.nodes();
        for (int n = 0; n < nodes.size(); n++) {
            DistributionNode it = nodes.get(n);
            PhaseSystem system =
                    candidates.parts.linesOf(Optional.of(it.id())).orElseThrow().system();
            node(
                    "/nodes/" + n,
                    candidates.boundBelow(it.id()),
                    system,
                    system.phases().size(),
                    it.ratedAmps(),
                    it.continuousFraction().orElse(supply.continuousFraction()),
                    it.neutralFactor());
        }
    }

    private void node(
            String pointer,
            List<Load> loads,
            PhaseSystem system,
            int phases,
            double rated,
            double fraction,
            double neutralFactor) {
        double allowed = rated * fraction;
        double mean = poleAmps(loads) / phases;
        double single = loads.stream().mapToDouble(Load::runningAmps).max().orElse(0);
        double needed = Math.max(mean, single);
        if (needed > allowed + Candidates.AMPS_TOLERANCE) {
            found.accept(Objection.impossible(
                    pointer + "/rated_a",
                    Decimals.toThousandths(rated) + ", so " + Decimals.toThousandths(allowed, needed)
                            + " A a phase may run, and "
                            + (single > mean ? "one load alone draws " : "the mean of the phases is at least ")
                            + Decimals.toThousandths(needed, allowed) + " A whatever the layout",
                    "at least " + Decimals.toThousandths(Math.ceil(needed / fraction)),
                    lacks(needed - allowed, " a phase") + "Maybe feed fewer loads from it."));
        }
        double third = system == PhaseSystem.SPLIT_PHASE ? 0 : thirdHarmonicAmps(loads);
        if (third > rated * neutralFactor + Candidates.AMPS_TOLERANCE) {
            found.accept(Objection.impossible(
                    pointer + "/neutral_factor",
                    Decimals.toThousandths(neutralFactor) + ", so "
                            + Decimals.toThousandths(rated * neutralFactor, third)
                            + " A may run in the neutral, and third harmonics alone add up to "
                            + Decimals.toThousandths(third, rated * neutralFactor)
                            + " A whatever the layout",
                    "a neutral for at least " + Decimals.toThousandths(Math.ceil(third)) + " A",
                    lacks(third - rated * neutralFactor, "") + "Maybe some loads can have two or three poles."));
        }
    }

    private void panelsTogether(List<Load> all) {
        double allowed = candidates.panels.stream().mapToDouble(this::amps).sum();
        double needed = poleAmps(all);
        if (needed > allowed + Candidates.AMPS_TOLERANCE * candidates.panels.size() * 3) {
            found.accept(Objection.impossible(
                    "/panels",
                    "a set too small: all phases of all panels may carry " + Decimals.toThousandths(allowed, needed)
                            + " A, the loads draw " + Decimals.toThousandths(needed, allowed) + " A",
                    "ratings for all loads together",
                    panelsLike(needed - allowed)));
        }
    }

    private static String lacks(double amps, String of) {
        return "It lacks " + Decimals.toThousandths(amps) + " A" + of + ". ";
    }

    /** How many panels like the strongest would carry what is missing, over all their phases. */
    private String panelsLike(double amps) {
        Panel strongest = candidates.panels.stream()
                .max(Comparator.comparingDouble(this::amps))
                .orElseThrow();
        return "They lack " + Decimals.toThousandths(amps) + " A. Maybe add "
                + Phrase.counted((long) Math.ceil(amps / amps(strongest)), "panel") + " like "
                + Shown.quoted(strongest.id()) + ".";
    }

    private double amps(Panel panel) {
        return panel.continuousAmpsUnder(supply) * phases(panel);
    }

    /** Phases that a panel has slots on. */
    private int phases(Panel panel) {
        return panel.phaseRotation().isEmpty()
                ? candidates.parts.systemOf(panel).phases().size()
                : (int) panel.phaseRotation().stream().distinct().count();
    }

    private static double poleAmps(List<Load> loads) {
        return loads.stream()
                .mapToDouble(load -> load.runningAmps() * load.poles())
                .sum();
    }

    private static double thirdHarmonicAmps(List<Load> loads) {
        return loads.stream()
                .filter(load -> load.poles() == 1)
                .mapToDouble(load -> load.runningAmps() * load.harmonicRatio() / Math.hypot(1, load.harmonicRatio()))
                .sum();
    }
}
