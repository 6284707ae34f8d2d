package evenrise.model.plan;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import evenrise.model.project.Phase;

/** What the supply or one panel peaks at while the sequence runs, at nominal voltage and over the voltages it may have. */
@FileRecord
public record RangePeak(
        @Field(meaning = "The panel's id, or supply", atLeast = 1)
        String node,

        @Field(
                meaning = "Instantaneous peak of the worst phase by the envelopes at nominal voltage, idle currents as"
                        + " sines",
                least = 0)
        double nominalAmps,

        @Field(meaning = "The same over the voltage range, idle currents at the crest that is stated", least = 0)
        double rangeAmps,

        @Field(meaning = "Phase of the peak over the voltage range")
        Phase rangePhase,

        @Field(meaning = "Nominal switch-on time that makes the peak over the voltage range", least = 0)
        double rangeAtSeconds,

        @Field(
                meaning = "Whether the peak at nominal voltage is an upper bound there for sinusoidal idle currents:"
                        + " every switched load at this node states its inrush_peak_a, and nothing of it is guessed")
        boolean nominalBound,

        @Field(
                meaning = "Whether the peak over the voltage range is an upper bound: besides, every load at this node "
                        + "states its crest_factor or third_harmonic")
        boolean rangeBound)
        implements RangePeakBuilder.With {
    public RangePeak {
        Contract.check(
                RangePeak.class, node, nominalAmps, rangeAmps, rangePhase, rangeAtSeconds, nominalBound, rangeBound);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static RangePeakBuilder builder() {
        return Defaults.into(RangePeakBuilder.unset(), RangePeak.class);
    }
}
