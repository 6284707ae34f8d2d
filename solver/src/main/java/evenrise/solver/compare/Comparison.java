package evenrise.solver.compare;

import evenrise.model.file.WriteFailed;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;

/** What of a project is compared: prices by make-up, and numbers of panels and boards. */
public final class Comparison {
    private final Variation variation;
    private final KindPrices prices;
    private final List<String> basis;
    private final Optional<CountRange> panels;
    private final Optional<CountRange> boards;

    /**
     * @param basis what prices rest on beside what stays, in sentences
     * @param panels empty for whatever number where prices are compared; boards alike
     */
    public Comparison(
            Variation variation, List<String> basis, Optional<CountRange> panels, Optional<CountRange> boards) {
        this.basis =
                Stream.concat(basis.stream(), variation.whatStays().stream()).toList();
        this.variation = variation;
        this.prices = new KindPrices(variation);
        this.panels = panels;
        this.boards = boards;
    }

    /** Kinds of board that have outputs to use and a price; there may be none. */
    public boolean hasBoardKinds() {
        return !prices.boards().isEmpty();
    }

    /** Numbers of panels and boards, each with a make-up for every aim. */
    public List<Scenarios.Cell> cells() {
        return new Scenarios(variation, prices).cells(panels, boards);
    }

    /** The make-up of the least price, again for each aim. */
    public List<Scenario> aims(MakeUp cheapest) {
        return Scenarios.of(variation, cheapest, "least");
    }

    /**
     * Seeks the least price.
     *
     * @param tries make-ups that may be planned
     * @param state told of what is known, from time to time
     * @param finding told of each plan as it comes
     */
    public LeastPrice leastPrice(Sweep sweep, int tries, Consumer<LeastPrice> state, Consumer<ScenarioResult> finding)
            throws WriteFailed {
        MakeUps makeUps = new MakeUps(
                variation,
                prices,
                panels.orElse(CountRange.ANY).less(variation.panelsThatStay().size()),
                boards.orElse(CountRange.ANY).less(variation.boardsThatStay().size()));
        return new LeastPriceSearch(variation, prices, basis, makeUps, sweep, state).run(tries, finding);
    }
}
