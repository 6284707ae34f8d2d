package evenrise.solver.rework;

import java.util.Set;

/** What goes off with one part of the plant as built, whoever works on it. */
final class OutageOf {
    private OutageOf() {}

    static Outages.Outage load(Passage still, String load) {
        return still.outage(Set.of(load), new Isolation(Set.of(), Set.of(), Set.of()));
    }

    static Outages.Outage panel(Passage still, String panel) {
        Set<String> one = Set.of(panel);
        return still.outage(Set.of(), new Isolation(one, Set.of(), Downstream.below(still.index, one)));
    }

    static Outages.Outage board(Passage still, String board) {
        return still.outage(Set.of(), new Isolation(Set.of(), Set.of(board), Set.of()));
    }
}
