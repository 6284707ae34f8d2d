package evenrise.model.rules;

import java.util.List;

/** A load sits in one of the panels that it allows. */
final class PanelAllowedRule implements Rule {
    @Override
    public String id() {
        return "panel-allowed";
    }

    @Override
    public List<String> broken(Layout layout) {
        return layout.placements().stream()
                .filter(Placement::fits)
                .filter(each -> !each.load().panels().isEmpty()
                        && !each.load().panels().contains(each.assignment().panel()))
                .map(each -> "load " + Say.quoted(each.id()) + " sits in panel " + Say.panelOf(each)
                        + ", allowed are " + Say.quoted(each.load().panels())
                        + ". Maybe move it there, or allow panel " + Say.panelOf(each) + ".")
                .toList();
    }
}
