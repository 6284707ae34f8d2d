package evenrise.solver.exact;

import evenrise.model.plan.Assignment;
import evenrise.model.plan.BoardSetting;
import evenrise.model.plan.Plan;
import evenrise.model.project.Board;
import evenrise.model.project.BoardType;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.Project;
import evenrise.model.rules.NodeFigures;
import evenrise.model.rules.PlanFinisher;
import evenrise.model.rules.Referee;
import evenrise.model.rules.Verdict;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/** Judges every plan of a tiny project, one after another, by the referee alone: it shares nothing with any solver. */
final class EveryPlan {
    private final Project project;
    private final List<BoardSetting> settings = new ArrayList<>();
    private final List<Assignment> assignments = new ArrayList<>();
    private double least = Double.POSITIVE_INFINITY;
    private double leastSupplyDeviation = Double.POSITIVE_INFINITY;
    private double leastPanelDeviations = Double.POSITIVE_INFINITY;
    private double leastDurationAndBoards = Double.POSITIVE_INFINITY;

    /**
     * The least of each figure, in amperes or ampere-equivalents, over all plans that keep every rule; infinite where
     * there is none.
     */
    record Least(double objective, double supplyDeviation, double panelDeviations, double durationAndBoards) {}

    private EveryPlan(Project project) {
        this.project = project;
    }

    /** The least objective of all plans that keep every rule; infinite where there is none. */
    static double leastObjective(Project project) {
        return least(project).objective();
    }

    static Least least(Project project) {
        EveryPlan it = new EveryPlan(project);
        it.setBoards(0);
        return new Least(it.least, it.leastSupplyDeviation, it.leastPanelDeviations, it.leastDurationAndBoards);
    }

    private void setBoards(int next) {
        if (next == project.boards().size()) {
            assign(0);
            return;
        }
        Board board = project.boards().get(next);
        for (double delay : type(board).startDelaySeconds()) {
            for (double step : type(board).stepSeconds()) {
                settings.add(new BoardSetting(board.id(), delay, step));
                setBoards(next + 1);
                settings.remove(settings.size() - 1);
            }
        }
    }

    private void assign(int next) {
        if (next == project.loads().size()) {
            judge();
            return;
        }
        Load load = project.loads().get(next);
        for (Panel panel : project.panels()) {
            for (int slot = 1; slot <= panel.slots(); slot++) {
                if (!load.switched()) {
                    put(next, load, panel, slot, Optional.empty(), OptionalInt.empty());
                    continue;
                }
                for (Board board : project.boards()) {
                    for (int output = 1; output <= type(board).outputs(); output++) {
                        put(next, load, panel, slot, Optional.of(board.id()), OptionalInt.of(output));
                    }
                }
            }
        }
    }

    /** Puts a load where nobody sits with the same slot or output; the referee sees to everything else. */
    private void put(int next, Load load, Panel panel, int slot, Optional<String> board, OptionalInt output) {
        boolean isTaken = assignments.stream()
                .anyMatch(each -> each.panel().equals(panel.id()) && each.slot() == slot
                        || board.isPresent()
                                && each.board().equals(board)
                                && each.output().equals(output));
        if (!isTaken) {
            assignments.add(Assignment.builder()
                    .load(load.id())
                    .panel(panel.id())
                    .slot(slot)
                    .board(board)
                    .output(output)
                    .build());
            assign(next + 1);
            assignments.remove(assignments.size() - 1);
        }
    }

    private void judge() {
        Plan bare = Plan.builder().boards(settings).assignments(assignments).build();
        Verdict verdict = Referee.judge(project, PlanFinisher.timed(project, bare));
        if (verdict.violations().isEmpty()) {
            least = Math.min(least, verdict.metrics().objective());
            leastDurationAndBoards = Math.min(
                    leastDurationAndBoards,
                    project.objective().duration() * verdict.metrics().durationSeconds()
                            + project.objective().boards() * verdict.metrics().boardsUsed());
            leastSupplyDeviation =
                    Math.min(leastSupplyDeviation, verdict.nodes().get(0).deviationAmps());
            leastPanelDeviations = Math.min(
                    leastPanelDeviations,
                    verdict.nodes().stream()
                            .skip(1)
                            .mapToDouble(NodeFigures::deviationAmps)
                            .sum());
        }
    }

    private BoardType type(Board board) {
        return project.boardTypes().stream()
                .filter(type -> type.id().equals(board.type()))
                .findFirst()
                .orElseThrow();
    }
}
