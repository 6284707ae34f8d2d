package evenrise.solver.rework;

import evenrise.model.plan.BoardSetting;

/** One board that is set otherwise afterwards. */
public record SettingChange(BoardSetting from, BoardSetting to) {
    public String board() {
        return to.id();
    }
}
