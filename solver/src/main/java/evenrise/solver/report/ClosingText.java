package evenrise.solver.report;

import evenrise.model.contract.Decimals;
import evenrise.model.contract.Phrase;
import evenrise.model.observation.ClosingFit;
import evenrise.model.project.Spread;
import java.util.List;

/** How closings spread about the plan, for a screen. */
final class ClosingText {
    private ClosingText() {}

    static List<String> lines(ClosingFit fit, double intervalSeconds, Paint paint) {
        boolean isEven = fit.spread() == Spread.UNIFORM;
        String spread = isEven ? "even, any time as likely (uniform)" : "a bell, cut off at its tolerance (normal)";
        return new Section(paint, "Scatter of closings")
                .text(Phrase.counted(fit.count(), "load") + " came on alone as planned, the furthest "
                        + seconds(fit.greatestSeconds()) + " from its time as seen between samples "
                        + seconds(intervalSeconds) + " apart. Likeliest spread: " + spread + " within "
                        + seconds(fit.toleranceSeconds()) + "; "
                        + (fit.isSure()
                                ? "the other kind is ruled out, 20 to 1 and more."
                                : "the other kind explains them about as well.")
                        + " One start says nothing of the rarest closing: it may raise timing_tolerance_s, and lowers"
                        + " nothing.")
                .lines();
    }

    private static String seconds(double value) {
        return Decimals.fixed(value, 3) + " s";
    }
}
