package evenrise.model.event;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Notes what happens. What the operator is shown is filled in when all that happens at one instant is through. */
final class Diary {
    private final ConnectedLoads connected;
    private final Contacts contacts;
    private final List<TraceEntry> steps = new ArrayList<>();
    private int stamped;

    Diary(ConnectedLoads connected, Contacts contacts) {
        this.connected = connected;
        this.contacts = contacts;
    }

    void note(double atSeconds, EntryKind kind, String text) {
        add(atSeconds, kind, Optional.empty(), text);
    }

    void closes(double atSeconds, int load) {
        add(atSeconds, EntryKind.CLOSES, Optional.of(connected.id(load)), "");
    }

    void opens(double atSeconds, int load) {
        add(atSeconds, EntryKind.OPENS, Optional.of(connected.id(load)), "");
    }

    void fails(double atSeconds, int load, String text) {
        add(atSeconds, EntryKind.FAILS, Optional.of(connected.id(load)), text);
    }

    private void add(double atSeconds, EntryKind kind, Optional<String> load, String text) {
        steps.add(new TraceEntry(atSeconds, kind, load, text, contacts.loadsOn(), Display.DOWN, false));
    }

    /** Fills in what is shown after all that was noted since the last stamp. */
    void stamp(Display shown, boolean locked) {
        for (; stamped < steps.size(); stamped++) {
            TraceEntry it = steps.get(stamped);
            steps.set(
                    stamped,
                    new TraceEntry(it.atSeconds(), it.kind(), it.load(), it.text(), it.loadsOn(), shown, locked));
        }
    }

    /** Everything so far, in the order of time. */
    List<TraceEntry> steps() {
        return steps.stream()
                .sorted(Comparator.comparingDouble(TraceEntry::atSeconds))
                .toList();
    }
}
