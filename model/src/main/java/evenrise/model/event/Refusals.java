package evenrise.model.event;

import evenrise.model.project.CounterCommand;
import evenrise.model.project.LockRefuses;
import evenrise.model.project.NeededGroup;
import evenrise.model.project.OnInEmergency;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;

/** Decides which commands are refused and which have to wait. Supply, contact and faults are no commands. */
final class Refusals {
    private final ConnectedLoads connected;
    private final Wishes wishes;
    private final Sequencer sequencer;

    Refusals(ConnectedLoads connected, Wishes wishes, Sequencer sequencer) {
        this.connected = connected;
        this.wishes = wishes;
        this.sequencer = sequencer;
    }

    /**
     * Why the command is refused; empty where it is not.
     *
     * @param isLocked whether the lock is on
     * @param supply what is low of what the boards watch
     */
    Optional<String> of(ScriptEvent event, boolean isLocked, SupplyWatch supply) {
        boolean isOn = event.event() == Happening.SYSTEM_ON || event.event() == Happening.GROUP_ON;
        boolean isOff = event.event() == Happening.SYSTEM_OFF || event.event() == Happening.GROUP_OFF;
        LockRefuses refuses = connected.behaviour.lockRefuses();
        if (isLocked && (isOn && refuses != LockRefuses.OFF_COMMANDS || isOff && refuses != LockRefuses.ON_COMMANDS)) {
            return Optional.of("the system is locked");
        }
        if (isOn && any(event, c -> supply.areLow(connected.watchesOf(c)))) {
            return Optional.of("the supply is low");
        }
        boolean isEmergency = connected.systemsOf(event).stream().anyMatch(it -> wishes.emergency[it]);
        if (isOn && isEmergency && connected.behaviour.onInEmergency() == OnInEmergency.REFUSE) {
            return Optional.of("the emergency contact is closed");
        }
        if (contradicts(event) && connected.behaviour.counterCommand() == CounterCommand.REFUSE) {
            return Optional.of("a sequence is under way");
        }
        return switch (event.event()) {
            case SYSTEM_ON -> neededRefusal(event);
            case SYSTEM_OFF -> needingRefusal(event);
            case GROUP_ON -> groupOnRefusal(event);
            case GROUP_OFF -> groupOffRefusal(event);
            default -> Optional.empty();
        };
    }

    private boolean any(ScriptEvent event, IntPredicate which) {
        return connected.clocksOf(event).stream().anyMatch(which::test);
    }

    private boolean contradicts(ScriptEvent event) {
        return event.event() == Happening.SYSTEM_ON && any(event, sequencer::isGoingDown)
                || event.event() == Happening.SYSTEM_OFF && any(event, sequencer::isComingUp);
    }

    /** Whether the command has to wait until the sequence is through. */
    boolean waits(ScriptEvent event) {
        return contradicts(event) && connected.behaviour.counterCommand() == CounterCommand.WAIT;
    }

    /** A system is commanded on where what it needs is. */
    private Optional<String> neededRefusal(ScriptEvent event) {
        List<Integer> scope = connected.clocksOf(event);
        for (int clock : scope) {
            for (int needed : connected.needsClocks[clock]) {
                if (!wishes.commandedOn[needed] && !scope.contains(needed)) {
                    return Optional.of("system " + connected.systems.get(clock) + " needs "
                            + connected.systems.get(needed) + ", which is off");
                }
            }
        }
        return Optional.empty();
    }

    /** A system that others need while they are on goes off with them, or not at all. */
    private Optional<String> needingRefusal(ScriptEvent event) {
        if (connected.behaviour.neededGroup() == NeededGroup.TAKE_ALONG) {
            return Optional.empty();
        }
        List<String> along = needing(connected.clocksOf(event)).stream()
                .map(connected.systems::get)
                .toList();
        return along.isEmpty()
                ? Optional.empty()
                : Optional.of("system " + String.join(", ", along) + (along.size() == 1 ? " needs it" : " need it"));
    }

    /** Systems outside of {@code some} that are on and need one of them. */
    List<Integer> needing(List<Integer> some) {
        return IntStream.range(0, connected.clocks)
                .filter(each -> wishes.commandedOn[each] && !some.contains(each))
                .filter(each -> Arrays.stream(connected.needsClocks[each]).anyMatch(some::contains))
                .boxed()
                .toList();
    }

    private Optional<String> groupOnRefusal(ScriptEvent event) {
        int group = connected.group(event.group().orElseThrow()).orElseThrow();
        if (!wishes.commandedOn[connected.clocksOf(event).get(0)]) {
            return Optional.of("the system is off");
        }
        if (wishes.emergency[connected.systemOf(group)] && connected.groupDrops(group)) {
            return Optional.of("the group drops on an emergency, and the contact is closed");
        }
        boolean[] off = wishes.groupOff.clone();
        off[group] = false;
        return lost(wishes.commanded(off), group).map(id -> "load " + id + " needs a group that is off");
    }

    private Optional<String> groupOffRefusal(ScriptEvent event) {
        int group = connected.group(event.group().orElseThrow()).orElseThrow();
        if (!wishes.commandedOn[connected.clocksOf(event).get(0)]) {
            return Optional.of("the system is off");
        }
        if (connected.behaviour.neededGroup() == NeededGroup.TAKE_ALONG) {
            return Optional.empty();
        }
        boolean[] before = wishes.commanded(wishes.groupOff);
        boolean[] off = wishes.groupOff.clone();
        off[group] = true;
        boolean[] after = wishes.commanded(off);
        List<Integer> along = wishes.lost(before, after, group);
        return along.isEmpty()
                ? Optional.empty()
                : Optional.of(connected.named(along) + (along.size() == 1 ? " needs it" : " need it"));
    }

    private Optional<String> lost(boolean[] wanted, int group) {
        for (int n = 0; n < connected.count(); n++) {
            if (connected.group[n] == group && !wanted[n]) {
                return Optional.of(connected.id(n));
            }
        }
        return Optional.empty();
    }
}
