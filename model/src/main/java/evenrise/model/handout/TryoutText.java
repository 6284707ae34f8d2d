package evenrise.model.handout;

import evenrise.model.answer.TriedPlace;
import evenrise.model.plan.Cautions;
import evenrise.model.plan.LoadMove;
import evenrise.model.plan.Metrics;
import evenrise.model.plan.PlanMoves;
import evenrise.model.project.Board;
import evenrise.model.project.BoardTiming;
import evenrise.model.project.BoardType;
import evenrise.model.project.Panel;
import evenrise.model.project.Phase;
import evenrise.model.project.SlotLayout;
import evenrise.model.project.SlotNumbering;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeFigures;
import evenrise.model.rules.PhasePeak;
import evenrise.model.rules.Placement;
import evenrise.model.rules.Verdict;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** What a page shows of a tryout, as JSON; the moves as the file that goes back. */
final class TryoutText {
    private final Tryout tryout;

    TryoutText(Tryout tryout) {
        this.tryout = tryout;
    }

    /** Everything about the plan as it is now, beside what it was. */
    String state() {
        Map<String, Object> state = new LinkedHashMap<>();
        state.put("moves", tryout.moves().stream().map(TryoutText::move).toList());
        state.put("before", verdict(tryout.first()));
        state.put("now", verdict(tryout.verdict()));
        state.put("added", Tryout.words(tryout.brokenSince().added()));
        state.put("gone", (double) tryout.brokenSince().gone());
        state.put(
                "loads",
                tryout.layout().placements().stream().map(TryoutText::placement).toList());
        return PlainJson.text(state);
    }

    /** Panels with their slots, and boards with their outputs. */
    String plant() {
        Layout layout = tryout.layout();
        return PlainJson.text(Map.of(
                "panels",
                layout.project().panels().stream()
                        .map(panel -> panel(panel, layout.index().slotsOf(panel)))
                        .toList(),
                "boards",
                layout.project().boards().stream()
                        .map(board -> board(board, layout.index().typeOf(board)))
                        .toList()));
    }

    private static Map<String, Object> panel(Panel panel, SlotLayout geometry) {
        Map<String, Object> entry = new LinkedHashMap<>();
        entry.put("id", panel.id());
        entry.put("slots", (double) panel.slots());
        entry.put("two", panel.numbering() == SlotNumbering.ALTERNATING);
        StringBuilder phases = new StringBuilder();
        for (int slot = 1; slot <= panel.slots(); slot++) {
            phases.append(geometry.phase(slot).name());
        }
        entry.put("phases", phases.toString());
        return entry;
    }

    private static Map<String, Object> board(Board board, BoardType type) {
        Map<String, Object> entry = new LinkedHashMap<>();
        entry.put("id", board.id());
        entry.put("outputs", (double) type.outputs());
        entry.put("times", type.timing() != BoardTiming.STEPPED);
        return entry;
    }

    /** What each of some places would break or cost. */
    static String places(List<TriedPlace> places) {
        return PlainJson.text(places.stream().map(TryoutText::place).toList());
    }

    /** The file that is sent back. */
    String moves() {
        Map<String, Object> file = new LinkedHashMap<>();
        file.put("format", PlanMoves.FORMAT);
        file.put("cautions", Cautions.ALL);
        file.put("project", tryout.handout().project().name());
        file.put("project_sha256", tryout.handout().projectSha256());
        file.put("plan_sha256", tryout.handout().planSha256());
        file.put("moves", tryout.moves().stream().map(TryoutText::move).toList());
        return PlainJson.text(file);
    }

    private static Map<String, Object> move(LoadMove move) {
        Map<String, Object> entry = new LinkedHashMap<>();
        entry.put("load", move.load());
        move.panel().ifPresent(panel -> entry.put("panel", panel));
        putWhole(entry, "slot", move.slot());
        move.board().ifPresent(board -> entry.put("board", board));
        putWhole(entry, "output", move.output());
        put(entry, "on_s", move.onSeconds());
        return entry;
    }

    private static Map<String, Object> verdict(Verdict verdict) {
        Metrics metrics = verdict.metrics();
        Map<String, Object> entry = new LinkedHashMap<>();
        entry.put("broken", Tryout.words(verdict.violations()));
        entry.put("objective", metrics.objective());
        entry.put("peak_a", metrics.peakInrushAmps());
        entry.put("peak_phase", metrics.peakPhase().name());
        entry.put("peak_at_s", metrics.peakAtSeconds());
        entry.put("imbalance_pct", metrics.supplyImbalancePercent());
        entry.put("panel_imbalance_pct", metrics.worstPanelImbalancePercent());
        entry.put("neutral_a", metrics.supplyNeutralAmps());
        entry.put("duration_s", metrics.durationSeconds());
        entry.put("nodes", verdict.nodes().stream().map(TryoutText::node).toList());
        return entry;
    }

    private static Map<String, Object> node(NodeFigures node) {
        Map<String, Object> entry = new LinkedHashMap<>();
        entry.put("id", node.node());
        entry.put(
                "phases", node.peaks().stream().map(peak -> peak.phase().name()).toList());
        entry.put("peaks_a", node.peaks().stream().map(PhasePeak::amps).toList());
        List<Object> running = new ArrayList<>();
        node.peaks().forEach(peak -> running.add(node.runningAmps().getOrDefault(peak.phase(), 0.0)));
        entry.put("running_a", running);
        entry.put("neutral_a", node.neutralAmps());
        return entry;
    }

    private static Map<String, Object> placement(Placement placement) {
        Map<String, Object> entry = new LinkedHashMap<>();
        entry.put("id", placement.id());
        entry.put("panel", placement.assignment().panel());
        entry.put(
                "slots",
                placement.slots().stream().map(slot -> (Object) (double) slot).toList());
        entry.put("phases", placement.phases().stream().map(Phase::name).toList());
        placement.board().ifPresent(board -> entry.put("board", board.id()));
        if (placement.board().isPresent()) {
            putWhole(entry, "output", placement.assignment().output());
        }
        put(entry, "on_s", placement.onSeconds());
        return entry;
    }

    private static Map<String, Object> place(TriedPlace tried) {
        Map<String, Object> entry = new LinkedHashMap<>();
        tried.place().panel().ifPresent(panel -> entry.put("panel", panel));
        entry.put(
                "slots",
                tried.place().slots().stream()
                        .map(slot -> (Object) (double) slot)
                        .toList());
        tried.place().board().ifPresent(board -> entry.put("board", board));
        putWhole(entry, "output", tried.place().output());
        entry.put("broken", Tryout.words(tried.broken().added()));
        entry.put("gone", (double) tried.broken().gone());
        entry.put("objective", tried.objectiveChange());
        entry.put("peak_a", tried.peakChangeAmps());
        return entry;
    }

    private static void put(Map<String, Object> entry, String key, OptionalDouble value) {
        if (value.isPresent()) {
            entry.put(key, value.getAsDouble());
        }
    }

    private static void putWhole(Map<String, Object> entry, String key, OptionalInt value) {
        if (value.isPresent()) {
            entry.put(key, (double) value.getAsInt());
        }
    }
}
