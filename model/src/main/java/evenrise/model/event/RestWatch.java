package evenrise.model.event;

import evenrise.model.contract.Phrase;
import evenrise.model.plan.Subject;
import evenrise.model.plan.SubjectKind;
import java.util.ArrayList;
import java.util.List;

/** Looks for what is wrong while nothing moves: groups half on, loads off though wanted, or on though not. */
final class RestWatch {
    private final ConnectedLoads connected;
    private final Contacts contacts;
    private final Wishes wishes;
    private final Sequencer sequencer;
    private final OrderWatch watch;

    RestWatch(ConnectedLoads connected, Contacts contacts, Wishes wishes, Sequencer sequencer, OrderWatch watch) {
        this.connected = connected;
        this.contacts = contacts;
        this.wishes = wishes;
        this.sequencer = sequencer;
        this.watch = watch;
    }

    /** Looks at what is on when no sequence is under way, before something else happens; says everything once. */
    void lookWhenQuiet(double now) {
        if (sequencer.isQuiet()) {
            halfOn(now);
            standsWrong(now);
        }
    }

    /** Groups that are neither on nor off. */
    private void halfOn(double now) {
        for (int group = 0; group < connected.groups.size(); group++) {
            int on = 0;
            int all = 0;
            for (int n = 0; n < connected.count(); n++) {
                if (connected.group[n] == group) {
                    all++;
                    on += contacts.isClosed(n) ? 1 : 0;
                }
            }
            if (on > 0 && on < all) {
                watch.addOnce(EventFinding.note(now, "group-half-on")
                        .kind("group-half-on")
                        .subjects(List.of(new Subject(SubjectKind.GROUP, connected.groups.get(group))))
                        .figure(on)
                        .limit(all)
                        .text("group " + connected.groups.get(group) + " is half on: " + on + " of "
                                + Phrase.counted(all, "load"))
                        .build());
            }
        }
    }

    /** Loads that are off though wanted, or on though not. */
    private void standsWrong(double now) {
        List<Integer> dead = new ArrayList<>();
        List<Integer> failed = new ArrayList<>();
        List<Integer> held = new ArrayList<>();
        List<Integer> stuck = new ArrayList<>();
        for (int n = 0; n < connected.count(); n++) {
            if (connected.switched[n] && contacts.isClosed(n) && !wishes.keep[n]) {
                stuck.add(n);
            } else if (wishes.keep[n] && !contacts.isClosed(n)) {
                if (wishes.chainIsDead(n)) {
                    dead.add(n);
                } else if (!sequencer.believedOn[n]) {
                    held.add(n);
                } else if (sequencer.staysOpen(n)) {
                    failed.add(n); // else it is late, and will yet close
                }
            }
        }
        say(now, dead, "stays-off", " off: the board, or one that starts it, is dead");
        say(now, failed, "stays-off", " off: the breaker did not close");
        say(now, held, "held-back", " off: what is needed is not on, or nothing may come on now");
        say(now, stuck, "stays-on", " on that should be off: isolate before touching anything");
    }

    private void say(double now, List<Integer> loads, String rule, String text) {
        if (!loads.isEmpty()) {
            String verb = loads.size() == 1 ? " is" : " are";
            watch.addOnce((rule.equals("stays-on") ? EventFinding.broken(now, rule) : EventFinding.note(now, rule))
                    .kind(rule)
                    .subjects(connected.subjects(loads, List.of()))
                    .text(Phrase.counted(loads.size(), "load") + " (" + connected.named(loads) + ")" + verb + text)
                    .build());
        }
    }
}
