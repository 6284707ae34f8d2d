package evenrise.solver.report;

import evenrise.model.contract.Phrase;
import evenrise.model.plan.PeakBasis;
import evenrise.model.plan.RangePeak;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** How peaks are called everywhere: by their voltage, and whether they are bounds. */
public final class PeakWords {
    public static final String NOMINAL = "at nominal voltage";

    private static final String FOR_SINES = "upper bound for sines";
    private static final String AS_STATED = "upper bound as stated";
    private static final String NO_BOUND = "no bound";

    private PeakWords() {}

    /** {@code at 90 to 105 % voltage}. */
    public static String range(PeakBasis basis) {
        return "at " + percents(basis) + " voltage";
    }

    /** What the peak at nominal voltage is. */
    public static String nominal(RangePeak peak) {
        return peak.nominalBound() ? FOR_SINES : NO_BOUND;
    }

    /** What the peak over the voltage range is. */
    public static String overRange(RangePeak peak) {
        return peak.rangeBound() ? AS_STATED : NO_BOUND;
    }

    /** What the peak of an event at nominal voltage is: unswitched loads may make it, too. */
    static String event(PeakBasis basis) {
        return isEventBound(basis) ? FOR_SINES : NO_BOUND;
    }

    /** Whether every load states its inrush and nothing is guessed. */
    public static boolean isEventBound(PeakBasis basis) {
        return basis.withoutInrush().isEmpty()
                && basis.unswitchedWithoutInrush().isEmpty();
    }

    /** Where the voltages come from, and who states what not. */
    public static List<String> notes(PeakBasis basis, int named) {
        List<String> notes = new ArrayList<>();
        add(
                notes,
                basis.withoutInrush(),
                named,
                "No peak with them is a bound: ",
                "switched load",
                " inrush_peak_a; no inrush is counted");
        add(
                notes,
                basis.unswitchedWithoutInrush(),
                named,
                "No peak of an event that their inrush comes with is a bound: ",
                "unswitched load",
                " inrush_peak_a");
        add(
                notes,
                basis.withoutWaveform(),
                named,
                "No peak " + range(basis) + " with them is a bound: ",
                "load",
                " crest_factor and no third_harmonic; a sine is counted");
        add(
                notes,
                basis.guessed(),
                named,
                "No peak with them is a bound: ",
                "load",
                " datasheet or measurement for what its peak rests on; it is guessed");
        notes.add("Peaks " + NOMINAL + " take idle currents as sines; those of events are told at that voltage. "
                + percents(basis) + ": " + basis.voltageFrom() + "."
                + (basis.voltageAssumed() ? " supply.voltage_range states another." : ""));
        return notes;
    }

    private static void add(List<String> notes, List<String> loads, int named, String what, String noun, String lacks) {
        if (!loads.isEmpty()) {
            String names =
                    loads.stream().limit(named).map(id -> Phrase.quoted(id)).collect(Collectors.joining(", "));
            String more = loads.size() > named ? " and " + (loads.size() - named) + " more" : "";
            notes.add(what + Phrase.counted(loads.size(), noun) + (loads.size() == 1 ? " states no" : " state no")
                    + lacks + " (" + names + more + ").");
        }
    }

    private static String percents(PeakBasis basis) {
        return percent(basis.leastVoltagePercent()) + " to " + percent(basis.mostVoltagePercent()) + " %";
    }

    private static String percent(double percent) {
        String text = Numbers.fixed(percent, 2);
        return text.replaceAll("\\.?0+$", "");
    }
}
