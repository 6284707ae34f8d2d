package evenrise.solver.bounds;

import evenrise.model.project.Role;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * What the last of some loads finds on its phase. Of any set of switched loads, the last to come on on a phase finds the
 * set's other bases there on, and those of all earlier roles if it is an amplifier. Sets are the loads of one role, or of
 * all, from a threshold of excess up. The set may keep to fewer phases than there are, if they have the slots and the
 * rating for it: the least over their number counts.
 */
final class ThresholdPeak {
    private final BoundedProject subject;
    private final PhaseRoom room;

    ThresholdPeak(BoundedProject subject) {
        this.subject = subject;
        this.room = new PhaseRoom(subject.project);
    }

    /** Time: loads · log loads. */
    double amps() {
        double most = largestAlone();
        for (Role role : Role.values()) {
            most = Math.max(most, ofSets(ofRole(role), earlierAmps(role)));
        }
        return Math.max(most, ofSets(subject.loads, subject.standingAmps));
    }

    /** One load alone: what it draws on each pole when it comes on. */
    private double largestAlone() {
        return subject.loads.stream()
                .mapToDouble(SwitchedLoad::peakAmps)
                .reduce(subject.largestStandingAmps, Math::max);
    }

    private List<SwitchedLoad> ofRole(Role role) {
        return subject.loads.stream().filter(load -> load.role() == role).toList();
    }

    /** Bases that are on, all poles together, when a load of the role comes on; roles may come closer than time counts. */
    private double earlierAmps(Role role) {
        double sum = subject.standingAmps;
        if (subject.tellsRolesApart()) {
            for (SwitchedLoad load : subject.loads) {
                if (load.role().compareTo(role) < 0) {
                    sum += load.poles() * load.baseAmps();
                }
            }
        }
        return sum;
    }

    private double ofSets(List<SwitchedLoad> loads, double earlierAmps) {
        List<SwitchedLoad> falling = new ArrayList<>(loads);
        falling.sort(Comparator.comparingDouble(SwitchedLoad::excessAmps).reversed());
        double bases = 0;
        double running = 0;
        int poles = 0;
        int largestPoles = 0;
        double most = 0;
        for (SwitchedLoad load : falling) {
            bases += load.poles() * load.baseAmps();
            running += load.poles() * load.runningAmps();
            poles += load.poles();
            largestPoles = Math.max(largestPoles, load.poles());
            int fewest = room.fewestPhases(largestPoles, poles, running);
            most = Math.max(most, ofSet(fewest, load.excessAmps(), bases, earlierAmps));
        }
        return most;
    }

    /**
     * @param fewest phases that the set can touch
     * @param least excess in the set, on each pole
     */
    private double ofSet(int fewest, double least, double bases, double earlierAmps) {
        double amps = Double.POSITIVE_INFINITY;
        for (int touched = fewest; touched <= subject.phases; touched++) {
            double onAll = (touched * least + bases + earlierAmps) / subject.phases;
            double onTouched = least + bases / touched;
            amps = Math.min(amps, Math.max(onAll, onTouched));
        }
        return amps;
    }
}
