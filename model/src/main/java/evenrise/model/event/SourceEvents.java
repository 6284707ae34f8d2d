package evenrise.model.event;

import static evenrise.model.contract.Figures.TENTHS;

import evenrise.model.contract.Decimals;
import evenrise.model.contract.Phrase;
import evenrise.model.electrical.LostNeutral;
import evenrise.model.project.Load;
import evenrise.model.rules.Distribution;
import evenrise.model.rules.NeutralLoss;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/** What comes of sources, feeders, transfers and breakers that trip: voltages, inrush that is drawn anew, what is said of it. */
final class SourceEvents {
    private static final String NEUTRAL = "neutral-lost";

    private final ConnectedLoads connected;
    private final Mains mains;
    private final Contacts contacts;
    private final SupplyWatch supply;
    private final OrderWatch watch;
    private final Diary diary;
    /** Whether the latest change was of a part of the plant alone. */
    private boolean isPartial;

    SourceEvents(
            ConnectedLoads connected,
            Mains mains,
            Contacts contacts,
            SupplyWatch supply,
            OrderWatch watch,
            Diary diary) {
        this.connected = connected;
        this.mains = mains;
        this.contacts = contacts;
        this.supply = supply;
        this.watch = watch;
        this.diary = diary;
    }

    /** Changes what feeds the plant; {@link #energise} makes the voltages follow. */
    void obey(ScriptEvent event, double now, Agenda agenda) {
        boolean isTrip = event.event() == Happening.TRIP;
        isPartial = event.event() != Happening.MAINS || event.node().isPresent();
        if (event.load().isPresent()) {
            connected.load(event.load().get()).ifPresent(n -> mains.tripLoad(n, isTrip));
            return;
        }
        int point = event.node().flatMap(connected::point).orElse(Distribution.SUPPLY);
        switch (event.event()) {
            case MAINS -> mains.set(point, event.voltagePercent().orElse(100), event.phases());
            case TRIP, RESET -> mains.trip(point, isTrip);
            case TRANSFER -> transfer(point, true, now, agenda);
            case TRANSFER_BACK -> transfer(point, false, now, agenda);
            default -> throw new IllegalStateException(event.toString());
        }
    }

    private void transfer(int point, boolean toAlternate, double now, Agenda agenda) {
        if (mains.isOnAlternate(point) == toAlternate) {
            watch.addOnce(EventFinding.note(now, "transfer")
                    .kind("there-already")
                    .text(connected.pointName(point) + " is where it is to be transferred to already")
                    .build());
            return;
        }
        mains.beginTransfer(point, toAlternate);
        agenda.add(now + connected.transferSeconds(point), Agenda.Kind.TRANSFERRED, point, 0, 0);
    }

    /**
     * The point is fed from where it was transferred to.
     *
     * @return the name of that
     */
    String arrives(int point) {
        mains.endTransfer(point);
        Grid after = mains.grid();
        return connected.pointName(after.distribution.points().get(point).parent());
    }

    /**
     * Voltages follow what has changed.
     *
     * @return what has tripped and turned steady or unsteady
     */
    int[] energise(double now) {
        Grid before = contacts.grid();
        Grid after = mains.grid();
        Contacts.Anew anew = contacts.energise(after, now);
        if (!anew.isNothing()) {
            returned(anew, now);
        }
        if (isPartial) {
            withoutPower(before, after, now);
        }
        return supply.change(after, now);
    }

    private void returned(Contacts.Anew anew, double now) {
        List<Integer> switched =
                anew.loads().stream().filter(n -> connected.switched[n]).toList();
        if (!anew.loads().isEmpty()) {
            diary.note(
                    now,
                    EntryKind.INRUSH,
                    Phrase.counted(anew.loads().size(), "load") + " draw"
                            + (anew.loads().size() == 1 ? "s its" : " their")
                            + " inrush anew, " + switched.size() + " of them switched");
        }
        energising(anew.windings(), now);
        List<Integer> hadTripped = switched.stream()
                .filter(n -> supply.isTripped(connected.watch(n)))
                .toList();
        List<Integer> riddenThrough =
                switched.stream().filter(n -> !hadTripped.contains(n)).toList();
        say(hadTripped, EventFinding.Grade.BROKEN, "return", now);
        say(riddenThrough, EventFinding.Grade.NOTE, "ridden-through", now);
        contactors(switched, now);
    }

