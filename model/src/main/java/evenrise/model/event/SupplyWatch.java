package evenrise.model.event;

import evenrise.model.project.Phase;
import evenrise.model.project.PhaseWatch;
import java.util.Arrays;
import java.util.List;

/** What the control sees of the mains: whether the supply is low or steady, and since when it waits for either. */
final class SupplyWatch {
    private final EventPlant plant;
    private final Agenda agenda;
    private final double[] voltPercent;
    private boolean isLow;
    private boolean isSteady = true;
    private int lowVersion;
    private int steadyVersion;

    /** Every phase at its nominal voltage. */
    SupplyWatch(EventPlant plant, Agenda agenda) {
        this.plant = plant;
        this.agenda = agenda;
        voltPercent = new double[plant.systemPhases.size()];
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
            if (phases.isEmpty() || phases.contains(plant.systemPhases.get(p))) {
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
        isLow = isBelow(plant.behaviour.brownoutPercent());
        if (isLow && !wasLow) {
            lowVersion++;
            double due = now + plant.behaviour.brownoutHoldSeconds();
            agenda.add(due, Agenda.Kind.TRIP, EventPlant.NONE, lowVersion, 0);
        }
        boolean wasSteady = isSteady;
        isSteady = !isBelow(plant.behaviour.steadyFromPercent());
        return isSteady != wasSteady;
    }

    /** Waits anew until the supply has been steady for long enough, where it is so now. */
    boolean waitForSteady(double now) {
        steadyVersion++;
        if (isSteady) {
            double due = now + plant.behaviour.steadyWaitSeconds();
            agenda.add(due, Agenda.Kind.RESUME, EventPlant.NONE, steadyVersion, 0);
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
        return plant.behaviour.phaseWatch() == PhaseWatch.ANY
                ? Arrays.stream(voltPercent).anyMatch(each -> each < percent)
                : Arrays.stream(voltPercent).allMatch(each -> each < percent);
    }
}
