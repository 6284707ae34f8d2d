package evenrise.solver.app;

import java.util.List;
import java.util.OptionalInt;

/**
 * What the nights of a rework leave no room for.
 *
 * @param stayLive ids of loads, shutdown groups and panels of which nothing may be off at any time
 * @param mostOut shutdown groups of which a load may be off at once
 * @param windowsMinutes how long each night is, in their order; none where nobody counts them
 * @since 0.1.0
 */
public record NightOptions(List<String> stayLive, OptionalInt mostOut, List<Double> windowsMinutes) {
    public static final NightOptions NONE = new NightOptions(List.of(), OptionalInt.empty(), List.of());

    public NightOptions {
        stayLive = List.copyOf(stayLive);
        windowsMinutes = List.copyOf(windowsMinutes);
        if (mostOut.isPresent() && mostOut.getAsInt() < 0) {
            throw new IllegalArgumentException("mostOut is " + mostOut.getAsInt() + ", expected at least 0");
        }
        if (windowsMinutes.stream().anyMatch(minutes -> !(minutes > 0 && minutes <= 1e6))) {
            throw new IllegalArgumentException(
                    "windowsMinutes are " + windowsMinutes + ", expected 0 to 1e6, 0 excluded");
        }
    }
}
