package evenrise.model.event;

import evenrise.model.project.Phase;
import evenrise.model.project.PhaseWatch;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoublePredicate;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;

/**
 * What boards see of what feeds them: whether it is low or steady, and since when they wait for either. What is watched by
 * several boards is one watch; what turns at one instant does so together.
 */
final class SupplyWatch {
    private final ConnectedLoads connected;
    private final Agenda agenda;
    private final boolean[] low;
    private final boolean[] steady;
    private final boolean[] tripped;
    private final int[] lowVersion;
    private final int[] steadyVersion;
    private final List<Turn> turns = new ArrayList<>();

    /** Watches that turned at one instant, with their versions then. */
    private record Turn(int[] watches, int[] versions) {}

    /** All steady. */
    SupplyWatch(ConnectedLoads connected, Agenda agenda) {
        this.connected = connected;
        this.agenda = agenda;
        int count = connected.watches.size();
        low = new boolean[count];
        steady = new boolean[count];
        Arrays.fill(steady, true);
        tripped = new boolean[count];
        lowVersion = new int[count];
        steadyVersion = new int[count];
    }

    int count() {
        return low.length;
    }

    /** Whether any is low. */
    boolean isLow() {
        return all().anyMatch(each -> low[each]);
    }

    /** Whether all of these are low. */
    boolean areLow(int[] watches) {
        return Arrays.stream(watches).allMatch(each -> low[each]);
    }

    /** Whether any has tripped and waits. */
    boolean hasTripped() {
        return all().anyMatch(each -> tripped[each]);
    }

    /** Whether any has tripped whose supply is not steady. */
    boolean isUnsteady() {
        return all().anyMatch(each -> tripped[each] && !steady[each]);
    }

    boolean isTripped(int watch) {
        return tripped[watch];
    }

    /** Watches, as far as {@code which}. */
    int[] of(IntPredicate which) {
        return all().filter(which).toArray();
    }

    void trip(int[] watches, boolean isTripped) {
        for (int each : watches) {
            tripped[each] = isTripped;
        }
    }

    /**
     * The voltages change; what turns low is due to trip after its hold time.
     *
     * @return what has tripped and has turned steady, or is so no longer
     */
    int[] change(Grid grid, double now) {
        List<Integer> fell = new ArrayList<>();
        List<Integer> turned = new ArrayList<>();
        for (int each = 0; each < low.length; each++) {
            boolean wasLow = low[each];
            low[each] = isBelow(grid, each, connected.behaviour.brownoutPercent());
            if (low[each] && !wasLow) {
                lowVersion[each]++;
                fell.add(each);
            }
            boolean wasSteady = steady[each];
            steady[each] = !isBelow(grid, each, connected.behaviour.steadyFromPercent());
            if (steady[each] != wasSteady && tripped[each]) {
                turned.add(each);
            }
        }
        due(fell, lowVersion, Agenda.Kind.TRIP, now + connected.behaviour.brownoutHoldSeconds());
        return turned.stream().mapToInt(Integer::intValue).toArray();
    }

    /**
     * Waits anew until these have been steady for long enough.
     *
     * @return those that are steady now
     */
    int[] waitForSteady(int[] watches, double now) {
        List<Integer> waiting = new ArrayList<>();
        for (int each : watches) {
            steadyVersion[each]++;
            if (steady[each]) {
                waiting.add(each);
            }
        }
        due(waiting, steadyVersion, Agenda.Kind.RESUME, now + connected.behaviour.steadyWaitSeconds());
        return waiting.stream().mapToInt(Integer::intValue).toArray();
    }

    private void due(List<Integer> watches, int[] versions, Agenda.Kind kind, double atSeconds) {
        if (!watches.isEmpty()) {
            int[] all = watches.stream().mapToInt(Integer::intValue).toArray();
            turns.add(
                    new Turn(all, Arrays.stream(all).map(each -> versions[each]).toArray()));
            agenda.add(atSeconds, kind, turns.size() - 1, 0, 0);
        }
    }

    /** Those that have been low ever since the entry was made, and have not tripped yet. */
    int[] trips(Agenda.Entry entry) {
        return standing(entry, lowVersion, each -> low[each] && !tripped[each]);
    }

    /** Those that have been steady ever since the entry was made, and had tripped. */
    int[] resumes(Agenda.Entry entry) {
        return standing(entry, steadyVersion, each -> steady[each] && tripped[each]);
    }

    private int[] standing(Agenda.Entry entry, int[] versions, IntPredicate stands) {
        Turn turn = turns.get(entry.load());
        return IntStream.range(0, turn.watches().length)
                .filter(i -> versions[turn.watches()[i]] == turn.versions()[i])
                .map(i -> turn.watches()[i])
                .filter(stands)
                .toArray();
    }

    /** " at P1, P2" where these are not all. */
    String where(int[] watches) {
        if (watches.length == low.length) {
            return "";
        }
        return " at "
                + String.join(
                        ", ",
                        Arrays.stream(watches)
                                .mapToObj(each -> connected.watchName(each))
                                .distinct()
                                .toList());
    }

    private IntStream all() {
        return IntStream.range(0, low.length);
    }

    /** Whether the phases that are watched are below: any, or all. */
    private boolean isBelow(Grid grid, int watch, double percent) {
        ConnectedLoads.Watch it = connected.watches.get(watch);
        DoublePredicate below = volts -> volts < percent;
        boolean isAny = connected.behaviour.phaseWatch() == PhaseWatch.ANY;
        double[] volts = it.load() == ConnectedLoads.NONE
                ? grid.distribution.points().get(it.point()).system().phases().stream()
                        .mapToInt(Phase::ordinal)
                        .mapToDouble(phase -> grid.least(it.point(), phase))
                        .toArray()
                : Arrays.stream(connected.phases[it.load()])
                        .mapToDouble(phase -> grid.isOpen(it.load()) ? 0 : grid.least(it.point(), phase))
                        .toArray();
        return isAny
                ? Arrays.stream(volts).anyMatch(below)
                : Arrays.stream(volts).allMatch(below);
    }
}