    private void say(List<Integer> loads, EventFinding.Grade grade, String rule, double now) {
        if (loads.isEmpty()) {
            return;
        }
        long processing = loads.stream().filter(n -> connected.isProcessing[n]).count();
        boolean amplifiers =
                IntStream.range(0, connected.count()).anyMatch(n -> connected.isAmplifier[n] && contacts.isClosed(n));
        watch.add(EventFinding.builder()
                .atSeconds(now)
                .grade(grade)
                .rule(rule)
                .kind(rule)
                .subjects(connected.subjects(loads, List.of()))
                .text("the voltage returns on " + Phrase.counted(loads.size(), "closed breaker") + " ("
                        + connected.named(loads) + "), which draw their inrush at once"
                        + (processing > 0 && amplifiers
                                ? "; " + processing + " of them processing, which starts anew behind live amplifiers"
                                : ""))
                .build());
    }

    private void contactors(List<Integer> switched, double now) {
        List<Integer> behind = switched.stream()
                .filter(n -> connected.closesFromPercent[n] > 0)
                .toList();
        if (!behind.isEmpty()) {
            long contactors =
                    behind.stream().map(n -> connected.actuator[n]).distinct().count();
            watch.addOnce(EventFinding.note(now, "contactors")
                    .kind("close-again")
                    .subjects(connected.subjects(behind, List.of()))
                    .text(Phrase.counted((int) contactors, "contactor") + " may have dropped out and"
                            + (contactors == 1 ? " closes" : " close") + " again with the voltage: "
                            + Phrase.counted(behind.size(), "load") + " behind "
                            + (contactors == 1 ? "it" : "them") + " (" + connected.named(behind)
                            + ") come on together, out of sequence")
                    .build());
        }
    }

    private void energising(List<Integer> windings, double now) {
        List<String> silent = new ArrayList<>();
        for (int k : windings) {
            ConnectedLoads.Winding it = connected.windings.get(k);
            diary.note(
                    now,
                    EntryKind.INRUSH,
                    "transformer " + it.id() + " is energised"
                            + it.envelope()
                                    .map(envelope -> " and draws up to " + TENTHS.amps(envelope.excessAmps()))
                                    .orElse(""));
            if (it.envelope().isEmpty()) {
                silent.add(it.id());
            }
        }
        if (!silent.isEmpty()) {
            watch.addOnce(EventFinding.note(now, "transformer-inrush")
                    .kind("not-stated")
                    .text(String.join(", ", silent) + (silent.size() == 1 ? " states" : " state")
                            + " no inrush_peak_a: what " + (silent.size() == 1 ? "it draws" : "they draw")
                            + " when energised is in no peak here, which is no bound upstream")
                    .build());
        }
    }

    /** Amplifiers that stay live while processing that they need has lost its feed. */
    private void withoutPower(Grid before, Grid after, double now) {
        List<Integer> dead = IntStream.range(0, connected.count())
                .filter(n ->
                        connected.isProcessing[n] && contacts.isClosed(n) && isDead(after, n) && !isDead(before, n))
                .boxed()
                .toList();
        if (dead.isEmpty()) {
            return;
        }
        List<Integer> live = IntStream.range(0, connected.count())
                .filter(n -> connected.isAmplifier[n] && contacts.isAlive(n))
                .filter(n -> dead.stream().anyMatch(each -> connected.needs(n, each)))
                .boxed()
                .toList();
        if (!live.isEmpty()) {
            watch.addOnce(EventFinding.note(now, "without-power")
                    .kind("live-without-processing")
                    .subjects(connected.subjects(live, dead))
                    .text(Phrase.counted(live.size(), "amplifier") + " (" + connected.named(live) + ") "
                            + (live.size() == 1 ? "stays" : "stay") + " live while processing "
                            + connected.named(dead) + " has lost its feed")
                    .build());
        }
    }

