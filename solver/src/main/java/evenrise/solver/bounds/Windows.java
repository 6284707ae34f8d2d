package evenrise.solver.bounds;

import evenrise.model.project.Role;
import java.util.Arrays;
import java.util.List;

/** First and last instant at which each switched load can come on, in a box of plans. */
final class Windows {
    final int[] first;
    final int[] last;
    final boolean possible;

    private Windows(int[] first, int[] last, boolean possible) {
        this.first = first;
        this.last = last;
        this.possible = possible;
    }

    /** Time: loads and relations. */
    static Windows in(Box box, BoundedProject subject) {
        TimeGrid grid = subject.grid;
        List<SwitchedLoad> loads = subject.loads;
        double[] from = new double[loads.size()];
        double[] to = new double[loads.size()];
        Arrays.fill(to, grid.latestSeconds(box.endTo()));
        double split = grid.latestSeconds(box.amplifierTo());
        boolean splits = subject.has(Role.AMPLIFIER);
        double processingOn = 0;
        double processingReady = 0;
        double auxiliaryOn = 0;
        // Earliest times: processing, then what waits for it. Roles do not follow the order of the list.
        for (Role role : Role.values()) {
            for (int i = 0; i < from.length; i++) {
                SwitchedLoad load = loads.get(i);
                if (load.role() == role) {
                    double least = load.firstSeconds();
                    if (role == Role.AUXILIARY) {
                        least = Math.max(least, processingOn - BoundedProject.FORGIVEN_SECONDS);
                    } else if (role == Role.AMPLIFIER) {
                        least = Math.max(least, grid.earliestSeconds(box.amplifierFrom()));
                        least = Math.max(
                                least, Math.max(processingReady, auxiliaryOn) - BoundedProject.FORGIVEN_SECONDS);
                    }
                    from[i] = up(grid, Math.max(least, afterThoseBefore(load, loads, from)));
                }
            }
            for (int i = 0; i < from.length; i++) {
                if (loads.get(i).role() == Role.PROCESSING) {
                    processingOn = Math.max(processingOn, from[i]);
                    processingReady =
                            Math.max(processingReady, from[i] + loads.get(i).settleSeconds());
                } else if (loads.get(i).role() == Role.AUXILIARY) {
                    auxiliaryOn = Math.max(auxiliaryOn, from[i]);
                }
            }
        }
        double auxiliaryTo = Double.POSITIVE_INFINITY;
        for (Role role : new Role[] {Role.AMPLIFIER, Role.AUXILIARY, Role.PROCESSING}) {
            for (int i = from.length - 1; i >= 0; i--) {
                SwitchedLoad load = loads.get(i);
                if (load.role() == role) {
                    if (role == Role.PROCESSING) {
                        to[i] = Math.min(to[i], auxiliaryTo + BoundedProject.FORGIVEN_SECONDS);
                    }
                    if (splits && role != Role.AMPLIFIER) {
                        double settle = role == Role.PROCESSING ? load.settleSeconds() : 0;
                        to[i] = Math.min(to[i], split - settle + BoundedProject.FORGIVEN_SECONDS);
                    }
                    to[i] = down(grid, to[i]);
                    for (int earlier : load.before()) {
                        double settled = to[i] - loads.get(earlier).settleSeconds() + BoundedProject.FORGIVEN_SECONDS;
                        to[earlier] = Math.min(to[earlier], settled);
                    }
                }
            }
            if (role == Role.AUXILIARY) {
                for (int i = 0; i < from.length; i++) {
                    if (loads.get(i).role() == role) {
                        auxiliaryTo = Math.min(auxiliaryTo, to[i]);
                    }
                }
            }
        }
        int[] first = new int[from.length];
        int[] last = new int[from.length];
        boolean possible = !splits || processingReady - BoundedProject.FORGIVEN_SECONDS <= split + 1e-9;
        for (int i = 0; i < from.length; i++) {
            first[i] = Math.max(0, grid.first(from[i]));
            last[i] = Math.min(grid.count() - 1, grid.last(to[i]));
            possible &= first[i] <= last[i];
        }
        return new Windows(first, last, possible);
    }

    private static double afterThoseBefore(SwitchedLoad load, List<SwitchedLoad> loads, double[] from) {
        double least = 0;
        for (int earlier : load.before()) {
            double settled = from[earlier] + loads.get(earlier).settleSeconds();
            least = Math.max(least, settled - BoundedProject.FORGIVEN_SECONDS);
        }
        return least;
    }

    private static double up(TimeGrid grid, double seconds) {
        return grid.exact() ? Math.max(0, grid.first(seconds)) * grid.stepSeconds() : seconds;
    }

    private static double down(TimeGrid grid, double seconds) {
        return grid.exact() ? grid.last(seconds) * grid.stepSeconds() : seconds;
    }
}
