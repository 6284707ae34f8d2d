package evenrise.model.measured;

import evenrise.model.contract.Phrase;
import evenrise.model.rules.Layout;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * How voltages to neutral that were read at panels, nodes and the supply scatter, as parts of what is nominal there.
 *
 * @param readings how many
 * @param places how many they are of
 * @param mean of them
 * @param deviation standard deviation of one about the mean; a drop within the plant is in it, and the meter's error
 * @param least of them
 * @param greatest of them
 */
public record VoltageScatter(int readings, long places, double mean, double deviation, double least, double greatest) {
    /** Of fewer no spread is told. */
    public static final int FEWEST = 3;

    /** Empty where fewer than three were read at places that are known. */
    public static Optional<VoltageScatter> of(Layout layout, SiteReadings readings) {
        List<Double> parts = new ArrayList<>();
        List<String> places = new ArrayList<>();
        for (PlaceReading each : readings.places()) {
            layout.distribution()
                    .point(each.place())
                    .ifPresent(point -> each.volts().values().stream()
                            .filter(volts -> volts > 0)
                            .forEach(volts -> {
                                parts.add(volts / point.lineToNeutralVolts());
                                places.add(each.place());
                            }));
        }
        return parts.size() < FEWEST
                ? Optional.empty()
                : Optional.of(of(parts, places.stream().distinct().count()));
    }

    private static VoltageScatter of(List<Double> parts, long places) {
        double mean = parts.stream().mapToDouble(each -> each).average().orElseThrow();
        double squares = parts.stream()
                .mapToDouble(each -> (each - mean) * (each - mean))
                .sum();
        return new VoltageScatter(
                parts.size(),
                places,
                mean,
                Math.sqrt(squares / (parts.size() - 1)),
                parts.stream().mapToDouble(each -> each).min().orElseThrow(),
                parts.stream().mapToDouble(each -> each).max().orElseThrow());
    }

    /**
     * By what part a current that was read at any of these voltages may be more at any other: gear that keeps its power draws
     * more as the voltage falls, gear like a resistor more as it rises.
     */
    public double mayBeMore() {
        return greatest / least - 1;
    }

    /** "3 readings at 1 place". */
    public String counted() {
        return Phrase.counted(readings, "reading") + " at " + Phrase.counted(places, "place");
    }
}
