package evenrise.model.rules;

import static evenrise.model.contract.Figures.THOUSANDTHS;

import evenrise.model.contract.Phrase;
import evenrise.model.plan.BoardSetting;
import evenrise.model.plan.BrokenRule;
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
    public List<BrokenRule> broken(Layout layout) {
        List<BrokenRule> broken = new ArrayList<>();
        Set<String> seen = new HashSet<>();
        for (BoardSetting setting : layout.plan().boards()) {
            boolean again = !seen.add(setting.id());
            if (layout.index().board(setting.id()).isEmpty()) {
                broken.add(about(BrokenKind.UNKNOWN_BOARD, setting.id()).build());
            } else if (again) {
                broken.add(about(BrokenKind.SET_TWICE, setting.id())
                        .word("set", THOUSANDTHS.seconds(setting.startDelaySeconds()))
                        .build());
            }
        }
        for (Board board : layout.project().boards()) {
            if (layout.index().typeOf(board).isTimedByOutput()) {
                bare(board, layout.setting(board), broken);
            } else if (seen.contains(board.id())) {
                offered(board, layout, broken);
            } else {
                broken.add(about(BrokenKind.NOT_SET, board.id())
                        .word("type", Phrase.quoted(board.type()))
                        .build());
            }
        }
        return broken;
    }

    private static void offered(Board board, Layout layout, List<BrokenRule> broken) {
        BoardType type = layout.index().typeOf(board);
        BoardSetting setting = layout.plan().boards().stream()
                .filter(each -> each.id().equals(board.id()))
                .reduce((first, last) -> last)
                .orElseThrow();
        offered(board, "start delay", setting.startDelaySeconds(), type.startDelaySeconds(), broken);
        offered(board, "step", setting.stepSeconds(), type.stepSeconds(), broken);
    }

    private static void bare(Board board, BoardSetting setting, List<BrokenRule> broken) {
        setting.startDelaySeconds().ifPresent(delay -> broken.add(needless(board, "a start delay", delay)));
        setting.stepSeconds().ifPresent(step -> broken.add(needless(board, "a step", step)));
    }

    private static BrokenRule needless(Board board, String what, double seconds) {
        return about(BrokenKind.NEEDLESS_TIME, board.id())
                .word("what", what)
                .word("set", THOUSANDTHS.seconds(seconds))
                .figure(seconds, "s")
                .build();
    }

    private static Broken about(BrokenKind kind, String board) {
        return Broken.by(kind).board(board).at("board " + board);
    }

    private static void offered(
            Board board, String what, OptionalDouble set, List<Double> offered, List<BrokenRule> broken) {
        if (set.isEmpty()) {
            broken.add(about(BrokenKind.WITHOUT_TIME, board.id())
                    .word("what", what)
                    .word("type", Phrase.quoted(board.type()))
                    .word("offered", RuleWords.listed(offered))
                    .word("first", THOUSANDTHS.seconds(offered.get(0)))
                    .build());
            return;
        }
        double seconds = set.getAsDouble();
        if (!offered.contains(seconds)) {
            double nearest = offered.stream()
                    .min(Comparator.comparingDouble(each -> Math.abs(each - seconds)))
                    .orElseThrow();
            broken.add(about(BrokenKind.NOT_OFFERED, board.id())
                    .word("what", what)
                    .word("set", THOUSANDTHS.seconds(seconds))
                    .word("type", Phrase.quoted(board.type()))
                    .word("offered", RuleWords.listed(offered))
                    .word("nearest", THOUSANDTHS.seconds(nearest))
                    .figure(seconds, nearest, "s")
                    .build());
        }
    }
}
