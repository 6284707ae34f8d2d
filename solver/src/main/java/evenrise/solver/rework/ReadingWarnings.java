package evenrise.solver.rework;

import evenrise.model.contract.Decimals;
import evenrise.model.project.Load;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** What is odd about running currents that can be read: they count, and somebody should look at them first. */
public final class ReadingWarnings {
    /** A reading so many times what it is held against is rather a peak than a running current; common practice, no source. */
    private static final double SPIKE = 2;

    /** A reading of less than this part of what is designed is hardly full use; common practice, no source. */
    private static final double LESS = 0.9;

    private static final int FEWEST_ROWS = 3;

    /**
     * One running current.
     *
     * @param place where it stands: "line 7"
     */
    public record Row(String place, double amps) {}

    private ReadingWarnings() {}

    /** @param readings by load */
    public static List<String> of(Map<String, Load> loads, Map<String, List<Row>> readings) {
        List<String> all = new ArrayList<>();
        List<String> less = new ArrayList<>();
        readings.forEach((id, rows) -> {
            Load load = loads.get(id);
            Row greatest = rows.stream()
                    .reduce((one, next) -> next.amps > one.amps ? next : one)
                    .orElseThrow();
            if (isSpike(greatest.amps, rows, load)) {
                all.add(greatest.place + ": load '" + id + "' reads " + amps(greatest.amps)
                        + " A, far from its other readings or from the " + amps(load.runningAmps())
                        + " A of the project; it counts as its running current. Maybe it is the inrush of a switch-on:"
                        + " then leave it out and read again once the load has settled.");
            }
            if (greatest.amps > load.breakerAmps()) {
                all.add(greatest.place + ": load '" + id + "' reads " + amps(greatest.amps)
                        + " A on a breaker of "
                        + amps(load.breakerAmps())
                        + " A. No move cures that: look at the load, its breaker and its cable,"
                        + " or read again.");
            }
            if (greatest.amps < LESS * load.runningAmps()) {
                less.add(id);
            }
        });
        if (!less.isEmpty()) {
            all.add(less.size() + (less.size() == 1 ? " load reads" : " loads read")
                    + " less than 90 % of what the project states, the first '" + less.get(0)
                    + "'; a reading counts as full design use. Where the system ran at less, leave these readings out: room"
                    + " that they show is not there at full use.");
        }
        return all;
    }

    private static boolean isSpike(double greatest, List<Row> rows, Load load) {
        double[] sorted = rows.stream()
                .mapToDouble(Row::amps)
                .filter(amps -> amps > 0)
                .sorted()
                .toArray();
        boolean stands = sorted.length >= FEWEST_ROWS && greatest > SPIKE * sorted[sorted.length / 2];
        return stands || greatest > SPIKE * load.runningAmps() && load.runningAmps() > 0;
    }

    private static String amps(double amps) {
        return Decimals.fixed(amps, 1);
    }
}
