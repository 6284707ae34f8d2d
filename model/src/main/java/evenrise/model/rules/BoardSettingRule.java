package evenrise.model.rules;

import evenrise.model.plan.BoardSetting;
import evenrise.model.project.Board;
import evenrise.model.project.BoardType;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;

/** Every board is set once, to a start delay and a step that its type offers. */
final class BoardSettingRule implements Rule {
    @Override
    public String id() {
        return "board-setting";
    }

    @Override
    public List<String> broken(Layout layout) {
        List<String> broken = new ArrayList<>();
        Set<String> seen = new HashSet<>();
        for (BoardSetting setting : layout.plan().boards()) {
            boolean again = !seen.add(setting.id());
            if (layout.index().board(setting.id()).isEmpty()) {
                broken.add("the plan sets board " + Say.quoted(setting.id()) + ", which the project does not have."
                        + " Maybe it was renamed or taken out: delete the setting.");
            } else if (again) {
                broken.add("board " + Say.quoted(setting.id()) + " is set once more, to a start delay of "
                        + Say.seconds(setting.startDelaySeconds()) + "; exactly one setting is allowed."
                        + " Maybe delete all but the right one.");
            }
        }
        for (Board board : layout.project().boards()) {
            if (layout.index().typeOf(board).isTimedByOutput()) {
                bare(board, layout.setting(board), broken);
            } else if (seen.contains(board.id())) {
                offered(board, layout, broken);
            } else {
                broken.add("board " + Say.quoted(board.id()) + " has no setting, it needs a start delay and a step."
                        + " Maybe take those that its type " + Say.quoted(board.type()) + " offers first.");
            }
        }
        return broken;
    }

    private static void offered(Board board, Layout layout, List<String> broken) {
        BoardType type = layout.index().typeOf(board);
        BoardSetting setting = layout.plan().boards().stream()
                .filter(each -> each.id().equals(board.id()))
                .reduce((first, last) -> last)
                .orElseThrow();
        offered(board, "start delay", setting.startDelaySeconds(), type.startDelaySeconds(), broken);
        offered(board, "step", setting.stepSeconds(), type.stepSeconds(), broken);
    }

    private static void bare(Board board, BoardSetting setting, List<String> broken) {
        setting.startDelaySeconds().ifPresent(delay -> broken.add(needless(board, "a start delay", delay)));
        setting.stepSeconds().ifPresent(step -> broken.add(needless(board, "a step", step)));
    }

    private static String needless(Board board, String what, double seconds) {
        return "board " + Say.quoted(board.id()) + " is set to " + what + " of " + Say.seconds(seconds)
                + ", but each of its outputs has a time of its own; none is allowed."
                + " Maybe delete it, and write on_s of each load.";
    }

    private static void offered(
            Board board, String what, OptionalDouble set, List<Double> offered, List<String> broken) {
        if (set.isEmpty()) {
            broken.add("board " + Say.quoted(board.id()) + " is set to no " + what + ", its type "
                    + Say.quoted(board.type()) + " offers " + Say.listed(offered) + " s. Maybe set "
                    + Say.seconds(offered.get(0)) + ", the first.");
            return;
        }
        double seconds = set.getAsDouble();
        if (!offered.contains(seconds)) {
            double nearest = offered.stream()
                    .min(Comparator.comparingDouble(each -> Math.abs(each - seconds)))
                    .orElseThrow();
            broken.add("board " + Say.quoted(board.id()) + " is set to a " + what + " of " + Say.seconds(seconds)
                    + ", its type " + Say.quoted(board.type()) + " offers " + Say.listed(offered) + " s."
                    + " Maybe set " + Say.seconds(nearest) + ", the nearest.");
        }
    }
}
