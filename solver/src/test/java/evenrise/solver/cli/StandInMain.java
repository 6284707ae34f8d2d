package evenrise.solver.cli;

import evenrise.solver.app.StandIns;

/** The program with a search that goes on until it is stopped; it says so once it searches. */
final class StandInMain {
    private StandInMain() {}

    public static void main(String[] arguments) {
        System.exit(Evenrise.run(Terminal.ofProcess(), StandIns.endless(SmallHall.sound()), arguments));
    }
}
