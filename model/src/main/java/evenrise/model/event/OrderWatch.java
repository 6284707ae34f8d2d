package evenrise.model.event;

import static evenrise.model.contract.Figures.THOUSANDTHS;

import evenrise.model.contract.Phrase;
import evenrise.model.plan.Subject;
import evenrise.model.rules.Tolerances;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;

/**
 * Watches what is on together: an amplifier without processing, a load without what it comes after, something that comes on
 * behind a live amplifier or before what it needs has settled, a dropped load during an emergency. It looks at breakers,
 * not at what the control believes. What lasts no longer than the tolerance lets breakers differ is no break.
 */
final class OrderWatch {
    private static final String EXCUSE = ", which the project drops on an emergency";

    /** Rules of order, with what each state that breaks one is called. */
    private enum Watched {
        PROCESSING("processing-first"),
        ORDER("order"),
        EMERGENCY("emergency");

        private final String rule;

        Watched(String rule) {
            this.rule = rule;
        }
    }

    private record Break(EventFinding finding, boolean reported) {}

    /** A load that had not settled by when others needed it. */
    private record Unsettled(String rule, int needed, double settledAt) {}

    private record Early(int load, double atSeconds) {}

    private final Map<Unsettled, List<Early>> unsettled = new LinkedHashMap<>();
    private final ConnectedLoads connected;
    private final Contacts contacts;
    private final double graceSeconds;
    private final double[] settledAt;
    private final Map<Watched, Break> breaks = new EnumMap<>(Watched.class);
    private final List<EventFinding> found = new ArrayList<>();
    private String lastBehind = "";

    OrderWatch(ConnectedLoads connected, Contacts contacts, boolean isNominal) {
        this.connected = connected;
        this.contacts = contacts;
        graceSeconds = Tolerances.SECONDS + (isNominal ? 0 : 2 * connected.toleranceSeconds);
        settledAt = new double[connected.count()];
    }

    List<EventFinding> found() {
        List<EventFinding> all = new ArrayList<>(found);
        unsettled.forEach((what, early) -> all.add(finding(what, early)));
        return all;
    }

    void add(EventFinding finding) {
        found.add(finding);
    }

    /** The same, unless it was said before. */
    void addOnce(EventFinding finding) {
        if (found.stream()
                .noneMatch(each ->
                        each.rule().equals(finding.rule()) && each.text().equals(finding.text()))) {
            add(finding);
        }
    }

    /** A breaker has just closed. */
    void closed(int load, double now) {
        settledAt[load] = now + connected.loads.get(load).load().settleSeconds();
        if (connected.isAmplifier[load]) {
            for (int n : connected.needs[load]) {
                if (contacts.isClosed(n)) {
                    unsettled(load, n, "processing-first", now);
                }
            }
        } else {
            behindAmplifiers(load, now);
        }
        for (int n : connected.after[load]) {
            if (contacts.isClosed(n)) {
                unsettled(load, n, "order", now);
            }
        }
    }

    private void unsettled(int load, int needed, String rule, double now) {
        if (now < settledAt[needed] - graceSeconds) {
            unsettled
                    .computeIfAbsent(new Unsettled(rule, needed, settledAt[needed]), any -> new ArrayList<>())
                    .add(new Early(load, now));
        }
    }

    private EventFinding finding(Unsettled what, List<Early> early) {
        List<Integer> loads = early.stream().map(Early::load).toList();
        return EventFinding.broken(early.get(0).atSeconds(), what.rule())
                .kind("not-settled")
                .subjects(connected.subjects(loads, List.of(what.needed())))
                .text(connected.named(loads) + (loads.size() == 1 ? " comes" : " come") + " on before load "
                        + connected.id(what.needed()) + " has settled, which it does at "
                        + THOUSANDTHS.seconds(what.settledAt()))
                .build();
    }

    /** Said once for each row of such loads. */
    private void behindAmplifiers(int load, double now) {
        for (int n = 0; n < connected.count(); n++) {
            boolean isOwn = connected.system[n] == connected.system[load];
            boolean mayBeHeard = isOwn && !connected.isProcessing[load] || connected.needs(n, load);
            if (connected.isAmplifier[n] && mayBeHeard && contacts.isClosed(n) && settledAt[n] < now - graceSeconds) {
                if (!lastBehind.equals(connected.id(n))) {
                    lastBehind = connected.id(n);
                    add(EventFinding.note(now, "amplifiers-last")
                            .kind("behind-live-amplifiers")
                            .subjects(connected.subjects(List.of(load), List.of(n)))
                            .text("load " + connected.id(load) + " comes on behind live amplifiers, such as "
                                    + connected.id(n) + "; what is in the signal chain may be heard")
                            .build());
                }
                return;
            }
        }
    }

