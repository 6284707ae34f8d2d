package evenrise.solver.document;

import evenrise.model.evaluation.Evaluation;
import evenrise.model.plan.Assignment;
import evenrise.model.plan.BoardSetting;
import evenrise.model.plan.Metrics;
import evenrise.model.plan.Plan;
import evenrise.model.project.Board;
import evenrise.model.rules.Layout;
import evenrise.solver.report.Numbers;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** What is another than in an earlier plan of the same project: figures, settings of boards, places and times of loads. */
final class Differences {
    private final Evaluation is;
    private final Evaluation was;
    private final Layout now;
    private final Layout before;
    private final List<Difference> rows = new ArrayList<>();

    private Differences(Evaluation is, Evaluation was) {
        this.is = is;
        this.was = was;
        this.now = is.layout();
        this.before = was.layout();
    }

    /** Both plans are judged anew, so that what their files state counts for nothing. */
    static DocumentTable<Difference> of(Evaluation now, Plan earlier) {
        Layout before = Layout.of(now.layout().index(), earlier);
        Differences found = new Differences(now, Evaluation.of(before, now::bounds));
        found.figures();
        found.settings();
        found.loads();
        return DocumentTable.of(
                "differences",
                "Differences to the earlier plan",
                "",
                List.of(
                        Column.text("what", "What", Difference::what),
                        Column.text("which", "Which", Difference::which),
                        Column.text("name", "Name", Difference::name),
                        Column.text("before", "Before", Difference::before),
                        Column.text("now", "Now", Difference::now)),
                found.rows);
    }

    private void figures() {
        figures(was.verdict().metrics(), is.verdict().metrics());
    }

    private void figures(Metrics was, Metrics is) {
        figure("peak inrush", Numbers.amps(was.peakInrushAmps()) + " A", Numbers.amps(is.peakInrushAmps()) + " A");
        figure("sequence", Numbers.seconds(was.durationSeconds()) + " s", Numbers.seconds(is.durationSeconds()) + " s");
        figure(
                "imbalance of the supply",
                Numbers.percent(was.supplyImbalancePercent()) + " %",
                Numbers.percent(is.supplyImbalancePercent()) + " %");
        figure(
                "imbalance of the worst panel",
                Numbers.percent(was.worstPanelImbalancePercent()) + " %",
                Numbers.percent(is.worstPanelImbalancePercent()) + " %");
        figure(
                "neutral of the supply",
                Numbers.amps(was.supplyNeutralAmps()) + " A",
                Numbers.amps(is.supplyNeutralAmps()) + " A");
        figure("boards in use", String.valueOf(was.boardsUsed()), String.valueOf(is.boardsUsed()));
        figure("hard rules broken", String.valueOf(was.hardViolations()), String.valueOf(is.hardViolations()));
    }

    private void settings() {
        for (Board board : now.project().boards()) {
            add("board", board.id(), "", words(before.setting(board)), words(now.setting(board)));
        }
    }

    private void loads() {
        Map<String, Assignment> earlier = new LinkedHashMap<>();
        before.plan().assignments().forEach(each -> earlier.put(each.load(), each));
        for (Assignment each : now.plan().assignments()) {
            Assignment was = earlier.remove(each.load());
            load(each.load(), was == null ? "" : words(before, was), words(now, each));
        }
        earlier.values().forEach(was -> load(was.load(), words(before, was), ""));
    }

    private void load(String id, String was, String is) {
        String name = now.index().load(id).map(load -> load.name()).orElse("");
        add("load", id, name, was, is);
    }

    private void figure(String which, String was, String is) {
        add("figure", which, "", was, is);
    }

    private void add(String what, String which, String name, String was, String is) {
        if (!was.equals(is)) {
            rows.add(new Difference(what, which, name, was, is));
        }
    }

    private static String words(BoardSetting setting) {
        if (setting.startDelaySeconds().isEmpty()) {
            return "a time for each output";
        }
        return "start delay " + Numbers.seconds(setting.delaySeconds()) + " s, step "
                + Numbers.seconds(setting.betweenSeconds()) + " s";
    }

    private static String words(Layout layout, Assignment it) {
        String on = layout.placement(it.load())
                .filter(each -> each.isSequenced())
                .map(each -> ", on at " + Numbers.seconds(each.onSeconds().getAsDouble()) + " s")
                .orElse("");
        String lead = it.board().isPresent() && it.output().isPresent()
                ? ", board " + it.board().get() + " output " + it.output().getAsInt()
                : "";
        return "panel " + it.panel() + " slot " + it.slot() + lead + on;
    }
}
