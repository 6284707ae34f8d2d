package evenrise.solver.tidy;

import evenrise.solver.tidy.PanelSlots.Breaker;
import java.util.Arrays;

/**
 * Exchanges what lies in the slots of a panel as long as that makes it tidier; ends where no single exchange does. Goes
 * down twice, from the breakers as they lie and from the same pushed together, and keeps the better.
 */
final class SlotDescent {
    /** Tells whether the first is better than the second. */
    private interface Better {
        boolean test(int[] then, int[] now);
    }

    private final PanelSlots panel;
    private final SlotWorth worth;

    SlotDescent(PanelSlots panel, SlotWorth worth) {
        this.panel = panel;
        this.worth = worth;
    }

    void run() {
        int[] start = panel.starts();
        int[] before = worth.now();
        int[] asTheyLie = descend(SlotWorth::isTidier);
        int[] first = panel.starts();
        panel.seat(start);
        descend(SlotWorth::isNearer);
        int[] pushedTogether = descend(SlotWorth::isTidier);
        if (!SlotWorth.isTidier(pushedTogether, before) || Arrays.compare(pushedTogether, asTheyLie) >= 0) {
            panel.seat(first);
        }
    }

    private int[] descend(Better better) {
        int[] now = worth.now();
        boolean goesOn = true;
        while (goesOn) {
            goesOn = false;
            for (int breaker = 0; breaker < panel.breakers.size(); breaker++) {
                Breaker which = panel.breakers.get(breaker);
                for (int slot = 1; slot <= panel.geometry.slots && which.isFree(); slot++) {
                    int start = panel.start(breaker);
                    if (panel.canExchange(breaker, slot)) {
                        panel.exchange(breaker, slot);
                        int[] then = worth.now();
                        if (better.test(then, now)) {
                            now = then;
                            goesOn = true;
                        } else {
                            panel.exchange(breaker, start);
                        }
                    }
                }
            }
        }
        return now;
    }
}
