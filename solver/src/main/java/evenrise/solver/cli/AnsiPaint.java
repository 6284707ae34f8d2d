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
            case HEADING -> Style.bold.on() + text + Style.bold.off();
            case GOOD -> Style.fg_green.on() + text + Style.fg_green.off();
            case BAD -> Style.fg_red.on() + text + Style.fg_red.off();
            case FAINT -> Style.faint.on() + text + Style.faint.off();
        };
    }
}
