package evenrise.solver.app;

import evenrise.model.event.Trace;
import evenrise.model.file.Schemas;
import evenrise.solver.report.AuditFile;
import evenrise.solver.report.ExplanationFile;
import evenrise.solver.report.FrontFile;
import evenrise.solver.report.MeasuredTable;
import evenrise.solver.report.ScatterFile;
import evenrise.solver.report.SizesFile;
import evenrise.solver.report.WorkFile;
import java.util.Locale;
import java.util.function.Supplier;

/**
 * The files that have a published schema: JSON Schema of draft 2020-12, but for the table of measured currents, which is
 * described as metadata for tabular data (CSV on the Web).
 *
 * @since 0.1.0
 */
public enum FileSchema {
    PROJECT(Schemas::project),
    PLAN(Schemas::plan),
    MOVES(Schemas::moves),
    READINGS(Schemas::readings),
    SCRIPT(Schemas::script),
    TITLE(Schemas::title),
    MAPPING(Schemas::mapping),
    RECORDERS(Schemas::recorders),
    PORTFOLIO(Schemas::portfolio),
    AUDIT(() -> Schemas.sheet(AuditFile.class, "evenrise audit", AuditFile.FORMAT)),
    EXPLANATION(() -> Schemas.sheet(ExplanationFile.class, "evenrise explanation", ExplanationFile.FORMAT)),
    SIZES(() -> Schemas.sheet(SizesFile.class, "evenrise sizes", SizesFile.FORMAT)),
    REHEARSAL(() -> Schemas.sheet(Trace.class, "evenrise rehearsal", Trace.FORMAT)),
    SCATTER(() -> Schemas.sheet(ScatterFile.class, "evenrise scatter", ScatterFile.FORMAT)),
    FRONT(() -> Schemas.sheet(FrontFile.class, "evenrise front", FrontFile.FORMAT)),
    WORK(() -> Schemas.sheet(WorkFile.class, "evenrise work", WorkFile.FORMAT)),
    FILES(Schemas::files),
    MEASURED(MeasuredTable::text);

    private final Supplier<String> text;

    FileSchema(Supplier<String> text) {
        this.text = text;
    }

    /** The schema, with a line break at its end. */
    public String text() {
        return text.get();
    }

    /** As it is asked for: {@code project}. */
    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT);
    }
}
