package evenrise.model.electrical.source;

import java.util.List;
import java.util.Optional;

/**
 * How long a voltage may stay below each level.
 *
 * @param bands deepest first
 */
public record Tolerance(List<Band> bands) {
    /** The voltage may be lower by more than {@code dipPercent} for at most {@code seconds}. */
    public record Band(double dipPercent, double seconds) {}

    /**
     * ITI curve of 2000: nothing for 20 ms, 70 % to 0.5 s, 80 % to 10 s, 90 % steadily. Axis marks read in a book, pairing
     * from memory; one page says half a cycle instead of 20 ms.
     */
    public static final Tolerance ITI = new Tolerance(List.of(new Band(30, 0.02), new Band(20, 0.5), new Band(10, 10)));

    /** SEMI F47-0706: 50 % for 0.2 s, 70 % for 0.5 s, 80 % for 1 s; read on two pages, remaining voltages. */
    public static final Tolerance SEMI_F47 =
            new Tolerance(List.of(new Band(50, 0), new Band(30, 0.2), new Band(20, 0.5), new Band(10, 1)));

    public Tolerance {
        bands = List.copyOf(bands);
    }

    /** A dip of no more than this leaves no band. */
    public double leastPercent() {
        return bands.get(bands.size() - 1).dipPercent();
    }

    /**
     * The first band that a dip leaves; empty where it keeps them all.
     *
     * @param steadyPercent that the voltage is low by already
     */
    public Optional<Band> left(DipDecay dip, double steadyPercent) {
        return bands.stream()
                .filter(band -> dip.secondsAbove(band.dipPercent() - steadyPercent) > band.seconds() + 1e-9)
                .findFirst();
    }
}
