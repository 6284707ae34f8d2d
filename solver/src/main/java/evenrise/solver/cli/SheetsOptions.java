package evenrise.solver.cli;

import evenrise.solver.app.SheetOptions;
import java.util.Optional;
import picocli.CommandLine.Option;

/** What stands on sheets that are printed. */
final class SheetsOptions {
    @Option(
            names = "--revision",
            paramLabel = "TEXT",
            defaultValue = "A",
            description = "Revision on every printed sheet. Default: A.")
    private String revision;

    @Option(names = "--date", paramLabel = "TEXT", description = "Date on every printed sheet. Default: today.")
    private String date;

    @Option(
            names = "--title-block",
            paramLabel = "FILE",
            description = "Client, site, job number, who drew and checked, revisions so far: a file of format"
                    + " evenrise-title/1 for the cover of the printed sheets.")
    private String titleBlock;

    SheetOptions sheets(Terminal terminal) {
        return new SheetOptions(
                revision,
                date == null ? SheetOptions.usual().date() : date,
                Optional.ofNullable(titleBlock).map(terminal::source));
    }
}
