package evenrise.solver.report;

import evenrise.model.plan.PeakBasis;
import evenrise.model.plan.RangePeak;
import evenrise.model.project.Phase;
import evenrise.model.rules.PhasePeak;
import evenrise.model.rules.Tolerances;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/** The supply and every panel: running current, neutral, peaks, each with its limit and what is spare. */
final class NodeText {
    private NodeText() {}

    /** @param hasScenes whether figures are those of the worst scene of each */
    static List<String> lines(List<NodeUse> nodes, boolean hasScenes, PeakBasis basis, Paint paint) {
        List<Phase> phases = List.copyOf(new java.util.TreeSet<>(nodes.stream()
                .flatMap(node -> node.runningAmps().keySet().stream())
                .toList()));
        return Stream.of(
                        running(nodes, hasScenes, phases, paint),
                        byPhasors(nodes, phases, paint),
                        neutral(nodes, paint),
                        peaks(nodes, phases, paint),
                        overRange(nodes, basis, paint))
                .flatMap(section -> Stream.concat(Stream.of(""), section.lines().stream()))
                .skip(1)
                .toList();
    }

    private static Section running(List<NodeUse> nodes, boolean hasScenes, List<Phase> phases, Paint paint) {
        Table table = new Table().words("Node");
        phases.forEach(phase -> table.number("Phase " + phase));
        table.number("Mean")
                .number("Deviation")
                .number("Imbalance, %")
                .number("Limit")
                .number("Spare");
        for (NodeUse node : nodes) {
            List<String> cells = new ArrayList<>(List.of(node.node()));
            phases.forEach(phase -> cells.add(amps(node, node.runningAmps(), phase)));
            cells.add(Numbers.amps(node.meanAmps()));
            cells.add(Numbers.amps(node.deviationAmps()));
            cells.add(Numbers.percent(node.imbalancePercent()));
            cells.add(Numbers.amps(node.runningLimitAmps()));
            cells.add(Numbers.amps(node.runningSpareAmps()));
            table.row(tone(OptionalDouble.of(node.runningSpareAmps())), cells.toArray(String[]::new));
        }
        Section section = new Section(
                        paint, "Running current, ampere rms, sums of magnitudes: what limits are held against")
                .table(table);
        return hasScenes
                ? section.text(
                        "Each phase, the imbalance and the neutral are those of their worst scene; the deviation is"
                                + " the mean over scenes by weight.")
                : section;
    }

    private static Section byPhasors(List<NodeUse> nodes, List<Phase> phases, Paint paint) {
        Table table = new Table().words("Node");
        phases.forEach(phase -> table.number("Line " + phase));
        for (NodeUse node : nodes) {
            List<String> cells = new ArrayList<>(List.of(node.node()));
            phases.forEach(phase -> cells.add(amps(node, node.phasorAmps(), phase)));
            table.row(Tone.PLAIN, cells.toArray(String[]::new));
        }
        return new Section(paint, "Line current by phasors, ampere rms, as a meter shows it").table(table);
    }

    private static Section neutral(List<NodeUse> nodes, Paint paint) {
        Table table = new Table()
                .words("Node")
                .number("All on")
                .number("Worst use")
                .number("Limit")
                .number("Spare");
        for (NodeUse node : nodes) {
            table.row(
                    tone(OptionalDouble.of(worstSpareAmps(node))),
                    node.node(),
                    Numbers.amps(node.neutralAmps()),
                    Numbers.amps(node.neutralWorstUseAmps()),
                    Numbers.amps(node.neutralLimitAmps()),
                    Numbers.amps(worstSpareAmps(node)));
        }
        return new Section(paint, "Neutral current, ampere rms").table(table);
    }

    private static Section peaks(List<NodeUse> nodes, List<Phase> phases, Paint paint) {
        Table table = new Table().words("Node");
        phases.forEach(phase -> table.number("Phase " + phase).number("at, s"));
        table.number("Limit").number("Spare");
        for (NodeUse node : nodes) {
            List<String> cells = new ArrayList<>(List.of(node.node()));
            for (Phase phase : phases) {
                Optional<PhasePeak> peak = node.peaks().stream()
                        .filter(each -> each.phase() == phase)
                        .findFirst();
                cells.add(peak.map(each -> Numbers.amps(each.amps())).orElse(Numbers.NONE));
                cells.add(peak.map(each -> Numbers.seconds(each.atSeconds())).orElse(Numbers.NONE));
            }
            cells.add(Numbers.amps(node.inrushLimitAmps()));
            cells.add(Numbers.amps(node.inrushSpareAmps()));
            table.row(tone(node.inrushSpareAmps()), cells.toArray(String[]::new));
        }
        return new Section(paint, "Peak inrush at nominal voltage, ampere, instantaneous").table(table);
    }

    private static Section overRange(List<NodeUse> nodes, PeakBasis basis, Paint paint) {
        Table table = new Table()
                .words("Node")
                .number("Nominal")
                .words("is")
                .number("Over the range")
                .words("is")
                .words("Phase")
                .number("at, s")
                .number("Limit")
                .number("Spare");
        for (int i = 0; i < nodes.size(); i++) {
            RangePeak peak = basis.peaks().get(i);
            OptionalDouble limit = nodes.get(i).inrushLimitAmps();
            OptionalDouble spare = limit.isPresent()
                    ? OptionalDouble.of(limit.getAsDouble() - peak.rangeAmps())
                    : OptionalDouble.empty();
            table.row(
                    tone(spare),
                    peak.node(),
                    Numbers.amps(peak.nominalAmps()),
                    PeakWords.nominal(peak),
                    Numbers.amps(peak.rangeAmps()),
                    PeakWords.overRange(peak),
                    peak.rangePhase().name(),
                    Numbers.seconds(peak.rangeAtSeconds()),
                    Numbers.amps(limit),
                    Numbers.amps(spare));
        }
        return new Section(
                        paint,
                        "Peak inrush " + PeakWords.NOMINAL + " and " + PeakWords.range(basis)
                                + ", ampere, instantaneous")
                .table(table);
    }

    /** Nothing of a phase that the node does not have. */
    private static String amps(NodeUse node, Map<Phase, Double> amps, Phase phase) {
        boolean isHere = node.peaks().stream().anyMatch(peak -> peak.phase() == phase);
        return isHere ? Numbers.amps(amps.getOrDefault(phase, 0.0)) : Numbers.NONE;
    }

    /** Of the neutral, whatever is on. */
    private static double worstSpareAmps(NodeUse node) {
        return node.neutralLimitAmps() - node.neutralWorstUseAmps();
    }

    private static Tone tone(OptionalDouble spare) {
        return spare.orElse(0) < -Tolerances.AMPS ? Tone.BAD : Tone.PLAIN;
    }
}
