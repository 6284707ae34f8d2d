package evenrise.model.electrical.conductor;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A conductor's size as people name it, with the metal's cross-section.
 *
 * @param name as in files: {@code 12 AWG}, {@code 1/0 AWG}, {@code 250 kcmil}, {@code 2.5 mm2}
 * @param squareMillimetres nominal for metric sizes, computed for the others
 * @param isMetric whether it is a size of IEC 60228
 */
public record ConductorSize(String name, double squareMillimetres, boolean isMetric) {
    private static final double MILLIMETRES_PER_INCH = 25.4;

    /** A circular mil is the area of a circle of 0.001 inch. */
    private static final double SQUARE_MILLIMETRES_PER_KCMIL =
            1000 * Math.PI / 4 * Math.pow(MILLIMETRES_PER_INCH / 1000, 2);

    /** American sizes with tables here, smallest first. */
    public static final List<ConductorSize> AMERICAN = Stream.concat(
                    Stream.of("14", "12", "10", "8", "6", "4", "3", "2", "1", "1/0", "2/0", "3/0", "4/0")
                            .map(ConductorSize::gauge),
                    Stream.of(250, 300, 350, 400, 500).map(ConductorSize::kcmil))
            .toList();

    /** Sizes of IEC 60228 with tables here, smallest first. */
    public static final List<ConductorSize> METRIC = Stream.of(
                    1.5, 2.5, 4.0, 6.0, 10.0, 16.0, 25.0, 35.0, 50.0, 70.0, 95.0, 120.0, 150.0, 185.0, 240.0)
            .map(area -> new ConductorSize(metricName(area), area, true))
            .toList();

    /** The size of that name, blanks aside; empty where there is no table for it. */
    public static Optional<ConductorSize> of(String name) {
        String wanted = name.strip().replaceAll("\\s+", " ");
        return Stream.concat(AMERICAN.stream(), METRIC.stream())
                .filter(size -> size.name().equalsIgnoreCase(wanted))
                .findFirst();
    }

    /** Position in {@link #AMERICAN} or {@link #METRIC}. */
    int index() {
        return (isMetric ? METRIC : AMERICAN).indexOf(this);
    }

    /** ASTM B258: diameter 0.005 inch · 92^((36 − n)/39), with 0 for 1/0, −1 for 2/0 and so on (formula from memory). */
    private static ConductorSize gauge(String number) {
        int n = number.endsWith("/0") ? 1 - Integer.parseInt(number.substring(0, 1)) : Integer.parseInt(number);
        double inches = 0.005 * Math.pow(92, (36 - n) / 39.0);
        double area = Math.PI / 4 * Math.pow(inches * MILLIMETRES_PER_INCH, 2);
        return new ConductorSize(number + " AWG", area, false);
    }

    private static ConductorSize kcmil(int kcmil) {
        return new ConductorSize(kcmil + " kcmil", kcmil * SQUARE_MILLIMETRES_PER_KCMIL, false);
    }

    private static String metricName(double area) {
        return (area == Math.rint(area) ? Long.toString((long) area) : Double.toString(area)) + " mm2";
    }
}
