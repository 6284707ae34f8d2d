package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;

/** How a real switch-on differs from the worst one; every default is common practice, no source. */
@FileRecord
public record Scatter(
        @Field(meaning = "How closing times spread within the timing tolerance", byDefault = "\"uniform\"")
        Spread closing,

        @Field(
                meaning = "Least inrush that a load may show, of inrush_peak_a; any between it and 100 % is as likely",
                min = 0,
                max = 100,
                byDefault = "80")
        double leastInrushPercent,

        @Field(
                meaning =
                        "Loads whose excess halves within this time have their crest scaled by where on the wave they "
                                + "close, any angle as likely; slower ones reach their crest anyway; 0 for none",
                min = 0,
                max = 600_000,
                byDefault = "100")
        double angleUpToHalfMillis,

        @Field(meaning = "Mean supply voltage, of the nominal one", above = 0, max = 200, byDefault = "100")
        double meanVoltagePercent,

        @Field(
                meaning = "Standard deviation of the supply voltage, of the nominal one; normal, cut off at twice it",
                min = 0,
                max = 50,
                byDefault = "2")
        double voltageDeviationPercent)
        implements ScatterBuilder.With {
    /** Every default. */
    public static final Scatter USUAL = builder().build();

    /** Where the supply voltage is cut off, in standard deviations. */
    public static final double VOLTAGE_CUT = 2;

    /** No voltage is drawn below this part of the nominal one. */
    private static final double LEAST_RATIO = 0.01;

    public Scatter {
        Contract.check(
                Scatter.class,
                closing,
                leastInrushPercent,
                angleUpToHalfMillis,
                meanVoltagePercent,
                voltageDeviationPercent);
    }

    /** The highest supply voltage that is drawn, over the nominal one. */
    public double mostVoltageRatio() {
        return (meanVoltagePercent + VOLTAGE_CUT * voltageDeviationPercent) / 100;
    }

    /** The lowest supply voltage that is drawn, over the nominal one. */
    public double leastVoltageRatio() {
        return Math.max(LEAST_RATIO, (meanVoltagePercent - VOLTAGE_CUT * voltageDeviationPercent) / 100);
    }

    /** The usual chances, with a voltage that is drawn about the nominal one and stays within these. */
    public static Scatter usualWithin(double leastRatio, double mostRatio) {
        double room = 100 * Math.min(1 - leastRatio, mostRatio - 1) / VOLTAGE_CUT;
        return USUAL.withVoltageDeviationPercent(Math.min(USUAL.voltageDeviationPercent, room));
    }

    /** Begins with what a file gives that leaves everything out. */
    public static ScatterBuilder builder() {
        return Defaults.into(ScatterBuilder.unset(), Scatter.class);
    }
}
