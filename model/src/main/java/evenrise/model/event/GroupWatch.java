package evenrise.model.event;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/** Follows the shutdown groups through the steps of a rehearsal, which begins with all of them off. */
final class GroupWatch {
    private final ConnectedLoads connected;
    private final int[] loads;
    private final int[] loadsOn;
    private final GroupChange.State[] states;
    private final List<GroupChange> changes = new ArrayList<>();

    private GroupWatch(ConnectedLoads connected) {
        this.connected = connected;
        loads = new int[connected.groups.size()];
        loadsOn = new int[connected.groups.size()];
        states = new GroupChange.State[connected.groups.size()];
        Arrays.fill(states, GroupChange.State.OFF);
        for (int n = 0; n < connected.count(); n++) {
            if (connected.group[n] != ConnectedLoads.NONE) {
                loads[connected.group[n]]++;
            }
        }
    }

    /** Every change, in the order of time; what comes and goes at one instant is none. */
    static List<GroupChange> changes(ConnectedLoads connected, List<TraceEntry> steps) {
        GroupWatch watch = new GroupWatch(connected);
        Set<Integer> touched = new TreeSet<>();
        for (int i = 0; i < steps.size(); i++) {
            TraceEntry step = steps.get(i);
            watch.take(step, touched);
            if (i + 1 == steps.size() || steps.get(i + 1).atSeconds() > step.atSeconds()) {
                touched.forEach(group -> watch.note(step.atSeconds(), group));
                touched.clear();
            }
        }
        return watch.changes;
    }

    private void take(TraceEntry step, Set<Integer> touched) {
        int sign = step.kind() == EntryKind.CLOSES ? 1 : step.kind() == EntryKind.OPENS ? -1 : 0;
        if (sign != 0) {
            step.load().flatMap(connected::load).map(n -> connected.group[n]).ifPresent(group -> {
                if (group != ConnectedLoads.NONE) {
                    loadsOn[group] += sign;
                    touched.add(group);
                }
            });
        }
    }

    private void note(double now, int group) {
        GroupChange.State state = GroupChange.state(loadsOn[group], loads[group]);
        if (state != states[group]) {
            states[group] = state;
            changes.add(new GroupChange(now, connected.groups.get(group), state, loadsOn[group], loads[group]));
        }
    }
}
