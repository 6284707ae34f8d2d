package evenrise.solver.rendering;

import com.openhtmltopdf.extend.FSTextBreaker;
import java.text.BreakIterator;
import java.util.Locale;

/** Where a line may end: as anywhere, but not behind a hyphen, for names of panels and loads are read as one. */
final class WordBreaks implements FSTextBreaker {
    private final BreakIterator breaks = BreakIterator.getLineInstance(Locale.ROOT);
    private String text = "";

    @Override
    public void setText(String newText) {
        text = newText;
        breaks.setText(newText);
    }

    @Override
    public int next() {
        int next = breaks.next();
        while (next != BreakIterator.DONE && next < text.length() && text.charAt(next - 1) == '-') {
            next = breaks.next();
        }
        return next;
    }
}
