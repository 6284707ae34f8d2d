package evenrise.model.evaluation;

import evenrise.model.rules.Layout;
import evenrise.model.rules.Placement;

/** How much of what a plan is judged by nobody stated, and what of the project its figures leave out. */
final class Unstated {
    private final Layout layout;

    Unstated(Layout layout) {
        this.layout = layout;
    }

    int guessedFields() {
        return layout.project().loads().stream()
                .mapToInt(load -> load.guessed().size())
                .sum();
    }

    int loadsWithoutInrush() {
        return layout.peakBasis().withoutInrush().size();
    }

    int loadsWithoutPlace() {
        return (int) layout.project().loads().stream()
                .filter(load -> !hasPlace(load.id()))
                .count();
    }

    /** Line current of all poles of those loads, over the supply's phases. */
    double withoutPlaceAmps() {
        return layout.project().loads().stream()
                        .filter(load -> !hasPlace(load.id()))
                        .mapToDouble(load -> load.poles() * load.runningAmps())
                        .sum()
                / layout.project().supply().system().phases().size();
    }

    private boolean hasPlace(String load) {
        return layout.placement(load).filter(Placement::fits).isPresent();
    }
}
