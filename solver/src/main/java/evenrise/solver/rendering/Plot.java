package evenrise.solver.rendering;

import evenrise.solver.document.Document;
import evenrise.solver.document.Envelope;
import java.util.List;
import java.util.Locale;
import java.util.stream.LongStream;

/**
 * Where times and currents lie in a drawing, in its own units; what is drawn over time shares the left and right edge.
 *
 * @param endSeconds at the right edge, from 0 at the left one
 * @param mostAmps at the top edge, from 0 at the bottom one
 */
record Plot(double endSeconds, double mostAmps) {
    static final int WIDTH = 960;
    static final int HEIGHT = 320;
    static final int LEFT = 84;
    static final int RIGHT = 14;
    static final int TOP = 34;
    static final int BOTTOM = 34;
    private static final int ABOUT_TICKS = 5;
    private static final double ROOM = 1.08;

    static Plot of(Document document) {
        double end = document.envelopes().stream()
                .flatMap(each -> each.seconds().stream())
                .mapToDouble(Double::doubleValue)
                .max()
                .orElse(1);
        double most = document.envelopes().stream()
                .mapToDouble(Envelope::peakAmps)
                .max()
                .orElse(1);
        return new Plot(end, ROOM * Math.max(1, most));
    }

    double x(double seconds) {
        return LEFT + (WIDTH - LEFT - RIGHT) * seconds / endSeconds;
    }

    double y(double amps) {
        return HEIGHT - BOTTOM - (HEIGHT - BOTTOM - TOP) * amps / mostAmps;
    }

    /** Round numbers from 0 to {@code most}, about five of them: steps of 1, 2 or 5 times a power of ten. */
    static List<Double> ticks(double most) {
        double power = Math.pow(10, Math.floor(Math.log10(most / ABOUT_TICKS)));
        double step = List.of(1.0, 2.0, 5.0, 10.0).stream()
                .map(each -> each * power)
                .filter(each -> most / each <= ABOUT_TICKS + 1)
                .findFirst()
                .orElseThrow();
        return LongStream.rangeClosed(0, (long) Math.floor(most / step + 1e-9))
                .mapToObj(i -> i * step)
                .toList();
    }

    /** Without digits that say nothing. */
    static String number(double value) {
        return value == Math.rint(value)
                ? String.format(Locale.ROOT, "%.0f", value)
                : String.format(Locale.ROOT, "%.1f", value);
    }
}
