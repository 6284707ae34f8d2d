package evenrise.model.observation;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a recording says of one expected start.
 *
 * @param likeliest what explains it best, be it sure enough to be stated or not
 * @param recorded what stands for it; empty where nothing does
 * @param planSeconds when that was, by the plan's clock
 * @param confidence 0 to 1, that it is so and not otherwise
 * @param swappedWith whose time it came on at, where the other came on at its time
 */
public record ObservedStart(
        ExpectedStart expected,
        Finding finding,
        Finding likeliest,
        Optional<RecordedStart> recorded,
        OptionalDouble planSeconds,
        double confidence,
        Optional<ExpectedStart> swappedWith) {

    /** What was found. */
    public enum Finding {
        AS_PLANNED("as planned"),
        OTHER_SIZE("draws another current"),
        OTHER_TIME("comes on at another time"),
        SWAPPED("outputs swapped"),
        OTHER_PHASES("on other phases"),
        OTHER_TIME_AND_PHASES("at another time and on other phases"),
        MISSING("does not come on"),
        CANNOT_TELL("cannot tell"),
        TOO_SMALL("too small to be seen"),
        NOT_RECORDED("outside the recording");

        private final String words;

        Finding(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }

        /** Whether something is other than planned, and sure enough. */
        public boolean isDifference() {
            return ordinal() >= OTHER_SIZE.ordinal() && ordinal() <= MISSING.ordinal();
        }
    }
}
