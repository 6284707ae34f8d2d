package evenrise.model.electrical.source;

import java.util.List;
import java.util.Optional;

/**
 * How long a voltage may stay away from nominal by more than each level.
 *
 * @param bands farthest first
 */
public record Tolerance(List<Band> bands) {
    /** The voltage may depart by more than {@code percent} for at most {@code seconds}. */
    public record Band(double percent, double seconds) {}

    /**
     * ITI curve of 2000: nothing for 20 ms, 70 % to 0.5 s, 80 % to 10 s, 90 % steadily. Axis marks read in a book, pairing
     * from memory; one page says half a cycle instead of 20 ms.
     */
    public static final Tolerance ITI = new Tolerance(List.of(new Band(30, 0.02), new Band(20, 0.5), new Band(10, 10)));

    /** The same curve above nominal: 120 % to 0.5 s, 110 % steadily; what is over in 3 ms is no rms of a half-cycle (from memory). */
    public static final Tolerance ITI_SWELL = new Tolerance(List.of(new Band(20, 0.003), new Band(10, 0.5)));

    /** SEMI F47-0706: 50 % for 0.2 s, 70 % for 0.5 s, 80 % for 1 s; read on two pages, remaining voltages. */
    public static final Tolerance SEMI_F47 =
            new Tolerance(List.of(new Band(50, 0), new Band(30, 0.2), new Band(20, 0.5), new Band(10, 1)));

    public Tolerance {
        bands = List.copyOf(bands);
    }

    /** A departure of no more than this leaves no band. */
    public double leastPercent() {
        return bands.get(bands.size() - 1).percent();
    }

    /** The first band that a voltage leaves; empty where it keeps them all. */
    public Optional<Band> left(DipCourse course) {
        return bands.stream()
                .filter(band -> course.isAboveFor(band.seconds() + 1e-9, band.percent()))
                .findFirst();
    }
}
