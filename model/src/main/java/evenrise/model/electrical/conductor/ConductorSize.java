package evenrise.model.electrical.conductor;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.DoubleStream;
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

    /** Practice, no source: smaller metric conductors are hardly laid in parallel. */
    private static final double LEAST_PARALLEL_SQUARE_MILLIMETRES = 50;

    /** A circular mil is the area of a circle of 0.001 inch. */
    private static final double SQUARE_MILLIMETRES_PER_KCMIL =
            1000 * Math.PI / 4 * Math.pow(MILLIMETRES_PER_INCH / 1000, 2);

    /** American sizes with tables here, smallest first. */
    public static final List<ConductorSize> AMERICAN = Stream.concat(
                    Stream.of("14", "12", "10", "8", "6", "4", "3", "2", "1", "1/0", "2/0", "3/0", "4/0")
                            .map(ConductorSize::gauge),
                    DoubleStream.of(250, 300, 350, 400, 500, 600, 700, 750, 800, 900, 1000)
                            .mapToObj(ConductorSize::kcmil))
            .toList();

    /** Sizes of IEC 60228 with tables here, smallest first. */
    public static final List<ConductorSize> METRIC = Stream.of(
                    1.5, 2.5, 4.0, 6.0, 10.0, 16.0, 25.0, 35.0, 50.0, 70.0, 95.0, 120.0, 150.0, 185.0, 240.0, 300.0)
            .map(ConductorSize::metric)
            .toList();

    /** {@code #12}, {@code AWG 12}, {@code 12AWG}, {@code no. 12}, {@code 4/0}, {@code 0000 AWG}. */
    private static final Pattern GAUGE =
            Pattern.compile("(awg|#|no\\.?|nr\\.?)? ?(\\d{1,2}|[1-4]/0|0{1,4}) ?(awg|ga\\.?|gauge)?");

    /** {@code 250 kcmil}, {@code 250MCM}, {@code 1,000 kcmil}. */
    private static final Pattern KCMIL = Pattern.compile("(\\d[\\d,]*) ?(?:kcmil|mcm)");

    /** {@code 2.5 mm2}, {@code 2,5mm²}, {@code 2.5 sq mm}. */
    private static final Pattern SQUARE = Pattern.compile("(\\d+(?:[.,]\\d+)?) ?(?:mm ?\\^?(?:2|²)|sq\\.? ?mm|mm ?sq)");

    /**
     * The size of that name, in any of the usual spellings; empty where there is no table for it. A bare number is none,
     * for 10 may be a gauge or square millimetres.
     */
    public static Optional<ConductorSize> of(String name) {
        String wanted = canonical(name);
        return Stream.concat(AMERICAN.stream(), METRIC.stream())
                .filter(size -> size.name().equals(wanted))
                .findFirst();
    }

    /** The name as it is written here, whether or not there is a table; what is no size stays as it is. */
    public static String canonical(String name) {
        String text = name.strip().replaceAll("\\s+", " ").toLowerCase(Locale.ROOT);
        Matcher gauge = GAUGE.matcher(text);
        if (gauge.matches()) {
            String number = gauge.group(2);
            boolean isMarked = gauge.group(1) != null || gauge.group(3) != null || number.contains("/");
            String zeros = number.matches("0+") ? number.length() + "/0" : number;
            return isMarked ? zeros + " AWG" : text;
        }
        Matcher kcmil = KCMIL.matcher(text);
        if (kcmil.matches()) {
            return kcmil.group(1).replace(",", "") + " kcmil";
        }
        Matcher square = SQUARE.matcher(text);
        return square.matches() ? metricName(Double.parseDouble(square.group(1).replace(',', '.'))) : text;
    }

    /** The size that a name means, whether or not there is a table; empty where it is no size. */
    public static Optional<ConductorSize> meant(String name) {
        String canonical = canonical(name);
        if (canonical.endsWith(" AWG")) {
            return Optional.of(gauge(canonical.substring(0, canonical.length() - " AWG".length())));
        }
        if (canonical.endsWith(" kcmil")) {
            return Optional.of(
                    kcmil(Double.parseDouble(canonical.substring(0, canonical.length() - " kcmil".length()))));
        }
        return canonical.endsWith(" mm2")
                ? Optional.of(metric(Double.parseDouble(canonical.substring(0, canonical.length() - " mm2".length()))))
                : Optional.empty();
    }

    /** The least size of the same system that is at least as large and has a table. */
    public Optional<ConductorSize> orLarger() {
        return (isMetric ? METRIC : AMERICAN)
                .stream()
                        .filter(size -> size.squareMillimetres >= squareMillimetres - 1e-6)
                        .findFirst();
    }

    /** The sizes that are larger, smallest first, of the same system. */
    public List<ConductorSize> larger() {
        List<ConductorSize> all = isMetric ? METRIC : AMERICAN;
        return all.subList(index() + 1, all.size());
    }

    /** Whether equal conductors of this size may share a current: NEC 310.10(G), 1/0 AWG and larger (from memory). */
    public boolean mayBeParallel() {
        return isMetric
                ? squareMillimetres >= LEAST_PARALLEL_SQUARE_MILLIMETRES
                : index() >= names().indexOf("1/0 AWG");
    }

    private static List<String> names() {
        return AMERICAN.stream().map(ConductorSize::name).toList();
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

    private static ConductorSize metric(double area) {
        return new ConductorSize(metricName(area), area, true);
    }

    private static ConductorSize kcmil(double kcmil) {
        return new ConductorSize(Math.round(kcmil) + " kcmil", kcmil * SQUARE_MILLIMETRES_PER_KCMIL, false);
    }

    private static String metricName(double area) {
        return (area == Math.rint(area) ? Long.toString((long) area) : Double.toString(area)) + " mm2";
    }
}