    /** Whether no pole of a load is alive. */
    private boolean isDead(Grid grid, int load) {
        return connected.phases[load].length > 0
                && (grid.isOpen(load)
                        || Arrays.stream(connected.phases[load])
                                .allMatch(phase -> grid.most(connected.node[load], phase) <= 0));
    }

    /** Whether a load that is not switched is fed below the voltage that these watches trip at. */
    boolean isLow(int load, int[] watches) {
        return watches.length == supply.count()
                || Arrays.stream(connected.phases[load])
                        .anyMatch(phase -> contacts.grid().least(connected.node[load], phase)
                                < connected.behaviour.brownoutPercent());
    }

    /** What a neutral that breaks does to the voltages of what is on: in full use and idling, whichever is worse. */
    void neutralLost(ScriptEvent event, double now) {
        int point = event.node().flatMap(connected::point).orElse(Distribution.SUPPLY);
        Distribution.Point it = contacts.grid().distribution.points().get(point);
        NeutralLoss used = NeutralLoss.of(connected.layout, point, load -> amps(load, point, load.runningAmps()));
        NeutralLoss idle = NeutralLoss.of(connected.layout, point, load -> amps(load, point, load.idleAmps()));
        if (used.percents().isEmpty() && idle.percents().isEmpty()) {
            watch.addOnce(EventFinding.note(now, NEUTRAL)
                    .kind("nothing-on")
                    .text(event.text() + ": nothing is on that would draw it off its place"
                            + (it.system().phases().size() < 2 ? "; on one phase all that it feeds is off" : ""))
                    .build());
            return;
        }
        NeutralLoss worst = highest(idle) > highest(used) ? idle : used;
        Map<Integer, Boolean> loads = new LinkedHashMap<>();
        for (NeutralLoss each : List.of(worst, worst == used ? idle : used)) {
            each.endangered()
                    .forEach(one ->
                            connected.load(one.load().id()).ifPresent(n -> loads.putIfAbsent(n, one.isStated())));
        }
        double volts = it.lineToNeutralVolts();
        String phases = String.join(
                ", ",
                worst.percents().entrySet().stream()
                        .map(each -> each.getKey() + " "
                                + Decimals.toThousandths(Math.round(each.getValue() * volts / 10) / 10.0) + " V ("
                                + Decimals.toThousandths(Math.round(each.getValue())) + " %)")
                        .toList());
        String most = Decimals.toThousandths(Math.round(LostNeutral.mostPercent(it.system()) * volts / 100));
        watch.add((loads.isEmpty() ? EventFinding.note(now, NEUTRAL) : EventFinding.broken(now, NEUTRAL))
                .kind(loads.isEmpty() ? "voltages" : "over-voltage")
                .subjects(connected.subjects(List.copyOf(loads.keySet()), List.of()))
                .text(event.text() + ": by what is on, as impedances of "
                        + (worst == used ? "full use" : "their idle currents")
                        + ", " + phases + " of " + Decimals.toThousandths(volts)
                        + " V; with other loads on a phase may come to "
                        + most + " V" + endangered(loads))
                .build());
    }

    /** Nothing of a load that is off, or that is fed from elsewhere now. */
    private double amps(Load load, int point, double amps) {
        return connected
                        .load(load.id())
                        .filter(contacts::isAlive)
                        .filter(n -> contacts.grid().path(connected.node[n]).stream()
                                .anyMatch(each -> each.point() == point))
                        .isPresent()
                ? amps
                : 0;
    }

    private static double highest(NeutralLoss loss) {
        return loss.percents().values().stream()
                .mapToDouble(Double::doubleValue)
                .max()
                .orElse(0);
    }

    /** @param loads over what they stand, in full use or idling; whether that is stated */
    private String endangered(Map<Integer, Boolean> loads) {
        if (loads.isEmpty()) {
            return "";
        }
        long usual = loads.values().stream().filter(each -> !each).count();
        return "; over what " + (loads.size() == 1 ? "it stands" : "they stand") + ", in use or idling: "
                + connected.named(List.copyOf(loads.keySet()))
                + (usual == 0 ? "" : " (" + usual + " by the usual 110 %, as no ride_through.most_pct is stated)")
                + ". Isolate at once";
    }
}
