package evenrise.solver.engine.move;

import evenrise.solver.engine.state.PlanSums;
import java.util.ArrayList;
import java.util.List;

/** The neighbourhoods, each as often as it is to be drawn. */
public final class Wheel {
    /** In larger projects the other moves gave more; found by experiment. */
    private static final int MOST_LOADS_FOR_BALANCE = 150;

    private Wheel() {}

    public static List<Neighbourhood> of(PlanSums sums) {
        Neighbourhood places = new PlaceExchange();
        Neighbourhood outputs = new OutputExchange();
        Neighbourhood runs = new RunReorder();
        Neighbourhood gaps = new GapShift();
        Neighbourhood boards = new BoardRetime();
        Neighbourhood groups = new GroupTransfer(sums);
        List<Neighbourhood> wheel = new ArrayList<>(List.of(
                places, places, places, places, places, outputs, outputs, outputs, outputs, runs, runs, gaps, gaps,
                gaps, boards, boards, boards, groups, groups));
        if (sums.compiled.isSmall()) {
            wheel.add(new BoardExchange(sums));
            wheel.add(new LoadExchange(sums));
        } else {
            wheel.add(new BoardReset(sums));
            if (sums.compiled.loadCount() <= MOST_LOADS_FOR_BALANCE) {
                Neighbourhood balance = new BalancedExchange(sums.compiled);
                wheel.addAll(List.of(balance, balance, balance));
            }
        }
        if (sums.compiled.hasTimes()) {
            Neighbourhood times = new OutputRetime();
            wheel.addAll(List.of(times, times, times, times));
        }
        if (sums.compiled.racksCount) {
            Neighbourhood racks = new RackGather(sums.compiled);
            wheel.addAll(List.of(racks, racks, racks, racks, racks));
        }
        return List.copyOf(wheel);
    }
}
