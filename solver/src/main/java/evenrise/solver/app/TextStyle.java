package evenrise.solver.app;

import evenrise.solver.report.AnsiPaint;
import evenrise.solver.report.Paint;

/**
 * How a result is told.
 *
 * @param isFull whether long lists stand in full
 * @param isColoured whether tones are a terminal's escape codes
 * @param columns how wide tables may be; running text is narrower
 * @since 0.1.0
 */
public record TextStyle(boolean isFull, boolean isColoured, int columns) {
    /** Long lists cut, no colour. */
    public static final TextStyle PLAIN = new TextStyle(false, false);

    /** Of the usual width. */
    public TextStyle(boolean isFull, boolean isColoured) {
        this(isFull, isColoured, Paint.NONE.columns());
    }

    Paint paint() {
        return (isColoured ? new AnsiPaint() : Paint.NONE).within(columns);
    }
}
