package evenrise.solver.cli;

import evenrise.solver.report.Paint;
import evenrise.solver.report.Tone;
import picocli.CommandLine.Help.Ansi.Style;

/** Tones as colours of a terminal; the words say the same without them. */
final class AnsiPaint implements Paint {
    @Override
    public String on(Tone tone, String text) {
        return switch (tone) {
            case PLAIN -> text;
            case HEADING -> styled(Style.bold, text);
            case GOOD -> styled(Style.fg_green, text);
            case BAD -> styled(Style.fg_red, text);
            case FAINT -> styled(Style.faint, text);
        };
    }

    /** Ends with a reset: the code that ends bold alone means double underline on many terminals. */
    private static String styled(Style style, String text) {
        return style.on() + text + Style.reset.on();
    }
}
