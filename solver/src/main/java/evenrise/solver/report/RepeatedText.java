package evenrise.solver.report;

import evenrise.model.contract.Decimals;
import evenrise.model.contract.Phrase;
import evenrise.model.observation.Observation;
import evenrise.model.observation.ObservedStart.Finding;
import evenrise.model.observation.RepeatedClosings;
import evenrise.model.observation.RepeatedPeak;
import evenrise.model.project.Phase;
import evenrise.model.project.Spread;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/** What several recordings of one start say together, for a screen. */
final class RepeatedText {
    private static final int MOST_ROWS = 30;

    private RepeatedText() {}

    /** Nothing where there is one recording. */
    static List<String> lines(SeenStart first, List<SeenStart> again, Paint paint) {
        if (again.isEmpty()) {
            return List.of();
        }
        List<SeenStart> all = Stream.concat(Stream.of(first), again.stream()).toList();
        List<Observation> known = all.stream()
                .map(SeenStart::seen)
                .filter(Observation::isRecognised)
                .toList();
        Section section = new Section(paint, "All recordings together").table(each(all));
        if (known.size() < all.size()) {
            section.text(
                    Tone.BAD,
                    (all.size() - known.size()) + " of them not recognised as the start of this plan: they say nothing"
                            + " below.");
        }
        if (known.size() > 1) {
            closings(RepeatedClosings.of(known), section);
            peaks(all, section);
        }
        return section.lines();
    }

    private static Table each(List<SeenStart> all) {
        Table table = new Table()
                .words("Recording")
                .number("As planned")
                .number("Otherwise")
                .number("Cannot tell")
                .number("Too small")
                .number("Not of a load");
        for (SeenStart start : all) {
            Observation seen = start.seen();
            boolean isKnown = seen.isRecognised();
            table.row(
                    isKnown && seen.isAsPlanned() ? Tone.PLAIN : Tone.BAD,
                    start.file(),
                    isKnown ? Long.toString(seen.count(Finding.AS_PLANNED)) : "not recognised",
                    Long.toString(seen.starts().stream()
                            .filter(each -> each.finding().isDifference())
                            .count()),
                    Long.toString(seen.count(Finding.CANNOT_TELL)),
                    Long.toString(seen.count(Finding.TOO_SMALL)),
                    Integer.toString(seen.unknown().size()));
        }
        return table;
    }

    private static void closings(RepeatedClosings closings, Section section) {
        closings.deviationSeconds()
                .ifPresentOrElse(
                        deviation -> section.text(Phrase.counted(closings.loads(), "load")
                                + " came on alone as planned in two recordings and more. From one start to the next the"
                                + " same load closes with a standard deviation of "
                                + Decimals.fixed(deviation, 4) + " s (" + closings.degrees()
                                + " degrees of freedom; what a sample's interval adds is in it), whatever it is late by"
                                + " each time."),
                        () -> section.text(
                                "Too few loads came on alone as planned in two of them to tell how their closings"
                                        + " scatter."));
        closings.fit()
                .ifPresent(fit -> section.text("About the plan, all " + fit.count() + " closings: likeliest "
                        + (fit.spread() == Spread.UNIFORM ? "even" : "a bell") + " within "
                        + Decimals.fixed(fit.toleranceSeconds(), 3) + " s, "
                        + (fit.isSure() ? "the other kind ruled out" : "the other kind about as likely")
                        + "; the furthest was " + Decimals.fixed(fit.greatestSeconds(), 3)
                        + " s off. It may raise timing_tolerance_s, and lowers nothing."));
    }

    private static void peaks(List<SeenStart> all, Section section) {
        List<RepeatedPeak> peaks = peaks(all);
        if (peaks.isEmpty()) {
            return;
        }
        Table table = new Table()
                .words("Load")
                .words("Phase")
                .number("Closings")
                .number("Least A")
                .number("Greatest A")
                .number("One more below A")
                .number("Stated A");
        peaks.stream()
                .limit(MOST_ROWS)
                .forEach(peak -> table.row(
                        peak.mayBeOver() ? Tone.BAD : Tone.PLAIN,
                        peak.load(),
                        peak.phase().name(),
                        Integer.toString(peak.closings()),
                        Decimals.fixed(peak.leastAmps(), 1),
                        Decimals.fixed(peak.greatestAmps(), 1),
                        shown(peak.nextAmps()),
                        shown(peak.statedAmps())));
        long over = peaks.stream().filter(RepeatedPeak::isOver).count();
        long maybe = peaks.stream().filter(RepeatedPeak::mayBeOver).count() - over;
        section.text("Inrush peaks of the same load, closing by closing:")
                .table(table)
                .text((peaks.size() > MOST_ROWS
                                ? "Not shown: " + (peaks.size() - MOST_ROWS) + ", further below what is" + " stated. "
                                : "")
                        + over + " above what is stated, " + maybe
                        + " more that another closing may be above. \"One more"
                        + " below\" is with 95 %, were closings normal (mean + t·s·√(1 + 1/n)); the worst moment of the"
                        + " wave may be rarer than that, so no peak lowers what is stated.");
    }

    private record Pole(String load, Phase phase) {}

    /** Of loads seen in two recordings and more, those nearest to or above what is stated first. */
    private static List<RepeatedPeak> peaks(List<SeenStart> all) {
        Map<Pole, List<Double>> amps = new LinkedHashMap<>();
        Map<Pole, OptionalDouble> stated = new LinkedHashMap<>();
        all.forEach(start -> start.waves().forEach(wave -> {
            Pole key = new Pole(wave.load(), wave.phase());
            amps.computeIfAbsent(key, any -> new ArrayList<>()).add(wave.fit().peakAmps());
            stated.put(key, wave.statedPeakAmps());
        }));
        return amps.entrySet().stream()
                .filter(each -> each.getValue().size() > 1)
                .map(each -> RepeatedPeak.of(
                        each.getKey().load(),
                        each.getKey().phase(),
                        each.getValue().stream()
                                .mapToDouble(Double::doubleValue)
                                .toArray(),
                        stated.get(each.getKey())))
                .sorted(Comparator.comparingDouble((RepeatedPeak each) ->
                        each.statedAmps().orElse(Double.POSITIVE_INFINITY) / each.greatestAmps()))
                .toList();
    }

    private static String shown(OptionalDouble amps) {
        return amps.isPresent() ? Decimals.fixed(amps.getAsDouble(), 1) : Numbers.NONE;
    }
}
