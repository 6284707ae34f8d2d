package evenrise.solver.app;

import java.time.Duration;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * When a search for a time may end before it: either that is reached is enough.
 *
 * @param gapPercent as soon as the best plan keeps every rule and is proven to be at most so far, in percent of its
 *     objective, above the best there could be; from 0 to 100
 * @param withoutGain as soon as so long nothing better was found, more than 0
 * @since 0.1.0
 */
public record Patience(OptionalDouble gapPercent, Optional<Duration> withoutGain) {
    /** Until the whole time is used. */
    public static final Patience ALL = new Patience(OptionalDouble.empty(), Optional.empty());

    public Patience {
        if (gapPercent.isPresent() && !(gapPercent.getAsDouble() >= 0 && gapPercent.getAsDouble() <= 100)) {
            throw new IllegalArgumentException("gap is " + gapPercent.getAsDouble() + " %, expected 0 to 100 %");
        }
        if (withoutGain.isPresent()
                && (withoutGain.get().isNegative() || withoutGain.get().isZero())) {
            throw new IllegalArgumentException("time without gain is " + withoutGain.get() + ", expected more than 0");
        }
    }

    public boolean isAny() {
        return gapPercent.isEmpty() && withoutGain.isEmpty();
    }
}
