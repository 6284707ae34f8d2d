package evenrise.solver.compare;

import evenrise.model.check.Feasibility;
import evenrise.model.check.Objection;
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

    private static final int MOST_NUMBER = 1000;

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

    /** What one number of panels and boards comes to: a scenario for each aim, or why none is possible. */
    public record Cell(int panels, int boards, List<Scenario> scenarios, Optional<String> why) {}

    /**
     * Every pair of numbers in the ranges.
     *
     * @param panels empty for the least number that counting allows and two more; boards alike
     */
    List<Cell> cells(Optional<CountRange> panels, Optional<CountRange> boards) {
        CountRange panelCounts = panels.orElseGet(() -> from(leastPanels()));
        List<Cell> cells = new ArrayList<>();
        for (int p = panelCounts.least(); p <= panelCounts.most(); p++) {
            int fixed = p;
            CountRange boardCounts = boards.orElseGet(() -> from(leastBoards(fixed)));
            for (int b = boardCounts.least(); b <= boardCounts.most(); b++) {
                cells.add(cell(p, b));
            }
        }
        return cells;
    }

    private static CountRange from(int least) {
        return new CountRange(least, least + MORE);
    }

    private Cell cell(int panels, int boards) {
        if (panels < panelsThatStay || boards < boardsThatStay) {
            return new Cell(panels, boards, List.of(), Optional.of("more than that stay as they are"));
        }
        MakeUps makeUps = makeUps(CountRange.of(panels), CountRange.of(boards));
        String why = "no make-up of " + Phrase.counted(panels, "panel") + " and " + Phrase.counted(boards, "board")
                + " has the slots, the rating and the outputs, and holds the shutdown groups";
        for (int tried = 0; tried < MOST_TRIED; tried++) {
            Optional<MakeUp> makeUp = makeUps.at(tried);
            if (makeUp.isEmpty()) {
                boolean isCut = makeUps.completeBelow() < Double.POSITIVE_INFINITY;
                return new Cell(
                        panels,
                        boards,
                        List.of(),
                        Optional.of((isCut ? "not decided, too many make-ups to look at: " : "impossible, ") + why));
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
        return new Cell(
                panels,
                boards,
                List.of(),
                Optional.of("not decided after " + Phrase.counted(MOST_TRIED, "make-up") + "; the last: " + why));
    }

    /** Why no plan of a make-up keeps every rule, by counting alone; empty where counting does not say so. */
    static Optional<String> against(Variation variation, MakeUp makeUp) {
        List<Objection> findings = Feasibility.impossible(variation.builtWithAllReach(makeUp));
        return findings.stream()
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

    private int leastPanels() {
        int number = Math.max(1, panelsThatStay + variation.points().size());
        while (number < MOST_NUMBER
                && makeUps(CountRange.of(number), CountRange.ANY).at(0).isEmpty()) {
            number++;
        }
        return number;
    }

    private int leastBoards(int panels) {
        int number = Math.max(1, boardsThatStay);
        while (number < MOST_NUMBER
                && makeUps(CountRange.of(panels), CountRange.of(number)).at(0).isEmpty()) {
            number++;
        }
        return number;
    }
}
