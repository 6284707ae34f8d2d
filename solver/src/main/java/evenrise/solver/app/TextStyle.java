package evenrise.solver.app;

import evenrise.solver.report.AnsiPaint;
import evenrise.solver.report.Paint;

/**
 * How a result is told.
 *
 * @param isFull whether long lists stand in full
 * @param isColoured whether tones are a terminal's escape codes
 * @since 0.1.0
 */
public record TextStyle(boolean isFull, boolean isColoured) {
    /** Long lists cut, no colour. */
    public static final TextStyle PLAIN = new TextStyle(false, false);

    Paint paint() {
        return isColoured ? new AnsiPaint() : Paint.NONE;
    }
}
