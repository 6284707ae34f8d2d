package evenrise.solver.compare;

import evenrise.model.check.Feasibility;
import evenrise.model.contract.Phrase;
import evenrise.model.project.Project;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Which numbers of panels and boards are worth a plan: each with its cheapest make-up that counting does not rule out. */
public final class Scenarios {
    /** So many make-ups of one number are tried before it is called impossible. */
    private static final int MOST_TRIED = 40;

    /** Numbers above the least that are looked at unasked. */
    private static final int MORE = 2;

    private static final String STOPPED = "not looked at, for it was stopped before";

    private static final String NONE =
            "no make-up has the slots, the rating and the outputs, and holds the shutdown groups";

    private final Variation variation;
    private final KindPrices prices;
    private final int panelsThatStay;
    private final int boardsThatStay;

    /** @param prices of the same variation */
    Scenarios(Variation variation, KindPrices prices) {
        this.variation = variation;
        this.prices = prices;
        this.panelsThatStay = variation.panelsThatStay().size();
        this.boardsThatStay = variation.boardsThatStay().size();
    }

    /**
     * What one number of panels and boards comes to: a scenario for each aim, or why none is possible.
     *
     * @param panels 0 where that holds of any number; boards alike
     */
    public record Cell(int panels, int boards, List<Scenario> scenarios, Optional<String> why) {
        static Cell none(int panels, int boards, String why) {
            return new Cell(panels, boards, List.of(), Optional.of(why));
        }
    }

    /**
     * Every pair of numbers in the ranges.
     *
     * @param panels empty for the least number that counting allows and two more; boards alike
     */
    List<Cell> cells(Optional<CountRange> panels, Optional<CountRange> boards) {
        Optional<CountRange> panelCounts = panels.or(this::usualPanels);
        if (panelCounts.isEmpty()) {
            return List.of(Cell.none(0, 0, noneOrStopped()));
        }
        List<Cell> cells = new ArrayList<>();
        for (int p = panelCounts.get().least(); p <= panelCounts.get().most() && !variation.isStopped(); p++) {
            int fixed = p;
            Optional<CountRange> boardCounts = boards.or(() -> usualBoards(fixed));
            if (boardCounts.isEmpty()) {
                cells.add(Cell.none(p, 0, noneOrStopped()));
                continue;
            }
            for (int b = boardCounts.get().least(); b <= boardCounts.get().most() && !variation.isStopped(); b++) {
                cells.add(cell(p, b));
            }
        }
        return cells;
    }

    /** That there is none is said only where nobody stopped the list. */
    private String noneOrStopped() {
        return variation.isStopped() ? STOPPED : NONE;
    }

    private Cell cell(int panels, int boards) {
        if (panels < panelsThatStay || boards < boardsThatStay) {
            return Cell.none(panels, boards, "more than that stay as they are");
        }
        MakeUps makeUps = makeUps(CountRange.of(panels), CountRange.of(boards));
        String why = NONE;
        for (int tried = 0; tried < MOST_TRIED; tried++) {
            Optional<MakeUp> makeUp = makeUps.at(tried);
            if (makeUp.isEmpty() && variation.isStopped()) {
                return Cell.none(panels, boards, STOPPED);
            }
            if (makeUp.isEmpty()) {
                boolean isCut = makeUps.completeBelow() < Double.POSITIVE_INFINITY;
                return Cell.none(
                        panels, boards, (isCut ? "not decided, too many make-ups to look at: " : "impossible, ") + why);
            }
            Optional<String> against = against(variation, makeUp.get());
            if (against.isEmpty()) {
                return new Cell(
                        panels,
                        boards,
                        of(variation, makeUp.get(), String.format(Locale.ROOT, "p%d-b%d", panels, boards)),
                        Optional.empty());
            }
            why = against.get();
        }
        return Cell.none(
                panels, boards, "not decided after " + Phrase.counted(MOST_TRIED, "make-up") + "; the last: " + why);
    }

    /** Why no plan of a make-up keeps every rule, by counting alone; empty where counting does not say so. */
    static Optional<String> against(Variation variation, MakeUp makeUp) {
        return against(variation.builtWithAllReach(makeUp));
    }

    /** The same of a project with its own panels and boards. */
    static Optional<String> against(Project project) {
        return Feasibility.impossible(project).stream()
                .findFirst()
                .map(it -> it.pointer() + " is " + it.value() + "; expected " + it.expected());
    }

    /** A make-up for each aim. */
    static List<Scenario> of(Variation variation, MakeUp makeUp, String key) {
        Project built = variation.built(makeUp);
        List<Scenario> scenarios = new ArrayList<>();
        for (Aim aim : Aim.values()) {
            scenarios.add(new Scenario(
                    key + "-" + aim.word(),
                    aim,
                    makeUp,
                    built.with().objective(aim.weights(built.objective())).build()));
        }
        return scenarios;
    }

    private MakeUps makeUps(CountRange panels, CountRange boards) {
        return new MakeUps(variation, prices, panels.less(panelsThatStay), boards.less(boardsThatStay));
    }

    /** The least that counting allows and a few more, but no more than there are loads; empty where there is none. */
    private Optional<CountRange> usualPanels() {
        int loads = variation.project().loads().size();
        return makeUps(CountRange.ANY, CountRange.ANY).at(0).map(cheapest -> {
            int least = Math.max(1, panelsThatStay + variation.points().size());
            int ofCheapest = panelsThatStay + cheapest.panels().size();
            while (least < ofCheapest
                    && makeUps(CountRange.of(least), CountRange.ANY).at(0).isEmpty()) {
                least++;
            }
            return new CountRange(least, Math.max(least, Math.min(least + MORE, loads)));
        });
    }

    /** Alike, but no more than there are loads to be switched. */
    private Optional<CountRange> usualBoards(int panels) {
        int switched = (int) variation.project().loads().stream()
                .filter(load -> load.switched() && load.comesWith().isEmpty())
                .count();
        return makeUps(CountRange.of(panels), CountRange.ANY).at(0).map(cheapest -> {
            int least = boardsThatStay;
            int ofCheapest = boardsThatStay + cheapest.boards().size();
            while (least < ofCheapest
                    && makeUps(CountRange.of(panels), CountRange.of(least))
                            .at(0)
                            .isEmpty()) {
                least++;
            }
            return new CountRange(least, Math.max(least, Math.min(least + MORE, switched)));
        });
    }
}
