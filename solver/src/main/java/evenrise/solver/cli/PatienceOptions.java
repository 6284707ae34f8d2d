package evenrise.solver.cli;

import evenrise.solver.app.Patience;
import java.time.Duration;
import java.util.Optional;
import java.util.OptionalDouble;
import picocli.CommandLine;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;

/** What is enough, before the time is used. */
final class PatienceOptions {
    @Option(
            names = "--gap",
            paramLabel = "PERCENT",
            converter = PercentConverter.class,
            description = "End as soon as the best plan is proven to be within so many percent of the best there could"
                    + " be: 2, 2%%, 0.5%%.")
    private Double gapPercent;

    @Option(
            names = "--no-gain",
            paramLabel = "TIME",
            converter = Durations.class,
            description = "End as soon as nothing better was found for so long. A search cools with its time and finds"
                    + " most at its end: a short one may end too soon.")
    private Duration withoutGain;

    Patience patience(CommandLine command) {
        try {
            return new Patience(
                    gapPercent == null ? OptionalDouble.empty() : OptionalDouble.of(gapPercent),
                    Optional.ofNullable(withoutGain));
        } catch (IllegalArgumentException e) {
            throw new ParameterException(command, "--gap, --no-gain: " + e.getMessage() + ".");
        }
    }
}
