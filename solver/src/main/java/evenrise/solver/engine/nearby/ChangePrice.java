package evenrise.solver.engine.nearby;

import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.Output;
import evenrise.solver.engine.state.Place;
import java.util.Arrays;

/**
 * What it costs that loads are elsewhere than built, by prices for each kind of change: work load by load, and what is
 * dead or off for all of it together, counted once.
 */
final class ChangePrice {
    private static final int NONE = CompiledProject.NONE;

    private final CompiledProject compiled;
    private final ChangePrices prices;
    private final Touched[] touched;
    private final int[] panelUse;
    private final int[] boardUse;
    private final int[] systemUse = new int[Long.SIZE];
    private double work;
    private double together;
    private boolean isCounted = true;

    /** What work on one load touches: panels and boards by index, where it touches none {@link #NONE}. */
    private record Touched(int fromPanel, int toPanel, int fromBoard, int toBoard, long systems, double work) {
        private static final Touched NOTHING = new Touched(NONE, NONE, NONE, NONE, 0, 0);
    }

    ChangePrice(CompiledProject compiled, ChangePrices prices) {
        this.compiled = compiled;
        this.prices = prices;
        touched = new Touched[compiled.loadCount()];
        Arrays.fill(touched, Touched.NOTHING);
        panelUse = new int[compiled.panelCount];
        boardUse = new int[compiled.boardCount];
    }

    /** Looks at one load again: its place and output as built, and now. */
    void refresh(int load, Place from, Place to, Output before, Output now) {
        count(touched[load], -1);
        touched[load] = touched(load, from, to, before, now);
        count(touched[load], 1);
    }

    private Touched touched(int load, Place from, Place to, Output before, Output now) {
        boolean isBreaker = from != to;
        boolean leaves = from != null && to != null && from.panel() != to.panel();
        boolean isLead = before != now || leaves && now != null;
        if (!isBreaker && !isLead) {
            return Touched.NOTHING;
        }
        double cost = prices.test();
        if (isBreaker) {
            cost += from == null ? prices.newCircuit() : leaves ? prices.otherPanel() : prices.samePanel();
        }
        if (isLead) {
            boolean isDrawn = now != null && (leaves || before == null || panelOf(before) != panelOf(now));
            cost += isDrawn ? prices.drawnLead() : prices.lead();
        }
        return new Touched(
                isBreaker && from != null ? from.panel() : NONE,
                isBreaker && to != null ? to.panel() : NONE,
                isLead && before != null ? before.board() : NONE,
                isLead && now != null ? now.board() : NONE,
                prices.offWithLoad(compiled.loads[load].id()),
                cost);
    }

    private int panelOf(Output output) {
        return compiled.boardPanel[output.board()];
    }

    private void count(Touched one, int by) {
        work += by * one.work;
        use(panelUse, one.fromPanel, by);
        use(panelUse, one.toPanel, by);
        use(boardUse, one.fromBoard, by);
        use(boardUse, one.toBoard, by);
        for (long left = one.systems; left != 0; left &= left - 1) {
            use(systemUse, Long.numberOfTrailingZeros(left), by);
        }
    }

    private void use(int[] uses, int index, int by) {
        if (index != NONE) {
            uses[index] += by;
            isCounted = false;
        }
    }

    /** Of all loads together, without settings. */
    double total() {
        if (!isCounted) {
            together = together();
            isCounted = true;
        }
        return work + together;
    }

    private double together() {
        long systems = 0;
        int isolations = 0;
        for (int bit = 0; bit < systemUse.length; bit++) {
            systems |= systemUse[bit] > 0 ? 1L << bit : 0;
        }
        for (int panel = 0; panel < panelUse.length; panel++) {
            if (isDead(panel)) {
                isolations++;
                systems |=
                        prices.offWithPanel(compiled.project.panels().get(panel).id());
            }
        }
        for (int board = 0; board < boardUse.length; board++) {
            String id = compiled.project.boards().get(board).id();
            if (boardUse[board] > 0 && prices.isBoardDead(id) && !isDead(compiled.boardPanel[board])) {
                isolations++;
                systems |= prices.offWithBoard(id);
            }
        }
        return isolations * prices.isolation() + Long.bitCount(systems) * prices.shutdown();
    }

    private boolean isDead(int panel) {
        return panelUse[panel] > 0
                && prices.isPanelDead(compiled.project.panels().get(panel).id());
    }
}
