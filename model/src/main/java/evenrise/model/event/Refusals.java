package evenrise.model.event;

import evenrise.model.project.CounterCommand;
import evenrise.model.project.LockRefuses;
import evenrise.model.project.NeededGroup;
import evenrise.model.project.OnInEmergency;
import java.util.List;
import java.util.Optional;

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
     * @param isLow whether the supply is low
     */
    Optional<String> of(ScriptEvent event, boolean isLocked, boolean isLow) {
        boolean isOn = event.event() == Happening.SYSTEM_ON || event.event() == Happening.GROUP_ON;
        boolean isOff = event.event() == Happening.SYSTEM_OFF || event.event() == Happening.GROUP_OFF;
        LockRefuses refuses = connected.behaviour.lockRefuses();
        if (isLocked && (isOn && refuses != LockRefuses.OFF_COMMANDS || isOff && refuses != LockRefuses.ON_COMMANDS)) {
            return Optional.of("the system is locked");
        }
        if (isOn && isLow) {
            return Optional.of("the supply is low");
        }
        if (isOn && wishes.emergency && connected.behaviour.onInEmergency() == OnInEmergency.REFUSE) {
            return Optional.of("the emergency contact is closed");
        }
        if (contradicts(event) && connected.behaviour.counterCommand() == CounterCommand.REFUSE) {
            return Optional.of("a sequence is under way");
        }
        return switch (event.event()) {
            case GROUP_ON -> groupOnRefusal(event);
            case GROUP_OFF -> groupOffRefusal(event);
            default -> Optional.empty();
        };
    }

    private boolean contradicts(ScriptEvent event) {
        return event.event() == Happening.SYSTEM_ON && sequencer.isGoingDown()
                || event.event() == Happening.SYSTEM_OFF && sequencer.isComingUp();
    }

    /** Whether the command has to wait until the sequence is through. */
    boolean waits(ScriptEvent event) {
        return contradicts(event) && connected.behaviour.counterCommand() == CounterCommand.WAIT;
    }

    private Optional<String> groupOnRefusal(ScriptEvent event) {
        int group = connected.group(event.group().orElseThrow()).orElseThrow();
        if (!wishes.commandedOn) {
            return Optional.of("the system is off");
        }
        if (wishes.emergency && connected.groupDrops(group)) {
            return Optional.of("the group drops on an emergency, and the contact is closed");
        }
        boolean[] off = wishes.groupOff.clone();
        off[group] = false;
        return lost(wishes.commanded(off), group).map(id -> "load " + id + " needs a group that is off");
    }

    private Optional<String> groupOffRefusal(ScriptEvent event) {
        int group = connected.group(event.group().orElseThrow()).orElseThrow();
        if (!wishes.commandedOn) {
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
