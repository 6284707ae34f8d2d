package evenrise.solver.cli;

import evenrise.solver.app.StandIns;

/** The program with a search that goes on until it is stopped; it says so once it searches. */
final class StandInMain {
    private StandInMain() {}

    public static void main(String[] arguments) {
        Evenrise.process(StandIns.endless(SmallHall.sound()), arguments);
    }
}