    /** Time has gone on to {@code now}: a break that stood for longer than the grace is reported. */
    void reached(double now) {
        breaks.replaceAll((watched, it) -> {
            if (!it.reported() && now - it.finding().atSeconds() > graceSeconds) {
                add(it.finding());
                return new Break(it.finding(), true);
            }
            return it;
        });
    }

    /**
     * All that happens at {@code now} is through.
     *
     * @param emergency contacts that are closed, by system
     * @param excused loads that an emergency took off, as the project wants, and that have not come back
     */
    void look(double now, boolean[] emergency, boolean[] excused) {
        List<Integer> missing = new ArrayList<>();
        boolean allExcused = true;
        List<Integer> without = new ArrayList<>();
        List<Integer> early = new ArrayList<>();
        List<Integer> dropped = new ArrayList<>();
        boolean earlyExcused = true;
        boolean[] isMissing = new boolean[connected.count()];
        for (int n = 0; n < connected.count(); n++) {
            if (!connected.switched[n] || !contacts.isClosed(n)) {
                continue;
            }
            boolean lacks = false;
            for (int needed : connected.needs[n]) {
                if (!contacts.isClosed(needed)) {
                    lacks = true;
                    if (!isMissing[needed]) {
                        isMissing[needed] = true;
                        missing.add(needed);
                        allExcused &= excused[needed];
                    }
                }
            }
            if (lacks) {
                without.add(n);
            }
            if (emergency[connected.system[n]] && connected.drops[n]) {
                dropped.add(n);
            }
            boolean isEarly = false;
            for (int needed : connected.after[n]) {
                if (!contacts.isClosed(needed)) {
                    isEarly = true;
                    earlyExcused &= excused[needed];
                }
            }
            if (isEarly) {
                early.add(n);
            }
        }
        boolean isExcused = allExcused;
        judge(
                Watched.PROCESSING,
                !without.isEmpty(),
                now,
                allExcused,
                "without-processing",
                connected.subjects(without, missing),
                () -> Phrase.counted(without.size(), noun(without)) + (without.size() == 1 ? " is" : " are")
                        + " on without processing " + connected.named(missing)
                        + (isExcused ? EXCUSE : ""));
        boolean isOrderExcused = earlyExcused;
        judge(
                Watched.ORDER,
                !early.isEmpty(),
                now,
                isOrderExcused,
                "before-what-it-comes-after",
                connected.subjects(early, List.of()),
                () -> connected.named(early)
                        + (early.size() == 1 ? " is" : " are") + " on without what "
                        + (early.size() == 1 ? "it comes" : "they come")
                        + " after" + (isOrderExcused ? EXCUSE : ""));
        judge(
                Watched.EMERGENCY,
                !dropped.isEmpty(),
                now,
                false,
                "on-during-an-emergency",
                connected.subjects(dropped, List.of()),
                () -> connected.named(dropped) + (dropped.size() == 1 ? " is" : " are")
                        + " on while the emergency contact is closed, and should have dropped");
    }

    private String noun(List<Integer> loads) {
        return loads.stream().allMatch(n -> connected.isAmplifier[n]) ? "amplifier" : "load";
    }

    /** One state that must not last, and what is said of it. */
    private void judge(
            Watched watched,
            boolean isBroken,
            double now,
            boolean excused,
            String kind,
            List<Subject> subjects,
            Supplier<String> text) {
        Break standing = breaks.get(watched);
        EventFinding.Grade grade = excused ? EventFinding.Grade.NOTE : EventFinding.Grade.BROKEN;
        if (!isBroken) {
            breaks.remove(watched);
        } else if (standing == null || standing.finding().grade() != grade) {
            EventFinding finding = EventFinding.builder()
                    .atSeconds(now)
                    .grade(grade)
                    .rule(watched.rule)
                    .kind(kind)
                    .subjects(subjects)
                    .text(text.get())
                    .build();
            breaks.put(watched, new Break(finding, false));
        }
    }
}
