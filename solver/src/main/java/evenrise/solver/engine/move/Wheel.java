package evenrise.solver.engine.move;

import evenrise.solver.engine.state.Situation;
import java.util.ArrayList;
import java.util.List;

/** The neighbourhoods, each as often as it is to be drawn. */
public final class Wheel {
    /** In larger projects the other moves gave more; found by experiment. */
    private static final int MOST_LOADS_FOR_BALANCE = 150;

    private Wheel() {}

    public static List<Neighbourhood> of(Situation situation) {
        Neighbourhood places = new PlaceExchange();
        Neighbourhood outputs = new OutputExchange();
        Neighbourhood runs = new RunReorder();
        Neighbourhood gaps = new GapShift();
        Neighbourhood boards = new BoardRetime();
        Neighbourhood groups = new GroupTransfer(situation);
        List<Neighbourhood> wheel = new ArrayList<>(List.of(
                places, places, places, places, places, outputs, outputs, outputs, outputs, runs, runs, gaps, gaps,
                gaps, boards, boards, boards, groups, groups));
        if (situation.plant.isSmall()) {
            wheel.add(new BoardExchange(situation));
            wheel.add(new LoadExchange(situation));
        } else {
            wheel.add(new BoardReset(situation));
            if (situation.plant.loadCount() <= MOST_LOADS_FOR_BALANCE) {
                Neighbourhood balance = new BalancedExchange(situation.plant);
                wheel.addAll(List.of(balance, balance, balance));
            }
        }
        return List.copyOf(wheel);
    }
}
