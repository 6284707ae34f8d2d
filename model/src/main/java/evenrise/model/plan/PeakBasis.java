package evenrise.model.plan;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import java.util.List;

/** What the peaks of a plan rest on: voltages, and what loads do not state. */
@FileRecord
public record PeakBasis(
        @Field(meaning = "Least voltage of the supply, of the nominal one", least = 0)
        double leastVoltagePercent,

        @Field(meaning = "Greatest voltage of the supply, of the nominal one", least = 0)
        double mostVoltagePercent,

        @Field(meaning = "Where these voltages come from", atLeast = 1)
        String voltageFrom,

        @Field(meaning = "Whether they are assumed by the practice, for the project states none")
        boolean voltageAssumed,

        @Field(
                meaning = "Switched loads that state no inrush_peak_a: they count as having none, and no peak with them"
                        + " is an upper bound",
                byDefault = "[]")
        List<String> withoutInrush,

        @Field(
                meaning =
                        "Unswitched loads that state none: peaks of the sequence hold without it, those of a return of "
                                + "the mains or a dip do not",
                byDefault = "[]")
        List<String> unswitchedWithoutInrush,

        @Field(
                meaning =
                        "Loads that draw an idle current and state neither crest_factor nor third_harmonic: they count "
                                + "as sines",
                byDefault = "[]")
        List<String> withoutWaveform,

        @Field(
                meaning = "Loads with a guessed figure that peaks rest on (idle_a, inrush_peak_a, inrush_half_ms, "
                        + "third_harmonic, crest_factor): no peak with them is an upper bound",
                byDefault = "[]")
        List<String> guessed,

        @Field(meaning = "Peaks of the supply, then of the panels", byDefault = "[]")
        List<RangePeak> peaks)
        implements PeakBasisBuilder.With {
    public PeakBasis {
        Contract.check(
                PeakBasis.class,
                leastVoltagePercent,
                mostVoltagePercent,
                voltageFrom,
                voltageAssumed,
                withoutInrush,
                unswitchedWithoutInrush,
                withoutWaveform,
                guessed,
                peaks);
        withoutInrush = List.copyOf(withoutInrush);
        unswitchedWithoutInrush = List.copyOf(unswitchedWithoutInrush);
        withoutWaveform = List.copyOf(withoutWaveform);
        guessed = List.copyOf(guessed);
        peaks = List.copyOf(peaks);
    }

    /** That of the supply. */
    public RangePeak supply() {
        return peaks.get(0);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static PeakBasisBuilder builder() {
        return Defaults.into(PeakBasisBuilder.unset(), PeakBasis.class);
    }
}
