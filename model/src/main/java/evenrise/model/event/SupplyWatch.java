package evenrise.model.event;

import evenrise.model.project.Phase;
import evenrise.model.project.PhaseWatch;
import java.util.Arrays;
import java.util.List;

/** What the control sees of the mains: whether the supply is low or steady, and since when it waits for either. */
final class SupplyWatch {
    private final ConnectedLoads connected;
    private final Agenda agenda;
    private final double[] voltPercent;
    private boolean isLow;
    private boolean isSteady = true;
    private int lowVersion;
    private int steadyVersion;

    /** Every phase at its nominal voltage. */
    SupplyWatch(ConnectedLoads connected, Agenda agenda) {
        this.connected = connected;
        this.agenda = agenda;
        voltPercent = new double[connected.systemPhases.size()];
        Arrays.fill(voltPercent, 100);
    }

    boolean isLow() {
        return isLow;
    }

    boolean isSteady() {
        return isSteady;
    }

    /** Voltage of each phase, with some or all of them at another. */
    double[] with(double percent, List<Phase> phases) {
        double[] changed = voltPercent.clone();
        for (int p = 0; p < changed.length; p++) {
            if (phases.isEmpty() || phases.contains(connected.systemPhases.get(p))) {
                changed[p] = percent;
            }
        }
        return changed;
    }

    /**
     * The voltages change; a supply that turns low is due to trip after its hold time.
     *
     * @return whether the supply has turned steady, or is so no longer
     */
    boolean change(double[] percent, double now) {
        System.arraycopy(percent, 0, voltPercent, 0, percent.length);
        boolean wasLow = isLow;
        isLow = isBelow(connected.behaviour.brownoutPercent());
        if (isLow && !wasLow) {
            lowVersion++;
            double due = now + connected.behaviour.brownoutHoldSeconds();
            agenda.add(due, Agenda.Kind.TRIP, ConnectedLoads.NONE, lowVersion, 0);
        }
        boolean wasSteady = isSteady;
        isSteady = !isBelow(connected.behaviour.steadyFromPercent());
        return isSteady != wasSteady;
    }

    /** Waits anew until the supply has been steady for long enough, where it is so now. */
    boolean waitForSteady(double now) {
        steadyVersion++;
        if (isSteady) {
            double due = now + connected.behaviour.steadyWaitSeconds();
            agenda.add(due, Agenda.Kind.RESUME, ConnectedLoads.NONE, steadyVersion, 0);
        }
        return isSteady;
    }

    /** Whether the supply has been low ever since the entry was made. */
    boolean trips(Agenda.Entry entry) {
        return entry.version() == lowVersion && isLow;
    }

    /** Whether the supply has been steady ever since the entry was made. */
    boolean resumes(Agenda.Entry entry) {
        return entry.version() == steadyVersion && isSteady;
    }

    /** Whether the phases that are watched are below: any, or all. */
    private boolean isBelow(double percent) {
        return connected.behaviour.phaseWatch() == PhaseWatch.ANY
                ? Arrays.stream(voltPercent).anyMatch(each -> each < percent)
                : Arrays.stream(voltPercent).allMatch(each -> each < percent);
    }
}
