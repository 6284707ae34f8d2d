package evenrise.solver.rendering;

import evenrise.solver.document.Document;
import evenrise.solver.document.Envelope;

/**
 * Where times and currents lie in a drawing, in its own units; what is drawn over time shares the left and right edge.
 *
 * @param endSeconds at the right edge, from 0 at the left one
 * @param mostAmps at the top edge, from 0 at the bottom one
 */
record Plot(double endSeconds, double mostAmps) {
    static final int WIDTH = 960;
    static final int HEIGHT = 400;
    static final int LEFT = 84;
    static final int RIGHT = 14;
    static final int TOP = 30;
    static final int BOTTOM = 34;
    private static final double ROOM = 1.08;

    static Plot of(Document document) {
        // One scale of time for all commands, and for all nodes.
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
}
