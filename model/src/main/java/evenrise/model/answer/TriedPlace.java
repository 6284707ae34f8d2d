package evenrise.model.answer;

import evenrise.model.project.Phase;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Referee;
import evenrise.model.rules.Verdict;
import java.util.List;

/**
 * What a place would break or cost, judged by the referee on the very plan that putting the load down there makes.
 *
 * @param phases that the load would be on
 * @param broken what is broken then and not before
 * @param objectiveChange of the whole plan, in ampere-equivalents
 * @param peakChangeAmps of the supply's peak
 */
public record TriedPlace(
        FreePlace place, List<Phase> phases, BrokenAnew broken, double objectiveChange, double peakChangeAmps) {

    /** @param before what is said of the plan as it is */
    public static TriedPlace of(Layout layout, Verdict before, String load, FreePlace place) {
        Layout then = Layout.of(layout.index(), place.of(new HandMove(layout, load)));
        Verdict after = Referee.judge(then);
        return new TriedPlace(
                place,
                then.placement(load).orElseThrow().phases(),
                BrokenAnew.of(before.violations(), after.violations()),
                after.metrics().objective() - before.metrics().objective(),
                after.metrics().peakInrushAmps() - before.metrics().peakInrushAmps());
    }
}
