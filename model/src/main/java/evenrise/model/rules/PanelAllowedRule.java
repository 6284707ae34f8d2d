package evenrise.model.rules;

import evenrise.model.plan.BrokenRule;
import java.util.List;

/** A load sits in one of the panels that it allows. */
final class PanelAllowedRule implements Rule {
    @Override
    public String id() {
        return "panel-allowed";
    }

    @Override
    public List<BrokenRule> broken(Layout layout) {
        return layout.placements().stream()
                .filter(Placement::fits)
                .filter(each -> !each.load().panels().isEmpty()
                        && !each.load().panels().contains(each.assignment().panel()))
                .map(each -> Broken.by(BrokenKind.REFUSED_PANEL)
                        .load(each.id())
                        .panel(each.assignment().panel())
                        .word("allowed", RuleWords.quoted(each.load().panels()))
                        .at(RuleWords.seatOf(each))
                        .build())
                .toList();
    }
}
