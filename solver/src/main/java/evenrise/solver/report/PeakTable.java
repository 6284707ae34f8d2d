package evenrise.solver.report;

import evenrise.model.contract.Words;
import evenrise.model.plan.Metrics;
import java.util.List;

/** What makes the supply's peak: which loads, with how much each, at that instant on that phase. */
final class PeakTable {
    private PeakTable() {}

    /** @param most how many loads are listed; the rest is summed in one row */
    static List<String> lines(Metrics metrics, List<PeakContribution> shares, int most, Paint paint) {
        Section section = new Section(
                paint,
                "What makes the peak of " + Numbers.amps(metrics.peakInrushAmps()) + " A on phase "
                        + metrics.peakPhase() + " at " + Numbers.seconds(metrics.peakAtSeconds()) + " s");
        if (shares.isEmpty()) {
            return section.text("No load draws current there.").lines();
        }
        Table table = new Table()
                .words("Load")
                .text("Name")
                .words("Role")
                .number("On, s")
                .number("Draws, A")
                .number("Base, A")
                .number("Excess, A")
                .number("Share, %");
        for (PeakContribution share : shares.subList(0, Math.min(most, shares.size()))) {
            table.row(
                    share.load(),
                    share.name().equals(share.load()) ? "" : share.name(),
                    Words.word(share.role()),
                    Numbers.seconds(share.onSeconds()),
                    Numbers.amps(share.amps()),
                    Numbers.amps(share.baseAmps()),
                    Numbers.amps(share.excessAmps()),
                    Numbers.fixed(share.sharePercent(), 1));
        }
        if (shares.size() > most) {
            addRest(table, shares.subList(most, shares.size()));
        }
        return section.table(table).lines();
    }

    private static void addRest(Table table, List<PeakContribution> rest) {
        table.row(
                Tone.FAINT,
                "and " + rest.size() + " more",
                "",
                "",
                "",
                Numbers.amps(rest.stream().mapToDouble(PeakContribution::amps).sum()),
                Numbers.amps(
                        rest.stream().mapToDouble(PeakContribution::baseAmps).sum()),
                Numbers.amps(
                        rest.stream().mapToDouble(PeakContribution::excessAmps).sum()),
                Numbers.fixed(
                        rest.stream()
                                .mapToDouble(PeakContribution::sharePercent)
                                .sum(),
                        1));
    }
}
