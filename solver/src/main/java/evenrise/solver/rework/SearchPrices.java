package evenrise.solver.rework;

import evenrise.solver.engine.nearby.ChangePrices;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Prices of changes as a search asks for them: minutes, and systems as bits. */
final class SearchPrices implements ChangePrices {
    /** Systems that are told apart; further ones count as one. */
    private static final int MOST_TOLD_APART = 62;

    private final WorkMinutes minutes;
    private final Map<String, Long> offWithLoad;
    private final Map<String, Long> offWithPanel;
    private final Map<String, Long> offWithBoard;

    SearchPrices(
            WorkMinutes minutes,
            Map<String, Set<String>> offWithLoad,
            Map<String, Set<String>> offWithPanel,
            Map<String, Set<String>> offWithBoard) {
        this.minutes = minutes;
        Map<String, Integer> bits = new HashMap<>();
        List.of(offWithLoad, offWithPanel, offWithBoard)
                .forEach(parts -> parts.values().stream()
                        .flatMap(Set::stream)
                        .sorted()
                        .forEach(system -> bits.putIfAbsent(system, Math.min(MOST_TOLD_APART, bits.size()))));
        this.offWithLoad = masks(offWithLoad, bits);
        this.offWithPanel = masks(offWithPanel, bits);
        this.offWithBoard = masks(offWithBoard, bits);
    }

    private static Map<String, Long> masks(Map<String, Set<String>> systems, Map<String, Integer> bits) {
        Map<String, Long> masks = new HashMap<>();
        systems.forEach((part, off) -> masks.put(
                part, off.stream().mapToLong(system -> 1L << bits.get(system)).reduce(0, (one, more) -> one | more)));
        return masks;
    }

    @Override
    public double samePanel() {
        return minutes.of(MoveKind.SAME_PANEL);
    }

    @Override
    public double otherPanel() {
        return minutes.of(MoveKind.OTHER_PANEL);
    }

    @Override
    public double newCircuit() {
        return minutes.of(MoveKind.NEW_CIRCUIT);
    }

    @Override
    public double lead() {
        return minutes.of(MoveKind.LEAD);
    }

    @Override
    public double drawnLead() {
        return minutes.of(MoveKind.DRAWN_LEAD);
    }

    @Override
    public double setting() {
        return minutes.of(MoveKind.SETTING);
    }

    @Override
    public double test() {
        return minutes.of(MoveKind.TEST);
    }

    @Override
    public double isolation() {
        return minutes.of(MoveKind.ISOLATION);
    }

    @Override
    public double shutdown() {
        return minutes.of(MoveKind.SHUTDOWN);
    }

    @Override
    public boolean isPanelDead(String panel) {
        return offWithPanel.containsKey(panel);
    }

    @Override
    public boolean isBoardDead(String board) {
        return offWithBoard.containsKey(board);
    }

    @Override
    public long offWithLoad(String load) {
        return offWithLoad.getOrDefault(load, 0L);
    }

    @Override
    public long offWithPanel(String panel) {
        return offWithPanel.getOrDefault(panel, 0L);
    }

    @Override
    public long offWithBoard(String board) {
        return offWithBoard.getOrDefault(board, 0L);
    }
}
