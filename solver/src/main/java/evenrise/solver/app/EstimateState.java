package evenrise.solver.app;

import evenrise.solver.compare.Judged;
import evenrise.solver.compare.LeastPrice;
import evenrise.solver.compare.PriceRange;
import evenrise.solver.compare.Scenario;
import evenrise.solver.compare.ScenarioResult;
import evenrise.solver.report.EstimateSheet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What is known of an estimate while it is made, and in the end.
 *
 * @param title of the project, with the currency
 * @param makeUps by price, from the cheapest that counting allows
 * @param leastPrice of the cheapest make-up that has a plan which keeps every hard rule; empty where none was found
 * @param isProven whether it is proven that no make-up costs less and has such a plan
 * @param undecidedFrom below this price no make-up is open; empty where none is open at any price
 * @param planned make-ups that were planned for an aim each, to be compared
 * @param parts as its page has them, but for the make-ups: sentences, the bill, what open quantities do, the front
 * @param basis what prices rest on, in sentences
 * @since 0.1.0
 */
public record EstimateState(
        String title,
        List<MakeUpLine> makeUps,
        OptionalDouble leastPrice,
        boolean isProven,
        OptionalDouble undecidedFrom,
        List<PlannedMakeUp> planned,
        List<EstimatePart> parts,
        List<String> basis) {
    /** Whether plans of a make-up keep every hard rule. */
    public enum Known {
        /** A plan does. */
        SOUND,
        /** No plan does, as counting proves. */
        RULED_OUT,
        /** None was found, which proves nothing. */
        UNDECIDED,
        /** Nobody has looked. */
        NOT_LOOKED_AT
    }

    /**
     * A make-up in the list by price.
     *
     * @param number in order of price, from 1
     * @param unpriced what of it has no price, and so is not in it
     * @param why it is ruled out, or what was not found
     * @param files of its project and plan, without their endings; empty where it was not planned
     */
    public record MakeUpLine(
            int number,
            double price,
            String panels,
            String boards,
            String unpriced,
            Known known,
            String why,
            String files) {}

    /**
     * A make-up that was planned for one aim.
     *
     * @param files of its project and plan, without their endings
     * @param peakInrushAmps of its plan; empty where that breaks a rule, as the time
     * @param why no plan that keeps every rule was found; empty where one was
     */
    public record PlannedMakeUp(
            String files,
            String aim,
            double price,
            String panels,
            String boards,
            OptionalDouble peakInrushAmps,
            OptionalDouble lastOnSeconds,
            String why) {}

    /**
     * A heading with what stands below it, any of it maybe empty.
     *
     * @param svg a chart
     * @param words how many of the first columns hold words; the others hold numbers
     * @param isSummed whether its last row is the sum
     */
    public record EstimatePart(
            String heading,
            List<EstimateSentence> sentences,
            Optional<String> svg,
            List<String> header,
            int words,
            boolean isSummed,
            List<List<String>> rows) {}

    /** @param isBad whether it warns */
    public record EstimateSentence(String text, boolean isBad) {}

    public EstimateState {
        makeUps = List.copyOf(makeUps);
        planned = List.copyOf(planned);
        parts = List.copyOf(parts);
        basis = List.copyOf(basis);
    }

    /** The same with other make-ups in its list. */
    public EstimateState withMakeUps(List<MakeUpLine> others) {
        return new EstimateState(title, others, leastPrice, isProven, undecidedFrom, planned, parts, basis);
    }

    static EstimateState of(
            String project,
            String currency,
            LeastPrice least,
            Optional<PriceRange> range,
            List<ScenarioResult> findings) {
        EstimateSheet sheet = EstimateSheet.of(project, currency, least, range, findings);
        return new EstimateState(
                sheet.title(),
                least.makeUps().stream().map(EstimateState::line).toList(),
                least.cheapest()
                        .map(each -> OptionalDouble.of(each.makeUp().price()))
                        .orElse(OptionalDouble.empty()),
                least.isProven(),
                least.undecidedFrom() < Double.POSITIVE_INFINITY
                        ? OptionalDouble.of(least.undecidedFrom())
                        : OptionalDouble.empty(),
                findings.stream().map(EstimateState::planned).toList(),
                sheet.parts().stream()
                        .filter(each -> !each.heading().equals(EstimateSheet.MAKE_UPS))
                        .map(EstimateState::part)
                        .toList(),
                sheet.basis());
    }

    private static MakeUpLine line(Judged each) {
        return new MakeUpLine(
                each.number(),
                each.makeUp().price(),
                each.makeUp().panelWords(),
                each.makeUp().boardWords(),
                each.makeUp().unpricedWords(),
                Known.valueOf(each.standing().name()),
                each.why().orElse(""),
                each.finding().map(it -> it.scenario().key()).orElse(""));
    }

    private static PlannedMakeUp planned(ScenarioResult each) {
        Scenario scenario = each.scenario();
        return new PlannedMakeUp(
                scenario.key(),
                scenario.aim().word(),
                scenario.price(),
                scenario.makeUp().panelWords(),
                scenario.makeUp().boardWords(),
                each.isSound() ? OptionalDouble.of(each.metrics().peakInrushAmps()) : OptionalDouble.empty(),
                each.isSound() ? OptionalDouble.of(each.metrics().durationSeconds()) : OptionalDouble.empty(),
                each.why().orElse(""));
    }

    private static EstimatePart part(EstimateSheet.Part each) {
        return new EstimatePart(
                each.heading(),
                each.sentences().stream()
                        .map(it -> new EstimateSentence(it.text(), it.isBad()))
                        .toList(),
                each.svg(),
                each.header(),
                each.words(),
                each.isSummed(),
                each.rows());
    }
}
