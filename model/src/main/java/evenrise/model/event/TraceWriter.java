package evenrise.model.event;

import static evenrise.model.contract.Figures.TENTHS;

import evenrise.model.plan.Cautions;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/** Puts a trace together from what was noted on the way: currents, parts, findings. */
final class TraceWriter {
    private static final double ROUNDING_AMPS = 1e-6;

    private final ConnectedLoads connected;
    private final String script;
    private final List<TraceEntry> steps;
    private final Contacts contacts;
    private final List<EventFinding> found;
    private final double endSeconds;

    TraceWriter(
            ConnectedLoads connected,
            String script,
            List<TraceEntry> steps,
            Contacts contacts,
            List<EventFinding> found,
            double endSeconds) {
        this.connected = connected;
        this.script = script;
        this.steps = steps;
        this.contacts = contacts;
        this.found = new ArrayList<>(found);
        this.endSeconds = endSeconds;
    }

    Trace trace(List<Opening> openings, Display shown, boolean locked) {
        Ammeter ammeter = new Ammeter(connected, contacts.feedings());
        double[] marks = openings.stream().mapToDouble(Opening::atSeconds).toArray();
        boolean[] rests = new boolean[marks.length];
        PeakKeeper[] keepers = new PeakKeeper[marks.length];
        Arrays.setAll(keepers, i -> new PeakKeeper(connected));
        ammeter.walk(marks, rests, (now, real, bound) -> {
            for (int i = marks.length - 1; i >= 0; i--) {
                if (marks[i] <= now) {
                    keepers[i].read(now, real, bound);
                    return;
                }
            }
        });
        List<Episode> episodes = new ArrayList<>();
        for (int i = 0; i < marks.length; i++) {
            double until = i + 1 < marks.length ? marks[i + 1] : endSeconds;
            episodes.add(episode(openings.get(i), until, i + 1 == marks.length, rests[i], keepers[i].peaks()));
        }
        episodes.forEach(this::overLimit);
        if (ammeter.worstOvershootAmps() > ROUNDING_AMPS) {
            found.add(EventFinding.broken(0, "bound")
                    .kind("above-its-bound")
                    .figure(ammeter.worstOvershootAmps())
                    .limit(0)
                    .unit("A")
                    .text("a current was " + TENTHS.amps(ammeter.worstOvershootAmps())
                            + " above its bound: breakers close outside the tolerance, or this software is wrong")
                    .build());
        }
        found.sort(Comparator.comparingDouble(EventFinding::atSeconds));
        List<String> on = new ArrayList<>();
        for (int n = 0; n < connected.count(); n++) {
            if (connected.switched[n] && contacts.isClosed(n)) {
                on.add(connected.id(n));
            }
        }
        return new Trace(
                Trace.FORMAT,
                connected.layout.project().name(),
                script,
                connected.use,
                endSeconds,
                shown,
                locked,
                List.copyOf(found),
                List.copyOf(episodes),
                steps,
                List.copyOf(GroupWatch.changes(connected, steps)),
                List.copyOf(ammeter.readings()),
                List.copyOf(on),
                Cautions.ALL);
    }

    private Episode episode(Opening opening, double until, boolean isLast, boolean atRest, List<NodePeak> peaks) {
        int closed = 0;
        int opened = 0;
        TraceEntry end = null;
        for (TraceEntry step : steps) {
            boolean isIn = step.atSeconds() >= opening.atSeconds() && (step.atSeconds() < until || isLast);
            closed += isIn && step.kind() == EntryKind.CLOSES ? 1 : 0;
            opened += isIn && step.kind() == EntryKind.OPENS ? 1 : 0;
            end = isIn ? step : end;
        }
        return new Episode(
                opening.atSeconds(),
                until,
                opening.text(),
                opening.isQuiet() && atRest,
                opening.isQuiet() && connected.use == Use.FULL,
                closed,
                opened,
                end == null ? 0 : end.loadsOn(),
                end == null ? Display.DOWN : end.shown(),
                peaks);
    }

    private void overLimit(Episode episode) {
        for (NodePeak peak : episode.peaks()) {
            if (peak.isOverLimit()) {
                double limit = peak.limitAmps().orElse(0);
                found.add(EventFinding.broken(peak.peakAtSeconds(), "inrush-limit")
                        .kind("may-peak-over-limit")
                        .subjects(List.of(connected.place(peak.node())))
                        .place(peak.node())
                        .figure(peak.boundAmps())
                        .limit(limit)
                        .unit("A")
                        .text(connected.layout.index().placeName(peak.node())
                                + " may peak at " + TENTHS.amps(peak.boundAmps(), limit) + " after '" + episode.text()
                                + "', its inrush_limit_a is " + TENTHS.amps(limit, peak.boundAmps()))
                        .build());
            }
        }
    }
}
